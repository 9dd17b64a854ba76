// What a bench man finds wrong with a plan that is called ready: gases that are no air, vents that let nothing out,
// plastic that shatters, rods that do not go in, water that stays and freezes.
#include "report/card/make_card.h"
#include "report/words/say.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

std::string supplied_by(const std::string& name) {
  return with(with(kReady, "ports: {shop air:", "ports: {" + name + ":"), "from: shop air", "from: " + name);
}

TEST(AnotherGas, IsKnownByTheNamesThatShopsHaveForIt) {
  for (const char* name : {"oxy hose", "O2 bottle", "N2", "helium", "C25 mig gas", "shielding gas", "welding gas",
                           "mixed gas", "torch hose", "steam line", "oxygen"})
    EXPECT_TRUE(has(plan_of_text(supplied_by(name)), "gas_that_is_no_air", Severity::refused)) << name;
  for (const char* name : {"shop air", "weld shop air", "air at the mig bench", "hose reel", "the compressor"})
    EXPECT_THAT(open_in(plan_of_text(supplied_by(name))), IsEmpty()) << name;
  EXPECT_TRUE(has(ready_with("name: air in", "name: oxygen in"), "gas_that_is_no_air", Severity::refused));
}

constexpr const char* kVentOfBall = "ends in: 1/2 brass ball valve, carries: air}";

// Backed off, a regulator is shut from both sides (common practice).
TEST(Vent, ThroughARegulatorLetsNothingOut) {
  const Plan plan = ready_with(kVentOfBall,
                               "ends in: 1/2 brass ball valve, carries: air, special order: yes, "
                               "need: [0 to 10 psi air regulator]}");
  ASSERT_TRUE(has(plan, "vent_behind_regulator")) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "vent_behind_regulator"), HasSubstr("leave the 1/2 air regulator, 0 to 10 psi out"));
}

/// The vent alone in the lid for a rod: the others do not come off for it.
Plan with_vent(const std::string& what) { return ready_with(kVentOfBall, what); }

TEST(DipRod, GoesStraightThroughWhatIsWideOpen) {
  EXPECT_FALSE(has(ready(), "dips_under_what_is_made_up"));
  for (const char* what : {"ends in: 1/2 brass ball valve, carries: air, need: [90 elbow]}",
                           "ends in: 1/2 hose bibb, carries: air, special order: yes}",
                           "ends in: 1/2 brass ball valve, carries: air, need: [strainer]}",
                           "ends in: 1/2 needle valve, carries: air, special order: yes}"})
    EXPECT_TRUE(has(with_vent(what), "dips_under_what_is_made_up"))
        << what << testing::PrintToString(open_in(with_vent(what)));
}

/// The ready job with a drain in a side, its middle so high; `more` stands in the drain's entry.
std::string drain_in_side(const std::string& height, const std::string& more = "",
                          const std::string& port = "3/4 FNPT") {
  const std::string bung =
      with(kReady, "    vent bung: 1/2 FNPT\n",
           "    vent bung: 1/2 FNPT\n    drain: {port: " + port + ", where: side, face height: " + height + " in}\n");
  return with(
      bung, "water temperature:",
      "  - {name: drain, from: drain, ends in: 3/4 ball valve, carries: water" + more + "}\nwater temperature:");
}

// The leak test puts air on it, and PVC shatters under that.
TEST(PlasticNipple, AskedForByNameIsRefusedOnTheTank) {
  const Plan plan = plan_of_text(drain_in_side("1.25", ", need: [PVC nipple]"));
  EXPECT_EQ(plan.verdict, Verdict::refused) << testing::PrintToString(open_in(plan));
  EXPECT_TRUE(has(plan, "plastic_asked_for_on_the_reservoir", Severity::refused));
  EXPECT_THAT(open_in(plan_of_text(drain_in_side("1.25", ", need: [nipple]"))), IsEmpty());
}

const DrainPlan& first_drain(const Plan& plan) { return plan.drains.at(0); }

// Water runs on to the lower lip of the bore: 1.25 in less half of 0.824 in (3/4 in pipe, ASME B36.10M), or of the
// bore of what stands there.
TEST(SideDrain, RunsOnToItsLowerLip) {
  const Plan plan = plan_of_text(drain_in_side("1.25"));
  const DrainPlan& drain = first_drain(plan);
  EXPECT_NEAR(in_inches(drain.stays_at) + in_inches(drain.left_at), 2.0 * 1.25, 1e-6);
  EXPECT_LT(in_inches(drain.stays_at), 1.0);
  EXPECT_NEAR(
      in_cubic_metres(drain.left),
      in_square_metres(transfer::System(plan.transfer.system).reservoir.free_area()) * in_metres(drain.stays_at), 1e-9);
}

