// How long the run of a connection has to be, and how long it is: the gap, the hose, what is clamped.
#pragma once

#include "chain/ask/span.h"
#include "chain/finder.h"
#include "plan/plan.h"
#include "plan/stage/inputs.h"
#include "plan/stage/run_search.h"

#include <optional>

namespace riserun::plan {

/// Between the faces of the connection's two ports: given, or worked out of their heights. nullopt: not known, or
/// refused, as a port in the table's floor does not stand over the bung that looks up at it.
/// @param assumed  set where a height was not given
std::optional<Length> gap_between(const Job& job, const RiserPlan& riser, const JobConnection& connection,
                                  bool& assumed, Remarks& remarks);

/// What the run has to make by itself: the gap, where it was measured or a hose takes up what it is assumed wrong by,
/// nothing moves along it, and no hose length that the job gives settles it already. An assumed gap in which no hose
/// fits is left to check_gap().
std::optional<chain::Span> span_of(const chain::Finder& finder, const JobConnection& connection,
                                   const ConnectionPlan& plan);

/// The hose of the run that would be taken if the distance did not matter, where its bends do not fit into the gap.
std::optional<TightHose> tight_hose(const chain::Finder& finder, const JobConnection& connection,
                                    const ConnectionPlan& plan);

/// The length of the run and of its hose: given; or what the gap leaves over; or what goes up to an inlet in the
/// table's side or over its rim; or the length that the catalog sells it in.
/// @pre the plan has a chain, here and below
void settle_hose(const Inputs& inputs, const chain::Finder& finder, const RiserPlan& riser,
                 const JobConnection& connection, ConnectionPlan& plan, Remarks& remarks);

/// Clamps: one a hose end; a second where the barb is long enough to carry both bands (common practice).
void count_clamps(const catalog::Catalog& catalog, ConnectionPlan& plan);

/// Whether the run comes out at its gap: it is missed where the job gives the gap, where a rigid run is too long for it
/// between ports that stand still, or where it is assumed and off by more than the assumption may be; by less, it is a
/// caution.
void check_gap(const Inputs& inputs, RunSearch& search, ConnectionPlan& plan, const JobConnection& connection);

}  // namespace riserun::plan
