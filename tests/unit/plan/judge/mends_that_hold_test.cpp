// Mends that hold when the job is planned again with them: relief valves and their tests, and boxes that are shut.
#include "plan/advice/change.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

std::string all_said(const Plan& plan) {
  std::string said;
  for (const Finding& finding : plan.findings) said += report::sentences_of(finding, UnitSystem::inch) + "\n";
  return said;
}

// A valve that pops has no rise: it is wide open where it opens, and passes what it does there.
TEST(ReliefValve, WithoutARisePassesWhatItDoesWideOpen) {
  const Plan pops = ready_with("rise: 0.2 psi", "rise: 0 psi");
  EXPECT_GT(pops.relief.valves.front().passes, VolumeFlow());
  EXPECT_FALSE(has(pops, "relief_valve_too_narrow")) << all_said(pops);
  EXPECT_FALSE(has(pops, "relief_valve_has_no_margin")) << all_said(pops);
}

std::string with_valve_far_above(const std::string& text) {
  return with(with(text, "3/4 relief valve set 2 psi", "3/4 relief valve set 10 psi"), "ends in: 5 psi gauge",
              "ends in: 15 psi gauge");
}

// UL 142 tests flat-sided tanks at 3 psi and less: a relief valve of 10 psi over 2 psi in use is the mistake.
TEST(LeakTest, IsNotRaisedForAReliefValveFarAboveTheSetting) {
  const std::string plate = with(kReady, "10 ga steel", "1/4 in steel");
  for (const std::string& text :
       {plate, with(plate, "  set pressure: 1.6 psi\n", ""), plate + "test pressure: 3 psi\n"}) {
    const Plan plan = plan_of_text(with_valve_far_above(text));
    ASSERT_TRUE(has(plan, "test_below_what_may_be_seen")) << all_said(plan);
    EXPECT_THAT(said_of(plan, "test_below_what_may_be_seen"),
                AllOf(HasSubstr("a relief valve set at 2"), Not(HasSubstr("'test pressure' of 1"))));
  }
}

// Where even the lowest valve that stays shut asks for more than 3 psi, the test is no higher than that valve asks.
TEST(LeakTest, IsRaisedNoFartherThanTheLowestValveAsks) {
  const std::string high =
      with(with(kReady, "10 ga steel", "5/16 in steel"), "set pressure: 1.6 psi", "set pressure: 4 psi");
  const Plan plan = plan_of_text(with_valve_far_above(high));
  ASSERT_TRUE(has(plan, "test_below_what_may_be_seen")) << all_said(plan);
  EXPECT_THAT(said_of(plan, "test_below_what_may_be_seen"),
              AllOf(HasSubstr("a relief valve set at 5 psi"), HasSubstr("'test pressure' of 5.3")));
}

// What the fill needs leaves no setting under a valve of 1.5 psi: 1.2 psi on a tank that locks up 0.3 psi higher.
constexpr const char* kNoValve = R"(reservoir:
  inside: {length: 60 in, width: 24 in, height: 14 in}
  sheet: 10 ga steel
  supports: {lid bays: 6 x 3, floor bays: 6 x 3, lid stays: posts, long side bays: 5 x 1, short side bays: 2 x 1}
  ports:
    riser bung: {port: 1 FNPT, bung: full coupling, welded in: no}
    air bung: {port: 1/2 FNPT, bung: half coupling, welded in: no}
    gauge bung: {port: 1/4 FNPT, bung: half coupling, where: lid, welded in: no}
    vent bung: {port: 3/4 FNPT, bung: half coupling, where: lid, welded in: no}
table:
  inside: {length: 72 in, width: 30 in}
  floor height: 30 in
  depth: 4 in
  ports: {inlet: 1 FNPT}
air: {delivery: 5 scfm, regulator range: 2 psi, ports: {shop air: 1/4 FNPT}}
connections:
  - {name: water up, from: riser bung, to: inlet, carries: water}
  - {name: air, from: shop air, to: air bung, carries: air, need: 0 to 2 psi air regulator, special order: yes}
  - {name: gauge, from: gauge bung, ends in: 0 to 3 psi gauge, carries: air, special order: yes}
  - {name: vent, from: vent bung, ends in: ball valve, carries: air}
)";

TEST(ReliefValve, ThatIsAdvisedLeavesASettingUnderIt) {
  const Plan plan = plan_of_text(kNoValve);
  ASSERT_TRUE(has(plan, "no_relief_valve")) << all_said(plan);
  const std::string said = said_of(plan, "no_relief_valve");
  EXPECT_THAT(said, Not(HasSubstr("set at 1.5 psi"))) << said;
  // Followed as it is printed.
  const Plan low =
      plan_of_text(with(with(kNoValve, "    vent bung:", "    relief bung: {port: 1 FNPT, where: lid}\n    vent bung:"),
                        "  - {name: vent,",
                        "  - {name: relief, from: relief bung, ends in: \"1 MNPT relief valve, set 1.5 psi\", "
                        "carries: air, special order: yes}\n  - {name: vent,"));
  EXPECT_TRUE(has(low, "relief_valve_blows_in_use") || has(low, "relief_valve_weeps")) << all_said(low);
}

// Nobody puts stays into a box that is shut, nor makes its sheet thicker.
TEST(ClosedBox, IsMendedFromWithinOnlyWithItsLidOff) {
  const std::string bare = with(kReady, "  supports: {baffles across: 2, baffles along: 1}\n", "");
  const Plan open = plan_of_text(bare);
  ASSERT_THAT(all_said(open), HasSubstr("sheet at least"));
  EXPECT_THAT(all_said(open), Not(HasSubstr("lid cut off")));
  const Plan closed = plan_of_text(with(bare, "  charge: 9 in", "  lid: welded\n  charge: 9 in"));
  EXPECT_THAT(all_said(closed),
              AllOf(HasSubstr("with the lid cut off first ('lid: open'"), Not(HasSubstr("sheet at least"))));
  for (const Finding& finding : closed.findings)
    for (const Changes& way : finding.ways_to_try) {
      const Job mended = changed(*closed.catalog, closed.job, way);
      if (mended.reservoir.supports.layout == closed.job.reservoir.supports.layout) continue;
      EXPECT_EQ(mended.reservoir.lid_closed, false) << finding.reason.code;
    }
}

TEST(ClosedBox, HasTheSupportsOfTheJobInsideOnlyAsAnAssumption) {
  const auto assumes = [](const Plan& plan) {
    return std::any_of(plan.assumptions.begin(), plan.assumptions.end(),
                       [](const Assumption& each) { return each.fact.code == "supports_are_inside"; });
  };
  const Plan closed = ready_with("  charge: 9 in", "  lid: welded\n  charge: 9 in");
  EXPECT_TRUE(assumes(closed));
  EXPECT_TRUE(warns_of(closed, "look_for_the_supports"));
  EXPECT_FALSE(assumes(ready()));
  EXPECT_FALSE(warns_of(ready(), "look_for_the_supports"));
}

}  // namespace
}  // namespace riserun::plan
