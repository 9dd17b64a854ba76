// Nothing overlaps, flow reads left to right, links end at pins: on random jobs of up to 500 parts, with nodes that the
// user has moved, and on the examples.
#include "gui/model/canvas/layout.h"

#include "gui/model/canvas/draft.h"
#include "gui/model/canvas/sketch.h"
#include "plan/job/read_job.h"
#include "window/model/bench.h"

#include <gtest/gtest.h>
#include <time.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

namespace riserun::gui {
namespace {

struct Scene {
  Sketch sketch;
  std::vector<Size> sizes;
  std::map<std::string, Point> moved;
};

class SceneMaker {
 public:
  explicit SceneMaker(unsigned seed) : random_(seed) {}

  std::size_t pick(std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random_); }
  float between(float low, float high) { return std::uniform_real_distribution<float>(low, high)(random_); }

  Scene make(std::size_t parts) {
    Scene scene;
    for (const NodeKind kind : {NodeKind::reservoir, NodeKind::table, NodeKind::air_supply}) {
      Node node;
      node.kind = kind;
      node.key = "vessel " + std::to_string(scene.sketch.nodes.size());
      scene.sketch.nodes.push_back(node);
    }
    std::size_t connection = 0;
    while (scene.sketch.nodes.size() < parts) {
      if (pick(4) == 0)
        add_tree(scene.sketch, connection++);
      else
        add_run(scene.sketch, connection++);
    }
    for (std::size_t vessel = 0; vessel < 3; ++vessel)
      for (std::size_t i = pick(4); i > 0; --i) scene.sketch.nodes[vessel].pins.push_back({"spare", {}, 0, true, {}});
    for (std::size_t node = 0; node < scene.sketch.nodes.size(); ++node)
      scene.sizes.push_back({between(60.0F, 220.0F), between(30.0F, 140.0F)});
    return scene;
  }

  /// Moves some nodes anywhere, often onto others.
  void move_some(Scene& scene, const Layout& layout) {
    for (std::size_t i = 1 + pick(12); i > 0; --i) {
      const std::size_t node = pick(scene.sketch.nodes.size());
      const Box& onto = layout.nodes[pick(layout.nodes.size())];
      scene.moved[scene.sketch.nodes[node].key] = {onto.corner.x + between(-90.0F, 90.0F),
                                                   onto.corner.y + between(-90.0F, 90.0F)};
    }
  }

 private:
  PinAt vessel_pin(Sketch& sketch, std::size_t vessel) {
    sketch.nodes[vessel].pins.push_back({"port", {}, 0, false, {}});
    return {vessel, sketch.nodes[vessel].pins.size() - 1};
  }

  /// A run with several far ends, which are vessels' ports or devices.
  void add_tree(Sketch& sketch, std::size_t connection) {
    std::vector<PinAt> open = {vessel_pin(sketch, pick(3))};
    const auto link = [&](PinAt a, PinAt b) {
      Link one;
      one.a = a;
      one.b = b;
      one.connection = connection;
      sketch.links.push_back(one);
    };
    for (std::size_t i = 2 + pick(20); i > 0 && !open.empty(); --i) {
      const std::size_t at = pick(open.size());
      const PinAt from = open[at];
      open.erase(open.begin() + static_cast<std::ptrdiff_t>(at));
      Node node;
      node.key = "part " + std::to_string(sketch.nodes.size());
      node.connection = connection;
      node.pins.resize(1 + pick(4));
      sketch.nodes.push_back(node);
      link(from, {sketch.nodes.size() - 1, 0});
      for (std::size_t pin = 1; pin < node.pins.size(); ++pin) open.push_back({sketch.nodes.size() - 1, pin});
    }
    for (const PinAt& end : open)
      if (pick(3) == 0) link(end, vessel_pin(sketch, pick(3)));
  }

