// What the job asks for in a run, a device at its end or a part on its way, taken out again.
#pragma once

#include "gui/model/edit/act.h"
#include "gui/model/edit/bench.h"
#include "plan/job/job.h"

namespace riserun::gui {

/// Whether the job itself asks for the part there, by a need of the connection or of one of its branches.
bool is_needed(const plan::Job& job, const std::string& connection, catalog::PartId part);

/// The text without the connection or the branch that ends in the device, or without the need that the part meets. The
/// bung that it stood on stays. Of two branches the one that is left becomes a connection with one end.
Edited take_out(const Bench& bench, const TakeOut& act);

}  // namespace riserun::gui
