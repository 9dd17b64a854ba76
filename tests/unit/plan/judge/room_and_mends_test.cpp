// Room over the lid, heat of a place, and mends that a reader follows one after the other: each just under and over.
#include "plan/advice/change.h"
#include "plan/job/read_job.h"
#include "plan/judge/judge.h"
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <algorithm>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

const Finding* open_as(const Plan& plan, std::string_view code) {
  const auto found = std::find_if(plan.findings.begin(), plan.findings.end(),
                                  [&](const Finding& each) { return each.reason.code == code; });
  return found == plan.findings.end() ? nullptr : &*found;
}

/// The finding has a mend, and followed it is gone.
void expect_mended(const Plan& plan, std::string_view code) {
  const Finding* finding = open_as(plan, code);
  ASSERT_NE(finding, nullptr) << testing::PrintToString(open_in(plan));
  ASSERT_TRUE(finding->mend) << code;
  std::vector<Changes> ways = finding->ways_to_mend;
  ways.insert(ways.end(), finding->ways_to_try.begin(), finding->ways_to_try.end());
  ASSERT_FALSE(ways.empty()) << code;
  for (const Changes& way : ways)
    for (const Finding& left : findings_of(plan.catalog, changed(*plan.catalog, plan.job, way)))
      EXPECT_NE(left.reason.code, code);
}

// ---- Room under the table.

TEST(LidStack, HasRoomUnderTheTable) {
  const auto at = [](double inches_high) {
    return plan_of_text(with(with(kReady, "gap: 14-3/8 in, ", ""), "floor height: 30 in",
                             fmt::format("floor height: {:.4f} in", inches_high)));
  };
  Length tallest{};
  for (const Finding& finding : at(18.0).findings)
    if (finding.reason.code == "no_room_under_the_table")
      tallest = std::max(tallest, std::get<Length>(finding.numbers->asked));
  ASSERT_GT(in_inches(tallest), 2.0);  // a relief valve of 3 in, less its thread
  const double lid = 14.0 + in_inches(ready().job.reservoir.sheet.thickness);
  EXPECT_FALSE(has(at(lid + in_inches(tallest) + 0.01), "no_room_under_the_table"));
  const Plan low = at(lid + in_inches(tallest) - 0.01);
  EXPECT_TRUE(has(low, "no_room_under_the_table"));
  EXPECT_THAT(said_of(low, "no_room_under_the_table"), HasSubstr("90 degree elbow"));
}

// What each asks of the table's height, and the reservoir that is so much lower, where all of its water has room.
TEST(LidStack, WithoutRoomSaysTheHeightOrALowerReservoir) {
  const std::string low = with(with(kReady, "gap: 14-3/8 in, ", ""), "floor height: 30 in", "floor height: 20 in");
  const Plan plan = plan_of_text(with(with(low, "need: [union]", "need: [hose]"), "charge: 9 in", "charge: 7-1/2 in"));
  const std::string said = said_of(plan, "no_room_under_the_table");
  EXPECT_THAT(said, HasSubstr("('floor height: 23 in')"));
  EXPECT_THAT(said, HasSubstr("a reservoir 11 in high inside"));
  EXPECT_THAT(said, testing::Not(HasSubstr("a relief valve up again"))) << "it is the air that comes in";
  // Of a reservoir that is full the charge has no room in a lower one.
  EXPECT_THAT(said_of(plan_of_text(with(low, "charge: 9 in", "charge: 12 in")), "no_room_under_the_table"),
              testing::Not(HasSubstr("high inside")));
}

TEST(LidStack, BesideTheTableNeedsNoRoomUnderIt) {
  const std::string low = with(with(kReady, "gap: 14-3/8 in, ", ""), "floor height: 30 in", "floor height: 18 in");
  EXPECT_TRUE(has(plan_of_text(low), "no_room_under_the_table"));
  EXPECT_FALSE(has(plan_of_text(with(low, "length: 44 in, width: 22 in", "length: 44 in, width: 19 in")),
                   "no_room_under_the_table"));
}

/// What looks straight on from a tree stands higher than by itself.
TEST(LidStack, OfATreeIsItsHighestWay) {
  const auto stack_of_tree = [](const std::string& job) {
    for (const Finding& finding : plan_of_text(job).findings)
      if (finding.reason.code == "no_room_under_the_table" && std::get<std::string>(finding.reason.values[0]) == "tree")
        return in_inches(std::get<Length>(finding.numbers->asked));
    return 0.0;
  };
  const std::string alone = with(with(kReady, "gap: 14-3/8 in, ", ""), "floor height: 30 in", "floor height: 17 in");
  const std::string tree =
      with(with(with(alone,
                     "  - {name: relief, from: relief bung, ends in: 3/4 relief valve set 2 psi, special order: yes, "
                     "carries: air}\n",
                     "  - {name: tree, from: relief bung, carries: air, branches: [{name: relief, ends in: 3/4 relief "
                     "valve set 2 psi, special order: yes, looks: straight on}, {name: vent, ends in: 1/2 brass ball "
                     "valve}]}\n"),
                "  - {name: vent, from: vent bung, ends in: 1/2 brass ball valve, carries: air}\n", ""),
           "    vent bung: 1/2 FNPT\n", "");
  // A close nipple of 1-3/8 in, a tee of twice 1-5/16 in (ASME B16.3) and a valve of 3 in, less three make-ups of 0.55
  // in.
  EXPECT_NEAR(stack_of_tree(tree), 1.375 + 2.0 * 1.3125 + 3.0 - 3.0 * 0.55, 0.1);
  EXPECT_EQ(stack_of_tree(with(tree, "floor height: 17 in", "floor height: 30 in")), 0.0);
}

