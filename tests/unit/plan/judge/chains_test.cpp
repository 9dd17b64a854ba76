// First mends, followed one after the other as they are printed: each row of them ends with nothing open.
#include "plan/advice/change.h"
#include "report/words/lid_rows.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

/// What is open after the first way of the finding, and then of the first that has one, in a few steps.
std::vector<std::string_view> left_open(Plan plan, std::size_t first = 0) {
  constexpr int kMostSteps = 4;
  std::size_t row = first;
  for (int step = 0; step < kMostSteps && row < plan.findings.size(); ++step) {
    const Finding& finding = plan.findings[row];
    if (finding.ways_to_mend.empty() && finding.ways_to_try.empty()) break;
    const Changes way = finding.ways_to_mend.empty() ? finding.ways_to_try.front() : finding.ways_to_mend.front();
    plan = make_plan(plan.catalog, changed(*plan.catalog, plan.job, way));
    row = static_cast<std::size_t>(
        std::find_if(plan.findings.begin(), plan.findings.end(),
                     [](const Finding& each) { return !each.ways_to_mend.empty() || !each.ways_to_try.empty(); }) -
        plan.findings.begin());
  }
  return open_in(plan);
}

const std::string kUnset = with(kReady, "  set pressure: 1.6 psi\n", "");
constexpr const char* kReliefRow =
    "  - {name: relief, from: relief bung, ends in: 3/4 relief valve set 2 psi, special order: yes, carries: air}\n";
constexpr const char* kVentRow = "  - {name: vent, from: vent bung, ends in: 1/2 brass ball valve, carries: air}\n";
constexpr const char* kGaugeRow =
    "  - {name: gauge, from: gauge bung, ends in: 5 psi gauge, special order: yes, carries: air}\n";

// The bung that the job has for it takes it, and a setting that is worked out goes down for a valve that is sold.
TEST(Chain, OfNoReliefValveEndsReadyOnTheBungThatIsFree) {
  const Plan plan = plan_of_text(with(kUnset, kReliefRow, ""));
  EXPECT_THAT(said_of(plan, "no_relief_valve"), HasSubstr("on 'relief bung', which is free"));
  EXPECT_THAT(left_open(plan), IsEmpty());
  for (const ListItem& item : plan.list.buy)
    if (item.name.find("relief valve") != std::string_view::npos) {
      EXPECT_TRUE(item.part) << item.name;
    }
}

// A port that a device is to go on is not to be plugged; two devices do not go on one port.
TEST(Port, IsClaimedByOneMendAlone) {
  const Plan plan = plan_of_text(with(kUnset, kReliefRow, ""));
  EXPECT_THAT(said_of(plan, "port_closed_by_nothing"), HasSubstr("Mend: the relief valve goes there"));
  const std::string none = with(with(kUnset, kReliefRow, ""), kGaugeRow, "");
  const Plan one = plan_of_text(with(with(none, "    gauge bung: 1/4 FNPT\n", ""), "relief bung: 3/4", "spare: 3/4"));
  EXPECT_THAT(said_of(one, "no_relief_valve"), HasSubstr("on 'spare', which is free"));
  EXPECT_THAT(said_of(one, "no_gauge"), HasSubstr("on a bung of its own"));
}

TEST(Chain, OfNoVentAndOfNoGaugeEndsReady) {
  EXPECT_THAT(left_open(plan_of_text(with(kReady, kVentRow, ""))), IsEmpty());
  EXPECT_THAT(left_open(plan_of_text(with(kReady, kGaugeRow, ""))), IsEmpty());
}

// What is bought without a bung for it is bought with one.
TEST(Vent, WithoutABungIsBoughtWithOne) {
  const Plan plan = plan_of_text(with(with(kReady, kVentRow, ""), "    vent bung: 1/2 FNPT\n", ""));
  ASSERT_FALSE(plan.findings.empty());
  EXPECT_THAT(report::sentences_of(plan.findings.front(), UnitSystem::inch),
              HasSubstr("3/4 half coupling, class 3000 in a hole of 1-7/16 in"));
  EXPECT_TRUE(std::any_of(plan.list.buy.begin(), plan.list.buy.end(), [](const ListItem& item) {
    return item.name.find("half coupling") != std::string_view::npos;
  }));
}

