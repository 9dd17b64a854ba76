// What who stands beside the tank would find open: each case just under and just over.
#include "plan/advice/change.h"
#include "plan/judge/judge.h"
#include "plan/settle/settled.h"
#include "report/card/make_card.h"
#include "report/text/card_text.h"
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <cmath>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

std::string card_words(const Plan& plan) {
  return report::card_text(report::card_of(plan, UnitSystem::inch), "job.yaml", {});
}

// ---- The factor at the most that the walls see with a sound relief valve.

/// Without a setting of its own, and with a relief valve that rises so far.
Plan own_setting_rising(double psi_of_rise) {
  return plan_of_text(with(with(kStiff, "  set pressure: 1.6 psi\n", ""), "rise: 0.2 psi",
                           fmt::format("rise: {:.5f} psi", psi_of_rise)));
}

TEST(FactorOfFour, IsAskedOfASettingOfOursWithTheValveFullyOpen) {
  const double rise = in_psi(plan_of_text(kStiff).walls.four_to_one) - 2.1;  // 2 psi, and 0.1 psi of tolerance
  ASSERT_GT(rise, 0.0);
  EXPECT_FALSE(has(own_setting_rising(rise - 0.002), "full_flow_passes_four_to_one"));
  const Plan over = own_setting_rising(rise + 0.002);
  EXPECT_TRUE(has(over, "full_flow_passes_four_to_one")) << testing::PrintToString(open_in(over));
}

// Who writes the setting down has weighed it; the factor stands at the head of the card.
TEST(FactorOfFour, OfASettingThatIsGivenIsSaidAtTheHead) {
  EXPECT_GT(in_psi(ready().relief.valves.front().full_flow), in_psi(ready().walls.four_to_one));
  EXPECT_THAT(open_in(ready()), IsEmpty());
  EXPECT_THAT(card_words(ready()), HasSubstr("UNDER 4 to 1"));
  EXPECT_TRUE(has(plan_of_text(with(kReady, "  set pressure: 1.6 psi\n", "")), "full_flow_passes_four_to_one"));
}

// ---- The relief valve of the leak test's rig.

/// The valve of the rig, 1/4 in with a hole of 0.25 in, opens at 2.6 psi and is wide open at 2.8.
TEST(ReliefOfTheTest, HoldsARegulatorThatSticksOrTheFeedIsThrottled) {
  const auto fed_by = [](const char* hole) { return ready_with("1/16 in hole restrictor", hole); };
  int held = 0;
  int throttled = 0;
  for (int psi = 90; psi <= 130; psi += 5) {
    const LeakTestPlan test =
        ready_with("receiver pressure: 110 psi", fmt::format("receiver pressure: {} psi", psi)).leak_test;
    EXPECT_EQ(test.throttle.has_value(), test.supply_gives > test.relief_passes) << psi;
    ++(test.throttle ? throttled : held);
  }
  EXPECT_GT(held, 0);
  EXPECT_GT(throttled, 0);
  const Plan wide = fed_by("3/32 in hole restrictor");
  EXPECT_GT(wide.leak_test.supply_gives, wide.leak_test.relief_passes);
  ASSERT_TRUE(wide.leak_test.throttle);
  const Length hole = wide.catalog->part(*wide.leak_test.throttle).ports[0].bore;
  EXPECT_LE(hole, wide.leak_test.throttle_bore);
  const auto throttle_of = [](const LeakTestPlan& test) {
    return std::find_if(test.at_supply.begin(), test.at_supply.end(),
                        [&](const RigPart& part) { return part.part == test.throttle; });
  };
  EXPECT_NE(throttle_of(wide.leak_test), wide.leak_test.at_supply.end());
  const auto is_for_test = [&](const ListItem& item) {
    return item.part == wide.leak_test.throttle &&
           std::find(item.used_for.begin(), item.used_for.end(), "leak test") != item.used_for.end();
  };
  EXPECT_TRUE(std::any_of(wide.list.buy.begin(), wide.list.buy.end(), is_for_test));
  // What lies in the bin is not bought again.
  const Plan in_bin = plan_of_text(
      with(kReady, "1/16 in hole restrictor", "3/32 in hole restrictor") +
      fmt::format("bin:\n  - {{part: \"{}\", count: 1}}\n", wide.catalog->part(*wide.leak_test.throttle).name));
  ASSERT_NE(throttle_of(in_bin.leak_test), in_bin.leak_test.at_supply.end());
  EXPECT_EQ(throttle_of(in_bin.leak_test)->whose, RigPart::Whose::bin);
  EXPECT_TRUE(std::none_of(in_bin.list.buy.begin(), in_bin.list.buy.end(), is_for_test));
}