  void add_run(Sketch& sketch, std::size_t connection) {
    PinAt end = vessel_pin(sketch, pick(3));
    const std::size_t count = pick(12);
    const auto link = [&](PinAt to) {
      Link one;
      one.a = end;
      one.b = to;
      one.connection = connection;
      sketch.links.push_back(one);
    };
    for (std::size_t i = 0; i < count; ++i) {
      Node node;
      node.key = "part " + std::to_string(sketch.nodes.size());
      node.connection = connection;
      node.place = i;
      node.pins.resize(2 + (pick(5) == 0 ? 1 + pick(2) : 0));
      sketch.nodes.push_back(node);
      link({sketch.nodes.size() - 1, 0});
      end = {sketch.nodes.size() - 1, 1};
    }
    if (count == 0 || pick(2) == 0) link(vessel_pin(sketch, pick(3)));
  }

  std::mt19937 random_;
};

bool is_vessel(const Sketch& sketch, std::size_t node) {
  const NodeKind kind = sketch.nodes[node].kind;
  return kind == NodeKind::reservoir || kind == NodeKind::table || kind == NodeKind::air_supply;
}

/// Pairs that overlap though the user has not put them so.
int overlaps(const Scene& scene, const Layout& layout) {
  int count = 0;
  const auto is_moved = [&](std::size_t node) { return scene.moved.contains(scene.sketch.nodes[node].key); };
  for (std::size_t a = 0; a < layout.nodes.size(); ++a) {
    for (std::size_t b = a + 1; b < layout.nodes.size(); ++b) {
      const bool own_doing = (is_moved(a) || is_vessel(scene.sketch, a)) &&
                             (is_moved(b) || is_vessel(scene.sketch, b)) && (is_moved(a) || is_moved(b));
      if (!own_doing && overlap(layout.nodes[a], layout.nodes[b])) ++count;
    }
  }
  return count;
}

bool on_edge(const Box& box, Point p) {
  const auto near = [](float a, float b) { return std::abs(a - b) < 0.01F; };
  const bool beside = near(p.x, box.corner.x) || near(p.x, box.right());
  const bool above = near(p.y, box.corner.y) || near(p.y, box.bottom());
  const bool within_x = p.x >= box.corner.x - 0.01F && p.x <= box.right() + 0.01F;
  const bool within_y = p.y >= box.corner.y - 0.01F && p.y <= box.bottom() + 0.01F;
  return (beside && within_y) || (above && within_x);
}

TEST(Layout, NothingOverlapsInRandomJobs) {
  for (unsigned seed = 0; seed < 150; ++seed) {
    SceneMaker maker(seed);
    const Scene scene = maker.make(3 + maker.pick(seed % 10 == 0 ? 500 : 60));
    const Layout layout = lay_out(scene.sketch, scene.sizes, scene.moved);
    ASSERT_EQ(overlaps(scene, layout), 0) << "seed " << seed;
  }
}

TEST(Layout, OthersGiveWayToWhatTheUserHasMoved) {
  for (unsigned seed = 0; seed < 150; ++seed) {
    SceneMaker maker(seed);
    Scene scene = maker.make(3 + maker.pick(seed % 10 == 0 ? 500 : 60));
    maker.move_some(scene, lay_out(scene.sketch, scene.sizes, {}));
    const Layout layout = lay_out(scene.sketch, scene.sizes, scene.moved);
    ASSERT_EQ(overlaps(scene, layout), 0) << "seed " << seed;
    for (std::size_t node = 0; node < layout.nodes.size(); ++node) {
      const auto place = scene.moved.find(scene.sketch.nodes[node].key);
      if (place == scene.moved.end()) continue;
      ASSERT_EQ(layout.nodes[node].corner, place->second);
    }
  }
}

TEST(Layout, EveryPinIsOnTheEdgeOfItsNode) {
  for (unsigned seed = 0; seed < 60; ++seed) {
    SceneMaker maker(seed);
    Scene scene = maker.make(60);
    maker.move_some(scene, lay_out(scene.sketch, scene.sizes, {}));
    const Layout layout = lay_out(scene.sketch, scene.sizes, scene.moved);
    for (std::size_t node = 0; node < layout.nodes.size(); ++node)
      for (const PlacedPin& pin : layout.pins[node]) ASSERT_TRUE(on_edge(layout.nodes[node], pin.where)) << seed;
    for (const Box& box : layout.nodes) {
      ASSERT_GE(box.corner.x, layout.all.corner.x);
      ASSERT_LE(box.right(), layout.all.right() + 0.01F);
      ASSERT_LE(box.bottom(), layout.all.bottom() + 0.01F);
    }
  }
}

TEST(Layout, TheSameInputGivesTheSameLayout) {
  SceneMaker maker(7);
  Scene scene = maker.make(200);
  maker.move_some(scene, lay_out(scene.sketch, scene.sizes, {}));
  const Layout one = lay_out(scene.sketch, scene.sizes, scene.moved);
  const Layout two = lay_out(scene.sketch, scene.sizes, scene.moved);
  for (std::size_t node = 0; node < one.nodes.size(); ++node) EXPECT_EQ(one.nodes[node].corner, two.nodes[node].corner);
}

/// Processor time of this thread: a busy machine does not count.
double milliseconds_used() {
  timespec now{};
  ::clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) * 1e-6;
}

