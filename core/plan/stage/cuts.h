// What is cut to measure: the riser, hoses, and the pieces that make a distance.
#pragma once

#include "plan/plan.h"

#include <vector>

namespace riserun::plan {

void cut_riser(const Catalog& catalog, const RiserPlan& plan, ShoppingList& list);

/// Hoses of runs that make no distance. In a branched connection each has the length that the catalog sells it in.
void cut_hoses(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, ShoppingList& list);

/// Pieces that the runs between ports with a measured gap are made up with.
void cut_spans(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, ShoppingList& list);

}  // namespace riserun::plan
