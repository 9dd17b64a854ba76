// How long the run of a connection has to be, and how long it is: the gap, the hose, what is clamped.
#pragma once

#include "chain/ask/span.h"
#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <optional>

namespace riserun::plan {

/// Between the faces of the connection's two ports: given, or worked out of their heights. nullopt: not known.
/// @param assumed  set where a height was not given
std::optional<Length> gap_between(const Job& job, const RiserPlan& riser, const JobConnection& connection,
                                  bool& assumed, Remarks& remarks);

/// What the run has to make by itself: the gap, where it was measured, nothing moves along it, and no hose length that
/// the job gives settles it already.
std::optional<chain::Span> span_of(const JobConnection& connection, const ConnectionPlan& plan);

/// The length of the run and of its hose: given; or what the gap leaves over; or the length that the catalog sells it
/// in.
/// @pre the plan has a chain, here and below
void settle_hose(const Inputs& inputs, const JobConnection& connection, ConnectionPlan& plan, Remarks& remarks);

/// Clamps: one a hose end; a second where the barb is long enough to carry both bands (common practice).
void count_clamps(const catalog::Catalog& catalog, ConnectionPlan& plan);

/// Whether the run comes out at its gap: it is missed where the job gives the gap, and a caution where it is assumed.
void check_gap(const Inputs& inputs, ConnectionPlan& plan, const JobConnection& connection);

}  // namespace riserun::plan
