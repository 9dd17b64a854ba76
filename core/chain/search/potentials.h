// What a chain still costs at least from an open end on, given the needs that are met and whether it can be closed: a
// bound that knows what the rest of the chain must hold, so that a search goes straight for it.
#pragma once

#include "chain/graph/port_graph.h"

#include <array>
#include <memory>

namespace riserun::chain {

/// Exact but for the counts of the bin and a limit on parts. Worked out when first asked for, each set of needs met by
/// itself: from one set to a larger one lead the moves that meet a need.
class Potentials {
 public:
  /// Keeps references to all three.
  Potentials(const PortGraph& graph, const Rules& rules, const std::vector<Cost>& to_goal);

  /// kUnreachable: from there the chain cannot be finished. With a graph of all measures each place is a bound by
  /// itself.
  const Cost& from(std::uint32_t node, std::uint8_t met, bool closed) { return layer(met, closed)[node]; }

 private:
  const std::vector<Cost>& layer(std::uint8_t met, bool closed) {
    if (nothing_asked_) return to_goal_;
    std::unique_ptr<const std::vector<Cost>>& known = layers_[met * 2u + (closed ? 1u : 0u)];
    if (!known) known = std::make_unique<const std::vector<Cost>>(work_out(met, closed));
    return *known;
  }
  std::vector<Cost> work_out(std::uint8_t met, bool closed);
  std::vector<DistanceSource> sources(std::uint8_t met, bool closed);

  const PortGraph& graph_;
  const Rules& rules_;
  const std::vector<Cost>& to_goal_;
  const bool nothing_asked_;
  std::array<std::unique_ptr<const std::vector<Cost>>, 512> layers_;
};

}  // namespace riserun::chain