// ---- A lid too small for its bungs.

TEST(LidMap, WithoutAPlaceForEveryBungIsNotReady) {
  const Plan small = plan_of_text(with(kReady, "length: 40 in, width: 20 in", "length: 9 in, width: 6 in"));
  EXPECT_TRUE(has(small, "bungs_without_place"));
  EXPECT_TRUE(std::any_of(small.findings.begin(), small.findings.end(), [](const Finding& finding) {
    return finding.reason.code == "bungs_without_place" &&
           report::sentences_of(finding, UnitSystem::inch).find("'branches'") != std::string::npos;
  }));
  EXPECT_FALSE(has(ready(), "bungs_without_place"));
}

// Two flat bars do what a baffle of four pieces would, and are named first.
TEST(Stiffer, WeakShortSidesTakeABarEachBeforeABaffle) {
  const std::string unset = with(kReady, "  set pressure: 1.6 psi\n", "");
  const Plan plan = plan_of_text(with(unset, "{baffles across: 2, baffles along: 1}",
                                      "{baffles across: 3, lid bays: 8 x 3, floor bays: 8 x 3, lid stays: rows, "
                                      "long side bays: 8 x 2}"));
  ASSERT_FALSE(plan.findings.empty());
  const std::string said = report::sentences_of(plan.findings.front(), UnitSystem::inch);
  ASSERT_THAT(said, AllOf(HasSubstr("'short side bays': 2 x 1"), HasSubstr("'baffles across: 3, baffles along: 1'")));
  EXPECT_LT(said.find("'short side bays'"), said.find("'baffles across"));
}

// ---- A relief valve's tolerance.

TEST(ReliefTolerance, ThatNoMarkSuitsIsMendedByACloserOne) {
  const auto off_by = [](const char* tolerance) {
    return plan_of_text(with(kStiff, "tolerance: 0.1 psi", std::string("tolerance: ") + tolerance));
  };
  EXPECT_FALSE(has(off_by("0.14 psi"), "relief_valve_weeps"));
  const Plan coarse = off_by("2 psi");
  EXPECT_THAT(said_of(coarse, "relief_valve_weeps"),
              AllOf(HasSubstr("whose maker holds it within"), HasSubstr("'relief valve.tolerance'")));
  expect_mended(coarse, "relief_valve_weeps");
}

TEST(ReliefTolerance, OfAHigherMarkIsMendedByALowerOneToo) {
  const Plan coarse = plan_of_text(with(with(with(kStiff, "  set pressure: 1.6 psi\n", ""), "set 2 psi", "set 4 psi"),
                                        "tolerance: 0.1 psi, rise: 0.2 psi", "tolerance: 2 psi, rise: 0.3 psi"));
  EXPECT_THAT(said_of(coarse, "full_flow_passes_four_to_one"), HasSubstr("whose maker holds it within"));
  expect_mended(coarse, "full_flow_passes_four_to_one");
}

// ---- A hot place.

TEST(HotPlace, CoolsNothingAtTheEndOfAPipe) {
  const std::string away = with(kReady, "0 to 15 psi air regulator, light spring check valve]",
                                "0 to 15 psi air regulator, light spring check valve, 1/2 x 12 nipple black iron]");
  const auto hot = [&](const char* lines) { return plan_of_text(away + lines); };
  EXPECT_FALSE(has(hot("hottest: 125 degF\n"), "air_part_in_hot_place"));
  const Plan place = hot("hottest: 126 degF\n");
  EXPECT_TRUE(has(place, "air_part_in_hot_place"));
  EXPECT_THAT(said_of(place, "air_part_in_hot_place"), HasSubstr("'water temperature: 126 degF'"));
  // Of water that is handled as hot, or in which the whole tank stands at that, the pipe does.
  EXPECT_FALSE(has(hot("hottest: 126 degF\nagainst heat: guarded\n"), "air_part_in_hot_place"));
  const Plan water = plan_of_text(with(away, "water temperature: 60 degF", "water temperature: 126 degF"));
  EXPECT_FALSE(has(water, "air_part_in_hot_place"));
  EXPECT_FALSE(has(water, "air_part_too_hot"));
}

