// Bounds from each stage of a run to its end: the least cost, and what lengths can still be made with so many parts.
// Costs are shortest distances to an end; lengths a dynamic program over sets of bins, as bits (subset sums). What the
// joints can fall long or short widens the sets; a first bend counts only where a second may come at the offset.
// O(steps * numbers of parts * 2048 / 64) and as many words.
#pragma once

#include "chain/span/span_states.h"

#include <algorithm>
#include <cassert>
#include <vector>

namespace riserun::chain {

class SpanBounds {
 public:
  /// @param longest  micrometres beyond which no length is asked about
  SpanBounds(const SpanStates& steps, const PortGraph& graph, const SpanTask& task, std::int64_t longest);

  /// Least cost from the stage to an end, whatever the lengths.
  const Cost& cost(std::uint32_t stage) const { return costs_[stage]; }
  /// Some way of at most that many parts from the stage to an end may be between the two lengths along the axes, and
  /// some between the bends, what the joints from there on can fall long or short taken in. Lengths are kept in bins,
  /// so that true may be wrong by a bin or two; false never is.
  /// @pre parts and the fewest from the start to the stage are together no more than most_parts() of the steps
  bool may_add_along(std::uint32_t stage, int parts, std::int64_t least, std::int64_t most) const {
    return may_add(stage, parts, 0, least, most);
  }
  bool may_add_travel(std::uint32_t stage, int parts, std::int64_t least, std::int64_t most) const {
    return may_add(stage, parts, 1, least, most);
  }
  /// What a run may be off along, and across its bends, for joints of such tolerances so far.
  std::int64_t room_along(std::int64_t along_tolerance, std::int64_t travel_tolerance) const {
    return of_the_band(along_tolerance + 2 * travel_tolerance);  // the travel lands within its own, and counts again
  }
  std::int64_t room_of_travel(std::int64_t travel_tolerance) const { return of_the_band(travel_tolerance); }

 private:
  using Bits = std::vector<std::uint64_t>;
  /// Lengths of all steps from a stage whose joints can be off by as much.
  struct Sum {
    std::int64_t room = 0;  // micrometres
    bool is_used = false;   // of the stage at hand; else there are no bits
    Bits bits;
  };

  void find_costs();
  void find_lengths(const PortGraph& graph);
  void add_steps(std::uint32_t row, int parts, const PortGraph& graph);
  bool may_bend(const Stage& from, const SpanStep& step, int parts) const;
  std::int64_t of_the_band(std::int64_t tolerance) const { return (task_.quarters_of_band * tolerance + 3) / 4; }
  bool may_add(std::uint32_t stage, int parts, std::size_t leg, std::int64_t least, std::int64_t most) const;
  /// How many numbers of parts there are with which a run through the stage can be done.
  int span_of_parts(std::uint32_t stage) const {
    return std::max(0, most_parts_ - steps_.parts_from_start(stage) - steps_.parts_to_end(stage) + 1);
  }
  /// @pre parts are at least those from the stage to an end
  std::size_t place(std::uint32_t stage, int parts, std::size_t leg) const {
    assert(parts >= steps_.parts_to_end(stage) && parts - steps_.parts_to_end(stage) < span_of_parts(stage));
    return ((rows_[stage] + static_cast<std::size_t>(parts - steps_.parts_to_end(stage))) * 2 + leg) * words_;
  }
  Bits& sum_of(std::vector<Sum>& sums, std::int64_t room);
  void add_shifted(std::size_t from, Bits& to, std::int64_t micrometres, std::int64_t stretch) const;
  void add_widened(std::vector<Sum>& sums, std::size_t to);
  void add_one(Bits& to, std::int64_t micrometres) const;

  const SpanStates& steps_;
  const SpanTask& task_;
  const int most_parts_;
  const std::int64_t bin_;    // micrometres
  const std::int64_t shift_;  // micrometres by which lengths are kept longer, as joints can make them less than nothing
  std::size_t words_ = 0;
  std::vector<Sum> along_sums_, travel_sums_;
  std::vector<Cost> costs_;
  std::vector<std::size_t> rows_;  // by stage: its first row of lengths, that of the fewest parts to an end
  Bits lengths_;
};

}  // namespace riserun::chain
