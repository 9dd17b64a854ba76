// What mends a finding can be bought, set or typed as it is printed, and what is gravest comes first.
#include "plan/advice/change.h"
#include "plan/advice/check.h"
#include "report/text/plan_text.h"
#include "report/words/remark_words.h"
#include "report/words/say.h"
#include "unit/plan/bench_job.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

std::string said_of_caution(const Plan& plan, std::string_view code) {
  for (const Caution& caution : plan.cautions)
    if (caution.fact.code == code) return report::say(caution.fact, UnitSystem::inch);
  return "";
}

constexpr const char* kAirNeeds =
    "need: [1/16 in hole restrictor, 0 to 15 psi air regulator, light spring check valve]";

/// Of walls that stand the next relief valve that is sold, four times.
Plan of_thick_sheet_with_a_low_relief_valve() {
  return plan_of_text(with(with(kReady, "set 2 psi", "set 1.5 psi"), "10 ga steel", "3/16 in steel"));
}

TEST(Mend, OfAReliefValveThatBlowsIsOneThatIsSold) {
  const std::string said = said_of(of_thick_sheet_with_a_low_relief_valve(), "relief_valve_blows_in_use");
  EXPECT_THAT(said, HasSubstr("a relief valve set at 2 psi"));
}

TEST(Mend, OfAReliefValveThatWeepsIsTypedAsItIsPrinted) {
  const Plan plan = ready_with("set pressure: 1.6 psi", "set pressure: 1.9 psi");
  const auto weeps = std::find_if(plan.findings.begin(), plan.findings.end(),
                                  [](const Finding& each) { return each.reason.code == "relief_valve_weeps"; });
  ASSERT_NE(weeps, plan.findings.end());
  ASSERT_TRUE(weeps->mend);
  EXPECT_NE(weeps->ways_to_mend.empty(), weeps->ways_to_try.empty());
}

TEST(Mend, OfARegulatorTooWideIsARangeThatIsSold) {
  const std::string said =
      said_of(ready_with("0 to 15 psi air regulator", "0 to 60 psi air regulator"), "regulator_range_too_wide");
  EXPECT_THAT(said, HasSubstr("a regulator of 0 to 10 psi"));
}

constexpr const char* kReliefEnd = "3/4 relief valve set 2 psi";

/// Followed, whatever way: the finding is gone, and nothing as grave has come.
void expect_to_mend(const Plan& plan, const Finding& finding) {
  std::vector<Changes> ways = finding.ways_to_mend;
  ways.insert(ways.end(), finding.ways_to_try.begin(), finding.ways_to_try.end());
  const auto is_in = [](const std::vector<Finding>& all, const Finding& one) {
    return std::any_of(all.begin(), all.end(), [&](const Finding& each) {
      return each.reason.code == one.reason.code && each.where == one.where;
    });
  };
  for (const Changes& way : ways) {
    const std::vector<Finding> after = findings_of(plan.catalog, changed(*plan.catalog, plan.job, way));
    EXPECT_FALSE(is_in(after, finding)) << finding.reason.code;
    for (const Finding& left : after) {
      EXPECT_TRUE(left.severity > finding.severity || is_in(plan.findings, left))
          << finding.reason.code << " leads to " << left.reason.code;
    }
  }
}

TEST(Mend, LeadsToNoOtherFinding) {
  const std::vector<std::pair<std::string, std::string>> slips = {
      {kReliefEnd, "3/4 relief valve set 1.5 psi"},
      {"set pressure: 1.6 psi", "set pressure: 2.3 psi"},
      {"set pressure: 1.6 psi", "set pressure: 4 psi"},
      {"tolerance: 0.1 psi, rise: 0.2 psi", "tolerance: 1 psi, rise: 3 psi"},
      {"floor height: 30 in", "floor height: 120 in"},
      {"1/16 in hole restrictor, ", ""},
      {"10 ga steel", "16 ga steel"},
      {"baffles across: 2, baffles along: 1", "baffles across: 1"},
      {"gauge bung: 1/4 FNPT", "gauge bung: {port: 1/4 FNPT, where: side, face height: 3 in}"}};
  int mends = 0;
  for (const auto& [from, to] : slips) {
    SCOPED_TRACE(to);
    const Plan plan = ready_with(from, to);
    EXPECT_FALSE(plan.findings.empty());
    for (const Finding& finding : plan.findings) {
      expect_to_mend(plan, finding);
      mends += finding.ways_to_mend.empty() && finding.ways_to_try.empty() ? 0 : 1;
    }
  }
  EXPECT_GE(mends, 8);
}

