// The elevation: runs stand on the ports that they leave, all to one scale, words cover neither words nor vessels,
// pipes end at pins; on the examples and on jobs of many runs.
#include "gui/model/canvas/draft.h"
#include "gui/model/canvas/lay_out.h"
#include "gui/model/canvas/leader.h"
#include "gui/model/canvas/pipe_way.h"
#include "plan/job/read_job.h"
#include "window/model/bench.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <time.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

namespace riserun::gui {
namespace {

plan::Plan plan_of(const std::string& text) {
  return plan::make_plan(testing::shipped_catalog(), plan::read_job(*testing::shipped_catalog(), text, "job.yaml"));
}

struct Drawn {
  explicit Drawn(const std::string& text) : plan(plan_of(text)), sketch(sketch_of(plan)), pictures(run_pictures(plan)) {
    for (const Node& node : sketch.nodes) {
      words.beside.push_back(node.part ? Size{140.0F, 45.0F} : Size{});
      words.brief.push_back(node.part ? Size{140.0F, 30.0F} : Size{});
      words.listed.push_back(node.part ? Size{170.0F, 30.0F} : Size{});
    }
    words.titles.assign(plan.connections.size(), Size{140.0F, 30.0F});
    layout = with({});
  }
  Layout with(const std::map<std::string, Point>& moved, std::optional<double> scale = {}) const {
    return within({1500.0F, 800.0F}, moved, scale);
  }
  Layout within(const Size& room, const std::map<std::string, Point>& moved = {},
                std::optional<double> scale = {}) const {
    return lay_out({plan, sketch, pictures, words, room, moved, scale});
  }

