// The job file itself, and what is wrong with it: a click on a mistake shows its line.
#pragma once

#include "gui/views/scene/scene.h"

#include <cstdint>
#include <string>

namespace riserun::views {

struct JobFileState {
  std::string text;
  std::uint64_t text_of = 0;  // revision
  int shown_line = 0;         // 0: none
  bool scroll_to_line = false;

  void show(int line) {
    shown_line = line;
    scroll_to_line = true;
  }
};

Requests draw_job_file(const Scene& scene, JobFileState& state);

}  // namespace riserun::views
