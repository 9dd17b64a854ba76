// One run of the plan as it is drawn: its parts put together to scale, turned to the way in which it leaves its port,
// and the place of the words beside each part.
#pragma once

#include "gui/model/canvas/placed_run.h"
#include "gui/model/canvas/sketch.h"
#include "report/drawing/run_drawing.h"

#include <vector>

namespace riserun::gui {

/// @param picture  of the connection's run; nothing is read of it where there is none
/// @param scale    points a metre
/// @return with its base at 0, 0
RunBlock run_block(const plan::Plan& plan, const Sketch& sketch, std::size_t connection,
                   const report::RunPicture& picture, const Stance& stance, double scale, const WordSizes& words);

/// A run that leads straight on is drawn so much longer, by a piece that is broken anyway; nothing where none is.
void lengthen(RunBlock& block, float by, const WordSizes& words);

}  // namespace riserun::gui
