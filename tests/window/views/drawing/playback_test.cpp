#include "gui/views/drawing/playback.h"

#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

namespace riserun::views {
namespace {

TEST(Playback, RunsThroughOnceAndStops) {
  const Timeline timeline = report::timeline_of(plan::bevel_bench());
  Playback playback{Time{}, true};
  playback.advance(timeline, kShowLasts / 2.0);
  EXPECT_NEAR(in_seconds(playback.now), in_seconds(timeline.whole()) / 2.0, 1e-9);
  EXPECT_TRUE(playback.playing);
  playback.advance(timeline, kShowLasts);
  EXPECT_EQ(playback.now, timeline.whole());
  EXPECT_FALSE(playback.playing);
  playback.advance(timeline, kShowLasts);
  EXPECT_EQ(playback.now, timeline.whole());
}

}  // namespace
}  // namespace riserun::views
