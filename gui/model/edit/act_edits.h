// From an act to the edits of the job's text that carry it out.
#pragma once

#include "gui/model/edit/act.h"
#include "gui/model/edit/bench.h"

#include <string>

namespace riserun::gui {

/// The text after the act, or why it cannot be done. For all acts but SetText.
Edited edit_for(const Act& act, const Bench& bench);

/// What undo calls the act: `Never use 1 x 3/4 hex bushing (black iron) in 'water up'`. `text` is that before the act.
std::string name_of(const Act& act, const catalog::Catalog& catalog, const JobText* text);

}  // namespace riserun::gui
