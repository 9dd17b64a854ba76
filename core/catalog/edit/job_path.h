// Where a value stands in a job file: `table.depth`, `reservoir.ports.riser bung.port`, `connections[2].need[1]`.
#pragma once

#include <compare>
#include <cstddef>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace riserun::catalog {

/// A key of a map, or a place in a list counted from 0.
using PathStep = std::variant<std::string, std::size_t>;

/// Steps from the outermost value inwards. A key may hold any characters, dots too, so this is no text that is parsed.
class JobPath {
 public:
  JobPath() = default;
  explicit JobPath(std::vector<PathStep> steps) : steps_(std::move(steps)) {}

  const std::vector<PathStep>& steps() const { return steps_; }
  bool empty() const { return steps_.empty(); }
  const PathStep& last() const { return steps_.back(); }
  JobPath parent() const;

  /// As messages print it, list places counted from 1: `connections[2].need[1]`.
  std::string text() const;

  friend JobPath operator/(JobPath path, std::string key);
  friend JobPath operator/(JobPath path, std::size_t place);
  auto operator<=>(const JobPath&) const = default;

 private:
  std::vector<PathStep> steps_;
};

JobPath operator/(JobPath path, std::string key);
JobPath operator/(JobPath path, std::size_t place);

/// Starts a path: `at("table") / "depth"`.
JobPath at(std::string key);

}  // namespace riserun::catalog
