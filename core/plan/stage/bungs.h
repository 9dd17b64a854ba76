// Weld bungs: of the tank's metal, and of nothing that cracks, fumes or will not weld.
#pragma once

#include "plan/stage/inputs.h"

namespace riserun::plan {

/// Refuses what is still to be welded in and must not be; warns of what is welded in already.
void check_bungs(const Inputs& inputs, Remarks& remarks);

/// True if a bung of that material is of the tank's metal.
bool welds_to_tank(const Inputs& inputs, MaterialId material);

}  // namespace riserun::plan
