// The bin of a job, edited in its text.
#pragma once

#include "gui/model/edit/act.h"
#include "gui/model/edit/bench.h"

namespace riserun::gui {

/// Sets how many the bin holds of a part. A bin that is a file of its own is not edited from here.
Edited count_in_bin(const Bench& bench, const CountInBin& act);

}  // namespace riserun::gui
