// The ways of the air through the connections: each part at its own place, on its own side of the regulator.
#include "report/words/remark_words.h"
#include "unit/plan/bench_job.h"
#include "unit/plan/shipped.h"
#include "unit/report/words/said.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

namespace riserun::plan {
namespace {

using testing::HasSubstr;

Plan with_need(const std::string& need) {
  return plan_of_text(with(kBench, "to: air bung, carries: air}", "to: air bung, carries: air, need: [" + need + "]}"));
}

const Plan& air_bench() {
  static const Plan plan = plan_of_text(kBench);
  return plan;
}

const AirPlace* place_named(const Plan& plan, const std::string& words) {
  for (const AirPlace& place : plan.air.places)
    if (place.name.find(words) != std::string::npos) return &place;
  return nullptr;
}

std::optional<report::SaidAssumption> assumed_of(const Plan& plan, const std::string& what) {
  for (const Assumption& each : plan.assumptions)
    if (const auto said = report::say(each, UnitSystem::inch); said.what == what) return said;
  return std::nullopt;
}

// A hole of 1/32 in passes 0.112 scfm at 1 psi and 0.194 at 3 psi at a coefficient of 1 (a compressed-air handbook).
// Set to 2 psi, at most 0.82 of 0.158 come in, and what is lifted, 44 x 22 x 4 in, takes as much room as air.
TEST(Air, AHoleBehindTheRegulatorShowsInTheFillTime) {
  const std::string set = with(kBench, "regulator range: 15 psi", "regulator range: 15 psi\n  set pressure: 2 psi");
  const Plan wide = plan_of_text(set);
  const Plan narrow =
      plan_of_text(with(set, "to: air bung, carries: air}",
                        "to: air bung, carries: air, need: [1/32 in hole restrictor], special order: yes}"));
  const double lifted = 44.0 * 22.0 * 4.0 / 1728.0;
  EXPECT_LT(in_minutes(wide.transfer.fill.time), 6.0);
  EXPECT_GT(in_minutes(narrow.transfer.fill.time), lifted / (0.82 * 0.158));
  EXPECT_EQ(narrow.transfer.fill.limited_by, "air line");
  const AirPlace* hole = place_named(narrow, "1/32");
  ASSERT_NE(hole, nullptr);
  EXPECT_FALSE(hole->before_regulator);
  EXPECT_NEAR(in_psi(hole->before), 2.0, 0.01);  // a trickle costs the regulator nothing
  EXPECT_NEAR(in_psi(hole->behind), 0.0, 0.01);
}

TEST(Air, EachPlaceHasThePressureThatTheOneBeforeLeaves) {
  const std::vector<AirPlace>& places = air_bench().air.places;
  ASSERT_GE(places.size(), 3U);
  EXPECT_EQ(places.front().before, air_bench().transfer.system.air.receiver_pressure);
  for (std::size_t i = 1; i < places.size(); ++i) {
    EXPECT_NEAR(in_psi(places[i].before), in_psi(places[i - 1].behind), 0.01 + 1e-3 * in_psi(places[i].before));
    EXPECT_LE(places[i].behind, places[i].before);
  }
  EXPECT_LE(places.back().behind, air_bench().transfer.setting);
}

TEST(Air, ACheckValvesSpringIsAddedToTheSetting) {
  const Plan checked = with_need("check valve");
  const double spring = in_psi(checked.transfer.system.air.after_regulator.opens_at());
  EXPECT_GE(spring, 0.3);  // the catalog's
  EXPECT_LE(spring, 0.5);
  EXPECT_NEAR(in_psi(checked.transfer.fill.pressure_to_finish) - in_psi(air_bench().transfer.fill.pressure_to_finish),
              spring, 1e-6);
  EXPECT_EQ(checked.transfer.fill.hold_pressure, air_bench().transfer.fill.hold_pressure);
  const Plan told =
      plan_of_text(with(with(kBench, "to: air bung, carries: air}", "to: air bung, carries: air, need: [check valve]}"),
                        "receiver: 8 gal", "receiver: 8 gal\n  check valve opens at: 0.25 psi"));
  EXPECT_NEAR(in_psi(told.transfer.fill.pressure_to_finish) - in_psi(air_bench().transfer.fill.pressure_to_finish),
              0.25, 1e-6);
}

TEST(Air, LeftAloneTheTankGetsTheSettingAndTheLockUp) {
  EXPECT_NEAR(in_psi(air_bench().transfer.fill.pressure_left_alone), in_psi(air_bench().transfer.setting) + 0.3, 1e-9);
  const Plan tight = plan_of_text(with(kBench, "receiver: 8 gal", "receiver: 8 gal\n  lock up: 0 psi"));
  EXPECT_EQ(tight.transfer.fill.pressure_left_alone, tight.transfer.setting);
}

TEST(Air, ARegulatorInTheRunPartsIt) {
  const Plan plan = plan_of_text(with(kBench, "to: air bung, carries: air}",
                                      "to: air bung, carries: air, need: [1/16 in hole restrictor, 0 to 15 psi air "
                                      "regulator], in order: yes, special order: yes}"));
  EXPECT_FALSE(plan.transfer.system.air.before_regulator.empty());
  const AirPlace* hole = place_named(plan, "1/16");
  ASSERT_NE(hole, nullptr);
  EXPECT_TRUE(hole->before_regulator);
  EXPECT_GT(hole->before, psig(20.0));
}

TEST(Air, ARestrictorOfTheJobStandsBeforeTheRegulator) {
  const Plan plan = plan_of_text(with(kBench, "receiver: 8 gal", "receiver: 8 gal\n  restrictor: 1/16 in"));
  const AirPlace* hole = place_named(plan, "restrictor");
  ASSERT_NE(hole, nullptr);
  EXPECT_TRUE(hole->before_regulator);
  EXPECT_LT(*plan.relief.failed_regulator_pressure, *air_bench().relief.failed_regulator_pressure);
}

TEST(Vents, OfConnectionsCountAndAssumeNothing) {
  EXPECT_FALSE(assumed_of(bevel_bench(), "vent bore"));
  ASSERT_EQ(bevel_bench().transfer.system.vent.ways.size(), 1U);
  EXPECT_FALSE(bevel_bench().transfer.system.vent.ways.front().shut());
  EXPECT_THAT(report::said(bevel_bench().notes), testing::Contains(HasSubstr("what the job says of its vent")));
}

TEST(Vents, ANarrowOneShowsInTheDrain) {
  const auto drained = [](const std::string& valve) {
    const std::string text = with(
        with(kBench, "air bung: 1/2 FNPT", "air bung: 1/2 FNPT\n    vent bung: 1/2 FNPT"), "carries: air}",
        "carries: air}\n  - {name: vent, from: vent bung, ends in: " + valve + ", carries: air, special order: yes}");
    return plan_of_text(text).transfer;
  };
  const TransferPlan wide = drained("1/2 ball valve brass");
  const TransferPlan narrow = drained("1/4 ball valve brass");
  EXPECT_GT(narrow.drain.time, wide.drain.time);
}

TEST(Water, AFootValveHoldsTheTable) {
  const Plan plan =
      plan_of_text(with(kBench, "riser: {bung: riser bung}", "riser: {bung: riser bung, foot valve: yes}"));
  EXPECT_EQ(plan.transfer.drain.stop, transfer::Stop::pressures_balance);
  EXPECT_NEAR(in_us_gallons(plan.transfer.left_in_table), in_us_gallons(plan.levels.need), 1e-6);
  EXPECT_GT(plan.transfer.fill.pressure_to_finish, air_bench().transfer.fill.pressure_to_finish);
  ASSERT_TRUE(assumed_of(plan, "what opens the foot valve"));
  EXPECT_EQ(plan.line.elements().front().name, "foot valve");
}

std::string over_the_rim(const std::string& more) {
  return with(kBench, "inlet: {port: 1 FNPT, where: floor}", "inlet: {port: 1 FNPT, where: over rim" + more + "}");
}

// The crest says what starts the fill: 0.0361 psi an inch (62.4 lb/ft3 at 60 degF).
TEST(OverTheRim, TheCrestDecidesThePressureToStart) {
  const Plan low = plan_of_text(over_the_rim(", crest: 6 in, opens at: 1 in"));
  const Plan high = plan_of_text(over_the_rim(", crest: 9 in, opens at: 1 in"));
  EXPECT_NEAR(in_psi(high.transfer.fill.pressure_to_start - low.transfer.fill.pressure_to_start), 3.0 * 0.0361, 2e-3);
  EXPECT_GE(low.transfer.fill.pressure_to_finish, low.transfer.fill.pressure_to_start);
}

TEST(OverTheRim, DrainsToItsMouthWhereItIsCoveredAndNotAtAllWhereItIsNot) {
  const Plan covered = plan_of_text(over_the_rim(", crest: 6 in, opens at: 1 in"));
  ASSERT_TRUE(covered.transfer.siphon);
  EXPECT_TRUE(covered.transfer.siphon->covered);
  EXPECT_NEAR(in_us_gallons(covered.transfer.left_in_table), 44.0 * 22.0 * 1.0 / 231.0, 0.01);
  const Plan dry = plan_of_text(over_the_rim(", crest: 6 in, opens at: 4.01 in"));
  EXPECT_FALSE(dry.transfer.siphon->covered);
  EXPECT_NEAR(in_us_gallons(dry.transfer.left_in_table), in_us_gallons(dry.levels.need), 0.01);
  const Plan silent = plan_of_text(over_the_rim(""));
  EXPECT_FALSE(silent.transfer.siphon->covered);
  EXPECT_TRUE(assumed_of(silent, "highest point of the pipe over the rim"));
}

// A millimetre on 44 x 22 in of floor, and 3.86 mm where it is oily.
TEST(Drained, SaysWhatStaysOnTheFloor) {
  const TransferPlan& transfer = air_bench().transfer;
  const double per_millimetre = 44.0 * 22.0 / 25.4 / 231.0;
  EXPECT_NEAR(in_us_gallons(transfer.left_in_table), per_millimetre, 0.01 * per_millimetre);
  EXPECT_NEAR(in_us_gallons(transfer.left_if_oily), 3.86 * per_millimetre, 0.02 * per_millimetre);
  ASSERT_TRUE(transfer.to_thinnest_film);
  EXPECT_GT(*transfer.to_thinnest_film, transfer.drain.time);
  EXPECT_NEAR(in_inches(transfer.drain.table_depth), 0.125, 1e-6);
}

TEST(Margin, IsBetweenADipAndAnIntake) {
  const RiserMargin& margin = air_bench().transfer.margin;
  EXPECT_GT(margin.flow, cubic_metres_per_second(0.0));
  EXPECT_LT(margin.dip, margin.intake);
  EXPECT_GT(margin.left, margin.dip);
}

// v^2/2g against the rim, of an inlet in the floor alone.
TEST(Jet, OfAnInletInTheFloorHasAHeight) {
  ASSERT_TRUE(air_bench().transfer.jet);
  const JetPlan& jet = *air_bench().transfer.jet;
  const double v = in_metres_per_second(jet.velocity);
  EXPECT_NEAR(in_metres(jet.height), v * v / 2.0 / 9.80665, 1e-9);
  EXPECT_NEAR(in_inches(jet.rim), 5.0, 1e-9);
  EXPECT_FALSE(plan_of_text(over_the_rim("")).transfer.jet);
  EXPECT_FALSE(plan_of_text(with(kBench, "where: floor", "where: side")).transfer.jet);
}

TEST(Liquid, WaterWithCoolantIsWaterAndOilIsNot) {
  const auto burns = [](const std::string& liquid) {
    return read_job(*shipped_catalog(), std::string(kBench) + "liquid: " + liquid + "\n", "bench.yaml")
        .liquid.flammable;
  };
  for (const char* liquid : {"water", "water with 5 % soluble oil", "coolant", "water with inhibitor and biocide"})
    EXPECT_FALSE(burns(liquid)) << liquid;
  for (const char* liquid :
       {"oil", "cutting oil", "water and gasoline", "coolant and alcohol", "soluble oil and diesel"})
    EXPECT_TRUE(burns(liquid)) << liquid;
}

// What eats the tank, or is too thick, is not worked out, though there is water in it.
TEST(Liquid, WaterWithAcidIsNotWater) {
  for (const char* liquid : {"water with 5 % phosphoric acid", "5 % NaOH in water", "salt water", "sea water",
                             "water with 3 % NaCl", "coolant 80 %", "water and 40 % glycol", "ammonia water 25 %"})
    EXPECT_THROW(read_job(*shipped_catalog(), std::string(kBench) + "liquid: " + liquid + "\n", "bench.yaml"),
                 quantity::InputError)
        << liquid;
  for (const char* liquid : {"tap water", "5 % coolant in water", "water with a few per cent of soluble oil"})
    EXPECT_NO_THROW(read_job(*shipped_catalog(), std::string(kBench) + "liquid: " + liquid + "\n", "bench.yaml"))
        << liquid;
}

// A time by the clock changes nothing that is worked out; a wish that lowers the setting says so.
TEST(FillTime, MeasuredIsNoWish) {
  const Plan measured = plan_of_text(std::string(kBench) + "measured fill time: 20 min\n");
  EXPECT_EQ(measured.transfer.setting, air_bench().transfer.setting);
  const Plan hurried = plan_of_text(std::string(kBench) + "wishes: {fill time: 1 s}\n");
  EXPECT_TRUE(std::any_of(hurried.cautions.begin(), hurried.cautions.end(),
                          [](const Caution& caution) { return caution.fact.code == "wish_not_met"; }));
  const std::string fine =
      with(kBench, "regulator range: 15 psi", "regulator range: 15 psi\n  regulator repeatability: 0.001 psi");
  const Plan wished = plan_of_text(fine + "wishes: {fill time: 20 min}\n");
  EXPECT_LT(wished.transfer.setting, air_bench().transfer.setting);
  EXPECT_THAT(report::said(wished.transfer.setting_basis), HasSubstr("without the wish"));
}

TEST(Balance, ASettingEqualToTheHoldPressureIsSaidToBeThat) {
  const double finish = in_psi(air_bench().transfer.fill.pressure_to_finish);
  const auto set = [](double psi) {
    return plan_of_text(with(kBench, "regulator range: 15 psi",
                             "regulator range: 15 psi\n  set pressure: " + std::to_string(psi) + " psi"));
  };
  const Plan at = set(finish + 1e-5);
  const auto balances = [](const Plan& plan) {
    return std::any_of(plan.findings.begin(), plan.findings.end(),
                       [](const Finding& finding) { return finding.reason.code == "setting_only_balances"; });
  };
  EXPECT_TRUE(balances(at));
  EXPECT_EQ(at.verdict, Verdict::refused);
  EXPECT_FALSE(balances(set(finish * 1.02)));
}

// Right at the edge: the advised hole is the widest sold that does, and what it does was worked out with it.
TEST(Restrictor, IsTheNextDrillDownAndDoes) {
  const ReliefPlan& relief = air_bench().relief;
  ASSERT_TRUE(relief.restrictor);
  EXPECT_GT(*relief.failed_regulator_pressure, air_bench().walls.limit);
  EXPECT_LE(relief.restrictor->bore, relief.restrictor->widest);
  EXPECT_LE(relief.restrictor->riser_open, air_bench().walls.limit);
  const catalog::Part& part = air_bench().catalog->part(relief.restrictor->part);
  EXPECT_EQ(part.ports[0].bore, relief.restrictor->bore);
  EXPECT_EQ(air_bench().catalog->size_name(air_bench().catalog->port_type(part.ports[0].type).size), "1/4");
  for (std::uint32_t row = 0; row < air_bench().catalog->parts().size(); ++row) {
    const catalog::Part& other = air_bench().catalog->part(PartId{row});
    if (air_bench().catalog->family(other.family).role != catalog::Role::restrictor) continue;
    EXPECT_TRUE(other.ports[0].bore <= relief.restrictor->bore || other.ports[0].bore > relief.restrictor->widest);
  }
  const Plan put_in = plan_of_text(
      with(kBench, "receiver: 8 gal",
           "receiver: 8 gal\n  restrictor: " + std::to_string(in_inches(relief.restrictor->bore)) + " in"));
  EXPECT_NEAR(in_psi(*put_in.relief.failed_regulator_pressure), in_psi(relief.restrictor->riser_open), 1e-4);
  EXPECT_NEAR(in_seconds(put_in.transfer.fill.time), in_seconds(relief.restrictor->fill_time), 1.0);
  EXPECT_FALSE(put_in.relief.restrictor);
}

}  // namespace
}  // namespace riserun::plan
