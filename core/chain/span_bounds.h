// Bounds from each stage of a run to its end: the least cost, and what lengths can still be made with so many parts.
#pragma once

#include "chain/span_steps.h"

#include <vector>

namespace riserun::chain {

class SpanBounds {
 public:
  /// @param longest  micrometres beyond which no length is asked about
  SpanBounds(const SpanSteps& steps, const RequestGraph& graph, std::int64_t longest);

  /// Least cost from the stage to an end, whatever the lengths.
  const Cost& cost(std::uint32_t stage) const { return costs_[stage]; }
  /// Some way of at most that many parts from the stage to an end may be between the two lengths along the axes, and
  /// some between the bends. Lengths are kept in bins, so that true may be wrong by a bin or two; false never is.
  bool may_add_along(std::uint32_t stage, int parts, std::int64_t least, std::int64_t most) const {
    return may_add(stage, parts, 0, least, most);
  }
  bool may_add_travel(std::uint32_t stage, int parts, std::int64_t least, std::int64_t most) const {
    return may_add(stage, parts, 1, least, most);
  }

 private:
  using Bits = std::vector<std::uint64_t>;

  void find_costs();
  void find_lengths(const RequestGraph& graph);
  bool may_add(std::uint32_t stage, int parts, std::size_t leg, std::int64_t least, std::int64_t most) const;
  std::size_t place(std::uint32_t stage, int parts, std::size_t leg) const {
    return ((stage * (static_cast<std::size_t>(most_parts_) + 1) + static_cast<std::size_t>(parts)) * 2 + leg) * words_;
  }
  void add_shifted(std::size_t from, std::size_t to, std::int64_t micrometres, std::int64_t stretch);

  const SpanSteps& steps_;
  const int most_parts_;
  const std::int64_t bin_;  // micrometres
  std::size_t words_ = 0;
  std::vector<Cost> costs_;
  Bits lengths_;
};

}  // namespace riserun::chain