/// By hand: choked at 124.7 psia and 0.0404 kg/s per m2 and Pa at 293 K, 0.82 of the hole; out of the valve at 2.8 psi
/// the subsonic flow of gamma 1.4, 0.6 of its hole behind a cross of 0.8 (orifice equations of any text).
TEST(ReliefOfTheTest, IsWorkedOutAsTheTanksIs) {
  const LeakTestPlan& test = ready().leak_test;
  const double supply = 110.0 + 14.4;  // psia, at 600 ft
  const double hole = 0.82 * 0.25 * M_PI * 0.0625 * 0.0625 * 6.4516e-4;
  const double choked = hole * supply * 6894.76 * 0.6847 / std::sqrt(287.05 * 288.7);
  EXPECT_NEAR(in_cubic_metres_per_second(test.supply_gives) * 1.225, choked, 0.06 * choked);
  const double r = 14.4 / 17.2;
  const double psi = std::sqrt(7.0 * (std::pow(r, 1.0 / 0.7) - std::pow(r, 1.2 / 0.7)));
  const double seat = 0.6 * 0.25 * M_PI * 0.25 * 0.25 * 6.4516e-4;
  const double out = seat * 17.2 * 6894.76 * psi / std::sqrt(287.05 * 288.7);
  EXPECT_LT(in_cubic_metres_per_second(test.relief_passes) * 1.225, out);
  EXPECT_GT(in_cubic_metres_per_second(test.relief_passes) * 1.225, 0.7 * out);
}

TEST(ReliefOfTheTest, ThatNoHoleSavesIsAFinding) {
  Remarks remarks;
  const Settled settled = settle(ready().job, remarks);
  const auto judged = [&](bool is_enough) {
    Plan plan = ready();
    plan.leak_test.relief_is_enough = is_enough;
    plan.leak_test.throttle_bore = inches(0.02);
    plan.findings = judge(plan, settled, {});
    return plan;
  };
  EXPECT_FALSE(has(judged(true), "relief_of_test_too_narrow"));
  EXPECT_THAT(said_of(judged(false), "relief_of_test_too_narrow"), HasSubstr("a restrictor of 0.0156 in or less"));
}

// ---- Two regulators in series.

constexpr const char* kNeeds = "[1/16 in hole restrictor, 0 to 15 psi air regulator, light spring check valve]";

TEST(FirstStage, LimitsWhatComesToTheRegulatorAndIsToBeSet) {
  const Plan staged = ready_with(kNeeds,
                                 "[0 to 10 psi air regulator, 1/16 in hole restrictor, 0 to 15 psi air regulator, "
                                 "light spring check valve]");
  ASSERT_TRUE(staged.transfer.system.air.first_stage);
  EXPECT_NEAR(in_psi(staged.transfer.system.air.first_stage->setting), 5.0, 1e-9);
  EXPECT_THAT(card_words(staged), HasSubstr("1st stage 5 psi"));
  EXPECT_THAT(card_words(ready()), Not(HasSubstr("1st stage")));
  // Through the hole from 5 psi comes a tenth of what comes from 110.
  EXPECT_GT(in_seconds(staged.transfer.fill.time), 1.2 * in_seconds(ready().transfer.fill.time));
  const auto stage = std::find_if(staged.air.places.begin(), staged.air.places.end(),
                                  [](const AirPlace& place) { return place.name == "first stage"; });
  ASSERT_NE(stage, staged.air.places.end());
  EXPECT_NEAR(in_psi(stage->behind), 5.0, 0.01);
  EXPECT_GT(in_psi(stage->before), 60.0);
  // A failure is still counted with all that the supply has.
  EXPECT_NEAR(in_psi(staged.relief.greatest), in_psi(ready().relief.greatest), 0.05);
}

