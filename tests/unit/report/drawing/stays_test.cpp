// What holds the walls is drawn as what it is.
#include "report/drawing/stays.h"

#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::report {
namespace {

std::ptrdiff_t count_of(const plan::Plan& plan, StayKind kind) {
  const std::vector<StayInSight> stays = stays_in_sight(plan);
  return std::count_if(stays.begin(), stays.end(), [&](const StayInSight& stay) { return stay.kind == kind; });
}

const plan::Plan& with_posts() {
  static const plan::Plan plan = [] {
    std::string text = plan::example_text("bevel-bench");
    const std::size_t from = text.find("baffles across");
    const std::size_t to = text.find('\n', from);
    text.replace(from, to - from,
                 "lid bays: 5 x 3\n    floor bays: 5 x 3\n    long side bays: 5 x 1\n    short side bays: 3 x 1\n"
                 "    lid stays: posts");
    return plan::plan_of_text(text);
  }();
  return plan;
}

TEST(Stays, PostsHaveTheirThicknessAndAreNoBaffles) {
  const plan::Plan& plan = with_posts();
  EXPECT_EQ(count_of(plan, StayKind::baffle), 0);
  EXPECT_EQ(count_of(plan, StayKind::post), 4);  // two rows one behind the other
  // Along each long side, seen as one, and at either end.
  EXPECT_EQ(count_of(plan, StayKind::bar), 4 + 2);
  const double height = in_metres(plan.job.reservoir.height);
  const double length = in_metres(plan.job.reservoir.length);
  for (const StayInSight& stay : stays_in_sight(plan)) {
    EXPECT_EQ(stay.bottom, 0.0);
    EXPECT_NEAR(stay.top, height, 1e-12);
    const double thick = stay.kind == StayKind::post ? in_metres(reservoir::kThinnestTie) : 0.0;
    EXPECT_GE(stay.right - stay.left, thick - 1e-12);
    EXPECT_GE(stay.left, -1e-12);
    EXPECT_LE(stay.right, length + 1e-12);
  }
  EXPECT_EQ(posts_and_bars(plan), "8 posts, 12 bars at the walls");  // 2 x 4 and 2 x 2 of them upright in the sides
  EXPECT_EQ(bays_of_stays(plan), "lid 5 x 3, floor 5 x 3, long sides 5 x 1, short sides 3 x 1");
}

TEST(Stays, OfBafflesThereIsOneLineEachAndNoWords) {
  const plan::Plan& plan = plan::bevel_bench();
  EXPECT_EQ(count_of(plan, StayKind::baffle), plan.job.reservoir.supports.layout->baffles_across);
  EXPECT_EQ(count_of(plan, StayKind::post), 0);
  EXPECT_EQ(count_of(plan, StayKind::bar), 0);
  EXPECT_EQ(posts_and_bars(plan), "");
}

}  // namespace
}  // namespace riserun::report
