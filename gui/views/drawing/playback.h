// The hand on the clock of the timeline.
#pragma once

#include "report/drawing/timeline.h"

namespace riserun::views {

using report::Timeline;

/// As fast as the water, and so many times faster.
inline constexpr double kSpeeds[] = {1.0, 10.0, 60.0};

/// The hand on the clock.
struct Playback {
  Time now{};
  bool playing = false;
  double speed = kSpeeds[1];  // times as fast as the water
  /// Goes on by the time between two frames, so many times as fast. Stops at the end.
  void advance(const Timeline& timeline, Time frame);
};

}  // namespace riserun::views
