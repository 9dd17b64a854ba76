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

/// nullopt: the run has no hose, one of its ends gives way, or another joint closes it.
std::optional<HoseOnLast> hose_on_last(const Catalog& catalog, const ConnectionPlan& connection);

/// A hose is drawn back by bowing it out of its line: its ends stay in line, so it bends four times by one angle, and
/// from 4 R a of its length 4 R sin a are left. No bend is tighter than six bores (common practice).
/// @param free  length between the barbs
/// @return how far one end can be drawn back, each bend turned up to a right angle
Length drawn_back_by_bowing(Length free, Length bore);

}  // namespace riserun::plan