// However little water there is, no bung stands lower than its wall and the fillet round it.
TEST(SideDrain, AsLowAsItsBungAllowsIsLow) {
  const std::string shallow = with(drain_in_side("1.25"), "charge: 9 in", "charge: 3.5 in");
  EXPECT_FALSE(has(plan_of_text(shallow), "drain_high_up"));
  const Plan high = plan_of_text(with(drain_in_side("2.5"), "charge: 9 in", "charge: 3.5 in"));
  ASSERT_TRUE(has(high, "drain_high_up")) << testing::PrintToString(open_in(high));
  EXPECT_THAT(said_of(high, "drain_high_up"), HasSubstr("1-3/4 in over the floor or lower"));
}

// What stays over the riser's end freezes round it.
TEST(Frost, IsNotKeptOutByADrainThatLeavesWaterOverTheRisersFoot) {
  const std::string cold = drain_in_side("1.25") + "coldest: 20 degF\nagainst frost: ";
  const Plan plan = plan_of_text(
      with(cold + "drained\n", "riser: {bung: riser bung}", "riser: {bung: riser bung, clearance: 1/2 in}"));
  ASSERT_TRUE(has(plan, "drain_leaves_what_freezes")) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "drain_leaves_what_freezes"), HasSubstr("'where: floor'"));
  const Plan in_floor = plan_of_text(with(cold + "drained\n", "where: side, face height: 1.25 in", "where: floor"));
  EXPECT_FALSE(has(in_floor, "drain_leaves_what_freezes"));
  EXPECT_FALSE(has(plan_of_text(cold + "drained and heated\n"), "drain_leaves_what_freezes"));
}

// The chips come down from the table, against the arrow.
TEST(Strainer, InALineThatRunsBothWaysIsSaid) {
  const std::string hose = with(with(kReady, "gap: 14-3/8 in, ", ""), "need: [union]", "need: [strainer, hose]");
  EXPECT_TRUE(warns_of(plan_of_text(hose), "dirt_lies_on_the_strainer"));
  EXPECT_FALSE(warns_of(ready(), "dirt_lies_on_the_strainer"));
}

TEST(Siphon, ThroughAHoseThatSuctionFlattensIsSaid) {
  const std::string rim = with(with(with(kReady, "gap: 14-3/8 in, ", ""), "need: [union]", "need: [rubber hose]"),
                               "inlet: {port: 1 FNPT, where: floor}",
                               "inlet: {port: 1 FNPT, where: over rim, crest: 7 in, opens at: 1 in}");
  EXPECT_TRUE(warns_of(plan_of_text(rim), "siphon_flattens_hose"));
  EXPECT_FALSE(warns_of(plan_of_text(with(rim, "rubber hose", "suction hose")), "siphon_flattens_hose"));
}

// What a valve passes by its inlet's bore it passes hardly ever: a tenth is taken off by the code (ASME BPVC Section
// VIII UG-131, from memory), and a drilled hole is wide.
TEST(ReliefValve, PassesAQuarterMoreThanTheSupplyGives) {
  EXPECT_GT(ready().relief.valves.front().passes, 1.25 * ready().relief.valves.front().supply);
  const std::string small = with(with(kReady, "relief bung: 3/4 FNPT", "relief bung: 1/4 FNPT"),
                                 "3/4 relief valve set 2 psi", "1/4 relief valve set 2 psi");
  const auto at = [&](const std::string& receiver) {
    return plan_of_text(with(small, "receiver pressure: 110 psi", "receiver pressure: " + receiver + " psi"));
  };
  const Plan narrow = at("110");
  const ReliefValve& valve = narrow.relief.valves.front();
  ASSERT_GT(valve.passes, valve.supply);
  ASSERT_LT(valve.passes, 1.25 * valve.supply);
  EXPECT_TRUE(has(narrow, "relief_valve_has_no_margin")) << testing::PrintToString(open_in(narrow));
  const Plan eased = at("70");
  ASSERT_GT(eased.relief.valves.front().passes, 1.25 * eased.relief.valves.front().supply);
  EXPECT_FALSE(has(eased, "relief_valve_has_no_margin"));
}