TEST(FirstStage, IsSetToTwiceTheOtherAtLeast) {
  const std::string staged =
      with(kReady, kNeeds, "[0 to 10 psi air regulator, 0 to 15 psi air regulator, light spring check valve]");
  const auto first_of = [&](const char* setting) {
    return in_psi(
        plan_of_text(with(staged, "set pressure: 1.6 psi", setting)).transfer.system.air.first_stage->setting);
  };
  EXPECT_NEAR(first_of("set pressure: 2.4 psi"), 5.0, 1e-9);
  EXPECT_NEAR(first_of("set pressure: 2.6 psi"), 5.2, 1e-9);
}

// ---- Water that stays in its bay.

std::string barred(const char* more) {
  return with(with(kReady, "{baffles across: 2, baffles along: 1}",
                   std::string("{lid bays: 4 x 2, floor bays: 4 x 2, long side bays: 4 x 1, short side bays: 2 x 1") +
                       more + "}"),
              "10 ga steel", "3/16 in steel");
}

TEST(BarsOnTheFloor, HaveMouseHolesOrDamTheWater) {
  const Plan holed = plan_of_text(barred(""));
  ASSERT_TRUE(holed.walls.mouse_holes);
  EXPECT_FALSE(has(holed, "floor_stays_dam_the_water"));
  EXPECT_THAT(card_words(holed), AllOf(HasSubstr("mouse-holes at the foot"), HasSubstr("in every bay of the floor's")));
  // As wide as a 1 in riser, 0.86 in2.
  EXPECT_GE(in_inches(holed.walls.mouse_holes->along) * in_inches(holed.walls.mouse_holes->height), 0.86);
  const Plan tight = plan_of_text(barred(", passages: no"));
  EXPECT_FALSE(tight.walls.mouse_holes);
  EXPECT_TRUE(has(tight, "floor_stays_dam_the_water"));
  EXPECT_FALSE(has(tight, "baffles_are_tight"));  // there are none
}

TEST(BarsOnTheFloor, AreHigherByTheirHoles) {
  const auto floor_bars = [](const Plan& plan) {
    Length height{};
    for (const reservoir::StayBars& bars : plan.walls.bars)
      if (bars.wall == "floor") height = bars.height;
    return height;
  };
  EXPECT_NEAR(in_inches(floor_bars(plan_of_text(barred(""))) - floor_bars(plan_of_text(barred(", passages: no")))), 0.5,
              1e-9);
}

TEST(BarsOnTheFloor, AreNoneWhereTheFloorIsBare) {
  EXPECT_FALSE(plan_of_text(with(barred(""), ", floor bays: 4 x 2", "")).walls.mouse_holes);
  EXPECT_FALSE(ready().walls.mouse_holes);
}

// ---- What holds the riser, what is opened to dip.

TEST(Bushing, HoldsARiserOfItsOwnThreadAlone) {
  const auto tapped = [](const char* size) {
    return plan_of_text(
        with(with(kReady, "riser bung: {port: 1 FNPT, bung: full coupling, where: lid}",
                  fmt::format("riser bung: {{port: {} FNPT, bung: double-tapped bushing, where: lid}}", size)),
             "riser: {bung: riser bung}", "riser: {bung: riser bung, pipe: 1, headroom: 20 in}"));
  };
  EXPECT_FALSE(has(tapped("1"), "bushing_does_not_hold_riser"));
  const Plan wide = tapped("1-1/4");
  EXPECT_TRUE(has(wide, "bushing_does_not_hold_riser")) << testing::PrintToString(open_in(wide));
  EXPECT_THAT(said_of(wide, "bushing_does_not_hold_riser"), HasSubstr("'port: 1 FNPT'"));
}