TEST(Chain, OfASecondLineToTheTableEndsReady) {
  const std::string two = with(
      with(kReady, "    air bung:", "    riser bung 2: {port: 1 FNPT, bung: full coupling, where: lid}\n    air bung:"),
      "connections:\n",
      "connections:\n  - {name: more water, from: riser bung 2, to: outlet, carries: water, need: [hose]}\n");
  const Plan plan = plan_of_text(two);
  ASSERT_TRUE(has(plan, "second_line_to_the_table")) << testing::PrintToString(open_in(plan));
  // The job says which riser is meant, and no more is said of that.
  EXPECT_THAT(said_of(plan, "second_line_to_the_table"), Not(HasSubstr("riser: {bung")));
  EXPECT_THAT(said_of(plan_of_text(with(two, "riser: {bung: riser bung}\n", "")), "second_line_to_the_table"),
              HasSubstr("'riser: {bung: "));
  const std::vector<std::string_view> left = left_open(plan);
  EXPECT_THAT(left, Not(testing::Contains("second_line_to_the_table"))) << testing::PrintToString(left);
  EXPECT_THAT(left, Not(testing::Contains("port_closed_by_nothing")));
}

TEST(Chain, OfAnOverchargeTakesTheChargeOutFirst) {
  const Plan plan = plan_of_text(with(kUnset, "  charge: 9 in", "  charge: 13-3/4 in"));
  ASSERT_TRUE(has(plan, "charge_leaves_no_air")) << testing::PrintToString(open_in(plan));
  for (std::size_t row = 0; row < plan.findings.size(); ++row) EXPECT_THAT(left_open(plan, row), IsEmpty()) << row;
}

TEST(Chain, OfARegulatorInTheHeatTurnsItsPipeAside) {
  const Plan plan = plan_of_text(std::string(kReady) + "hottest: 140 degF\nagainst heat: guarded, gloves\n");
  const auto hot = std::find_if(plan.findings.begin(), plan.findings.end(), [](const Finding& finding) {
    return finding.reason.code == "air_part_too_hot" && !finding.ways_to_try.empty();
  });
  ASSERT_NE(hot, plan.findings.end()) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(report::sentences_of(*hot, UnitSystem::inch), AllOf(HasSubstr("x 12 nipple"), HasSubstr("'90 elbow'")));
}

// 2 psi, 0.2 psi off and 0.5 psi to full flow pass the factor of four; each alone would have to be finer than any.
TEST(Chain, OfAValveThatIsSlowToOpenNamesBothItsFigures) {
  const Plan plan =
      plan_of_text(with(kUnset, "tolerance: 0.1 psi, rise: 0.2 psi", "tolerance: 0.2 psi, rise: 0.5 psi"));
  ASSERT_TRUE(has(plan, "full_flow_passes_four_to_one")) << testing::PrintToString(open_in(plan));
  for (std::size_t row = 0; row < plan.findings.size(); ++row) EXPECT_THAT(left_open(plan, row), IsEmpty()) << row;
}

// What the walls may come to is no less than what the regulator is set to, whatever the valve is.
TEST(Worst, IsNoLessThanTheSetting) {
  const Plan plan = plan_of_text(with(kReady, "set 2 psi", "set 1 psi"));
  ASSERT_TRUE(has(plan, "relief_valve_blows_in_use")) << testing::PrintToString(open_in(plan));
  EXPECT_GE(plan.relief.greatest, plan.transfer.setting);
}

TEST(Lid, SaysOnceThatABungStandsOnBaffles) {
  const Plan plan =
      ready_with("relief bung: 3/4 FNPT", "relief bung: {port: 3/4 FNPT, where: lid, at: [13.3 in, 10 in]}");
  int said = 0;
  for (const Finding& finding : plan.findings) said += finding.reason.code == "bung_near_baffle" ? 1 : 0;
  EXPECT_EQ(said, 1);
}

bool cautions_so(const Plan& plan, std::string_view code) {
  return std::any_of(plan.cautions.begin(), plan.cautions.end(),
                     [&](const Caution& caution) { return caution.fact.code == code; });
}

TEST(ShutTank, IsSaidToBeWeldedInto) {
  const std::string shut = with(kReady, "  charge: 9 in", "  lid: welded\n  charge: 9 in");
  EXPECT_TRUE(cautions_so(plan_of_text(with(shut, "air bung: {port: 1/2 FNPT, where: lid}",
                                            "air bung: {port: 1/2 FNPT, where: lid, welded in: no}")),
                          "bungs_into_a_shut_tank"));
  EXPECT_FALSE(cautions_so(plan_of_text(shut), "bungs_into_a_shut_tank"));
  EXPECT_FALSE(cautions_so(ready(), "bungs_into_a_shut_tank"));
}

// The heel is what no air pushes up the riser.
TEST(NoDrain, SaysWhatStaysBehind) {
  const Plan& plan = ready();
  const auto caution = std::find_if(plan.cautions.begin(), plan.cautions.end(),
                                    [](const Caution& each) { return each.fact.code == "reservoir_has_no_drain"; });
  ASSERT_NE(caution, plan.cautions.end());
  EXPECT_EQ(std::get<Volume>(caution->fact.values.at(0)), plan.levels.heel);
}

}  // namespace
}  // namespace riserun::plan
