// What a fitter who types a mend as it is printed then has: places on the lid, heights, ranges, measures to buy.
#include "hydraulics/fluid.h"
#include "plan/judge/higher_table.h"
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::HasSubstr;
using testing::Not;

bool is_to_be_had(const Plan& plan, std::string_view words) {
  return std::any_of(plan.list.consumables.begin(), plan.list.consumables.end(), [&](const Consumable& row) {
    return row.name.find(words) != std::string::npos && !row.quantity.empty();
  });
}

// ---- The lid.

// A tank 18 in wide takes a riser of 2 in: half of a boss of 3 in (ASME B16.11), and 2 in for the torch.
TEST(LidRoom, OfAWideRiserIsItsBossAndTheTorch) {
  const auto at = [](double from_front) {
    const std::string wide = with(
        kReady, "riser bung: {port: 1 FNPT, bung: full coupling, where: lid}",
        fmt::format("riser bung: {{port: 2 FNPT, bung: full coupling, where: lid, at: [20 in, {} in]}}", from_front));
    return plan_of_text(
        with(with(wide, "baffles along: 1", "baffles along: 0"), "inlet: {port: 1 FNPT", "inlet: {port: 2 FNPT"));
  };
  EXPECT_FALSE(has(at(3.6), "bung_near_wall"));
  EXPECT_TRUE(has(at(3.4), "bung_near_wall"));
}

TEST(LidRoom, WithoutAPlaceNamesTheBungAndPutsNoRiserIntoASide) {
  const Plan small = plan_of_text(with(kReady, "length: 40 in, width: 20 in", "length: 9 in, width: 6 in"));
  const auto of_riser = std::find_if(small.findings.begin(), small.findings.end(), [](const Finding& finding) {
    return finding.reason.code == "bungs_without_place" && finding.mend && finding.mend->code == "bay_for_the_riser";
  });
  ASSERT_NE(of_riser, small.findings.end());
  EXPECT_THAT(report::sentences_of(*of_riser, UnitSystem::inch), HasSubstr("riser bung"));
  EXPECT_THAT(report::sentences_of(*of_riser, UnitSystem::inch), Not(HasSubstr("where: side")));
}

// ---- What is opened to dip.

TEST(DipRod, DoesNotGoInUnderAManifold) {
  const std::string text = example_text("one-air-bung");
  EXPECT_EQ(plan_of_text(text).verdict, Verdict::ready) << testing::PrintToString(open_in(plan_of_text(text)));
  const std::string no_bung = with(
      with(text, "    dip bung:   {port: 3/4 FNPT, bung: half coupling, where: lid, material: forged steel}\n", ""),
      "  - name: dip                  # opened to read the charge: what is on the air bung stays tight\n    from: dip "
      "bung\n"
      "    ends in: 3/4 plug\n    carries: air\n",
      "");
  const Plan under = plan_of_text(no_bung);
  ASSERT_TRUE(has(under, "dips_under_what_is_made_up")) << testing::PrintToString(open_in(under));
  EXPECT_THAT(said_of(under, "dips_under_what_is_made_up"), HasSubstr("a bung and a 3/4 square head plug"));
  EXPECT_THAT(said_of(under, "dips_under_what_is_made_up"), HasSubstr("'air bung'"));
}

// ---- Ports.

TEST(OpenPort, CalledADrainTakesAValveAndNoPlug) {
  const std::string open = with(kReady, "    vent bung: 1/2 FNPT\n",
                                "    vent bung: 1/2 FNPT\n    drain: {port: 1 FNPT, where: side, face height: 2 in}\n");
  const std::string said = said_of(plan_of_text(open), "port_closed_by_nothing");
  EXPECT_THAT(said, HasSubstr("'from: drain, ends in: ball valve, carries: water'"));
  EXPECT_THAT(said, Not(HasSubstr("plug")));
  const Plan typed = plan_of_text(with(
      open,
      "water temperature:", "  - {name: drain, from: drain, ends in: ball valve, carries: water}\nwater temperature:"));
  EXPECT_EQ(typed.verdict, Verdict::ready) << testing::PrintToString(open_in(typed));
}

