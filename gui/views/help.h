// What the keys do, and what the words of the trade mean.
#pragma once

#include "gui/views/scene/scene.h"

namespace riserun::views {

enum class HelpPage { keys, glossary };

struct HelpState {
  bool opens = false;
  HelpPage page = HelpPage::keys;
};

void draw_help(const Scene& scene, HelpState& state);

}  // namespace riserun::views
