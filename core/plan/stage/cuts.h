// What is cut to measure: the riser, hoses, the pieces that make a distance, and baffles.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <vector>

namespace riserun::plan {

/// What one cut leaves of a piece that a run is made up with: of pipe less the saw's kerf, of hose, which a knife cuts,
/// all of it. Nothing: it was not cut, or nothing is left.
Length offcut_of(const Catalog& catalog, const chain::RunPart& part, Length cut);

void cut_riser(const Catalog& catalog, const RiserPlan& plan, ShoppingList& list);

/// Hoses of runs that make no distance. In a branched connection each has the length that the catalog sells it in.
void cut_hoses(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, ShoppingList& list);

/// Pieces that the runs between ports with a measured gap are made up with.
void cut_spans(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, ShoppingList& list);

/// The baffles of a reservoir that is still open, of its own sheet (common practice), with the corners cropped. Those
/// along the length are made in pieces between those across it.
void cut_baffles(const Inputs& inputs, const WallsPlan& walls, ShoppingList& list);

/// The bars that the job's bays are made with, on edge, of a reservoir that is still open.
void cut_stays(const Inputs& inputs, const WallsPlan& walls, ShoppingList& list);

}  // namespace riserun::plan