// ---- Heights.

TEST(HigherTable, MendsAHoseThatCannotTakeItsOffset) {
  const std::string aside = with(with(kReady, "gap: 14-3/8 in, ", "offset: 10 in, "), "need: [union]", "need: [hose]");
  const Plan plan = plan_of_text(aside);
  const auto tight = std::find_if(plan.findings.begin(), plan.findings.end(), [](const Finding& finding) {
    return finding.mend && report::sentences_of(finding, UnitSystem::inch).find("floor height") != std::string::npos;
  });
  ASSERT_NE(tight, plan.findings.end()) << testing::PrintToString(open_in(plan));
  const std::string said = report::sentences_of(*tight, UnitSystem::inch);
  const std::size_t at = said.find("'floor height: ");
  ASSERT_NE(at, std::string::npos) << said;
  const std::string height = said.substr(at + 1, said.find('\'', at + 1) - at - 1);
  const Plan typed = plan_of_text(with(aside, "floor height: 30 in", height));
  EXPECT_EQ(typed.verdict, Verdict::ready) << height << testing::PrintToString(open_in(typed));
}

// A twentieth of the box stays air: 14 in of water take 14.74 in, to the next quarter.
TEST(Charge, UpToTheLidTakesAHigherBox) {
  EXPECT_FALSE(higher_reservoir(ready().job, inches(13.0)));
  const auto higher = higher_reservoir(ready().job, inches(14.0));
  ASSERT_TRUE(higher);
  EXPECT_EQ(higher->fact, fact("reservoir_so_high", inches(14.75), inches(14.0)));
}

// ---- Ranges.

TEST(Regulator, OfAnotherRangeIsNamedInBothPlaces) {
  const std::string low = with(with(with(kReady, "regulator range: 15 psi", "regulator range: 2 psi"),
                                    "0 to 15 psi air regulator", "0 to 2 psi air regulator"),
                               "  set pressure: 1.6 psi\n", "");
  const Plan plan = plan_of_text(with(low, "floor height: 30 in", "floor height: 60 in"));
  const std::string said = said_of(plan, "fill_needs_more_than_regulator");
  EXPECT_THAT(said, HasSubstr("in 'need' and as 'regulator range: "));
  EXPECT_THAT(said, Not(HasSubstr("one of the two is wrong")));
}

TEST(Stays, StandInPlaceOfTheWidestBarePanel) {
  const Plan plan = plan_of_text(with(kReady, "supports: {baffles across: 2, baffles along: 1}",
                                      "supports: {widest bare panel: {length: 16 in, width: 14 in}}"));
  bool any = false;
  for (const Finding& finding : plan.findings) {
    const std::string said = report::sentences_of(finding, UnitSystem::inch);
    if (said.find("stays every") == std::string::npos) continue;
    any = true;
    EXPECT_THAT(said, HasSubstr("in place of 'widest bare panel'"));
  }
  EXPECT_TRUE(any) << testing::PrintToString(open_in(plan));
}

// ---- Wishes.

TEST(Order, OfLeastLossIsForTheWaterAlone) {
  const std::string wished = std::string(kReady) + "wishes: {order: loss}\n";
  const Plan loss = plan_of_text(wished);
  const auto parts_of_air = [](const Plan& plan) {
    for (const ConnectionPlan& connection : plan.connections)
      if (connection.name == "air in") return connection.chain()->part_count;
    return 0;
  };
  EXPECT_EQ(parts_of_air(loss), parts_of_air(ready()));
}

TEST(CostCap, ThatIsPassedIsSaidWhereAMissedTimeIs) {
  const Plan dear = plan_of_text(std::string(kReady) + "wishes: {cost cap: 80 usd}\n");
  const auto said = std::find_if(dear.cautions.begin(), dear.cautions.end(),
                                 [](const Caution& caution) { return caution.fact.code == "list_above_cost_cap"; });
  ASSERT_NE(said, dear.cautions.end());
  EXPECT_EQ(said->where, Topic::whole_job);
}

