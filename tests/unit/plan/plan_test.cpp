// The main example against arithmetic that is done here by hand, from the measures in its file and published tables.
#include "plan/job/starter_job.h"
#include "unit/plan/shipped.h"
#include "unit/report/words/said.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::plan {
namespace {

using testing::DoubleNear;

// ASME B1.20.1 Table 2, 1-1/4 NPT: L1 0.420 in, L3 0.2609 in.
const double kMakeUp = 0.420 + 0.2609;
// ASME B36.10M, 1-1/4 schedule 40.
const double kBore = 1.380;
const double kArea = 48.0 * 20.0 * 0.99;  // in2, less 1 % for the baffles
const double kTable = 54.0 * 26.0;        // in2
const double kGallon = 231.0;             // in3

TEST(MainExample, CanBeDone) {
  EXPECT_EQ(bevel_bench().verdict, Verdict::ready);
  for (const ConnectionPlan& connection : bevel_bench().connections) {
    ASSERT_NE(connection.chain(), nullptr) << connection.name;
    EXPECT_TRUE(connection.chain()->buildable) << connection.name;
    EXPECT_FALSE(connection.chain()->steps.empty()) << connection.name;
  }
}

TEST(MainExample, CutsTheRiserFromInsideHeightBungClearanceAndMakeUp) {
  const RiserPlan& riser = bevel_bench().riser;
  EXPECT_NEAR(in_inches(riser.riser.cut_length), 15.0 - 1.0 - 0.625 + kMakeUp, 1e-6);
  EXPECT_NEAR(in_inches(riser.riser.end_height), 0.625, 1e-9);
  EXPECT_NEAR(in_inches(riser.request.pipe.bore), kBore, 1e-6);
  ASSERT_TRUE(riser.stock_part);
  EXPECT_EQ(bevel_bench().catalog->part(*riser.stock_part).id, "threaded-pipe/black-iron/1-1-4x18");
  EXPECT_TRUE(riser.stock_from_bin);
  EXPECT_NEAR(in_inches(riser.riser.offcut), 18.0 - (15.0 - 1.0 - 0.625 + kMakeUp) - 1.0 / 16.0, 1e-6);
}

TEST(MainExample, HoldsWhatTheTableNeedsAndStopsShortOfTheRim) {
  const Levels& levels = bevel_bench().levels;
  const double line = in_us_gallons(levels.line_volume);
  EXPECT_NEAR(in_us_gallons(levels.need), kTable * 4.0 / kGallon, 1e-6);
  EXPECT_NEAR(in_us_gallons(levels.charge), kArea * 8.5 / kGallon, 1e-6);
  EXPECT_NEAR(in_us_gallons(levels.heel), kArea * 0.625 / kGallon, 1e-6);
  // The surface dips into the riser's end, at 1 m/s in it, from 0.69 (Q^2 / g)^0.2 over it (Lubin and Springer 1967).
  const double flow = 0.25 * std::numbers::pi * std::pow(kBore * 0.0254, 2);
  const double dip = 0.69 * std::pow(flow * flow / 9.80665, 0.2) / 0.0254;
  EXPECT_NEAR(in_us_gallons(levels.usable), kArea * (8.5 - 0.625 - dip) / kGallon, 1e-6);
  EXPECT_NEAR(in_us_gallons(levels.rim_capacity), kTable * 5.5 / kGallon, 1e-6);
  EXPECT_NEAR(in_inches(levels.reservoir_depth_up), 8.5 - (kTable * 4.0 + line * kGallon) / kArea, 1e-6);
  EXPECT_NEAR(in_inches(levels.charge_mark_below_lid), 6.5, 1e-9);
  EXPECT_TRUE(levels.enough);
  EXPECT_FALSE(levels.can_overflow);
}

// The line holds the riser (1.38 in bore, cut length), a foot of 1-1/4 in hose and two barbs: under a quarter gallon.
TEST(MainExample, HasALineOfThePartsOfItsChain) {
  const hydraulics::Line& line = bevel_bench().line;
  ASSERT_TRUE(bevel_bench().water_connection);
  EXPECT_NEAR(in_us_gallons(line.volume()), 0.17, 0.05);
  EXPECT_NEAR(in_inches(line.smallest_bore()), 0.938, 1e-6);  // the 1-1/4 barb's own bore
}

// Water at 62 degF is 998.8 kg/m3 (IAPWS). The hold pressure balances the two levels.
TEST(MainExample, HoldsThePressureOfTheLift) {
  const double lift = (31.0 + 4.0) - in_inches(bevel_bench().levels.reservoir_depth_up);
  const double psi = 998.8 * 9.80665 * lift * 0.0254 / 6894.757;
  EXPECT_NEAR(in_psi(bevel_bench().transfer.fill.hold_pressure), psi, 0.005 * psi);
  EXPECT_NEAR(in_inches(bevel_bench().levels.lift_full), lift, 1e-6);
  const double start = 998.8 * 9.80665 * (31.0 - 8.5) * 0.0254 / 6894.757;
  EXPECT_NEAR(in_psi(bevel_bench().transfer.fill.pressure_to_start), start, 0.005 * start);
}

TEST(MainExample, FillsInTheTimeWishedForAndDrainsToAFilm) {
  const TransferPlan& transfer = bevel_bench().transfer;
  EXPECT_EQ(transfer.fill.stop, transfer::Stop::goal_reached);
  EXPECT_LE(in_minutes(transfer.fill.time), 3.0);
  EXPECT_GT(transfer.setting, transfer.fill.pressure_to_finish);
  EXPECT_LE(transfer.setting, bevel_bench().walls.limit);
  EXPECT_EQ(report::said(transfer.setting_basis), "as the job says");
  EXPECT_EQ(transfer.drain.stop, transfer::Stop::goal_reached);
  EXPECT_NEAR(in_us_gallons(transfer.left_in_table), kTable * (1.0 / 25.4) / kGallon, 1e-6);  // 1 mm, well wetted
}

// The floor panel: 20 x 16 in, b/a = 1.25, 3/16 in steel. Edge moment of a plate with held edges between 0.0639
// (b/a 1.2) and 0.0687 (1.3): Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., Table 35.
TEST(MainExample, LimitsThePressureByItsWidestPanel) {
  const double beta = (0.0639 + 0.0687) / 2.0;
  const double stress_per_psi = 6.0 * beta * std::pow(16.0 / 0.1875, 2);
  const double water = 998.8 * 9.80665 * 8.5 * 0.0254 / 6894.757;
  const double limit = 0.6 * 36000.0 / stress_per_psi - water;
  EXPECT_NEAR(in_psi(bevel_bench().walls.limit), limit, 0.02 * limit);
  const double set = in_psi(bevel_bench().transfer.setting);
  EXPECT_NEAR(bevel_bench().walls.factor_at_set, 36000.0 / (stress_per_psi * (set + water)), 0.1);
  EXPECT_NEAR(bevel_bench().walls.factor_at_full_supply, 36000.0 / (stress_per_psi * (110.0 + water)), 0.002);
  EXPECT_NEAR(in_pounds_force(bevel_bench().walls.lid_force), set * 48.0 * 20.0, 0.5);
  ASSERT_TRUE(bevel_bench().walls.next_stay);
  EXPECT_GT(bevel_bench().walls.next_stay->limit_after, bevel_bench().walls.limit);
}

// ASME PCC-2 Article 501: E = 2.5 Pt V (1 - (Pa/Pt)^0.286), TNT = E / 4266920 J/kg, at least 30 m.
TEST(MainExample, TestsAtWhatTheReliefValveAllowsAndSaysWhatItStores) {
  const LeakTestPlan& test = bevel_bench().leak_test;
  EXPECT_NEAR(in_psi(test.pressure), 2.0 + 0.1 + 0.2, 1e-9);  // set, tolerance, rise; within UL 142, 42.2.1
  EXPECT_NEAR(in_us_gallons(test.air_volume), kArea * 15.0 / kGallon, 1e-6);
  const double atmosphere = 101325.0 * std::pow(1.0 - 2.25577e-5 * 600.0 * 0.3048, 5.25588);  // ISO 2533
  const double absolute = atmosphere + 2.3 * 6894.757;
  const double volume = kArea * 15.0 * std::pow(0.0254, 3);
  const double energy = 2.5 * absolute * volume * (1.0 - std::pow(atmosphere / absolute, 0.286));
  EXPECT_NEAR(in_joules(test.energy.energy), energy, 0.01 * energy);
  EXPECT_NEAR(in_metres(test.energy.standoff), 30.0, 1e-9);
  // Gauge and temperature are read at what it is let down to for the solution: p / T, both absolute.
  EXPECT_NEAR(in_psi(test.brushed_at), 1.6, 1e-9);
  EXPECT_NEAR(in_pascals(test.drift_per_kelvin), (atmosphere + in_pascals(test.brushed_at)) / 289.8, 3.0);
  EXPECT_EQ(test.air_port, "air bung");
  EXPECT_EQ(test.plugs.size(), 5u);
  for (const TestPlug& plug : test.plugs) EXPECT_TRUE(plug.part) << plug.port;
}

TEST(MainExample, SetsTheReliefBetweenSettingAndLimit) {
  const ReliefPlan& relief = bevel_bench().relief;
  EXPECT_TRUE(relief.given);
  EXPECT_GT(relief.set_pressure, bevel_bench().transfer.setting);
  EXPECT_LE(relief.set_pressure, bevel_bench().walls.limit);
  ASSERT_TRUE(relief.failed_regulator_pressure);
  EXPECT_LT(*relief.failed_regulator_pressure, bevel_bench().walls.limit);  // by the restrictor in the run
  EXPECT_FALSE(relief.restrictor_bore);
  const Plan without = plan_of_text(with(example_text("bevel-bench"), "1/16 in hole restrictor, ", ""));
  ASSERT_TRUE(without.relief.failed_regulator_pressure);
  EXPECT_GT(*without.relief.failed_regulator_pressure, *relief.failed_regulator_pressure);
}

TEST(MainExample, CutsTheHoseToTheGap) {
  const ConnectionPlan& up = bevel_bench().connections.at(0);
  ASSERT_TRUE(up.gap);
  EXPECT_NEAR(in_inches(*up.gap), 29.75 - 16.625, 1e-9);
  ASSERT_TRUE(up.hose_length);
  EXPECT_EQ(up.hose_joints, 2);
  // The hose goes 1-1/4 in aside on the way, and has slack: 4 % of some 10 in.
  EXPECT_NEAR(in_inches(up.chain()->length), 13.25 + 0.4, 0.2);
  EXPECT_NEAR(in_inches(up.run_length), 29.75 - 16.625, 1e-6);
}

TEST(MainExample, KeepsTheMeasuredPartMarkedAsMeasured) {
  const auto part = bevel_bench().catalog->find_part("ball-valve/brass/3-4");
  ASSERT_TRUE(part);
  EXPECT_TRUE(bevel_bench().catalog->part(*part).measured);
  EXPECT_FALSE(shipped_catalog()->part(*part).measured);
  Length length = metres(0.0);
  for (const catalog::Port& port : bevel_bench().catalog->part(*part).ports) length += port.reach;
  EXPECT_NEAR(in_inches(length), 2.625, 1e-9);
}

TEST(MainExample, HasNoPlasticThatShattersOnTheReservoir) {
  for (const ConnectionPlan& connection : bevel_bench().connections)
    for (const chain::RunPart& part : connection.chain()->parts)
      EXPECT_TRUE(bevel_bench().catalog->part(part.part).air);
}

TEST(Starter, LoadsAndCanBeDone) {
  const Plan plan = plan_of_text(starter_job());
  EXPECT_TRUE(refusals_of(plan).empty());
  EXPECT_NE(plan.connections.at(0).chain(), nullptr);
  EXPECT_NE(plan.connections.at(1).chain(), nullptr);
}

TEST(Plan, HoldsTheStandingCautionsWhateverTheJob) {
  for (const char* name : {"bevel-bench", "air-too-weak", "one-part-short", "walls-too-thin"}) {
    const Plan plan = plan_of_example(name);
    const auto standing = [&](Topic where) {
      return std::count_if(plan.cautions.begin(), plan.cautions.end(),
                           [&](const Caution& caution) { return caution.standing && caution.where == where; });
    };
    EXPECT_EQ(standing(Topic::whole_job), 2) << name;
    EXPECT_EQ(standing(Topic::care), 3) << name;
  }
}

TEST(Plan, WarnsOfHydrogenWhereAluminiumIsCut) {
  const auto warns = [](const Plan& plan) {
    for (const Finding& finding : plan.findings)
      if (report::said(finding.reason).find("hydrogen") != std::string::npos) return true;
    return false;
  };
  const std::string text = example_text("walls-too-thin");
  EXPECT_FALSE(warns(plan_of_text(text)));
  EXPECT_TRUE(warns(plan_of_text(text + "cutting: [steel, aluminium]\n")));
}

TEST(Plan, TakesABinPartOnlyAsOftenAsItIsThere) {
  const Plan& plan = bevel_bench();
  for (const catalog::BinItem& item : plan.job.bin.items) {
    int taken = 0;
    for (const ListItem& row : plan.list.from_bin)
      if (row.part == item.part) taken += row.quantity;
    EXPECT_LE(taken, item.count) << plan.catalog->part(item.part).id;
  }
}

}  // namespace
}  // namespace riserun::plan
