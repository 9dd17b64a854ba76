// The mistakes of an input, gathered to be thrown together: nothing is ever half-loaded.
#pragma once

#include "catalog/yaml/value.h"
#include "quantity/error_codes.h"
#include "quantity/input_error.h"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace riserun::catalog {

/// Gathers all mistakes of an input.
class Problems {
 public:
  /// @throws InputError with all that was gathered where kMostMistakes (limits.h) are there already
  void add(quantity::Problem problem);
  void add(const Value& where, std::string message, std::size_t offset = 0,
           std::string_view code = quantity::mistake::kWrongValue) {
    quantity::Problem problem = where.problem(std::move(message), offset);
    problem.code = code;
    add(std::move(problem));
  }
  bool empty() const { return problems_.empty(); }
  std::size_t size() const { return problems_.size(); }
  std::span<const quantity::Problem> all() const { return problems_; }
  /// Takes over what another has gathered.
  void take(Problems other);
  /// Throws one InputError with every problem, in the order of files and lines; nothing when there is none.
  void throw_if_any() &&;

 private:
  std::vector<quantity::Problem> problems_;
};

}  // namespace riserun::catalog
