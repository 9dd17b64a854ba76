// Mends that settle what they are for: followed as they are printed, nothing of the kind is left.
#include "plan/advice/change.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

const Finding* found(const Plan& plan, std::string_view code) {
  for (const Finding& finding : plan.findings)
    if (finding.reason.code == code) return &finding;
  return nullptr;
}

TEST(LidStacks, AreGivenRoomByOneHeight) {
  const std::string low = with(with(kReady, "gap: 14-3/8 in, ", ""), "floor height: 30 in", "floor height: 16-1/2 in");
  const Plan plan = plan_of_text(low);
  int stacks = 0;
  for (const Finding& finding : findings_of(shipped_catalog(), plan.job)) {
    if (finding.reason.code != "no_room_under_the_table") continue;
    ++stacks;
    ASSERT_EQ(finding.ways_to_try.size(), 2u);  // a higher table, or a lower reservoir
    for (const Changes& way : finding.ways_to_try)
      for (const Finding& left : findings_of(shipped_catalog(), changed(*plan.catalog, plan.job, way)))
        EXPECT_NE(left.reason.code, "no_room_under_the_table");
  }
  EXPECT_GE(stacks, 2);
}

// A dial that shows 1.6 psi well and stands the 5.9 psi of a valve that opens so slowly is not sold.
TEST(Gauge, ThatIsNotRatedIsMendedByAValveThatOpensSooner) {
  const std::string slow = with(with(kStiff, "tolerance: 0.1 psi, rise: 0.2 psi", "tolerance: 0.398 psi, rise: 3 psi"),
                                "3/4 relief valve set 2 psi", "3/4 relief valve set 2.5 psi");
  const Plan plan = plan_of_text(slow);
  const Finding* finding = found(plan, "device_not_rated");
  ASSERT_NE(finding, nullptr) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "device_not_rated"), HasSubstr("whose maker holds it within"));
  ASSERT_EQ(finding->ways_to_mend.size() + finding->ways_to_try.size(), 1u);
  const Changes& way = finding->ways_to_mend.empty() ? finding->ways_to_try.front() : finding->ways_to_mend.front();
  for (const Finding& left : findings_of(shipped_catalog(), changed(*plan.catalog, plan.job, way)))
    EXPECT_NE(left.reason.code, "device_not_rated");
}

// A gauge on a hose is refused, so none is offered against the heat.
TEST(Heat, IsKeptFromGaugeAndReliefValveByPipeAlone) {
  const Plan plan = ready_and("hottest: 150 degF\nagainst heat: guarded, gloves");
  int stiff = 0;
  for (const Finding& finding : plan.findings) {
    const std::string said = report::sentences_of(finding, UnitSystem::inch);
    if (finding.reason.code != "air_part_too_hot" || said.find("'gauge'") == std::string::npos) continue;
    ++stiff;
    EXPECT_THAT(said, AllOf(HasSubstr("nipple"), Not(HasSubstr("hose"))));
  }
  EXPECT_GT(stiff, 0) << testing::PrintToString(open_in(plan));
}

TEST(Heat, AtTheLimitItselfIsNotSaidToBeAllowed) {
  const Plan at = ready_and("hottest: 60 degC");
  ASSERT_NE(found(at, "water_scalds"), nullptr);
  EXPECT_FALSE(found(at, "water_scalds")->numbers);
  EXPECT_TRUE(found(ready_and("hottest: 66 degC"), "water_scalds")->numbers);
}

TEST(WideRiser, InANarrowerBungIsSaidForWhatItIs) {
  const Plan plan = ready_with("riser: {bung: riser bung}", "riser: {bung: riser bung, pipe: 2}");
  ASSERT_TRUE(has(plan, "riser_wider_than_its_bung")) << testing::PrintToString(open_in(plan));
  EXPECT_FALSE(has(plan, "line_below_the_least_bore"));
  EXPECT_THAT(said_of(plan, "riser_wider_than_its_bung"),
              AllOf(HasSubstr("2 in riser is wider than 'riser bung', a 1 in bung"), HasSubstr("'riser: {pipe: 1}'")));
  EXPECT_FALSE(has(ready_with("riser: {bung: riser bung}", "riser: {bung: riser bung, pipe: 3/4}"),
                   "riser_wider_than_its_bung"));
}

// The least that a hose has room in is printed no less than it is.
TEST(LeastGap, TypedAsItIsPrintedIsEnough) {
  const auto with_gap = [](const std::string& gap) {
    return plan_of_text(with(with(kReady, "gap: 14-3/8 in", "gap: " + gap), "need: [union]", "need: [hose]"));
  };
  const Plan plan = with_gap("3-11/16 in");
  const Finding* finding = found(plan, "connection_has_no_chain");
  ASSERT_NE(finding, nullptr) << testing::PrintToString(open_in(plan));
  const std::string said = said_of(plan, "connection_has_no_chain");
  const std::size_t at = said.find("farther apart, to ");
  ASSERT_NE(at, std::string::npos) << said;
  const std::size_t from = at + std::string("farther apart, to ").size();
  const std::string gap = said.substr(from, said.find(" in", from) + 3 - from);
  EXPECT_NE(gap, "3-11/16 in");
  EXPECT_EQ(found(with_gap(gap), "connection_has_no_chain"), nullptr) << gap;
}

// What opens the check valve is added to the setting: 1 psi by the job's word, 0.2 as the light one is sold.
TEST(CheckValve, ThatOpensLateIsMendedByTheOneThatIsSold) {
  const Plan plan = plan_of_text(with(kStiff, "  set pressure: 1.6 psi\n", "  check valve opens at: 1 psi\n"));
  ASSERT_FALSE(plan.findings.empty());
  const Finding& first = plan.findings.front();
  EXPECT_TRUE(first.reason.code.starts_with("relief_valve_")) << first.reason.code;
  EXPECT_THAT(report::sentences_of(first, UnitSystem::inch), testing::HasSubstr("'air.check valve opens at' left out"));
  ASSERT_EQ(first.ways_to_mend.size(), 1u);
  EXPECT_THAT(findings_of(plan.catalog, changed(*plan.catalog, plan.job, first.ways_to_mend.front())),
              testing::IsEmpty());
}

}  // namespace
}  // namespace riserun::plan
