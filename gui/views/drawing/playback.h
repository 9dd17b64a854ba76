// The hand on the clock of the timeline.
#pragma once

#include "report/drawing/timeline.h"

namespace riserun::views {

using report::Timeline;

/// The hand on the clock.
struct Playback {
  Time now{};
  bool playing = false;
  /// Goes on by the time between two frames: the whole timeline in kShowLasts. Stops at the end.
  void advance(const Timeline& timeline, Time frame);
};

inline const Time kShowLasts = seconds(16.0);

}  // namespace riserun::views
