// The three words: ready when nothing is open, and each line of what is refused or not yet.
#include "plan/job/starter_job.h"
#include "unit/plan/bench_job.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

#include <set>

namespace riserun::plan {
namespace {

using testing::IsEmpty;

TEST(Verdict, IsReadyWhenNothingIsOpen) {
  const Plan plan = plan_of_text(kReady);
  EXPECT_THAT(open_in(plan), IsEmpty());
  EXPECT_EQ(plan.verdict, Verdict::ready);
}

TEST(Verdict, OfTheExamplesIsWhatTheirNamesSay) {
  const auto only = [](const char* name, std::string_view code) {
    const Plan plan = plan_of_example(name);
    EXPECT_EQ(plan.verdict, Verdict::refused) << name;
    ASSERT_FALSE(plan.findings.empty()) << name;
    EXPECT_EQ(plan.findings.front().reason.code, code) << name;
  };
  EXPECT_THAT(open_in(bevel_bench()), IsEmpty());
  EXPECT_THAT(open_in(plan_of_example("one-air-bung")), IsEmpty());
  EXPECT_THAT(open_in(plan_of_text(starter_job())), IsEmpty());
  only("air-too-weak", "air_gives_out");
  only("one-part-short", "connection_has_no_chain");
  only("walls-too-thin", "fill_needs_more_than_walls_may_see");
  EXPECT_EQ(plan_of_example("air-too-weak").findings.size(), 1u);
  EXPECT_EQ(plan_of_example("one-part-short").findings.size(), 1u);
}

// Walls that give way hurt whoever goes on; a run that does not go together only stops the work.
TEST(Verdict, BeginsWithWhatCanHurt) {
  const Plan plan = plan_of_text(with(example_text("one-part-short"), "3 mm stainless", "1 mm stainless"));
  std::vector<Topic> refused;
  for (const Finding& finding : plan.findings)
    if (finding.severity == Severity::refused) refused.push_back(finding.where);
  ASSERT_GE(refused.size(), 2u) << testing::PrintToString(open_in(plan));
  EXPECT_EQ(refused.front(), Topic::walls);
  EXPECT_EQ(refused.back(), Topic::connections);
}

// What holds a failed regulator is sized for one supply.
TEST(Verdict, OfTwoFeedsIsNotYet) {
  const std::string two =
      with(with(with(kReady, "ports: {shop air: 1/4 FNPT}", "ports: {shop air: 1/4 FNPT, more air: 1/4 FNPT}"),
                "    vent bung: 1/2 FNPT\n", "    vent bung: 1/2 FNPT\n    boost bung: 1/2 FNPT\n"),
           "connections:\n", "connections:\n  - {name: boost, from: more air, to: boost bung, carries: air}\n");
  const Plan plan = plan_of_text(two);
  EXPECT_TRUE(std::any_of(plan.findings.begin(), plan.findings.end(),
                          [](const Finding& finding) { return finding.reason.code == "air_comes_in_twice"; }));
}

// Beyond what relief valves are sold for there is nothing to put into the rig.
TEST(Verdict, OfATestThatNoReliefValveGuardsIsNotYet) {
  const Plan plan = plan_of_text(with(kReady, "sheet: 10 ga steel", "sheet: 1/2 in steel") + "test pressure: 10 psi\n");
  EXPECT_TRUE(std::any_of(plan.findings.begin(), plan.findings.end(),
                          [](const Finding& finding) { return finding.reason.code == "no_relief_sold_for_the_test"; }));
}

TEST(Mend, OfAReliefValveKeepsTheFactorOfFour) {
  const Plan plan = ready_with("set 2 psi", "set 1.5 psi");
  for (const Finding& finding : plan.findings)
    if (finding.reason.code == "relief_valve_blows_in_use" && finding.mend &&
        finding.mend->code == "valve_that_opens_at") {
      EXPECT_LE(std::get<GaugePressure>(finding.mend->values.front()), plan.walls.four_to_one);
    }
}

TEST(NotYet, ASecondLineToTheTableIsNotWorkedOut) {
  const std::string bung = with(kReady, "    vent bung: 1/2 FNPT\n",
                                "    vent bung: 1/2 FNPT\n    more bung: {port: 1 FNPT, where: side}\n");
  EXPECT_TRUE(has(plan_of_text(with(bung, "  - {name: vent,",
                                    "  - {name: more water, from: more bung, to: outlet, carries: water}\n"
                                    "  - {name: vent,")),
                  "second_line_to_the_table"));
}

TEST(NotYet, AVentThatIsSaidToCarryWaterIsNamed) {
  const std::string lid = with(kReady, "vent bung: 1/2 FNPT", "vent bung: {port: 1/2 FNPT, where: lid}");
  EXPECT_TRUE(has(plan_of_text(with(lid, "ends in: 1/2 brass ball valve, carries: air",
                                    "ends in: 1/2 brass ball valve, carries: water")),
                  "vent_said_to_carry_water"));
}

TEST(NotYet, ADrainStandsLow) {
  const auto at = [](const char* height) {
    return plan_of_text(
        with(with(kReady, "    vent bung: 1/2 FNPT\n",
                  std::string("    vent bung: 1/2 FNPT\n    drain bung: {port: 1 FNPT, where: side, face height: ") +
                      height + "}\n"),
             "water temperature",
             "  - {name: drain, from: drain bung, ends in: 1 brass ball valve, carries: water}\nwater temperature"));
  };
  EXPECT_FALSE(has(at("2.99 in"), "drain_high_up"));  // of 9 in of water
  EXPECT_TRUE(has(at("3.01 in"), "drain_high_up"));
}

// Brass stands 200 psi of air, iron 300: nothing of the run is brass but what is asked for.
TEST(Refused, ASupplyIsOverWhatAPartStands) {
  const auto at = [](const char* supply) {
    return plan_of_text(with(with(kReady, "need: [1/16 in hole", "need: [brass hex nipple, 1/16 in hole"),
                             "receiver pressure: 110 psi", std::string("receiver pressure: ") + supply));
  };
  EXPECT_FALSE(has(at("199 psi"), "part_below_supply"));
  EXPECT_TRUE(has(at("201 psi"), "part_below_supply", Severity::refused));
}

struct Case {
  const char* name;
  const char* from;  // empty: `to` is put at the end
  const char* to;
  const char* code;  // that is open then
  Severity severity;
};

class Judged : public testing::TestWithParam<Case> {};

TEST_P(Judged, IsOpen) {
  const Case& row = GetParam();
  const Plan plan = *row.from == '\0' ? ready_and(row.to) : ready_with(row.from, row.to);
  EXPECT_TRUE(has(plan, row.code, row.severity)) << testing::PrintToString(open_in(plan));
  EXPECT_EQ(plan.verdict, row.severity == Severity::refused ? Verdict::refused : Verdict::not_yet);
  for (const Finding& finding : plan.findings)
    if (finding.buy) {
      EXPECT_TRUE(std::any_of(plan.list.buy.begin(), plan.list.buy.end(), [&](const ListItem& item) {
        return finding.buy->part ? item.part == finding.buy->part : item.id == finding.buy->id;
      })) << finding.buy->id;
    }
}

TEST(NotYet, ARegulatorInTheRunThatIsTooWideIsToBeChangedForAnother) {
  const Plan plan = ready_with("0 to 15 psi air regulator", "0 to 60 psi air regulator");
  const auto finding = std::find_if(plan.findings.begin(), plan.findings.end(),
                                    [](const Finding& each) { return each.reason.code == "regulator_range_too_wide"; });
  ASSERT_NE(finding, plan.findings.end());
  EXPECT_TRUE(finding->mend);
  EXPECT_TRUE(finding->buy);
}

TEST(NotYet, ADrainThatNothingShutsLetsTheWaterOut) {
  const std::string with_bung = with(kReady, "    vent bung: 1/2 FNPT\n",
                                     "    vent bung: 1/2 FNPT\n    drain bung: {port: 1 FNPT, where: side}\n");
  const auto drained_by = [&](const std::string& device) {
    return plan_of_text(
        with(with_bung, "water temperature",
             "  - {name: drain, from: drain bung, ends in: " + device + ", carries: water}\nwater temperature"));
  };
  EXPECT_TRUE(has(drained_by("1 street elbow black iron"), "water_runs_out"));
  EXPECT_FALSE(has(drained_by("1 brass ball valve"), "water_runs_out"));
  EXPECT_FALSE(has(drained_by("1 plug black iron"), "water_runs_out"));
}

// What is called a bore of the shop's line, and is narrower than any, would be counted on and never built.
TEST(NotYet, AFeedNarrowerThanAnyLineIsARestrictorThatNobodyBuilds) {
  const std::string bare = with(kReady, "1/16 in hole restrictor, ", "");
  const auto fed_by = [&](const char* bore) {
    return plan_of_text(with(bare, "  ports: {shop air", std::string("  feed bore: ") + bore + "\n  ports: {shop air"));
  };
  EXPECT_TRUE(has(fed_by("0.124 in"), "feed_narrower_than_any_line"));
  EXPECT_FALSE(has(fed_by("1/8 in"), "feed_narrower_than_any_line"));
  const std::string narrow = with(kReady, "  ports: {shop air", "  feed bore: 1/32 in\n  ports: {shop air");
  EXPECT_FALSE(has(plan_of_text(narrow), "feed_narrower_than_any_line"));  // a restrictor stands in the run
}

// With a restrictor of 1/16 in in the run the feed's own bore is still no narrower than that.
TEST(NotYet, AFeedNarrowerThanTheRestrictorInItIsAskedAbout) {
  const auto fed_by = [&](const char* bore) {
    return plan_of_text(
        with(kReady, "  ports: {shop air", std::string("  feed bore: ") + bore + "\n  ports: {shop air"));
  };
  EXPECT_TRUE(has(fed_by("0.01 in"), "feed_narrower_than_restrictor"));
  EXPECT_TRUE(has(fed_by("1.4 mm"), "feed_narrower_than_restrictor"));
  EXPECT_FALSE(has(fed_by("1.5 mm"), "feed_narrower_than_restrictor")) << "the drill beside 1/16 in";
  EXPECT_FALSE(has(fed_by("1/16 in"), "feed_narrower_than_restrictor"));
}

TEST(NotYet, ADrainStandsWhereTheWaterIsAndAHandComes) {
  const auto drain_in = [&](const char* place, const char* carried) {
    const std::string bung =
        with(kReady, "    vent bung: 1/2 FNPT\n",
             std::string("    vent bung: 1/2 FNPT\n    drain bung: {port: 1 FNPT, where: ") + place + "}\n");
    return plan_of_text(with(with(bung, "baffles along: 1", std::string("baffles along: 1") + carried),
                             "water temperature",
                             "  - {name: drain, from: drain bung, ends in: 1 brass ball valve, carries: water}\n"
                             "water temperature"));
  };
  EXPECT_TRUE(has(drain_in("lid", ""), "drain_in_the_lid"));
  EXPECT_FALSE(has(drain_in("side", ", floor carried: yes"), "drain_in_the_lid"));
  EXPECT_TRUE(has(drain_in("floor", ", floor carried: yes"), "port_under_a_carried_floor"));
  EXPECT_FALSE(has(drain_in("floor", ""), "port_under_a_carried_floor"));
}

// Long bars under a thick lid that stands a lot.
TEST(NotYet, StaysThatNoFlatBarIsAreLeftOpen) {
  const std::string large =
      with(with(kReady, "length: 40 in, width: 20 in", "length: 20 ft, width: 20 ft"),
           "supports: {baffles across: 2, baffles along: 1}", "supports: {lid bays: 12 x 1, floor carried: yes}");
  EXPECT_TRUE(has(plan_of_text(with(large, "10 ga steel", "1/2 in steel")), "stay_beyond_flat_bar"));
  EXPECT_FALSE(has(ready_with("supports: {baffles across: 2, baffles along: 1}", "supports: {lid bays: 3 x 1}"),
                   "stay_beyond_flat_bar"));
}

// A wish is no demand: it sets no pressure at which the relief valve blows, or the factor of four is gone.
TEST(Wish, ForAFastFillKeepsTheReliefValveShut) {
  const std::string stiff = with(kReady, "10 ga steel", "3/16 in steel");
  const Plan plan = plan_of_text(with(stiff, "  set pressure: 1.6 psi\n", "") + "wishes: {fill time: 5 s}\n");
  EXPECT_THAT(open_in(plan), IsEmpty());
  EXPECT_LT(plan.transfer.setting, plan.relief.valves.front().opens);
}

constexpr const char* kRelief =
    "  - {name: relief, from: relief bung, ends in: 3/4 relief valve set 2 psi, special order: yes, carries: air}\n";
constexpr const char* kDialGauge =
    "  - {name: gauge, from: gauge bung, ends in: 5 psi gauge, special order: yes, carries: air}\n";
constexpr const char* kVent = "  - {name: vent, from: vent bung, ends in: 1/2 brass ball valve, carries: air}\n";

INSTANTIATE_TEST_SUITE_P(
    NotYet, Judged,
    testing::Values(
        Case{"NoReliefValve", kRelief, "", "no_relief_valve", Severity::not_yet},
        Case{"ReliefOfACodeValveOnThinWalls", "relief valve: {tolerance: 0.1 psi, rise: 0.2 psi}\n", "",
             "relief_valve_opens_above_limit", Severity::not_yet},
        Case{"ReliefTooNarrowWithoutARestrictor", "1/16 in hole restrictor, ", "", "relief_valve_too_narrow",
             Severity::not_yet},
        Case{"ReliefBlowsInUse", "set 2 psi", "set 1.5 psi", "relief_valve_blows_in_use", Severity::not_yet},
        Case{"NoGauge", kDialGauge, "", "no_gauge", Severity::not_yet},
        Case{"GaugeTooCoarse", "5 psi gauge", "0 to 30 psi gauge", "gauge_cannot_show", Severity::not_yet},
        Case{"RegulatorTooCoarse", "regulator repeatability: 0.05 psi", "regulator repeatability: 0.5 psi",
             "regulator_repeats_too_coarsely", Severity::not_yet},
        Case{"RegulatorRangeTooWide", "0 to 15 psi air regulator", "0 to 30 psi air regulator",
             "regulator_range_too_wide", Severity::not_yet},
        Case{"RestrictorBehindTheRegulator",
             "[1/16 in hole restrictor, 0 to 15 psi air regulator, light spring check valve]",
             "[0 to 15 psi air regulator, 1/16 in hole restrictor, light spring check valve]",
             "restrictor_behind_regulator", Severity::not_yet},
        Case{"NoVent", kVent, "", "no_vent_behind_check_valve", Severity::not_yet},
        Case{"TestBelowWhatTheReliefAllows", "", "test pressure: 2 psi", "test_below_what_may_be_seen",
             Severity::not_yet},
        Case{"TightBaffles", "baffles along: 1", "baffles along: 1, passages: no", "baffles_are_tight",
             Severity::not_yet},
        Case{"GaugeInASideOfUnknownHeight", "gauge bung: 1/4 FNPT", "gauge bung: {port: 1/4 FNPT, where: side}",
             "side_port_of_unknown_height", Severity::not_yet},
        Case{"ReliefInASideOfUnknownHeight", "relief bung: 3/4 FNPT", "relief bung: {port: 3/4 FNPT, where: side}",
             "side_port_of_unknown_height", Severity::not_yet},
        Case{"GaugeUnderWater", "gauge bung: 1/4 FNPT", "gauge bung: {port: 1/4 FNPT, where: side, face height: 9 in}",
             "gauge_under_water", Severity::not_yet},
        Case{"VentUnderWater", "vent bung: 1/2 FNPT", "vent bung: {port: 1/2 FNPT, where: side, face height: 8 in}",
             "vent_under_water", Severity::not_yet},
        Case{"AirInTheFloor", "air bung: {port: 1/2 FNPT, where: lid}", "air bung: {port: 1/2 FNPT, where: floor}",
             "air_comes_in_under_water", Severity::not_yet},
        Case{"GaugeOnAHose", "ends in: 5 psi gauge", "need: [hose], ends in: 5 psi gauge", "gauge_on_a_hose",
             Severity::not_yet},
        Case{"GaugeBehindAValve", "ends in: 5 psi gauge", "need: [ball valve], ends in: 5 psi gauge", "gauge_behind",
             Severity::not_yet},
        Case{"ReliefOnAHose", "ends in: 3/4 relief", "need: [hose], ends in: 3/4 relief", "relief_valve_on_a_hose",
             Severity::not_yet},
        Case{"ReliefThroughANarrowBung", "relief bung: 3/4 FNPT", "relief bung: 1/4 FNPT",
             "way_to_relief_valve_is_narrower", Severity::not_yet},
        Case{"ReliefBehindARestrictor", "ends in: 3/4 relief", "need: [1/16 in hole restrictor], ends in: 3/4 relief",
             "restrictor_before_relief_valve", Severity::not_yet},
        Case{"TestThatPassesFourToOne", "", "test pressure: 3 psi", "test_passes_four_to_one", Severity::not_yet},
        Case{"ChargeToTheLid", "charge: 9 in", "charge: 13-1/2 in", "charge_leaves_no_air", Severity::not_yet},
        Case{"ReliefThroughASmallerNipple", "ends in: 3/4 relief",
             "need: [3/4 x 1/2 reducing hex nipple brass, 3/4 x 1/2 reducing coupling brass], ends in: 3/4 relief",
             "way_to_relief_valve_is_necked", Severity::not_yet},
        Case{"YieldOfNoWeldedSheet", "  sheet: 10 ga steel\n", "  sheet: 10 ga steel\n  yield: 100 ksi\n",
             "yield_of_no_welded_sheet", Severity::not_yet},
        Case{"TemperOfAluminiumThatWeldingTakes", "  sheet: 10 ga steel\n", "  sheet: 1/4 in 6061\n  yield: 40 ksi\n",
             "yield_of_no_welded_sheet", Severity::not_yet},
        Case{"TablePortThatNothingCloses", "outlet: {port: 1 FNPT, where: floor, opens at: 5 in}",
             "outlet: {port: 1 FNPT, where: floor}", "table_port_closed_by_nothing", Severity::not_yet},
        Case{"DrainedByNothing", "", "coldest: 20 degF\nagainst frost: drained every evening", "drained_by_nothing",
             Severity::not_yet},
        Case{"ReliefAFootAway", "ends in: 3/4 relief", "need: [3/4 x 12 nipple brass], ends in: 3/4 relief",
             "relief_valve_far_away", Severity::not_yet},
        Case{"CheckValveBeforeTheRegulator",
             "[1/16 in hole restrictor, 0 to 15 psi air regulator, light spring check valve]",
             "[1/16 in hole restrictor, light spring check valve, 0 to 15 psi air regulator]",
             "check_valve_before_regulator", Severity::not_yet},
        Case{"SupplyOfPvc", "ports: {shop air: 1/4 FNPT}", "ports: {shop air: {port: 1/4 FNPT, material: PVC}}",
             "supply_of_what_shatters", Severity::not_yet},
        Case{"KeyOfARestrictorNarrowerThanTheOneInTheRun", "  set pressure: 1.6 psi",
             "  restrictor: 1/32 in\n  set pressure: 1.6 psi", "restrictor_of_another_hole", Severity::not_yet},
        Case{"GaugeHalfUnderWater", "gauge bung: 1/4 FNPT",
             "gauge bung: {port: 1/4 FNPT, where: side, face height: 9-1/4 in}", "gauge_under_water",
             Severity::not_yet},
        Case{"Hot", "", "hottest: 60 degC", "water_scalds", Severity::not_yet},
        Case{"Frost", "", "coldest: 20 degF", "water_can_freeze", Severity::not_yet},
        Case{"Aluminium", "", "cutting: [aluminium]", "fines_make_hydrogen", Severity::not_yet},
        Case{"Magnesium", "", "cutting: [steel, magnesium]", "fines_make_hydrogen", Severity::not_yet}),
    name_of<Case>);

INSTANTIATE_TEST_SUITE_P(
    Refused, Judged,
    testing::Values(
        Case{"CodePressureTested", "", "test pressure: 15 psi", "code_pressure", Severity::refused},
        Case{"CodePressureAllowedByTheReliefValve", "set 2 psi", "set 15 psi", "code_pressure", Severity::refused},
        Case{"SettingAboveTheWallsLimit", "set pressure: 1.6 psi", "set pressure: 9 psi",
             "setting_is_more_than_walls_may_see", Severity::refused},
        Case{"TestAboveTheWallsLimit", "", "test pressure: 9 psi", "walls_do_not_stand_the_test", Severity::refused},
        Case{"CheckValveAgainstTheDrain", "need: [union]", "need: [union, check valve]", "check_valve_against_drain",
             Severity::refused},
        Case{"CheckValveAgainstTheFill", "from: riser bung, to: inlet, carries: water, need: [union]",
             "from: inlet, to: riser bung, carries: water, need: [union, check valve]", "check_valve_against_fill",
             Severity::refused},
        Case{"InletOverTheRimThatThePressureCannotReach",
             "rim: 5 in\n  floor height: 30 in\n  depth: 4 in\n  ports:\n    inlet: {port: 1 FNPT, where: floor}",
             "rim: 30 in\n  floor height: 30 in\n  depth: 4 in\n  ports:\n    inlet: {port: 1 FNPT, where: over rim}",
             "crest_out_of_reach", Severity::refused},
        Case{"NoRegulator", "need: [1/16 in hole restrictor, 0 to 15 psi air regulator, light spring check valve]",
             "need: [1/16 in hole restrictor, light spring check valve]", "no_regulator", Severity::not_yet},
        Case{"VentInACheckValve", "ends in: 1/2 brass ball valve",
             "ends in: 1/2 spring check valve, special order: yes", "vent_that_no_hand_opens", Severity::not_yet},
        Case{"VentBehindACheckValve", "ends in: 1/2 brass ball valve, carries: air}",
             "ends in: 1/2 brass ball valve, carries: air, need: [spring check valve], special order: yes}",
             "vent_behind_check_valve", Severity::not_yet},
        Case{"VentInAnOpenElbow", "ends in: 1/2 brass ball valve", "ends in: 1/2 street elbow brass", "open_to_the_air",
             Severity::not_yet},
        Case{"NoVentAtAll", "  - {name: vent, from: vent bung, ends in: 1/2 brass ball valve, carries: air}\n",
             "  - {name: vent, from: vent bung, ends in: 1/2 plug, carries: air}\n", "no_vent_behind_check_valve",
             Severity::not_yet},
        Case{"PortThatNothingCloses", "    vent bung: 1/2 FNPT\n", "    vent bung: 1/2 FNPT\n    spare bung: 1 FNPT\n",
             "port_closed_by_nothing", Severity::not_yet},
        Case{"NoWayUp",
             "  - {name: water up, gap: 14-3/8 in, from: riser bung, to: inlet, carries: water, need: [union], "
             "held: {from: fixed, to: fixed}}\n",
             "", "riser_leads_nowhere", Severity::not_yet},
        Case{"FootValve", "riser: {bung: riser bung}", "riser: {bung: riser bung, foot valve: yes}",
             "foot_valve_against_drain", Severity::refused},
        Case{"ReliefValveThatWeeps", "set pressure: 1.6 psi", "set pressure: 1.9 psi", "relief_valve_weeps",
             Severity::not_yet},
        Case{"SwingCheckInAir", "light spring check valve", "swing check valve", "connection_has_no_chain",
             Severity::refused},
        Case{"AluminiumLithium", "", "cutting: [aluminium-lithium]", "aluminium_lithium_over_water", Severity::refused},
        Case{"OxygenForAir", "ports: {shop air: 1/4 FNPT}", "ports: {shop air: 1/4 FNPT, oxygen cylinder: 1/4 FNPT}",
             "gas_that_is_no_air", Severity::refused},
        Case{"FlammableLiquid", "", "liquid: mineral spirits", "liquid_burns", Severity::refused},
        Case{"Oil", "", "liquid: quench oil", "liquid_burns", Severity::refused}),
    name_of<Case>);

struct Fine {
  const char* name;
  const char* from;
  const char* to;
};

class StaysReady : public testing::TestWithParam<Fine> {};

TEST_P(StaysReady, WithIt) {
  const Fine& row = GetParam();
  const Plan plan = *row.from == '\0' ? ready_and(row.to) : ready_with(row.from, row.to);
  EXPECT_THAT(open_in(plan), IsEmpty());
}

// Without its spring the tank comes to all of the lock-up when it is left alone.
TEST(Verdict, StaysReadyWithoutACheckValve) {
  const std::string open = with(kReady, "air regulator, light spring check valve]}\n", "air regulator]}\n");
  const std::string lower = with(open, "set pressure: 1.6 psi", "set pressure: 1.55 psi");
  EXPECT_THAT(open_in(plan_of_text(with(lower, "delivery: 3 scfm", "delivery: 3 scfm\n  lock up: 0.2 psi"))),
              IsEmpty());
  EXPECT_TRUE(has(plan_of_text(open), "relief_valve_weeps"));
}

INSTANTIATE_TEST_SUITE_P(
    Verdict, StaysReady,
    testing::Values(
        Fine{"HotWithAWordOnIt",
             "light spring check valve]}\n"
             "  - {name: gauge, from: gauge bung, ends in: 5 psi gauge, special order: yes, carries: air}\n"
             "  - {name: relief, from: relief bung, ends in: 3/4 relief valve set 2 psi, special order: yes, "
             "carries: air}\n"
             "  - {name: vent, from: vent bung, ends in: 1/2 brass ball valve, carries: air}\n",
             "light spring check valve, 1/2 x 12 nipple black iron, 90 elbow]}\n"
             "  - {name: gauge, from: gauge bung, need: [1/4 x 12 nipple black iron], ends in: 5 psi gauge, "
             "special order: yes, carries: air}\n"
             "  - {name: relief, from: relief bung, ends in: 3/4 relief valve set 2 psi, special order: yes, "
             "carries: air}\n"
             "  - {name: vent, from: vent bung, ends in: 1/2 brass ball valve, carries: air}\n"
             "hottest: 66 degC\nagainst heat: gloves, and a cover on the table\n"},
        Fine{"FrostWithAWordOnIt", "", "coldest: 20 degF\nagainst frost: a heater keeps it at 50 degF"},
        Fine{"AluminiumWithAnOpenVentAndAPurge", "vent: {bore: 1/2 in}\n",
             "vent: {bore: 1/2 in, stays open: yes, purged: yes}\ncutting: [aluminium]\n"},
        Fine{"Steel", "", "cutting: [steel, brass]"}, Fine{"SolubleOil", "", "liquid: water with 4 % soluble oil"},
        Fine{"PassagesSaid", "baffles along: 1", "baffles along: 1, passages: yes"}),
    name_of<Fine>);

TEST(Verdict, IsReadyExactlyWhenThereIsNoFindingAndRefusedWhenOneIs) {
  for (const std::string& text : {std::string(kReady), std::string(kBench), std::string(kFiveThings), starter_job(),
                                  with(kBench, "charge: 9 in", "charge: 2 in")}) {
    const Plan plan = plan_of_text(text);
    EXPECT_EQ(plan.verdict == Verdict::ready, plan.findings.empty());
    EXPECT_EQ(plan.verdict == Verdict::refused, !refusals_of(plan).empty());
    EXPECT_TRUE(std::is_sorted(plan.findings.begin(), plan.findings.end(),
                               [](const Finding& a, const Finding& b) { return a.severity < b.severity; }));
  }
}

// A plan that cannot be done prints no figure that cannot be.
TEST(Verdict, OfARefusedPlanComesWithFiguresThatCanBe) {
  const std::string short_of_water = with(kReady, "charge: 9 in", "charge: 3 in");
  for (const std::string& text : {short_of_water, example_text("air-too-weak"), example_text("walls-too-thin"),
                                  with(kReady, "delivery: 3 scfm\n  receiver: 8 gal", "receiver: 0.2 gal")}) {
    const Plan plan = plan_of_text(text);
    EXPECT_EQ(plan.verdict, Verdict::refused);
    EXPECT_GE(plan.levels.reservoir_depth_up, plan.riser.riser.end_height);
    EXPECT_LE(in_litres(plan.transfer.drain.volume), in_litres(plan.transfer.fill.volume) * (1.0 + 1e-9));
    EXPECT_EQ(plan.leak_test.possible, plan.leak_test.pressure > psig(0.0));
  }
}

}  // namespace
}  // namespace riserun::plan