TEST(Layout, OfFiveHundredPartsIsQuick) {
  SceneMaker maker(3);
  Scene scene = maker.make(500);
  maker.move_some(scene, lay_out(scene.sketch, scene.sizes, {}));
  double best = 1e9;
  for (int i = 0; i < 20; ++i) {
    const double begin = milliseconds_used();
    const Layout layout = lay_out(scene.sketch, scene.sizes, scene.moved);
    best = std::min(best, milliseconds_used() - begin);
    ASSERT_FALSE(layout.nodes.empty());
  }
  std::cout << "layout of 500 parts: " << best << " ms\n";
  EXPECT_LT(best, 30.0);  // with sanitizers and without optimisation; a plain build takes well under 1 ms
}

class ExampleSketch : public ::testing::TestWithParam<const char*> {};

TEST_P(ExampleSketch, HoldsEveryPartAndEveryJointAndReadsLeftToRight) {
  const plan::Plan plan =
      plan::make_plan(testing::shipped_catalog(),
                      plan::read_job(*testing::shipped_catalog(), testing::example(GetParam()), "job.yaml"));
  Scene scene{sketch_of(plan), {}, {}};
  const Sketch& sketch = scene.sketch;
  scene.sizes.assign(sketch.nodes.size(), Size{120.0F, 70.0F});
  const Layout layout = lay_out(sketch, scene.sizes, {});
  EXPECT_EQ(overlaps(scene, layout), 0);
  std::set<std::string> keys;
  for (const Node& node : sketch.nodes) EXPECT_TRUE(keys.insert(node.key).second) << node.key;
  std::size_t parts = 0;
  std::size_t joints = 0;
  for (std::size_t row = 0; row < plan.connections.size(); ++row) {
    const plan::ConnectionPlan& run = plan.connections[row];
    if (run.run() == nullptr) continue;
    parts += run.run()->parts.size();
    for (const chain::RunEnd& end : run.run()->ends) parts += end.device ? 1 : 0;
    joints += run.run()->joints.size();
  }
  std::size_t shown = 0;
  for (const Node& node : sketch.nodes) shown += node.part ? 1 : 0;
  EXPECT_EQ(shown, parts);
  std::size_t made = 0;
  for (const Link& link : sketch.links) made += link.joint != kNoRow ? 1 : 0;
  EXPECT_EQ(made, joints);
  for (const Link& link : sketch.links) {
    const bool parts_only = sketch.nodes[link.a.node].part && sketch.nodes[link.b.node].part;
    if (parts_only && !connection_at(plan, link.connection)->branched) {
      EXPECT_LT(layout.nodes[link.a.node].right(), layout.nodes[link.b.node].corner.x);
    }
    if (link.joint == kNoRow) continue;
    const Pin& a = sketch.nodes[link.a.node].pins[link.a.pin];
    const Pin& b = sketch.nodes[link.b.node].pins[link.b.pin];
    EXPECT_NE(plan.catalog->mating_rule(a.type, b.type), nullptr)
        << plan.catalog->written(a.type) << " to " << plan.catalog->written(b.type);
    EXPECT_EQ(plan.catalog->mating_rule(a.type, b.type)->seal, link.seal);
  }
  EXPECT_LT(layout.nodes[0].right(), layout.nodes[1].corner.x);  // the reservoir left of the table
}

