// The sketch of a plan: its vessels, parts and joints as nodes and links, with what is bought for each.
#pragma once

#include "gui/model/canvas/sketch.h"

namespace riserun::gui {

Sketch sketch_of(const plan::Plan& plan);

}  // namespace riserun::gui
