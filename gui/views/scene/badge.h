// The verdict as it is read from six feet: the plan's own word, and beside it whether the factor of safety must be
// watched.
#pragma once

#include "gui/model/session/model.h"
#include "gui/views/drawing/theme.h"
#include "gui/views/scene/figures.h"

#include <string>

namespace riserun::views {

struct Badge {
  std::string words;  // READY, NOT YET, REFUSED; of a plan that is not of the job as it is, what is to be fixed
  Ink ground = Ink::stale_ground;
  std::string watch;   // "WATCH: factor 2.3 at 4.1 psi", which is the greatest pressure that can occur; empty: nothing
                       // beside the verdict
  bool stale = false;  // entries are to be fixed first
};

Badge badge_of(const gui::Model& model, const plan::Plan& plan);

}  // namespace riserun::views