// A valve of the manifold cannot be turned up by a need of all its branches.
TEST(ReliefValve, OnASideManifoldIsMendedByTheLid) {
  std::string job = with(kReady, "    relief bung: 3/4 FNPT\n",
                         "    relief bung: {port: 1 FNPT, where: side, face height: 12 in}\n    dip: 3/4 FNPT\n");
  job = with(
      job,
      "  - {name: relief, from: relief bung, ends in: 3/4 relief valve set 2 psi, special order: yes, carries: air}\n",
      "  - {name: dip, from: dip, ends in: 3/4 plug, carries: air}\n"
      "  - {name: manifold, from: relief bung, carries: air, special order: yes, branches: [{name: r, ends in: "
      "3/4 relief valve set 2 psi, special order: yes, looks: straight on}, {name: x, ends in: 1/2 ball valve}]}\n");
  const Plan plan = plan_of_text(job);
  ASSERT_TRUE(has(plan, "relief_valve_lies_flat")) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "relief_valve_lies_flat"), Not(HasSubstr("90 elbow")));
  EXPECT_THAT(said_of(plan, "relief_valve_lies_flat"), HasSubstr("lid"));
}

// A wish for a slow fill is no reason for a setting that the regulator cannot hold.
TEST(SlowWish, StopsAtWhatTheRegulatorHolds) {
  const std::string own = with(kReady, "  set pressure: 1.6 psi\n", "");
  const Plan slow = plan_of_text(own + "wishes: {fill time: 15 min}\n");
  EXPECT_FALSE(has(slow, "regulator_repeats_too_coarsely")) << testing::PrintToString(open_in(slow));
  EXPECT_EQ(slow.transfer.setting_basis.code, "least_that_the_regulator_holds");
}

/// Whether some hose of the run up is wound hose, which stands a vacuum.
bool takes_suction_hose(const Plan& plan) {
  const chain::Run* run = plan.connections.front().run();
  EXPECT_NE(run, nullptr);
  if (run == nullptr) return false;
  return std::any_of(run->parts.begin(), run->parts.end(), [&](const chain::RunPart& link) {
    return plan.catalog->family(plan.catalog->part(link.part).family).name == "suction hose";
  });
}

// With the valve shut the hose beyond it is open to the air at the table: no vacuum of cooling water comes to it.
TEST(HotWater, DrawsNoVacuumOnAHoseBeyondTheValve) {
  const auto with_run = [](const std::string& job, const std::string& need) {
    return plan_of_text(with(with(job, "gap: 14-3/8 in, ", ""), "need: [union]", need) +
                        "hottest: 120 degF\ncoldest: 40 degF\n");
  };
  EXPECT_TRUE(takes_suction_hose(with_run(kReady, "need: [hose, ball valve], in order: yes")));
  const std::string open = with(kReady, "vent: {bore: 1/2 in}", "vent: {bore: 1/2 in, stays open: yes}");
  EXPECT_FALSE(takes_suction_hose(with_run(open, "need: [hose, ball valve], in order: yes")));
  EXPECT_FALSE(takes_suction_hose(with_run(kReady, "need: [ball valve, hose], in order: yes")));
}

/// The one line to the table with a gauge on it.
const std::string kBranchedLine =
    "  - {name: water up, from: riser bung, carries: water, branches: [{to: inlet, need: [hose]}, {name: g, ends in: 5 "
    "psi gauge, special order: yes}]}\n";

// A gauge's tube is shut: nothing runs out of it.
TEST(Gauge, OnTheWaterClosesItsPort) {
  const Plan plan = plan_of_text(with(
      kReady,
      "  - {name: water up, gap: 14-3/8 in, from: riser bung, to: inlet, carries: water, need: [union], held: {from: "
      "fixed, to: fixed}}\n",
      kBranchedLine));
  EXPECT_FALSE(has(plan, "water_runs_out"));
  EXPECT_FALSE(has(plan, "second_line_to_the_table"));
  ASSERT_TRUE(has(plan, "line_branches_on_its_way")) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "line_branches_on_its_way"), HasSubstr("'to' in place of 'branches'"));
}

// An adapter with two ends alike is no part that anybody makes where the catalog has none.
TEST(MissingPart, HasTwoEndsThatAreUnlike) {
  const Plan plan =
      ready_with("light spring check valve]", "light spring check valve, air plug], avoid: [air coupler]");
  ASSERT_TRUE(has(plan, "connection_has_no_chain", Severity::refused)) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "connection_has_no_chain"), Not(HasSubstr("adapter")));
}

