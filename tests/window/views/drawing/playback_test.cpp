#include "gui/views/drawing/playback.h"

#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

namespace riserun::views {
namespace {

TEST(Playback, RunsThroughOnceAndStops) {
  const Timeline timeline = report::timeline_of(plan::bevel_bench());
  for (const double speed : kSpeeds) {
    Playback playback{Time{}, true, speed};
    playback.advance(timeline, timeline.whole() / (2.0 * speed));
    EXPECT_NEAR(in_seconds(playback.now), in_seconds(timeline.whole()) / 2.0, 1e-9);
    EXPECT_TRUE(playback.playing);
    playback.advance(timeline, timeline.whole() / speed);
    EXPECT_EQ(playback.now, timeline.whole());
    EXPECT_FALSE(playback.playing);
    playback.advance(timeline, timeline.whole());
    EXPECT_EQ(playback.now, timeline.whole());
  }
}

TEST(Playback, AtOnceItIsTheWatersOwnTime) {
  const Timeline timeline = report::timeline_of(plan::bevel_bench());
  Playback playback{Time{}, true, 1.0};
  playback.advance(timeline, seconds(2.0));
  EXPECT_NEAR(in_seconds(playback.now), 2.0, 1e-9);
}

}  // namespace
}  // namespace riserun::views
