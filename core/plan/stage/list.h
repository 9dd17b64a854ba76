// The list: what to buy, what comes from the bin, what to cut, and what gets used up, over the whole job.
#pragma once

#include "plan/plan.h"
#include "plan/stage/bin_left.h"
#include "plan/stage/inputs.h"
#include "plan/stage/listed_sections.h"

namespace riserun::plan {

/// @param bin what the sections have left, for clamps, more hose and test gear
ShoppingList plan_list(const Inputs& inputs, const ListedSections& sections, BinLeft bin, Remarks& remarks);

}  // namespace riserun::plan