// Of pipe that no store sells as a nipple the counter must know what thread to cut.
TEST(RiserPipe, IsListedWithItsThread) {
  const std::string metric = with(with(kReady, "riser bung: {port: 1 FNPT,", "riser bung: {port: Rp 1,"),
                                  "inlet: {port: 1 FNPT", "inlet: {port: Rp 1");
  const Plan plan =
      plan_of_text(with(with(metric, "need: [union]", "need: [hose], special order: yes"), "gap: 14-3/8 in, ", ""));
  const auto listed = std::find_if(plan.list.buy.begin(), plan.list.buy.end(), [](const ListItem& item) {
    return item.measure && item.measure->code == "pipe_threaded_at_one_end";
  });
  ASSERT_NE(listed, plan.list.buy.end());
  EXPECT_THAT(report::say(*listed->measure, UnitSystem::inch), HasSubstr("BSPT at one end"));
}

// A table is not put two feet higher for a hose.
TEST(HigherTable, IsNoMendForMoreThanAFoot) {
  const auto said = [](const std::string& nipples) {
    const Plan plan = plan_of_text(with(with(with(kStiff, "set 2 psi", "set 2.5 psi"), "gap: 14-3/8 in, ", ""),
                                        "need: [union]", "need: [" + nipples + ", union]"));
    EXPECT_TRUE(has(plan, "run_beyond_its_assumed_gap")) << nipples << testing::PrintToString(open_in(plan));
    return said_of(plan, "run_beyond_its_assumed_gap");
  };
  EXPECT_THAT(said("1 x 12 nipple, 1 x 12 nipple"), HasSubstr("in higher: 'floor height: "));
  EXPECT_THAT(said("1 x 12 nipple, 1 x 12 nipple, 1 x 4 nipple"), Not(HasSubstr("in higher")));
}

// It stands in the water beside them.
TEST(RiserPipe, IsOfAnAluminiumTanksOwnMetal) {
  const Plan plan = ready_with("sheet: 10 ga steel", "sheet: 5/16 in aluminium");
  ASSERT_TRUE(plan.riser.material);
  EXPECT_EQ(plan.catalog->material(*plan.riser.material).id, "aluminium");
}

// By the Aluminum Association's numbers: fines of these make hydrogen, and of those with lithium more.
TEST(Cutting, ReadsAlloysByTheirNumbers) {
  EXPECT_TRUE(ready_and("cutting: [6061, 7075 plate]").job.cutting.aluminium);
  EXPECT_TRUE(ready_and("cutting: 2195 sheet").job.cutting.aluminium_lithium);
  EXPECT_FALSE(ready_and("cutting: steel").job.cutting.aluminium);
}

// Who buys by the list takes the part that the catalog has, at its price.
TEST(Regulator, OfTheRightRangeIsListedWithItsPrice) {
  const Plan plan = plan_of_text(with(with(kReady, "regulator range: 15 psi", "regulator range: 60 psi"),
                                      "0 to 15 psi air regulator", "0 to 60 psi air regulator"));
  ASSERT_TRUE(has(plan, "regulator_range_too_wide")) << testing::PrintToString(open_in(plan));
  const auto listed = std::find_if(plan.list.buy.begin(), plan.list.buy.end(), [](const ListItem& item) {
    return item.name.find("air regulator, 0 to 5 psi") != std::string::npos ||
           item.name.find("air regulator, 0 to 10 psi") != std::string::npos;
  });
  ASSERT_NE(listed, plan.list.buy.end());
  EXPECT_TRUE(listed->each.known());
}

// The open side of a tee is on the card, or it is forgotten.
TEST(Card, TellsOfThePlugInATee) {
  const Plan plan = plan_of_text(
      with(with(kReady, "gap: 14-3/8 in, ", ""), "need: [union]", "need: [tee, hose], hose length: 18 in"));
  ASSERT_NE(plan.connections.front().run(), nullptr) << testing::PrintToString(open_in(plan));
  std::string runs;
  for (const report::CardRow& row : report::card_of(plan, UnitSystem::inch).work) runs += row.value + "\n";
  EXPECT_THAT(runs, HasSubstr("1 tee (its open end: 1 square head plug"));
}

// Two pieces that are cut to length share what the fittings leave of the gap.
TEST(SeveralPieces, ShareTheGap) {
  const std::string cup = with(with(kReady, "gap: 14-3/8 in, ", ""), "inlet: {port: 1 FNPT, where: floor}",
                               "inlet: {port: 1 solder cup, where: floor}");
  const Plan plan = plan_of_text(with(cup, "need: [union]", "need: [hose]"));
  EXPECT_FALSE(has(plan, "hose_loops_in_its_gap")) << testing::PrintToString(open_in(plan));
}

}  // namespace
}  // namespace riserun::plan
