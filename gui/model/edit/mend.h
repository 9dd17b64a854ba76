// A mend that the plan names, followed in the job's text as one act.
#pragma once

#include "gui/model/edit/act.h"
#include "gui/model/edit/bench.h"
#include "quantity/write.h"

#include <string>

namespace riserun::gui {

/// The text with all the changes of the mend. A part that is added gets a connection that ends in it, on a bung of the
/// lid that is free and wide enough, else on one of its own, to be welded in.
Edited follow_mend(const Bench& bench, const FollowMend& act);

/// The ways to mend it that can be written into a job: those that the job has keys for, and of those that the plan has
/// only tried what says how the walls are divided, another sheet, and what part_mends.h writes.
std::vector<plan::Changes> ways_to_follow(const plan::Finding& finding);

/// The first way of each finding in turn, as long as the plan gets better by it: fewer findings that refuse it, or as
/// many and fewer open. Makes a plan for each step.
Edited mend_all(const Bench& bench, const MendAll& act);

/// What a button says that follows it: "Set air set pressure to 1.5 psi", "Add a 5 psi gauge".
std::string title_of_mend(const catalog::Catalog& catalog, const plan::Changes& changes, quantity::UnitSystem units);

}  // namespace riserun::gui