TEST(Mend, OfWeakWallsIsStaysOrSheetThatWasTried) {
  const Plan plan = ready_with("{baffles across: 2, baffles along: 1}", "{baffles across: 0}");
  const std::string said = said_of(plan, "fill_needs_more_than_walls_may_see");
  EXPECT_THAT(said, HasSubstr("sheet at least"));
  EXPECT_THAT(said, HasSubstr("; or "));
  // Its keys are those of the single stays that it counts: without that one bars would be cut instead.
  EXPECT_THAT(said, AllOf(HasSubstr("between lid and floor ("), HasSubstr("'lid stays: posts'")));
}

// Who is asked for baffles and has none yet is told of baffles first; what holds the walls otherwise stays what it is.
TEST(Mend, OfAnEmptyBoxIsBafflesFirst) {
  const Plan plan = ready_with("{baffles across: 2, baffles along: 1}", "{baffles across: 0}");
  const auto finding = std::find_if(plan.findings.begin(), plan.findings.end(), [](const Finding& each) {
    return each.reason.code == "fill_needs_more_than_walls_may_see";
  });
  ASSERT_NE(finding, plan.findings.end());
  ASSERT_FALSE(finding->ways_to_try.empty());
  const Changes& first = finding->ways_to_try.front();
  ASSERT_TRUE(first.front().supports);
  EXPECT_GT(first.front().supports->baffles_across, 0);
  EXPECT_FALSE(first.front().supports->lid);
  const std::string said = said_of(plan, finding->reason.code);
  EXPECT_LT(said.find("'baffles across: "), said.find("'lid stays: posts'"));
  const std::string posts = said_of(ready_with("{baffles across: 2, baffles along: 1}", "{lid bays: 2 x 2}"),
                                    "fill_needs_more_than_walls_may_see");
  EXPECT_FALSE(posts.empty());
  EXPECT_THAT(posts, Not(HasSubstr("baffles across")));
}

// Where no stay is missing, only its weld to the lid, that is the mend, and no empty one.
TEST(Mend, OfALidThatItsBafflesDoNotHoldIsToWeldIt) {
  const Plan plan = ready_with("{baffles across: 2, baffles along: 1}",
                               "{baffles across: 2, baffles along: 1, lid bays: 1 x 1, floor bays: 1 x 1}");
  const std::string said = said_of(plan, "fill_needs_more_than_walls_may_see");
  EXPECT_THAT(said, HasSubstr("the limit rises to"));
  EXPECT_THAT(said, Not(HasSubstr("Mend: :")));
  ASSERT_TRUE(plan.walls.stays_for_use);
  const quantity::Facts facts = reservoir::facts_of(*plan.walls.stays_for_use);
  ASSERT_FALSE(facts.empty());
  EXPECT_EQ(facts.front().code, "lid_and_floor_welded_to_baffles");
}

TEST(Mend, OfAGaugeUnderWaterIsItsPortInTheLid) {
  const Plan plan = ready_with("gauge bung: 1/4 FNPT", "gauge bung: {port: 1/4 FNPT, where: side, face height: 3 in}");
  EXPECT_THAT(said_of(plan, "gauge_under_water"), HasSubstr("'gauge bung' in the lid instead"));
}

TEST(Mend, OfARestrictorThatIsMissingIsOneInTheRun) {
  const Plan plan = ready_with("1/16 in hole restrictor, ", "");
  const auto narrow = std::find_if(plan.findings.begin(), plan.findings.end(),
                                   [](const Finding& each) { return each.reason.code == "relief_valve_too_narrow"; });
  ASSERT_NE(narrow, plan.findings.end());
  ASSERT_FALSE(narrow->ways_to_try.empty());
  EXPECT_EQ(narrow->ways_to_try.front().front().key, kRestrictorInRun);
}

TEST(Finding, OfAHoseWithoutRoomSaysWhatItTakes) {
  const std::string hose =
      with(with(kReady, "need: [union], held: {from: fixed, to: fixed}", "need: [hose]"), "gap: 14-3/8 in, ", "");
  EXPECT_FALSE(has(plan_of_text(hose), "no_room_for_hose"));
  const Plan plan = plan_of_text(with(hose, "floor height: 30 in", "floor height: 16 in"));
  EXPECT_THAT(said_of(plan, "no_room_for_hose"), HasSubstr("in higher: 'floor height: "));
}

TEST(Device, OfTheOtherPipeThreadIsNotBoughtUnasked) {
  const Plan plan = ready_with("ends in: 1/2 brass ball valve, carries",
                               "ends in: 1/2 brass ball valve, special order: yes, carries");
  for (const ListItem& item : plan.list.buy) EXPECT_THAT(item.name, Not(HasSubstr("BSP")));
}