// ---- A hose round the table's edge.

TEST(HoseToTheSide, IsCutWhenItIsLaid) {
  const std::string side =
      with(with(with(kReady, "gap: 14-3/8 in, ", ""), "need: [union]", "need: [hose]"),
           "inlet: {port: 1 FNPT, where: floor}", "inlet: {port: 1 FNPT, where: side, opens at: 1 in}");
  const auto note_of = [](const Plan& plan) -> std::string {
    for (const CutItem& cut : plan.list.cut)
      if (cut.used_for == "water up") return cut.note ? std::string(cut.note->code) : std::string();
    return "no cut";
  };
  const Plan guessed = plan_of_text(side);
  EXPECT_EQ(note_of(guessed), "cut_when_hose_is_laid");
  // From the middle of a tank 20 in wide to the edge of a table 22 in wide are 11 in, and up to the inlet 15 or more.
  for (const ConnectionPlan& connection : guessed.connections) {
    if (connection.name != "water up") continue;
    ASSERT_TRUE(connection.hose_rise);
    EXPECT_GT(*connection.hose_length, connection.hose_rise->rise + inches(11.0));
  }
  EXPECT_EQ(note_of(plan_of_text(with(side, "need: [hose]", "need: [hose], hose length: 40 in"))), "");
}

// ---- Measures that are bought.

TEST(Measures, AgainstHeatAndFrostAreOnTheList) {
  const Plan cold = plan_of_text(std::string(kReady) + "coldest: 28 degF\nagainst frost: antifreeze\n");
  EXPECT_TRUE(is_to_be_had(cold, "propylene glycol"));
  EXPECT_FALSE(is_to_be_had(ready(), "propylene glycol"));
  EXPECT_TRUE(is_to_be_had(plan_of_text(std::string(kReady) + "coldest: 20 degF\nagainst frost: heated\n"), "heater"));
  EXPECT_TRUE(is_to_be_had(
      plan_of_text(std::string(kReady) + "hottest: 150 degF\nagainst heat: mixing valve, gloves\n"), "mixing valve"));
}

// A tenth of 9 in in 40 x 20 in, without its supports' share, is 3.1 gal.
TEST(Measures, TellHowMuchAntifreeze) {
  const Plan cold = plan_of_text(std::string(kReady) + "coldest: 28 degF\nagainst frost: antifreeze\n");
  const auto& rows = cold.list.consumables;
  const auto glycol = std::find_if(rows.begin(), rows.end(),
                                   [](const Consumable& row) { return row.name.find("glycol") != std::string::npos; });
  ASSERT_NE(glycol, rows.end());
  EXPECT_THAT(glycol->quantity, testing::AnyOf(HasSubstr("3.0 gal"), HasSubstr("3.5 gal")));
}

// ASHRAE Handbook, Fundamentals, from memory: 10 % by volume are denser by some 8 kg/m3 and 1.4 times as viscous.
TEST(Liquid, OfWaterAndPropyleneGlycolIsUnderstood) {
  const Plan mixed = plan_of_text(
      std::string(kReady) + "liquid: water with 10 % propylene glycol\ncoldest: 28 degF\nagainst frost: antifreeze\n");
  const auto& water = mixed.transfer.system.water;
  const auto& plain = ready().transfer.system.water;
  EXPECT_NEAR(water.density / plain.density, 1.008, 1e-9);
  EXPECT_NEAR(water.viscosity / plain.viscosity, 1.4, 1e-9);
  EXPECT_FALSE(has(mixed, "antifreeze_too_weak"));
  const Plan weak = plan_of_text(
      std::string(kReady) + "liquid: water with 5 % propylene glycol\ncoldest: 28 degF\nagainst frost: antifreeze\n");
  EXPECT_TRUE(has(weak, "antifreeze_too_weak"));
}

}  // namespace
}  // namespace riserun::plan
