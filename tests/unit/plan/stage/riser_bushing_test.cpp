// A riser in a double-tapped bushing in a wider coupling: its length, the hole, the steps and the section agree.
#include "report/drawing/section_drawing.h"
#include "report/words/lid_rows.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::HasSubstr;

const std::string kFull = "riser bung: {port: 1 FNPT, bung: full coupling, where: lid}";

Plan in_bushing(const std::string& more, const std::string& lid = "  lid: welded\n") {
  return plan_of_text(with(with(with(kReady, "  charge: 9 in\n", lid + "  charge: 9 in\n"), kFull,
                                "riser bung: {port: 1 FNPT, bung: double-tapped bushing, where: lid" + more + "}"),
                           "gap: 14-3/8 in, ", ""));
}

// By hand, ASME B1.20.1 (hand-tight L1 and three turns) and B16.11 class 3000: the 1-1/2 coupling is 3.12 in long and
// stands 3/4 in under the lid, so its upper face is 14 + 3.12 - 0.75 in over the floor; the bushing's 1-1/2 thread goes
// 0.420 + 3 / 11.5 in into that, and the riser's 1 in thread 0.400 + 3 / 11.5 in into the bushing's lower end.
constexpr double kBushingIn = 0.420 + 3.0 / 11.5;
constexpr double kRiserIn = 0.400 + 3.0 / 11.5;
constexpr double kCoupling = 3.12;

TEST(RiserBushing, HoldsTheRiserByItsOwnLowerEnd) {
  const auto cut = [](const Plan& plan) { return in_inches(plan.riser.riser.cut_length + plan.riser.riser.clearance); };
  const double given = 14.0 + kCoupling - 0.75 - kBushingIn + kRiserIn;
  EXPECT_NEAR(cut(in_bushing(", projects: 3/4 in")), given, 5e-3);
  EXPECT_NEAR(cut(in_bushing("")), given + 0.75 - kCoupling / 2.0, 5e-3);
  EXPECT_NEAR(cut(in_bushing(", projects: 3/4 in, bung length: 3 in")), given - 0.12, 5e-3);
  // The bushing is 1.42 in long, and its hexagon stands over the coupling.
  const double top = 14.0 + kCoupling - 0.75 - kBushingIn + 1.42;
  EXPECT_NEAR(cut(in_bushing(", face height: 17 in")), given + 17.0 - top, 5e-3);
}

TEST(RiserBushing, CarriesTheRunAboveOnItsHexagon) {
  const Plan plan = in_bushing(", projects: 3/4 in");
  ASSERT_TRUE(plan.connections.front().gap);
  const double top = 14.0 + kCoupling - 0.75 - kBushingIn + 1.42;
  EXPECT_NEAR(in_inches(*plan.connections.front().gap), 30.0 - top, 5e-3);
}

TEST(RiserBushing, HasAHoleForItsCoupling) {
  const Plan plan = in_bushing("");
  const auto holes = report::holes_to_cut(plan, UnitSystem::inch);
  ASSERT_EQ(holes.size(), 1u);
  EXPECT_EQ(holes[0].used_for, "riser bung");
  EXPECT_GT(in_inches(holes[0].across), 2.5);  // of the 1-1/2 coupling, class 3000
  EXPECT_LT(in_inches(holes[0].across), 2.6);
  EXPECT_TRUE(report::holes_to_cut(in_bushing(", welded in: yes"), UnitSystem::inch).empty());
}

TEST(RiserBushing, HasItsStepsInTheOrderOfWork) {
  const auto steps = [](const Plan& plan) {
    std::vector<std::string> codes;
    for (const WorkStep& step : plan.work.steps)
      if (step.what.code.find("bushing") != std::string::npos || step.what.code.find("hole") != std::string::npos ||
          step.what.code.find("bungs") != std::string::npos)
        codes.emplace_back(step.what.code);
    return codes;
  };
  EXPECT_THAT(steps(in_bushing("")), testing::ElementsAre("work_hole_for_coupling", "work_bungs_into_closed",
                                                          "work_cut_riser_for_bushing", "work_bushing_from_above"));
  const Plan plan = in_bushing(", projects: 3/4 in");
  for (const WorkStep& step : plan.work.steps)
    if (step.what.code == "work_cut_riser_for_bushing") {
      EXPECT_EQ(std::get<Length>(step.what.values[2]), inches(0.75));
    }
}

/// The highest and the lowest point of the shapes of that name.
std::pair<double, double> span_of(const report::Drawing& drawing, const std::string& name) {
  std::pair<double, double> span{1e9, -1e9};
  for (const report::Shape& shape : drawing.shapes)
    if (const auto* area = std::get_if<report::Area>(&shape); area != nullptr && area->name == name)
      for (const report::Spot& spot : area->outline)
        span = {std::min(span.first, spot.y), std::max(span.second, spot.y)};
  return span;
}

TEST(RiserBushing, IsDrawnWhereItStands) {
  const Plan plan = in_bushing(", projects: 3/4 in");
  const report::Drawing drawing = report::section_drawing(plan, plan.transfer.fill.history.front(), UnitSystem::inch);
  const auto coupling = span_of(drawing, "coupling left");
  const auto bushing = span_of(drawing, "bushing left");
  const double inch = in_metres(inches(1.0));
  EXPECT_NEAR(coupling.first / inch, 14.0 - 0.75, 5e-3);
  EXPECT_NEAR(coupling.second / inch, 14.0 - 0.75 + kCoupling, 5e-3);
  EXPECT_NEAR(bushing.first / inch, coupling.second / inch - kBushingIn, 5e-3);
  EXPECT_NEAR(bushing.second / inch, bushing.first / inch + 1.42, 5e-3);
}

// The bushing goes in with the riser, after the leak test: till then there is but the 1-1/2 coupling.
TEST(RiserBushing, LeavesItsCouplingToAPlugOfItsOwnSizeInTheLeakTest) {
  const auto plug_of = [](const Plan& plan) -> std::string {
    for (const TestPlug& plug : plan.leak_test.plugs)
      if (plug.port == "riser bung" && plug.part) return plan.catalog->part(*plug.part).name;
    return "";
  };
  const Plan plan = in_bushing("");
  EXPECT_THAT(plug_of(plan), testing::StartsWith("1-1/2 "));
  EXPECT_TRUE(std::any_of(plan.list.buy.begin(), plan.list.buy.end(),
                          [&](const ListItem& item) { return item.name == plug_of(plan); }));
}

TEST(RiserBushing, IsOnTheListByItsSizes) {
  const Plan plan = in_bushing("");
  std::vector<std::string> bought;
  for (const ListItem& item : plan.list.buy) bought.emplace_back(item.name);
  EXPECT_THAT(bought, testing::Contains(HasSubstr("1-1/2 x 1 double-tapped bushing")));
}

}  // namespace
}  // namespace riserun::plan
