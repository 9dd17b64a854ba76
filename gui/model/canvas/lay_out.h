// Where everything stands on the canvas: an elevation of the job. The tank low, the table over it in the job's
// proportions, the air supply at the left; runs stand on the ports that they leave, all to one scale. Of many runs each
// is a row of its own beside a small elevation, the rows wrapped. A pure function: the same job, words, room and moved
// runs give the same layout.
#pragma once

#include "gui/model/canvas/layout.h"

#include <string>
#include <vector>

namespace riserun::gui {

/// The pictures that a layout is made of.
std::vector<report::RunPicture> run_pictures(const plan::Plan& plan);

Layout lay_out(const LayoutWish& wish);

/// The name under which a node is moved by hand: a run as a whole, the air supply; empty: it is not moved.
std::string moved_as(const plan::Plan& plan, const Node& node);

}  // namespace riserun::gui
