// A hose between two ports that stand still: whether it can be bent onto its second barb, and what goes first if not.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <optional>

namespace riserun::plan {

/// The hose of a run that is pushed on last.
struct HoseOnLast {
  std::size_t joint = 0;  // row of the run's joints
  PartId hose;
  Length free{};  // between its two barbs
  Length into{};  // that it goes over the barb
  bool bends_on = false;
};

/// It bends on as the chain bows it, see chain::drawn_back_by_bowing.
/// nullopt: the run has no hose, one of its ends gives way, or another joint closes it.
std::optional<HoseOnLast> hose_on_last(const Catalog& catalog, const ConnectionPlan& connection);

}  // namespace riserun::plan
