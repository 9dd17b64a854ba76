// A graph's arcs turned around, kept by the end that they lead to, for exact distances to a goal.
#pragma once

#include "chain/measures.h"

#include <cstdint>
#include <limits>
#include <span>
#include <vector>

namespace riserun::chain {

struct Arc;

/// Beyond any sum of a chain, and twice of it still a number.
inline constexpr std::int64_t kFar = std::numeric_limits<std::int64_t>::max() / 4;

/// An open end from which the goal is one joint away.
struct Source {
  std::uint32_t node = 0;
  Cost cost;
};

class Reversed {
 public:
  Reversed() = default;
  /// @param first_arc  by node: first row in `arcs`, and the end
  Reversed(std::span<const std::uint32_t> first_arc, std::span<const Arc> arcs);

  /// Dijkstra's algorithm: least cost from each node to a source and what stands there; kFar in every place where there
  /// is no way.
  std::vector<Cost> least(std::span<const Source> sources) const;
  /// The same for each place of the cost by itself.
  std::vector<Cost> least_of_each(std::span<const Source> sources) const;

 private:
  struct Back {
    std::uint32_t from = 0;
    Cost cost;
  };
  std::span<const Back> into(std::uint32_t node) const {
    return std::span(backs_).subspan(first_[node], first_[node + 1] - first_[node]);
  }
  void least_of_place(std::span<const Source> sources, std::size_t place, std::vector<Cost>& distances) const;
  bool same_places(std::span<const Source> sources, std::size_t a, std::size_t b) const;

  std::vector<std::uint32_t> first_{0};  // by node: first row in `backs_`, and the end
  std::vector<Back> backs_;
  std::vector<std::uint32_t> froms_;               // of `backs_`, beside the weights of each place
  std::vector<std::int64_t> weights_[Cost::kPlaces];
};

}  // namespace riserun::chain
