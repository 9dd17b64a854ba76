// What carries the leak test's air: the rules of its rig and of what feeds it.
#pragma once

#include "chain/ask/request.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// The part and its material are sold for compressed air.
bool is_sold_for_air(const Catalog& catalog, PartId part);

/// Of what the job lends and the bin holds, for air at what the regulator gives; what bends or is cut to measure is
/// kept out.
/// @param request  whose ends and needs stay
void ask_for_test_air(const Inputs& inputs, const Bin& bin, chain::ChainRequest& request);

}  // namespace riserun::plan
