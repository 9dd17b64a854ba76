// A mend that the plan names, followed in the job's text as one act.
#pragma once

#include "gui/model/edit/act.h"
#include "gui/model/edit/bench.h"
#include "quantity/write.h"

#include <string>

namespace riserun::gui {

/// The text with all the changes of the mend. A part that is added gets a port of its own in the reservoir's lid, to be
/// welded in, and a connection that ends in it.
Edited follow_mend(const Bench& bench, const FollowMend& act);

/// What a button says that follows it: "Set air set pressure to 1.5 psi", "Add a 5 psi gauge".
std::string title_of_mend(const catalog::Catalog& catalog, const plan::Changes& changes, quantity::UnitSystem units);

}  // namespace riserun::gui
