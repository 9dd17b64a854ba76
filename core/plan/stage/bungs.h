// Weld bungs: of the tank's metal, and of nothing that cracks, fumes or will not weld.
#pragma once

#include "plan/stage/inputs.h"

#include <string_view>

namespace riserun::plan {

/// Refuses what is still to be welded in and must not be; warns of what is welded in already.
void check_bungs(const Inputs& inputs, Remarks& remarks);

/// What a bung must be welded to, in the words of catalog/materials.yaml.
std::string_view metal_of_tank(const Settled& settled);

/// True if a bung of that material is of the tank's metal.
bool welds_to_tank(const Inputs& inputs, MaterialId material);

}  // namespace riserun::plan