// What the window can write into a job are keys of a job.
TEST(Mend, ThatNoKeySaysIsTriedAndNotOffered) {
  const Plan plan = of_thick_sheet_with_a_low_relief_valve();
  for (const Finding& finding : plan.findings)
    for (const Changes& way : finding.ways_to_mend)
      for (const Change& change : way) EXPECT_NE(change.key, kReliefSetting);
  EXPECT_TRUE(std::any_of(plan.findings.begin(), plan.findings.end(),
                          [](const Finding& finding) { return !finding.ways_to_try.empty(); }));
}

TEST(Mend, OfAWeakTestIsATestThatIsLetIn) {
  EXPECT_THAT(said_of(ready_and("test pressure: 2 psi"), "test_below_what_may_be_seen"),
              HasSubstr("a 'test pressure' of 2.31 psi"));
  EXPECT_FALSE(has(ready_and("test pressure: 2.31 psi"), "test_below_what_may_be_seen"));
}

TEST(Mend, OfATestPastTheFactorOfFourIsOneThatKeepsIt) {
  const Plan plan = ready_and("test pressure: 3 psi");
  EXPECT_THAT(said_of(plan, "test_passes_four_to_one"), HasSubstr("a 'test pressure' of"));
}

TEST(Mend, OfASwingCheckInAirIsALightSpringCheck) {
  const std::string said =
      said_of(ready_with("light spring check valve", "swing check valve"), "connection_has_no_chain");
  EXPECT_THAT(said, HasSubstr("take a light spring check valve"));
  EXPECT_THAT(said, Not(HasSubstr("do without")));
}

TEST(Mend, OfGardenHoseThreadInAirIsAnotherWay) {
  const Plan plan = ready_with("shop air: 1/4 FNPT", "shop air: 3/4 MGHT");
  const std::string said = said_of(plan, "connection_has_no_chain");
  EXPECT_THAT(said, HasSubstr("burst under compressed air"));
  EXPECT_THAT(said, Not(HasSubstr("adapter")));
}

// The shop's hose ends in an air plug: its coupler is sold, and comes in unasked.
TEST(Mend, OfAnAirPlugIsItsCouplerUnasked) {
  const Plan plan = plan_of_text(with(kReady, "shop air: 1/4 FNPT", "shop air: 1/4 air plug"));
  EXPECT_EQ(said_of(plan, "connection_has_no_chain"), "");
  EXPECT_EQ(plan.verdict, Verdict::ready);
}

TEST(Mend, OfPlasticNamesThePartAndWhatGoesInItsPlace) {
  const std::string union_up =
      said_of(ready_with("need: [union]", "need: [pvc union]"), "plastic_asked_for_on_the_reservoir");
  EXPECT_THAT(union_up, HasSubstr("one of metal in place of the pvc union"));
  const std::string in_air = said_of(ready_with("light spring check valve]", "light spring check valve, pvc union]"),
                                     "connection_has_no_chain");
  EXPECT_THAT(in_air, HasSubstr("in place of the pvc union take one of metal"));
  const std::string vent = said_of(ready_with("1/2 brass ball valve", "1/2 pvc ball valve"), "connection_has_no_chain");
  EXPECT_THAT(vent, HasSubstr("end it in one of metal in place of the 1/2 socket PVC ball valve"));
}

TEST(Mend, OfAGaugeInARunIsAnEndOfItsOwn) {
  EXPECT_THAT(said_of(ready_with(kAirNeeds, "need: [5 psi gauge]"), "connection_has_no_chain"),
              HasSubstr("'ends in: 5 psi gauge'"));
}

TEST(Reason, OfNoHoseIsTheHeatThatWoundHoseStands) {
  const auto hot = [](const std::string& needs, const std::string& heat) {
    return plan_of_text(
        with(with(kReady, "need: [union], held", "need: [" + needs + "], held"), "water temperature: 60 degF", heat));
  };
  for (const char* heat : {"water temperature: 149 degF", "water temperature: 60 degF\nhottest: 149 degF"}) {
    // Hot water that is shut in draws a vacuum as it cools, which wound hose of rubber stands.
    EXPECT_THAT(said_of(hot("hose, ball valve", heat), "connection_has_no_chain"),
                Not(HasSubstr("is proved for vacuum")))
        << heat;
    // With nothing in it that shuts, the table's end lets air in.
    EXPECT_EQ(said_of(hot("hose", heat), "connection_has_no_chain"), "") << heat;
  }
}