TEST(Lid, HasAnOpeningThatARodGoesInBy) {
  std::string sides = kReady;
  sides = with(sides, "air bung: {port: 1/2 FNPT, where: lid}",
               "air bung: {port: 1/2 FNPT, where: side, face height: 13 in}");
  sides = with(sides, "gauge bung: 1/4 FNPT", "gauge bung: {port: 1/4 FNPT, where: side, face height: 13 in}");
  sides = with(sides, "relief bung: 3/4 FNPT", "relief bung: {port: 3/4 FNPT, where: side, face height: 13 in}");
  EXPECT_FALSE(has(plan_of_text(sides), "nothing_to_dip_by"));  // by the vent's
  const Plan closed =
      plan_of_text(with(sides, "vent bung: 1/2 FNPT", "vent bung: {port: 1/2 FNPT, where: side, face height: 13 in}"));
  EXPECT_TRUE(has(closed, "nothing_to_dip_by"));
  EXPECT_THAT(said_of(closed, "nothing_to_dip_by"), HasSubstr("3/4"));
}

TEST(Vent, ValveStandsWhereAHandReachesIt) {
  const auto led = [](const char* inches_of_hose) {
    return ready_with(
        "ends in: 1/2 brass ball valve, carries: air}",
        fmt::format("ends in: 1/2 brass ball valve, carries: air, need: [hose], hose length: {} in}}", inches_of_hose));
  };
  EXPECT_FALSE(has(led("60"), "vent_valve_far_away"));
  const Plan far = led("80");
  EXPECT_TRUE(has(far, "vent_valve_far_away")) << testing::PrintToString(open_in(far));
}

// ---- What is bought and cut.

TEST(Hose, IsNotCutToAGapThatIsAssumed) {
  const std::string hose = with(kReady, "need: [union], held: {from: fixed, to: fixed}", "need: [hose]");
  const auto cut_of = [](const Plan& plan) {
    for (const CutItem& cut : plan.list.cut)
      if (cut.used_for == "water up") return cut.datum;
    return std::string();
  };
  const Plan given = plan_of_text(hose);
  EXPECT_THAT(cut_of(given), HasSubstr("cut square"));
  const Plan assumed = plan_of_text(with(hose, "gap: 14-3/8 in, ", ""));
  ASSERT_TRUE(assumed.connections[*assumed.water_connection].gap_assumed);
  EXPECT_THAT(cut_of(assumed), HasSubstr("when its gap is measured"));
}

TEST(Restrictor, OfTheKeyIsTheOneInTheRun) {
  const auto keyed = [](const char* hole) {
    return plan_of_text(with(kReady, "  set pressure", fmt::format("  restrictor: {}\n  set pressure", hole)));
  };
  // Two such holes would pass 0.81 of one.
  const auto supplied = [](const Plan& plan) { return in_cubic_metres_per_second(plan.relief.valves.front().supply); };
  EXPECT_NEAR(supplied(keyed("1/16 in")) / supplied(ready()), 1.0, 1e-6);
  // A finer one than that in the run is another.
  const Plan finer = keyed("1/32 in");
  EXPECT_GT(finer.transfer.fill.time, ready().transfer.fill.time);
  EXPECT_TRUE(has(finer, "restrictor_of_another_hole"));
}

TEST(Restrictor, ThatIsNamedIsSold) {
  const Plan wide = plan_of_text(with(with(with(kReady, "1/16 in hole restrictor", "1/8 in hole restrictor"),
                                           "relief bung: 3/4 FNPT", "relief bung: 1/2 FNPT"),
                                      "3/4 relief valve set 2 psi", "1/2 relief valve set 2 psi"));
  EXPECT_THAT(said_of(wide, "relief_valve_too_narrow"), HasSubstr("a restrictor of 3/32 in"));  // 7/64 does, unsold
  const Plan finer =
      plan_of_text(std::string(kReady) + "measured:\n  - {part: 3/4 relief valve set 2 psi, bore: 0.02 in}\n");
  EXPECT_THAT(said_of(finer, "relief_valve_too_narrow"), HasSubstr("no restrictor that is sold is so fine"));
}

// ---- What the card warns of.

