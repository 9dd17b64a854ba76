// The search for a run that makes a distance: exact, and of all best runs the one whose part ids sort first.
//
// How it works: A* over labels, a label being a stage with the lengths made so far. Its potential is the least cost
// from the stage on; a label from which no rest can make up the length (SpanBounds) is dropped. The search goes on
// through all that costs as much as the best run, and of these runs the best is taken by what decides between them, by
// how near it lands, at last by ids. Lengths are micrometres.
//
// Worst case: exponential in the parts of a run, since each sum of lengths is a label of its own; most_parts bounds it.
#pragma once

#include "chain/span/span_bounds.h"

#include <optional>
#include <vector>

namespace riserun::chain {

/// A run as its moves; of a piece to cut, `own` holds the room that it takes and cut_micrometres its length.
struct SpanRoute {
  std::vector<Move> moves;
  Cost cost;
  std::int64_t off = 0;  // micrometres by which it misses: along and aside added up
  Rest rest;             // what decides between equal costs, but for what it misses by
};

/// What a run measures, micrometres, every joint at its nominal make-up.
struct RunLengths {
  std::int64_t along = 0, travel = 0;
  std::int64_t along_tolerance = 0, travel_tolerance = 0;
  double along_square = 0.0, travel_square = 0.0;  // tolerances squared and added up
  double bend = 0.0;                               // radians, of each of the two bends; 0: none

  std::int64_t lands() const;
  std::int64_t lands_aside() const;
  std::int64_t band() const;
  std::int64_t band_aside() const;
};

/// Two bends, if any, are taken to turn one against the other.
RunLengths measure_run(const Catalog& catalog, const ChainRequest& request, const std::vector<Move>& moves);

/// Where the runs of a task land, whatever they cost. Made once for many distances; what it refers to must outlive it.
class SpanReach {
 public:
  /// @param task  with the longest distance that will be asked about
  SpanReach(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph, const SpanTask& task);
  SpanReach(const SpanReach&) = delete;
  SpanReach& operator=(const SpanReach&) = delete;

  /// The moves of some run that lands there.
  /// @param labels_left  how many labels may still be made, less those that were; at 0 nullopt says nothing
  std::optional<std::vector<Move>> lands(std::int64_t along, std::size_t& labels_left) const;

 private:
  const FoldedCatalog& folded_;
  const Rules& rules_;
  const PortGraph& graph_;
  const SpanTask task_;
  const std::int64_t both_ends_;
  const SpanStates steps_;
  const SpanBounds bounds_;
};

/// The best run that makes the task's distance: least cost under the request's order, then nearest, then by ids.
/// @param dearest  a run that costs more is of no use: as if there were none
std::optional<SpanRoute> search_span(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph,
                                     const SpanTask& task, const std::optional<Cost>& dearest = std::nullopt);

}  // namespace riserun::chain
