// On which side of the shut-off valve the run opens: a union or a hose beyond the valve, opened, leaves the valve, and
// so a way to shut, with the reservoir (common practice).
//
// How it works: a search knows needs in order, not sides. So each order of the needs in which something that opens
// comes beyond a valve is asked for (best_chain, best_span), and the best answer is taken: at most 5! searches.
#pragma once

#include "chain/ask/answer.h"
#include "chain/ask/valve.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::chain {

class PreparedCatalog;

/// Needs that a shut-off valve meets, by row of the request's needs: each part that meets it can shut, passes both
/// ways and is no union itself.
std::vector<std::size_t> valve_needs(const Catalog& catalog, const ChainRequest& request);

/// nullopt: beyond some valve that was asked for, seen from the reservoir, the run opens; or it opens nowhere.
std::optional<ValveAndOpening> valve_that_comes_off(const Catalog& catalog, const ChainRequest& request,
                                                    const Chain& chain, ReservoirEnd end);

/// Whether best_with_valve_left finds the best wherever there is one: some valve is asked for, all needs must be met,
/// they are few enough to try each order, and, unless they come in order anyway, no part meets two unlike ones and none
/// is met by fittings and by devices.
bool can_weigh_valve_sides(const Catalog& catalog, const ChainRequest& request, ReservoirEnd end);

/// What is to stand beyond the valve: the union or hose asked for, in its words; else "union". A valve is none itself.
std::string opening_beyond_valve(const Catalog& catalog, const ChainRequest& request, ReservoirEnd end);

/// The best of all chains that hold what is to stand beyond a valve that was asked for there, under the request's order
/// and its ties. nullopt: there is none, or the sides cannot be weighed.
std::optional<Chain> best_with_valve_left(const PreparedCatalog& prepared, const ChainRequest& request,
                                          ReservoirEnd end);

/// The same of runs that make a distance: of each order of the needs the best run, of these the best by the rule of
/// best_span.
std::optional<Chain> best_span_with_valve_left(const PreparedCatalog& prepared, const ChainRequest& request,
                                               const Span& span, ReservoirEnd end);

/// Each order of so many needs is tried, that of an added union among them.
inline constexpr std::size_t kMostNeedsInTurn = 5;

}  // namespace riserun::chain
