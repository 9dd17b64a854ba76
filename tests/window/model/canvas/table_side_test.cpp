// A run to an inlet in the table's side or over its rim goes outside past the table's end, never through its floor.
#include "gui/model/canvas/table_side.h"

#include "gui/model/canvas/draft.h"
#include "gui/model/canvas/lay_out.h"
#include "gui/model/canvas/placing.h"
#include "plan/job/read_job.h"
#include "window/model/bench.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::gui {
namespace {

constexpr const char* kInFloor = "where: floor, opens at: 0 in, face height: 29-3/4 in";

struct Laid {
  explicit Laid(const std::string& where)
      : plan(plan::make_plan(
            testing::shipped_catalog(),
            plan::read_job(*testing::shipped_catalog(), testing::with(testing::example("bevel-bench"), kInFloor, where),
                           "job.yaml"))),
        sketch(sketch_of(plan)) {
    const std::vector<report::RunPicture> pictures = run_pictures(plan);
    WordSizes words;
    for (const Node& node : sketch.nodes)
      for (auto* sizes : {&words.beside, &words.brief, &words.listed})
        sizes->push_back(node.part ? Size{140.0F, 30.0F} : Size{});
    words.titles.assign(plan.connections.size(), Size{140.0F, 30.0F});
    layout = lay_out({plan, sketch, pictures, words, {1260.0F, 560.0F}, {}, {}});
    for (std::size_t i = 0; i < sketch.links.size(); ++i)
      if (sketch.links[i].b.node == kTable) link = i;
  }
  plan::Plan plan;
  Sketch sketch;
  Layout layout;
  std::size_t link = 0;  // to the table
};

/// The pipe of that link touches the table nowhere but at its inlet, and no part of its run does.
void expect_outside(const Laid& laid) {
  const Box& table = laid.layout.nodes[kTable];
  const std::vector<Point>& way = laid.layout.ways[laid.link];
  ASSERT_GT(way.size(), 2U);
  for (std::size_t i = 1; i < way.size(); ++i) {
    const Box piece = around({way[i - 1], {}}, {way[i], {}});
    EXPECT_FALSE(
        overlap(between(piece.corner.x - 4.0F, piece.corner.y - 4.0F, piece.right() + 4.0F, piece.bottom() + 4.0F),
                between(table.corner.x, table.corner.y, table.right() - 5.0F, table.bottom())));
  }
  const auto right = std::max_element(way.begin(), way.end(), [](Point a, Point b) { return a.x < b.x; });
  EXPECT_GT(right->x, table.right() + 10.0F);
  const RunBlock& run = laid.layout.runs[laid.sketch.links[laid.link].connection];
  for (const PlacedNode& node : run.nodes) {
    EXPECT_FALSE(overlap(node.box, table));
    EXPECT_GT(node.box.corner.y, way[1].y);
    EXPECT_FALSE(overlap(node.words, table));
  }
  for (const Point& point : way)
    EXPECT_TRUE(overlap(laid.layout.all, around({point, {}}, {{point.x + 1.0F, point.y + 1.0F}, {}})));
}

TEST(TableSide, AnInletInTheSideStandsAtItsHeight) {
  const Laid laid("where: side, opens at: 3 in");
  expect_outside(laid);
  const Box& table = laid.layout.nodes[kTable];
  const PlacedPin& pin = laid.layout.pins[kTable][laid.sketch.links[laid.link].b.pin];
  const double share = in_metres(quantity::inches(3.0)) / in_metres(laid.plan.transfer.system.table.rim);
  EXPECT_NEAR(pin.where.y, table.bottom() - share * table.size.height, 0.5F);
  EXPECT_EQ(pin.where.x, table.right());
  EXPECT_TRUE(laid.layout.over_rim.empty());
}

TEST(TableSide, APipeOverTheRimPassesItAndHangsDownInside) {
  const Laid laid("where: over rim, opens at: 2 in, crest: 12 in");
  expect_outside(laid);
  const Box& table = laid.layout.nodes[kTable];
  ASSERT_EQ(laid.layout.over_rim.size(), 1U);
  const std::vector<Point>& pipe = laid.layout.over_rim.begin()->second;
  EXPECT_GT(pipe.front().x, table.right());
  for (std::size_t i = 0; i + 1 < pipe.size(); ++i) EXPECT_LT(pipe[i].y, table.corner.y);
  EXPECT_LT(pipe.back().x, table.right());
  EXPECT_GT(pipe.back().y, table.corner.y);
  EXPECT_LT(pipe.back().y, table.bottom());
  EXPECT_LE(laid.layout.all.corner.y, pipe.front().y - 5.0F);
}

TEST(TableSide, AnInletInTheFloorIsReachedStraight) {
  const Laid laid(kInFloor);
  EXPECT_FALSE(leads_outside({laid.plan, laid.sketch, {}, {}, {}, {}, {}}, laid.sketch.links[laid.link].connection));
}

}  // namespace
}  // namespace riserun::gui