TEST(MeasuredTime, FarFromThePlansIsSaid) {
  const double seconds = in_seconds(ready().transfer.fill.time);
  const auto measured = [](double s) { return ready_and(fmt::format("measured fill time: {:.3f} s", s)); };
  EXPECT_FALSE(has(measured(1.99 * seconds), "measured_time_is_far_off"));
  EXPECT_TRUE(has(measured(2.01 * seconds), "measured_time_is_far_off", Severity::not_yet));
  EXPECT_FALSE(has(measured(seconds / 1.99), "measured_time_is_far_off"));
  EXPECT_TRUE(has(measured(seconds / 2.01), "measured_time_is_far_off"));
  EXPECT_THAT(card_words(measured(seconds / 7.0)), HasSubstr("a fill was measured at"));
}

TEST(Zinc, IsCautionedWhereItIsWelded) {
  EXPECT_TRUE(warns_of(ready_with("10 ga steel", "1/8 in galvanized"), "zinc_makes_fume"));
  EXPECT_FALSE(warns_of(ready(), "zinc_makes_fume"));
}

TEST(TableDrain, OntoTheFloorIsSaid) {
  std::string drained = with(kReady, "    outlet: {port: 1 FNPT, where: floor, opens at: 5 in}",
                             "    outlet: {port: 1 FNPT, where: floor}");
  drained = with(drained, "connections:\n",
                 "connections:\n  - {name: table drain, from: outlet, ends in: 1 brass ball valve, carries: water}\n");
  EXPECT_TRUE(warns_of(plan_of_text(drained), "table_drains_onto_the_floor"));
  EXPECT_FALSE(warns_of(ready(), "table_drains_onto_the_floor"));
}

// ---- Mends that hold.

TEST(Baffles, TooNearAreMendedByTheFewestThatDo) {
  const Plan nine = ready_with("{baffles across: 2, baffles along: 1}", "{baffles across: 9, baffles along: 1}");
  EXPECT_THAT(said_of(nine, "baffles_too_near"), HasSubstr("keep 4 to 1 already"));
}

TEST(Mend, OfWeakWallsKeepsFour) {
  const Plan weak = plan_of_text(with(with(kReady, "  set pressure: 1.6 psi\n", ""),
                                      "{baffles across: 2, baffles along: 1}", "{baffles across: 0}"));
  int followed = 0;
  for (const Finding& finding : weak.findings) {
    if (finding.reason.code != "fill_needs_more_than_walls_may_see") continue;
    for (const Changes& way : finding.ways_to_try) {
      ++followed;
      for (const Finding& left : findings_of(weak.catalog, changed(*weak.catalog, weak.job, way)))
        EXPECT_EQ(left.reason.code.find("four_to_one"), std::string::npos) << left.reason.code;
    }
  }
  EXPECT_GT(followed, 0) << testing::PrintToString(open_in(weak));
}

// Of 16 gauge as many stays as four times asks for are more than anybody welds in: thicker sheet.
TEST(Mend, OfWeakWallsIsNoForestOfStays) {
  const std::string own = with(kReady, "  set pressure: 1.6 psi\n", "");
  const auto said_with = [&](const char* sheet) {
    return said_of(plan_of_text(with(own, "10 ga steel", sheet)), "fill_needs_more_than_walls_may_see") +
           said_of(plan_of_text(with(own, "10 ga steel", sheet)), "setting_passes_four_to_one");
  };
  EXPECT_THAT(said_with("20 ga steel"), AllOf(HasSubstr("sheet at least"), Not(HasSubstr("stays every"))));
}

TEST(Mend, OfARestrictorInTheVentIsToTakeItOut) {
  const Plan plan =
      ready_with("ends in: 1/2 brass ball valve, carries: air}",
                 "ends in: 1/2 brass ball valve, carries: air, need: [1/16 in hole restrictor], special order: yes}");
  EXPECT_THAT(said_of(plan, "vent_is_a_throttle"), HasSubstr("take the"));
}

TEST(Bars, AreNotOfSheet) {
  for (const CutItem& cut : plan_of_text(with(barred(""), "3/16 in steel", "10 ga steel")).list.cut) {
    EXPECT_FALSE(cut.used_for.starts_with("stays") && cut.stock.name.find("sheet") != std::string::npos)
        << cut.stock.name;
  }
}

}  // namespace
}  // namespace riserun::plan
