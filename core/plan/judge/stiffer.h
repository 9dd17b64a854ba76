// Walls that stand more: closer stays, thicker sheet.
#pragma once

#include "plan/plan.h"
#include "plan/settle/settled.h"

#include <vector>

namespace riserun::plan {

/// Nobody puts a stay into a box that is welded shut: its lid comes off first, and that is said and tried with it. Of
/// an open box the mend as it is.
Mend with_the_lid_off(const Settled& settled, Mend mend);

/// What makes all walls stand that air pressure at that stress: stays and stiffeners at the spacing that will just do,
/// then plate of the thinnest thickness that is stocked and does (common practice: 1/8 to 1/2 in by 1/16, 5/8, 3/4).
/// Each is one way to be tried; none where nothing does.
std::vector<Mend> stiffer_walls(const Job& job, const Settled& settled, Length charge, GaugePressure wanted,
                                Stress allowed);

/// The same with more to be changed along with the walls.
std::vector<Mend> with_too(std::vector<Mend> mends, const Fact& fact, const Changes& changes);

}  // namespace riserun::plan