  plan::Plan plan;
  Sketch sketch;
  std::vector<report::RunPicture> pictures;
  WordSizes words;
  Layout layout;
};

/// Air runs from so many outlets to as many bungs.
std::string job_of_many(int count) {
  std::string bungs;
  std::string outlets;
  std::string runs;
  for (int i = 0; i < count; ++i) {
    bungs +=
        fmt::format("    bung {}: {{port: 1/2 FNPT, bung: half coupling, where: lid, material: forged steel}}\n", i);
    outlets += fmt::format("    outlet {}: 1/4 FNPT\n", i);
    runs += fmt::format("  - {{name: air {0}, from: outlet {0}, to: bung {0}, carries: air}}\n", i);
  }
  std::string text = testing::example("bevel-bench");
  text = testing::with(text, "    air bung:", bungs + "    air bung:");
  text = testing::with(text, "    shop air:", outlets + "    shop air:");
  return testing::with(text, "connections:\n", "connections:\n" + runs);
}

void expect_clear(const Drawn& drawn, const std::string& where) {
  const Layout& layout = drawn.layout;
  std::vector<std::pair<std::string, Box>> words;
  for (std::size_t i = 0; i < layout.words.size(); ++i)
    if (layout.words[i].size.width > 0.0F) words.emplace_back(drawn.sketch.nodes[i].key, layout.words[i]);
  for (const RunBlock& run : layout.runs)
    words.emplace_back("title of " + drawn.plan.connections[run.connection].name, run.title);
  for (std::size_t a = 0; a < words.size(); ++a) {
    for (std::size_t b = a + 1; b < words.size(); ++b)
      EXPECT_FALSE(overlap(words[a].second, words[b].second))
          << where << ": " << words[a].first << ", " << words[b].first;
    for (std::size_t vessel = 0; vessel < kVessels; ++vessel)
      EXPECT_FALSE(overlap(words[a].second, layout.nodes[vessel]))
          << where << ": " << words[a].first << " in " << vessel;
    EXPECT_TRUE(overlap(words[a].second, layout.all)) << where;
  }
  for (std::size_t i = 0; i < layout.ways.size(); ++i)
    for (std::size_t k = 1; k < layout.ways[i].size(); ++k)
      for (const auto& [name, box] : words) {
        const Point& a = layout.ways[i][k - 1];
        const Point& b = layout.ways[i][k];
        const Box pipe = between(std::min(a.x, b.x) - 3.0F, std::min(a.y, b.y) - 3.0F, std::max(a.x, b.x) + 3.0F,
                                 std::max(a.y, b.y) + 3.0F);
        EXPECT_FALSE(overlap(pipe, box)) << where << ": a pipe over the words of " << name;
      }
}

class Elevation : public ::testing::TestWithParam<const char*> {};

TEST_P(Elevation, WordsCoverNothing) { expect_clear(Drawn(testing::example(GetParam())), GetParam()); }

// In the middle of what is seen of the part, not where the next one begins, nor in the air beside it.
TEST_P(Elevation, TheLineToAPartsWordsBeginsOnThePart) {
  const Drawn drawn(testing::example(GetParam()));
  int hidden = 0;
  for (const RunBlock& run : drawn.layout.runs)
    for (const PlacedNode& node : run.nodes) {
      if (!drawn.sketch.nodes[node.node].part || node.words.size.width <= 0.0F) continue;
      const Point foot = leader_foot(run, node);
      const Box at{{foot.x - 0.05F, foot.y - 0.05F}, {0.1F, 0.1F}};
      EXPECT_TRUE(overlap(at, node.box)) << drawn.sketch.nodes[node.node].key;
      const bool covered = std::any_of(run.nodes.begin(), run.nodes.end(), [&](const PlacedNode& other) {
        return other.node != node.node && drawn.sketch.nodes[other.node].part && overlap(at, other.box);
      });
      hidden += covered ? 1 : 0;
      const Point out = leaves_box(node.box, foot, {foot.x + 500.0F, foot.y});
      EXPECT_NEAR(out.x, node.box.right(), 0.01F);
    }
  EXPECT_LE(hidden, 1);  // a bushing in a port of the same breadth
}

// Where two would, their words change places.
TEST_P(Elevation, LinesToTheWordsOfAColumnDoNotCross) {
  const Drawn drawn(testing::example(GetParam()));
  const auto line_of = [](const RunBlock& run, const PlacedNode& node) {
    return std::pair(leader_foot(run, node),
                     Point{node.words_left ? node.words.right() : node.words.corner.x, node.words.corner.y + 6.5F});
  };
  for (const RunBlock& run : drawn.layout.runs) {
    if (run.heading == Heading::right) continue;
    for (const PlacedNode& one : run.nodes)
      for (const PlacedNode& other : run.nodes) {
        if (one.node >= other.node || one.words_left != other.words_left) continue;
        if (one.words.size.width <= 0.0F || other.words.size.width <= 0.0F) continue;
        const auto [a, b] = line_of(run, one);
        const auto [c, d] = line_of(run, other);
        EXPECT_FALSE(cross(a, b, c, d)) << drawn.sketch.nodes[one.node].key << ", "
                                        << drawn.sketch.nodes[other.node].key;
      }
  }
}

TEST_P(Elevation, RunsStandWhereTheirPortsAreAndPipesEndAtPins) {
  const Drawn drawn(testing::example(GetParam()));
  const Layout& layout = drawn.layout;
  const Box& tank = layout.nodes[kReservoir];
  const Box& table = layout.nodes[kTable];
  EXPECT_LT(table.bottom(), tank.corner.y);
  EXPECT_NEAR(table.size.width / tank.size.width,
              in_metres(drawn.plan.transfer.system.table.length) / in_metres(drawn.plan.job.reservoir.length), 1e-3);
  for (std::size_t i = 0; i < drawn.sketch.links.size(); ++i) {
    const Link& link = drawn.sketch.links[i];
    const auto& way = layout.ways[i];
    if (link.a.node < kVessels) {
      EXPECT_EQ(way.front(), layout.pins[link.a.node][link.a.pin].where);
    }
    if (link.b.node < kVessels) {
      EXPECT_EQ(way.back(), layout.pins[link.b.node][link.b.pin].where);
    }
    for (std::size_t k = 1; k < way.size(); ++k)
      EXPECT_TRUE(std::abs(way[k].x - way[k - 1].x) < 0.01F || std::abs(way[k].y - way[k - 1].y) < 0.01F);
    if (link.a.node >= kVessels || link.b.node < kVessels || connection_at(drawn.plan, link.connection)->branched)
      continue;
    const Box& part = layout.nodes[link.b.node];
    const plan::JobPort* port = plan::find_port(drawn.plan.job, drawn.sketch.nodes[link.a.node].pins[link.a.pin].port);
    if (link.a.node == kAirSupply) {
      // Regulator and check valve stand on the tank; the shop's line alone leads to the supply.
      EXPECT_LT(part.bottom(), tank.corner.y);
      EXPECT_GT(part.corner.x, tank.corner.x);
      const RunBlock& run = layout.runs[link.connection];
      EXPECT_NEAR(run.faces[0].where.y, tank.corner.y - 9.0F, 0.1F);
      for (const PlacedNode& node : run.nodes) EXPECT_GE(node.box.corner.y, run.base.where.y - 30.0F);
    } else if (port->place == plan::Place::side) {
      EXPECT_GT(part.middle().x, tank.right());
      // As high as the job says; a drain of which it does not say so is low.
      const plan::JobReservoir& box = drawn.plan.job.reservoir;
      const double share = port->face_height ? in_metres(*port->face_height) / in_metres(box.height) : 0.12;
      EXPECT_NEAR(layout.pins[link.a.node][link.a.pin].where.y, tank.bottom() - share * tank.size.height, 11.0)
          << port->name;
      // Under a low one is the floor: its words stand over it.
      if (share < 0.5) {
        EXPECT_LT(layout.words[link.b.node].bottom(), part.corner.y) << port->name;
      }
    } else {
      EXPECT_LT(part.middle().y, tank.corner.y);
      EXPECT_NEAR(part.middle().x, layout.pins[link.a.node][link.a.pin].where.x, 0.5F * part.size.width + 1.0F);
    }
  }
}

TEST_P(Elevation, AllPartsAreToOneScale) {
  const Drawn drawn(testing::example(GetParam()));
  for (const RunBlock& run : drawn.layout.runs) {
    for (const PlacedNode& node : run.nodes) {
      const Node& what = drawn.sketch.nodes[node.node];
      if (what.kind != NodeKind::part || node.broken || drawn.plan.connections[run.connection].run() == nullptr)
        continue;
      const report::RunItem& item = drawn.pictures[run.connection].items[what.place];
      const bool level = run.heading == Heading::right;
      const double along = level ? node.box.size.width : node.box.size.height;
      EXPECT_NEAR(along, drawn.layout.scale * (item.high.x - item.low.x), 0.05) << what.key;
    }
  }
}

TEST_P(Elevation, PartsOfARunMeet) {
  const Drawn drawn(testing::example(GetParam()));
  for (const Link& link : drawn.sketch.links) {
    if (link.a.node < kVessels || link.b.node < kVessels || link.joint == kNoRow) continue;
    const Point a = drawn.layout.pins[link.a.node][link.a.pin].where;
    const Point b = drawn.layout.pins[link.b.node][link.b.pin].where;
    const double make_up = in_metres(drawn.plan.connections[link.connection].run()->joints[link.joint].make_up);
    EXPECT_NEAR(std::hypot(a.x - b.x, a.y - b.y), make_up * drawn.layout.scale, 0.1);
  }
}

TEST_P(Elevation, ARunThatIsMovedMovesAsOneAndNothingElse) {
  const Drawn drawn(testing::example(GetParam()));
  if (drawn.plan.connections.empty()) return;
  const std::string run = "run " + drawn.plan.connections.front().name;
  const Layout moved = drawn.with({{run, {31.0F, -12.0F}}}, drawn.layout.scale);
  for (std::size_t node = kVessels; node < drawn.sketch.nodes.size(); ++node) {
    const bool own = moved_as(drawn.plan, drawn.sketch.nodes[node]) == run;
    EXPECT_NEAR(moved.nodes[node].corner.x - drawn.layout.nodes[node].corner.x, own ? 31.0F : 0.0F, 0.01F);
    EXPECT_NEAR(moved.nodes[node].corner.y - drawn.layout.nodes[node].corner.y, own ? -12.0F : 0.0F, 0.01F);
  }
}

TEST_P(Elevation, HoldsEveryPartAndEveryJoint) {
  const Drawn drawn(testing::example(GetParam()));
  const Sketch& sketch = drawn.sketch;
  std::set<std::string> keys;
  for (const Node& node : sketch.nodes) EXPECT_TRUE(keys.insert(node.key).second) << node.key;
  std::size_t parts = 0;
  std::size_t joints = 0;
  for (const plan::ConnectionPlan& connection : drawn.plan.connections) {
    if (connection.run() == nullptr) continue;
    parts += connection.run()->parts.size();
    for (const chain::RunEnd& end : connection.run()->ends) parts += end.device ? 1 : 0;
    joints += connection.run()->joints.size();
  }
  const auto is_part = [](const Node& node) { return node.part.has_value(); };
  const auto is_joint = [](const Link& link) { return link.joint != kNoRow; };
  EXPECT_EQ(static_cast<std::size_t>(std::count_if(sketch.nodes.begin(), sketch.nodes.end(), is_part)), parts);
  EXPECT_EQ(static_cast<std::size_t>(std::count_if(sketch.links.begin(), sketch.links.end(), is_joint)), joints);
  for (std::size_t node = 0; node < sketch.nodes.size(); ++node) {
    if (!sketch.nodes[node].part) continue;
    EXPECT_GT(drawn.layout.nodes[node].size.width, 2.0F) << sketch.nodes[node].key;
    EXPECT_GT(drawn.layout.words[node].size.width, 2.0F) << sketch.nodes[node].key;
  }
  for (const Link& link : sketch.links) {
    if (link.joint == kNoRow) continue;
    const Pin& a = sketch.nodes[link.a.node].pins[link.a.pin];
    const Pin& b = sketch.nodes[link.b.node].pins[link.b.pin];
    ASSERT_NE(drawn.plan.catalog->mating_rule(a.type, b.type), nullptr);
    EXPECT_EQ(drawn.plan.catalog->mating_rule(a.type, b.type)->seal, link.seal);
  }
}

// Of all scales the largest at which letters shrink no more than a twentieth beyond what they must.
TEST_P(Elevation, PartsAreAsLargeAsLettersLetThem) {
  const Drawn drawn(testing::example(GetParam()));
  for (const Size room : {Size{1140.0F, 670.0F}, Size{1300.0F, 600.0F}, Size{1000.0F, 700.0F}, Size{1600.0F, 640.0F}}) {
    const auto zoom = [&](const Layout& layout) {
      return std::min({1.0F, room.width / layout.all.size.width, room.height / layout.all.size.height});
    };
    const Layout chosen = drawn.within(room);
    if (chosen.brief) continue;
    float most = zoom(chosen);
    for (const double scale : {1300.0, 1100.0, 900.0, 750.0, 600.0, 480.0})
      most = std::max(most, zoom(drawn.within(room, {}, scale)));
    EXPECT_GE(zoom(chosen), 0.949F * most);
    for (const double scale : {1300.0, 1100.0, 900.0, 750.0, 600.0, 480.0})
      if (scale > chosen.scale) {
        EXPECT_LT(zoom(drawn.within(room, {}, scale)), 0.951F * most) << scale << " in " << room.width;
      }
  }
}

INSTANTIATE_TEST_SUITE_P(Examples, Elevation,
                         ::testing::Values("bevel-bench", "air-too-weak", "one-part-short", "walls-too-thin",
                                           "one-air-bung"));

TEST(Elevation, AHoseMakesAllOfTheWayToTheTable) {
  const Drawn drawn(testing::example("bevel-bench"));
  const RunBlock& water = drawn.layout.runs[0];
  EXPECT_NEAR(water.faces[0].where.y, drawn.layout.nodes[kTable].bottom(), 12.0F);
  EXPECT_NEAR(water.base.where.y, drawn.layout.nodes[kReservoir].corner.y, 12.0F);
}

TEST(Rows, OfManyRunsAreWrappedAndCoverNothing) {
  const Drawn drawn(job_of_many(54));
  ASSERT_EQ(drawn.layout.runs.size(), 60U);
  EXPECT_TRUE(drawn.layout.in_rows);
  expect_clear(drawn, "sixty");
  std::set<float> lefts;
  for (const RunBlock& run : drawn.layout.runs) {
    lefts.insert(std::round(run.all.corner.x));
    for (const RunBlock& other : drawn.layout.runs) EXPECT_TRUE(&run == &other || !overlap(run.all, other.all));
  }
  EXPECT_GT(lefts.size(), 2U);
  EXPECT_LT(lefts.size(), 20U);
}

TEST(Rows, ThatMuchIsQuick) {
  const Drawn drawn(job_of_many(54));
  timespec before{};
  timespec after{};
  ::clock_gettime(CLOCK_THREAD_CPUTIME_ID, &before);
  const Layout layout = drawn.with({});
  ::clock_gettime(CLOCK_THREAD_CPUTIME_ID, &after);
  const double milliseconds = static_cast<double>(after.tv_sec - before.tv_sec) * 1e3 +
                              static_cast<double>(after.tv_nsec - before.tv_nsec) * 1e-6;
  std::cout << "layout of 60 runs: " << milliseconds << " ms\n";
  EXPECT_LT(milliseconds, 300.0);  // with sanitizers and without optimisation
}

TEST(Sketch, APieceCountsWhatItIsSoldIn) {
  const Drawn drawn(testing::example("bevel-bench"));
  const auto hose = std::find_if(drawn.sketch.nodes.begin(), drawn.sketch.nodes.end(),
                                 [](const Node& node) { return node.cut_length.has_value(); });
  ASSERT_NE(hose, drawn.sketch.nodes.end());
  EXPECT_GT(*hose->cut_length, quantity::feet(1.0));  // sold by the foot
  EXPECT_EQ(hose->pieces, 2);
}

TEST(Manifold, StandsOnItsBungAndIsFedFromTheSupply) {
  const Drawn drawn(testing::example("one-air-bung"));
  const std::size_t row = drawn.plan.connections.size() - 1;
  ASSERT_NE(drawn.plan.connections.back().assembly(), nullptr);
  EXPECT_EQ(name_of_connection(drawn.plan, row), "air manifold");
  std::size_t devices = 0;
  for (std::size_t node = 0; node < drawn.sketch.nodes.size(); ++node) {
    if (drawn.sketch.nodes[node].connection != row) continue;
    devices += drawn.sketch.nodes[node].kind == NodeKind::device ? 1 : 0;
    EXPECT_LT(drawn.layout.nodes[node].middle().y, drawn.layout.nodes[kReservoir].corner.y);
  }
  EXPECT_EQ(devices, 3U);
  std::size_t feeding = 0;
  for (std::size_t i = 0; i < drawn.sketch.links.size(); ++i) {
    const Link& link = drawn.sketch.links[i];
    if (link.connection != row || !link.towards_a) continue;
    ++feeding;
    if (drawn.sketch.nodes[link.b.node].kind == NodeKind::air_supply) {
      EXPECT_FALSE(drawn.layout.ways[i].empty());
    }
  }
  EXPECT_GE(feeding, 4U);  // regulator, restrictor and check valve stand in it
  EXPECT_LT(feeding, drawn.plan.connections.back().assembly()->joints.size());
}

// Of five branches the way to the supply leaves at the far side: the manifold is drawn the other way round, or its pipe
// would lead through the tank.
TEST(Manifold, OfManyBranchesIsFedWithoutAPipeThroughTheTankOrOverWords) {
  const std::string exhaust = "      - name: exhaust\n";
  const Drawn drawn(testing::with(testing::example("one-air-bung"), exhaust,
                                  "      - {name: test gauge, ends in: 15 psi gauge, special order: yes}\n" + exhaust));
  ASSERT_NE(drawn.plan.connections.back().assembly(), nullptr);
  expect_clear(drawn, "five branches");
  Box tank = drawn.layout.nodes[kReservoir];
  tank = between(tank.corner.x + 1.0F, tank.corner.y + 1.0F, tank.right() - 1.0F, tank.bottom() - 1.0F);
  std::size_t fed = 0;
  for (std::size_t i = 0; i < drawn.sketch.links.size(); ++i) {
    const std::vector<Point>& way = drawn.layout.ways[i];
    for (std::size_t k = 1; k < way.size(); ++k)
      EXPECT_FALSE(overlap(around(Box{way[k - 1], {}}, Box{way[k], {}}), tank)) << "pipe of link " << i;
    fed += !way.empty() && drawn.sketch.links[i].b.node == kAirSupply ? 1 : 0;
  }
  EXPECT_EQ(fed, 1U);
}

TEST(Manifold, ThatCannotBePutTogetherStandsAsOneThing) {
  const Drawn drawn(testing::with(testing::example("one-air-bung"), "    carries: air\n",
                                  "    carries: air\n    rating: 2900 psi\n"));
  ASSERT_EQ(drawn.plan.connections.back().assembly(), nullptr);
  const auto open = [](const Node& node) { return node.kind == NodeKind::open_end; };
  ASSERT_EQ(std::count_if(drawn.sketch.nodes.begin(), drawn.sketch.nodes.end(), open), 1);
  const auto node = std::find_if(drawn.sketch.nodes.begin(), drawn.sketch.nodes.end(), open);
  EXPECT_GT(drawn.layout.nodes[static_cast<std::size_t>(node - drawn.sketch.nodes.begin())].size.width, 50.0F);
}

TEST(PipeWay, HasSquareCornersAndEndsAtItsPins) {
  std::mt19937 random(3);
  std::uniform_real_distribution<float> anywhere(-500.0F, 500.0F);
  const Point directions[] = {{1.0F, 0.0F}, {-1.0F, 0.0F}, {0.0F, 1.0F}, {0.0F, -1.0F}};
  for (int round = 0; round < 400; ++round) {
    const PlacedPin a{{anywhere(random), anywhere(random)}, directions[round % 4]};
    const PlacedPin b{{anywhere(random), anywhere(random)}, directions[(round / 4) % 4]};
    const auto way = pipe_way(a, b, round % 3);
    ASSERT_GE(way.size(), 2U);
    EXPECT_EQ(way.front(), a.where);
    EXPECT_EQ(way.back(), b.where);
    for (std::size_t i = 1; i < way.size(); ++i)
      EXPECT_TRUE(std::abs(way[i].x - way[i - 1].x) < 1e-3F || std::abs(way[i].y - way[i - 1].y) < 1e-3F);
    const Point& next = way[1];
    EXPECT_GE((next.x - a.where.x) * a.direction.x + (next.y - a.where.y) * a.direction.y, -1e-3F);
  }
}

}  // namespace
}  // namespace riserun::gui
