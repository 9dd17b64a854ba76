// A hose between two ports that do not look at each other: how far it goes round.
#pragma once

#include "plan/plan.h"

#include <optional>

namespace riserun::plan {

/// Of a hose from a bung in the lid to an inlet in the table's side, or over its rim: as high as that opens, or as the
/// highest point of its pipe, out past the table's edge with room for the bend, and back in. Of one between two ports
/// in the reservoir's sides, as a sight tube's: from height to height, with the bends out of the wall and back into it,
/// or straight between two elbows that look at each other. nullopt: both look at each other, or the heights are
/// another's to say.
///
/// @param radius  that the hose bends no tighter than
/// @param barbs   what of the hose is on its barbs
std::optional<HoseRise> rise_of(const Catalog& catalog, const Job& job, const RiserPlan& riser,
                                const JobConnection& connection, const chain::Chain& chain, Length radius,
                                Length barbs);

}  // namespace riserun::plan
