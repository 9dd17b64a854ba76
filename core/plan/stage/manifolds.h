// Connections with several far ends: what is asked of the search for a branched assembly, and what comes of it.
#pragma once

#include "plan/plan.h"
#include "plan/stage/bin_left.h"
#include "plan/stage/inputs.h"

#include <vector>

namespace riserun::plan {

struct Manifolds {
  std::vector<ManifoldPlan> plans;
  BinLeft left;
};

/// @param bin what the connections with one far end have left
Manifolds plan_manifolds(const Inputs& inputs, const BinLeft& bin, Remarks& remarks);

/// Says which part of the bin they had.
void note_bin_of_manifolds(const Inputs& inputs, const std::vector<ManifoldPlan>& manifolds, Remarks& remarks);

}  // namespace riserun::plan