// ---- A check valve in the vent, whether the store has it or not.

TEST(VentCheck, IsSaidThoughItsRunDoesNotGoTogether) {
  for (const char* order : {"", ", special order: yes"}) {
    const Plan plan = ready_with("ends in: 1/2 brass ball valve, carries: air",
                                 std::string("ends in: 1/2 brass ball valve, carries: air, need: [1/2 light spring "
                                             "check valve]") +
                                     order);
    EXPECT_TRUE(has(plan, "vent_behind_check_valve")) << order;
    EXPECT_THAT(said_of(plan, "connection_has_no_chain"), Not(HasSubstr("another"))) << order;
  }
  EXPECT_FALSE(has(ready(), "vent_behind_check_valve"));
}

// ---- Mends that go with each other.

TEST(Gauge, ThatIsReadBadlyAndStandsTooLittleIsChangedForOne) {
  const Plan plan = plan_of_text(with(with(kStiff, "set pressure: 1.6 psi", "set pressure: 1.75 psi"),
                                      "ends in: 5 psi gauge", "ends in: 60 inH2O gauge"));
  ASSERT_TRUE(has(plan, "device_not_rated")) << testing::PrintToString(open_in(plan));
  ASSERT_TRUE(has(plan, "gauge_cannot_show"));
  for (const char* code : {"device_not_rated", "gauge_cannot_show"})
    EXPECT_THAT(said_of(plan, code), HasSubstr("0 to 5 psi gauge")) << code;
}

TEST(Riser, ThatMayStandOnTheFloorIsMendedByItsClearance) {
  const Plan plan = ready_with("riser: {bung: riser bung}", "riser: {bung: riser bung, clearance: 1/16 in}");
  expect_mended(plan, "riser_may_stand_on_the_floor");
}

TEST(Riser, WithoutHeadroomIsMendedByIt) {
  const std::string closed = with(with(kReady, "  charge: 9 in", "  charge: 9 in\n  lid: welded"),
                                  "riser bung: {port: 1 FNPT, bung: full coupling, where: lid}",
                                  "riser bung: {port: 1 FNPT, bung: double-tapped bushing, where: lid}");
  expect_mended(plan_of_text(with(closed, "riser: {bung: riser bung}", "riser: {bung: riser bung, headroom: 6 in}")),
                "no_headroom_for_riser");
}

TEST(Branches, WithTooNarrowAWayToTheReliefValveGiveItABung) {
  std::string tree =
      with(kReady, "  - {name: gauge, from: gauge bung, ends in: 5 psi gauge, special order: yes, carries: air}\n", "");
  tree = with(
      tree,
      "  - {name: relief, from: relief bung, ends in: 3/4 relief valve set 2 psi, special order: yes, carries: air}\n",
      "  - {name: tree, from: gauge bung, carries: air, branches: [{name: gauge, ends in: 5 psi gauge, special "
      "order: yes}, {name: relief, ends in: 3/4 relief valve set 2 psi, special order: yes}]}\n");
  EXPECT_THAT(said_of(plan_of_text(tree), "branches_cannot_be_joined"), HasSubstr("a bung of its own size in the lid"));
}

TEST(Table, OfASocketForPlasticSaysWhatWouldDo) {
  const Plan socket = ready_with("inlet: {port: 1 FNPT, where: floor}", "inlet: {port: 1 PVC socket, where: floor}");
  EXPECT_THAT(said_of(socket, "plastic_port_on_the_reservoir"),
              AllOf(HasSubstr("compressed air"), HasSubstr("a pipe thread on 'inlet'")));
  EXPECT_FALSE(has(ready(), "plastic_port_on_the_reservoir", Severity::refused));
}

// ---- One figure for one thing.

TEST(StaysForFour, HaveTheLimitThatTheMendTells) {
  const Plan tall = plan_of_text(with(kReady, "  set pressure: 1.6 psi\n", ""));
  ASSERT_TRUE(tall.walls.stays_for_four);
  EXPECT_GT(tall.walls.stays_for_four->limit, tall.walls.limit);
  const std::string limit = quantity::write_pressure_alone(tall.walls.stays_for_four->limit, UnitSystem::inch);
  EXPECT_THAT(said_of(tall, "full_flow_passes_four_to_one") + said_of(tall, "setting_passes_four_to_one"),
              HasSubstr(limit));
}

TEST(Liquid, OfTooGreatAShareIsNamedWithItsUnit) {
  try {
    read_job(*shipped_catalog(), std::string(kReady) + "liquid: water with 40 % glycol\n", "job.yaml");
    FAIL();
  } catch (const InputError& error) {
    EXPECT_THAT(std::string(error.what()), HasSubstr("'40 %' is not worked out"));
  }
}

}  // namespace
}  // namespace riserun::plan
