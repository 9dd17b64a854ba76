// The lid's drawing against the map that it draws.
#include "report/drawing/lid_drawing.h"

#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::report {
namespace {

TEST(LidDrawing, DrawsEachBungAtItsPlaceAsWideAsItsBoss) {
  const plan::Plan& plan = plan::bevel_bench();
  ASSERT_TRUE(has_lid_drawing(plan));
  const Drawing drawing = lid_drawing(plan, UnitSystem::inch);
  for (const plan::LidBung& bung : plan.lid_map.bungs) {
    if (!bung.at) continue;
    const Area* area = find_shape<Area>(drawing, bung.port);
    ASSERT_NE(area, nullptr) << bung.port;
    const auto [left, right] = std::minmax_element(area->outline.begin(), area->outline.end(),
                                                   [](const Spot& a, const Spot& b) { return a.x < b.x; });
    EXPECT_NEAR((left->x + right->x) / 2.0, in_metres(bung.at->from_left), 1e-6);
    EXPECT_NEAR(right->x - left->x, in_metres(bung.outside), 1e-6);
    EXPECT_GE(left->x, 0.0);
    EXPECT_LE(right->x, in_metres(plan.lid_map.length));
  }
}

}  // namespace
}  // namespace riserun::report
