// What the list buys for each node of a sketch: the cards of a run add up to what the list has for it.
#pragma once

#include "gui/model/canvas/sketch.h"

namespace riserun::gui {

/// Fills in how much of each part is bought and for what: hose by its length, plugs with the part that they close, the
/// clamps of a run with its first hose.
void price_nodes(const plan::Plan& plan, Sketch& sketch);

}  // namespace riserun::gui