TEST(Finding, OfACheckValveIsSaidThoughTheRunDoesNotGoTogether) {
  const Plan plan = ready_with("need: [union], held: {from: fixed, to: fixed}",
                               "need: [light spring check valve], most parts: 1, held: {from: fixed, to: fixed}");
  EXPECT_TRUE(has(plan, "connection_has_no_chain", Severity::refused));
  EXPECT_TRUE(has(plan, "check_valve_against_drain", Severity::refused));
}

TEST(Finding, OfARestrictorThatIsAKeyAlone) {
  const std::string keyed = with(kReady, "  set pressure: 1.6 psi", "  restrictor: 1/16 in\n  set pressure: 1.6 psi");
  EXPECT_THAT(open_in(plan_of_text(keyed)), testing::IsEmpty());
  EXPECT_TRUE(has(plan_of_text(with(keyed, "1/16 in hole restrictor, ", "")), "restrictor_in_no_run"));
}

TEST(Finding, OfHydrogenIsSaidOnce) {
  const Plan plan = ready_and("cutting: [aluminium]");
  EXPECT_TRUE(has(plan, "fines_make_hydrogen"));
  EXPECT_EQ(said_of_caution(plan, "fines_settle"), "");
  const Plan open =
      plan_of_text(with(kReady, "vent: {bore: 1/2 in}", "vent: {bore: 1/2 in, stays open: yes, purged: yes}") +
                   "cutting: [magnesium]\n");
  EXPECT_THAT(said_of_caution(open, "fines_settle"), HasSubstr("Magnesium fines"));
}

TEST(Caution, OfFrostTellsWhatADrainedTableLeaves) {
  EXPECT_THAT(
      said_of_caution(ready_and("coldest: 20 degF\nagainst frost: drained every evening"), "drained_is_not_empty"),
      HasSubstr("the charge in the reservoir"));
  EXPECT_EQ(said_of_caution(ready_and("against frost: drained every evening"), "drained_is_not_empty"), "");
}

TEST(Caution, OfATableThatRunsOverStandsAtTheTop) {
  const Plan plan = plan_of_text(with(with(kReady, "rim: 5 in", "rim: 4.2 in"), "opens at: 5 in", "opens at: 4.1 in"));
  ASSERT_EQ(plan.transfer.fill.walk_away, transfer::WalkAway::table_overflows);
  const auto over = std::find_if(plan.cautions.begin(), plan.cautions.end(), [](const Caution& caution) {
    return caution.fact.code == "table_overflows_if_left" || caution.fact.code == "table_overflows_unless_set_to";
  });
  ASSERT_NE(over, plan.cautions.end());
  EXPECT_EQ(over->where, Topic::whole_job);
}

TEST(Summary, HasTheFactorOfSafetyBeforeWhatIsOnlyMissing) {
  const Plan plan = ready_with(
      "  - {name: relief, from: relief bung, ends in: 3/4 relief valve set 2 psi, special order: "
      "yes, carries: air}\n",
      "");
  const std::string text = report::summary_text(plan, {});
  EXPECT_LT(text.find("UNDER 4"), text.find("NOT YET"));
}

TEST(Summary, SaysWhereTheWallsNeverKeepTheFactor) {
  const std::string text = report::summary_text(plan_of_text(with(kReady, "10 ga steel", "20 ga steel")), {});
  EXPECT_THAT(text, HasSubstr("4 to 1 at no pressure"));
  EXPECT_THAT(text, HasSubstr("hold at no air pressure at all"));
}

// A mend that lifts one finding by making another worse is none: a relief valve of 4 psi on walls that stand 1.35.
TEST(Mend, ThatTakesAPressureFurtherPastItsLimitIsNotPrinted) {
  Plan plan = ready();
  Finding weeps{Topic::relief,
                fact("relief_valve_weeps", "relief"),
                {},
                fact("valve_that_opens_at", psig(4.0)),
                Severity::not_yet};
  weeps.ways_to_mend = {{{"air.set pressure", psig(1.0)}}};
  const auto too_high = [](double psi) {
    return Finding{Topic::relief,
                   fact("relief_valve_opens_above_limit", "relief"),
                   Against{psig(psi), psig(1.35)},
                   {},
                   Severity::not_yet};
  };
  const auto mend_after = [&](double psi) {
    plan.findings = {weeps, too_high(2.3)};
    keep_what_mends(plan, [&](const Job&) { return std::vector<Finding>{too_high(psi)}; });
    return plan.findings.front().mend.has_value();
  };
  EXPECT_TRUE(mend_after(2.3));
  EXPECT_FALSE(mend_after(4.3));
}

}  // namespace
}  // namespace riserun::plan
