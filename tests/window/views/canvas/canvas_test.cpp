#include "gui/views/canvas/canvas.h"

#include "gui/views/canvas/node_words.h"
#include "gui/views/canvas/paint_runs.h"

#include <gtest/gtest.h>

namespace riserun::views {
namespace {

TEST(Lens, GoesThereAndBack) {
  const Lens lens{30.0F, 50.0F, {-12.0F, 7.0F}, 0.7F, 2.0F};
  const gui::Point back = lens.on_canvas(lens.on_screen({123.0F, -45.0F}));
  EXPECT_NEAR(back.x, 123.0F, 1e-3);
  EXPECT_NEAR(back.y, -45.0F, 1e-3);
}

TEST(Lens, ZoomsAboutThePointer) {
  const Lens lens{30.0F, 50.0F, {-12.0F, 7.0F}, 0.7F, 1.5F};
  const gui::Point pointer{400.0F, 300.0F};
  for (const float factor : {0.5F, 1.15F, 3.0F}) {
    const Lens nearer = zoomed(lens, factor, pointer);
    const gui::Point before = lens.on_canvas(pointer);
    const gui::Point after = nearer.on_canvas(pointer);
    EXPECT_NEAR(before.x, after.x, 1e-2);
    EXPECT_NEAR(before.y, after.y, 1e-2);
    EXPECT_NEAR(nearer.zoom, lens.zoom * factor, 1e-4);
  }
  EXPECT_EQ(zoomed(lens, 1e9F, pointer).zoom, kMostZoom);
  EXPECT_EQ(zoomed(lens, 1e-9F, pointer).zoom, kLeastZoom);
}

TEST(Lens, FitsAllIntoTheMiddle) {
  const gui::Box all{{-100.0F, 40.0F}, {3000.0F, 700.0F}};
  const PixelBox screen{20.0F, 100.0F, 1220.0F, 600.0F};
  const Lens lens = fitted({20.0F, 100.0F, {}, 1.0F, 1.0F}, all, screen);
  const gui::Point a = lens.on_screen(all.corner);
  const gui::Point b = lens.on_screen({all.right(), all.bottom()});
  EXPECT_GE(a.x, screen.left);
  EXPECT_GE(a.y, screen.top);
  EXPECT_LE(b.x, screen.right);
  EXPECT_LE(b.y, screen.bottom);
  EXPECT_NEAR((a.x + b.x) / 2.0F, (screen.left + screen.right) / 2.0F, 0.5);
}

TEST(Lens, IsNoSmallerThanWhatItShowsLetsIt) {
  const gui::Box all{{}, {1000.0F, 500.0F}};
  const PixelBox screen{0.0F, 0.0F, 1000.0F, 500.0F};
  const Lens lens{0.0F, 0.0F, {}, 1.0F, 1.0F};
  const float least = least_zoom(lens, all, screen);
  EXPECT_GT(least, 0.3F);
  EXPECT_LE(least, 0.5F);
  EXPECT_EQ(zoomed(lens, 1e-3F, {10.0F, 10.0F}, least).zoom, least);
}

TEST(Detail, NeverShowsLettersUnderElevenPoints) {
  EXPECT_EQ(detail_at(11.0F / kPartWords), Detail::parts);
  EXPECT_EQ(detail_at(0.98F * 11.0F / kPartWords), Detail::runs);
  EXPECT_EQ(detail_at(2.5F), Detail::section);
}

}  // namespace
}  // namespace riserun::views