TEST(Sketch, APieceCountsWhatItIsSoldIn) {
  const plan::Plan plan =
      plan::make_plan(testing::shipped_catalog(),
                      plan::read_job(*testing::shipped_catalog(), testing::example("bevel-bench"), "job.yaml"));
  const Sketch sketch = sketch_of(plan);
  const auto hose = std::find_if(sketch.nodes.begin(), sketch.nodes.end(),
                                 [](const Node& node) { return node.cut_length.has_value(); });
  ASSERT_NE(hose, sketch.nodes.end());
  EXPECT_GT(*hose->cut_length, quantity::feet(1.0));  // sold by the foot
  EXPECT_EQ(hose->pieces, 2);
}

INSTANTIATE_TEST_SUITE_P(Examples, ExampleSketch,
                         ::testing::Values("bevel-bench", "air-too-weak", "one-part-short", "walls-too-thin",
                                           "one-air-bung"));

TEST(Manifold, GrowsFromItsBaseAndEveryBranchHasARowOfItsOwn) {
  const plan::Plan plan =
      plan::make_plan(testing::shipped_catalog(),
                      plan::read_job(*testing::shipped_catalog(), testing::example("one-air-bung"), "job.yaml"));
  ASSERT_NE(plan.connections.back().assembly(), nullptr);
  const std::size_t row = plan.connections.size() - 1;
  EXPECT_EQ(name_of_connection(plan, row), "air manifold");
  EXPECT_FALSE(connection_at(plan, 0)->branched);
  const Sketch sketch = sketch_of(plan);
  const Layout layout = lay_out(sketch, std::vector<Size>(sketch.nodes.size(), {120.0F, 70.0F}), {});
  std::size_t devices = 0;
  std::set<float> heights;
  for (std::size_t node = 0; node < sketch.nodes.size(); ++node) {
    if (sketch.nodes[node].connection != row || sketch.nodes[node].kind != NodeKind::device) continue;
    ++devices;
    EXPECT_TRUE(heights.insert(layout.nodes[node].corner.y).second) << sketch.nodes[node].key;
  }
  EXPECT_EQ(devices, 3U);
  std::size_t feeding = 0;
  bool reaches_supply = false;
  for (const Link& link : sketch.links) {
    if (link.connection != row) continue;
    feeding += link.towards_a ? 1 : 0;
    reaches_supply |= sketch.nodes[link.b.node].kind == NodeKind::air_supply && link.towards_a;
    // It grows from the reservoir towards the air supply, to the left.
    if (sketch.nodes[link.a.node].part && sketch.nodes[link.b.node].part) {
      EXPECT_LT(layout.nodes[link.b.node].right(), layout.nodes[link.a.node].corner.x);
    }
  }
  EXPECT_TRUE(reaches_supply);
  EXPECT_GE(feeding, 4U);  // regulator, restrictor and check valve stand in it
  EXPECT_LT(feeding, plan.connections.back().assembly()->joints.size());
}

TEST(Manifold, ThatCannotBePutTogetherStandsAsOneThing) {
  const std::string text =
      testing::with(testing::example("one-air-bung"), "    carries: air\n", "    carries: air\n    rating: 2900 psi\n");
  const plan::Plan plan =
      plan::make_plan(testing::shipped_catalog(), plan::read_job(*testing::shipped_catalog(), text, "job.yaml"));
  ASSERT_EQ(plan.connections.back().assembly(), nullptr);
  const Sketch sketch = sketch_of(plan);
  EXPECT_EQ(std::count_if(sketch.nodes.begin(), sketch.nodes.end(),
                          [](const Node& node) { return node.kind == NodeKind::open_end; }),
            1);
}

}  // namespace
}  // namespace riserun::gui
