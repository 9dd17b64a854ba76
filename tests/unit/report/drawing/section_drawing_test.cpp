// The section against the plan that it draws.
#include "report/drawing/section_drawing.h"

#include "unit/plan/shipped.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

namespace riserun::report {
namespace {

double top_of(const Drawing& drawing, const std::string& name) {
  const Area* area = find_shape<Area>(drawing, name);
  if (area == nullptr) return -1.0;
  double top = area->outline.front().y;
  for (const Spot& spot : area->outline) top = std::max(top, spot.y);
  return top;
}

double bottom_of(const Drawing& drawing, const std::string& name) {
  const Area* area = find_shape<Area>(drawing, name);
  if (area == nullptr) return -1.0;
  double bottom = area->outline.front().y;
  for (const Spot& spot : area->outline) bottom = std::min(bottom, spot.y);
  return bottom;
}

TEST(Section, DrawsTheWaterAsDeepAsThePlanSaysAtEveryInstant) {
  for (const auto* history :
       {&plan::bevel_bench().transfer.fill.history, &plan::bevel_bench().transfer.drain.history}) {
    ASSERT_FALSE(history->empty());
    for (const transfer::Instant& instant : *history) {
      const Drawing drawing = section_drawing(plan::bevel_bench(), instant, UnitSystem::inch);
      EXPECT_NEAR(top_of(drawing, "water in the reservoir"), in_metres(instant.reservoir_depth), 1e-12);
      // Both ends read as the same when there is no water in the table and no shape for it.
      EXPECT_NEAR(top_of(drawing, "water in the table") - bottom_of(drawing, "water in the table"),
                  in_metres(instant.table_depth), 1e-12);
      EXPECT_EQ(find_shape<Area>(drawing, "water in the table") != nullptr, instant.table_depth > Length{});
    }
  }
}

TEST(Section, HangsTheRiserAtItsClearanceOverTheFloor) {
  const Drawing drawing =
      section_drawing(plan::bevel_bench(), plan::bevel_bench().transfer.fill.history.front(), UnitSystem::inch);
  EXPECT_NEAR(bottom_of(drawing, "riser left"), in_metres(plan::bevel_bench().riser.riser.end_height), 1e-12);
  const Drawing close_up = riser_end_drawing(plan::bevel_bench(), {}, UnitSystem::inch);
  const Dimension* clearance = find_shape<Dimension>(close_up, "clearance");
  ASSERT_NE(clearance, nullptr);
  EXPECT_NEAR(clearance->high - clearance->low, in_metres(plan::bevel_bench().riser.riser.clearance), 1e-12);
  EXPECT_EQ(clearance->text, "clearance 5/8 in");
}

TEST(Section, ShowsWhatStandsOnTheReservoirWhereTheMapOfTheLidHasIt) {
  const plan::Plan& plan = plan::bevel_bench();
  const Drawing drawing = section_drawing(plan, {}, UnitSystem::inch);
  const double lid = in_metres(plan.job.reservoir.height);
  for (const plan::LidBung& bung : plan.lid_map.bungs) {
    if (bung.port == plan.riser.bung) continue;
    const Area* area = find_shape<Area>(drawing, "bung " + bung.port);
    ASSERT_NE(area, nullptr) << bung.port;
    if (bung.place == plan::Place::lid) {
      EXPECT_NEAR((area->outline[0].x + area->outline[1].x) / 2.0, in_metres(bung.at->from_left), 1e-9) << bung.port;
      EXPECT_GE(area->outline[0].y, lid);
    } else {
      EXPECT_GE(area->outline[0].x, in_metres(plan.job.reservoir.length)) << bung.port;
    }
  }
  // Gauge, relief valve and vent stand over their bungs, the drain beside its own, the riser at its spot.
  const auto shapes_near = [&](const std::string& port, bool over) {
    const Area* bung = find_shape<Area>(drawing, "bung " + port);
    return std::count_if(drawing.shapes.begin(), drawing.shapes.end(), [&](const Shape& shape) {
      const auto* area = std::get_if<Area>(&shape);
      if (area == nullptr || area == bung || area->outline.empty()) return false;
      const Spot& spot = area->outline.front();
      return over ? std::abs(spot.x - bung->outline[0].x) < 0.08 && spot.y > bung->outline[2].y &&
                        spot.y < bung->outline[2].y + 0.2
                  : spot.x > bung->outline[1].x && std::abs(spot.y - bung->outline[0].y) < 0.15;
    });
  };
  for (const char* port : {"gauge bung", "relief bung", "vent bung"}) EXPECT_GT(shapes_near(port, true), 1) << port;
  EXPECT_GT(shapes_near("drain bung", false), 1);
  EXPECT_NE(find_shape<Area>(drawing, "hose end"), nullptr);
  const Area* riser = find_shape<Area>(drawing, "riser left");
  ASSERT_NE(riser, nullptr);
  for (const plan::LidBung& bung : plan.lid_map.bungs) {
    if (bung.port != plan.riser.bung || !bung.at) continue;
    EXPECT_NEAR(riser->outline[0].x, in_metres(bung.at->from_left), in_metres(bung.outside));
  }
}

// Regulator, gauge, relief valve and vent on one bung: their run leads to the air supply, too.
TEST(Section, ShowsAManifoldOverItsBung) {
  const plan::Plan plan = plan::plan_of_example("one-air-bung");
  const Drawing drawing = section_drawing(plan, {}, UnitSystem::inch);
  const Area* bung = find_shape<Area>(drawing, "bung air bung");
  ASSERT_NE(bung, nullptr);
  double left = bung->outline[0].x;
  const double lid = in_metres(plan.job.reservoir.height);
  const auto over_lid = [&](const Spot& spot) { return spot.y > lid + 0.01 && spot.y < lid + 0.3; };
  for (const Shape& shape : drawing.shapes) {
    const auto* area = std::get_if<Area>(&shape);
    if (area == nullptr || !std::all_of(area->outline.begin(), area->outline.end(), over_lid)) continue;
    for (const Spot& spot : area->outline) left = std::min(left, spot.x);
  }
  EXPECT_LT(left, bung->outline[0].x - 0.2);  // the arm with the regulator is 8 in long and more
}

TEST(Section, DimensionsWhatItDraws) {
  const transfer::Instant& full = plan::bevel_bench().transfer.fill.history.back();
  const Drawing drawing = section_drawing(plan::bevel_bench(), full, UnitSystem::inch);
  const Dimension* lift = find_shape<Dimension>(drawing, "lift");
  ASSERT_NE(lift, nullptr);
  // The plan counts the line as full; at the end of the fill some of it may still be: less than the tape shows.
  EXPECT_NEAR(lift->high - lift->low, in_metres(plan::bevel_bench().levels.lift_full), in_metres(inches(1.0 / 32.0)));
  const Dimension* rim = find_shape<Dimension>(drawing, "rim");
  ASSERT_NE(rim, nullptr);
  EXPECT_NEAR(rim->high - rim->low, in_metres(plan::bevel_bench().levels.rim), 1e-12);
  const Dimension* ullage = find_shape<Dimension>(drawing, "ullage");
  ASSERT_NE(ullage, nullptr);
  EXPECT_NEAR(ullage->low, in_metres(full.reservoir_depth), 1e-12);
}

TEST(Section, ShowsAirOnlyUnderPressureAndWritesItWhiteOnBlue) {
  transfer::Instant vented;
  vented.reservoir_depth = plan::bevel_bench().levels.charge_depth;
  EXPECT_EQ(find_shape<Area>(section_drawing(plan::bevel_bench(), vented, UnitSystem::inch), "air in the reservoir"),
            nullptr);
  vented.ullage_pressure = psig(1.0);
  const Drawing drawing = section_drawing(plan::bevel_bench(), vented, UnitSystem::inch);
  EXPECT_NE(find_shape<Area>(drawing, "air in the reservoir"), nullptr);
  const Label* label = find_shape<Label>(drawing, "air pressure");
  ASSERT_NE(label, nullptr);
  EXPECT_EQ(label->ground, Ink::air);
  EXPECT_EQ(label->ink, Ink::air_text);
  EXPECT_EQ(label->text, "air 1 psi");
  vented.ullage_pressure = psig(0.00604);  // what no gauge shows
  const Drawing at_rest = section_drawing(plan::bevel_bench(), vented, UnitSystem::inch);
  EXPECT_EQ(find_shape<Label>(at_rest, "air pressure")->text, "air 0 psi");
}

TEST(Section, WaterStandsInTheRiserOnceItRuns) {
  transfer::Instant instant;
  instant.reservoir_depth = plan::bevel_bench().levels.charge_depth;
  for (const auto& [flow, wet] : {std::pair(0.0, false), std::pair(1e-17, false), std::pair(-1e-17, false),
                                  std::pair(1e-4, true), std::pair(-1e-4, true)}) {
    instant.flow = cubic_metres_per_second(flow);
    const Drawing drawing = section_drawing(plan::bevel_bench(), instant, UnitSystem::inch);
    EXPECT_EQ(find_shape<Area>(drawing, "water in the riser") != nullptr, wet) << flow;
  }
}

TEST(Section, WordsThatAreTallerThanTheirWaterStandAside) {
  transfer::Instant low;
  low.reservoir_depth = inches(1.0);
  low.table_depth = inches(0.25);
  const Drawing drawing = section_drawing(plan::bevel_bench(), low, UnitSystem::inch);
  const Label* reservoir = find_shape<Label>(drawing, "reservoir depth");
  const Label* table = find_shape<Label>(drawing, "table depth");
  ASSERT_NE(reservoir, nullptr);
  ASSERT_NE(table, nullptr);
  EXPECT_NEAR(reservoir->room_up, in_metres(inches(1.0)), 1e-12);
  EXPECT_NEAR(table->room_up, in_metres(inches(0.25)), 1e-12);
  Placement placement;
  placement.scale = 1000.0F;  // an inch is 25.4 px high
  EXPECT_FALSE(too_tall(*reservoir, placement, 20.0F));
  EXPECT_TRUE(too_tall(*reservoir, placement, 30.0F));
  EXPECT_TRUE(too_tall(*table, placement, 20.0F));
  EXPECT_FALSE(too_tall(Label{}, placement, 1000.0F));  // with room all round
}

TEST(Section, StandsUprightForEveryExample) {
  for (const char* name : {"one-air-bung", "bevel-bench", "air-too-weak", "one-part-short", "walls-too-thin"}) {
    const plan::Plan plan = plan::plan_of_example(name);
    const Drawing drawing = section_drawing(plan, {}, UnitSystem::metric);
    EXPECT_GT(drawing.width(), 0.0) << name;
    for (const Shape& shape : drawing.shapes)
      if (const Area* area = std::get_if<Area>(&shape))
        for (const Spot& spot : area->outline) {
          EXPECT_GE(spot.x, drawing.low.x - 1e-9) << name << ' ' << area->name;
          EXPECT_LE(spot.x, drawing.high.x + 1e-9) << name << ' ' << area->name;
          EXPECT_GE(spot.y, drawing.low.y - 1e-9) << name << ' ' << area->name;
          EXPECT_LE(spot.y, drawing.high.y + 1e-9) << name << ' ' << area->name;
        }
  }
}

/// From where to where along the lid; none where there is no such shape.
std::pair<double, double> along(const std::vector<Shape>& shapes) {
  std::pair<double, double> found{1e9, -1e9};
  for (const Shape& shape : shapes)
    if (const auto* area = std::get_if<Area>(&shape))
      for (const Spot& spot : area->outline) found = {std::min(found.first, spot.x), std::max(found.second, spot.x)};
  return found;
}

TEST(Section, WhatStandsOnTheLidLeavesTheRiserInSight) {
  const plan::Plan& plan = plan::plan_of_example("one-air-bung");
  const double lid = in_metres(plan.job.reservoir.height);
  const Drawing drawing = section_drawing(plan, {}, UnitSystem::inch);
  std::vector<Shape> line;
  for (const Shape& shape : drawing.shapes)
    if (const auto* area = std::get_if<Area>(&shape); area != nullptr && area->name.starts_with("bung "))
      if (area->name == "bung left" || area->name == "bung right") line.push_back(shape);
  ASSERT_FALSE(line.empty());
  const auto [from, to] = along(line);
  int over_lid = 0;
  for (const Shape& shape : section_devices(plan)) {
    const auto* area = std::get_if<Area>(&shape);
    if (area == nullptr || area->outline.front().y < lid) continue;
    ++over_lid;
    const auto [left, right] = along({shape});
    EXPECT_TRUE(right < from || left > to) << area->name << " at " << left << " to " << right;
  }
  EXPECT_GT(over_lid, 20) << "the manifold";
}

TEST(Section, TheAirsRunStandsOnItsBung) {
  const plan::Plan& plan = plan::bevel_bench();
  const double lid = in_metres(plan.job.reservoir.height);
  const auto x = std::find_if(plan.lid_map.bungs.begin(), plan.lid_map.bungs.end(),
                              [](const plan::LidBung& bung) { return bung.port == "air bung"; });
  ASSERT_NE(x, plan.lid_map.bungs.end());
  int near = 0;
  for (const Shape& shape : section_devices(plan))
    if (const auto* area = std::get_if<Area>(&shape); area != nullptr && area->outline.front().y > lid + 0.05)
      near += std::abs(area->outline.front().x - in_metres(x->at->from_left)) < 0.06 ? 1 : 0;
  EXPECT_GT(near, 10) << "regulator, check valve and nipples";
}

TEST(Section, ARunThatThereIsNoneOfIsNoPipe) {
  const auto named = [](const plan::Plan& plan, const std::string& name) {
    const Drawing drawing = section_drawing(plan, {}, UnitSystem::inch);
    return std::count_if(drawing.shapes.begin(), drawing.shapes.end(), [&](const Shape& shape) {
      const auto* stroke = std::get_if<Stroke>(&shape);
      return stroke != nullptr && stroke->name == name;
    });
  };
  EXPECT_EQ(named(plan::bevel_bench(), "no run"), 0);
  EXPECT_EQ(named(plan::bevel_bench(), "hose"), 2);
  plan::Plan plan = plan::bevel_bench();
  plan.connections[*plan.water_connection].answer = chain::NoChain{};
  EXPECT_EQ(named(plan, "no run"), 2);
  EXPECT_EQ(named(plan, "hose"), 0);
}

TEST(Section, ShowsTheStaysThatTheLimitRestsOn) {
  const auto stays = [](const plan::Plan& plan) {
    const Drawing drawing = section_drawing(plan, {}, UnitSystem::inch);
    std::vector<double> places;
    for (const Shape& shape : drawing.shapes)
      if (const auto* stroke = std::get_if<Stroke>(&shape); stroke != nullptr && stroke->name == "post")
        places.push_back(stroke->points.front().x);
    return places;
  };
  EXPECT_TRUE(stays(plan::bevel_bench()).empty());
  plan::Plan plan = plan::bevel_bench();
  plan.lid_map.ties = {{inches(12.0), inches(5.0)}, {inches(24.0), inches(5.0)}, {inches(12.0), inches(10.0)}};
  // Each of two thin lines, its sides; those that stand one behind the other once.
  const std::vector<double> places = stays(plan);
  ASSERT_EQ(places.size(), 4U);
  EXPECT_LT(places[0], places[1]);
  EXPECT_NEAR((places[0] + places[1]) / 2.0, in_metres(inches(12.0)), 1e-9);
  EXPECT_NEAR((places[2] + places[3]) / 2.0, in_metres(inches(24.0)), 1e-9);
}

}  // namespace
}  // namespace riserun::report
