// A relief valve counts where it guards the reservoir, and nowhere else.
#include "report/words/remark_words.h"
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

constexpr const char* kFromItsBung = "{name: relief, from: relief bung, ends in";
constexpr const char* kReliefBung = "relief bung: 3/4 FNPT";

struct Place {
  const char* name;
  const char* from;
  const char* to;
  const char* code;  // empty: it guards
};

// Spring and weight close it upright alone (makers' instructions, common practice).
TEST(ReliefValve, InASideStandsUprightByAnElbow) {
  const std::string side = with(kReady, kReliefBung, "relief bung: {port: 3/4 FNPT, where: side, face height: 9.6 in}");
  const Plan flat = plan_of_text(side);
  EXPECT_TRUE(has(flat, "relief_valve_lies_flat"));
  EXPECT_EQ(flat.verdict, Verdict::not_yet);
  const Plan turned = plan_of_text(with(side, "from: relief bung,", "from: relief bung, need: [90 elbow],"));
  EXPECT_THAT(open_in(turned), testing::IsEmpty());  // over the water it guards
  EXPECT_EQ(turned.relief.valves.size(), 1u);
  EXPECT_FALSE(has(plan_of_text(kReady), "relief_valve_lies_flat"));
}

/// The ready job's gauge, relief valve and vent on a tree on the relief bung.
std::string with_tree(const std::string& gauge, const std::string& relief) {
  std::string job =
      with(kReady, "  - {name: gauge, from: gauge bung, ends in: 5 psi gauge, special order: yes, carries: air}\n", "");
  job = with(job,
             "  - {name: relief, from: relief bung, ends in: 3/4 relief valve set 2 psi, special order: yes, "
             "carries: air}\n",
             "  - {name: tree, from: relief bung, carries: air, branches: [{name: gauge, ends in: 5 psi gauge, special "
             "order: yes" +
                 gauge + "}, {name: relief, ends in: 3/4 relief valve set 2 psi, special order: yes" + relief +
                 "}, {name: vent, ends in: 1/2 brass ball valve}]}\n");
  // What the vent stood on is opened to dip.
  job = with(job, "  - {name: vent, from: vent bung, ends in: 1/2 brass ball valve, carries: air}\n",
             "  - {name: dip, from: vent bung, ends in: 1/2 plug, carries: air}\n");
  return with(job, "    gauge bung: 1/4 FNPT\n", "");
}

// What clogs shuts the way, as a valve does (ASME BPVC Section VIII UG-135, from memory).
TEST(ReliefValve, BehindAScreenGuardsNothing) {
  for (const char* screen : {"3/4 pipe strainer", "air filter"}) {
    const Plan plan = plan_of_text(
        with(kReady, kFromItsBung, std::string("{name: relief, from: relief bung, need: [") + screen + "], ends in"));
    ASSERT_TRUE(has(plan, "relief_valve_behind_a_screen")) << screen << testing::PrintToString(open_in(plan));
    EXPECT_THAT(said_of(plan, "relief_valve_behind_a_screen"), testing::HasSubstr("out: nothing stands between"));
  }
  EXPECT_TRUE(
      has(plan_of_text(with_tree("", ", looks: straight on, need: [pipe strainer]")), "relief_valve_behind_a_screen"));
}

/// The one relief valve that guards.
bool stands_upright(const Plan& plan) {
  const auto way =
      std::find_if(plan.ways.begin(), plan.ways.end(), [](const Way& each) { return each.use == WayUse::relief; });
  return way != plan.ways.end() && way->upright;
}

TEST(ReliefValve, OnATreeStandsUprightWhereItLooksStraightOn) {
  EXPECT_THAT(open_in(plan_of_text(with_tree("", ", looks: straight on"))), testing::IsEmpty());
  // Asked for, and where the rest leaves it nothing else.
  for (const std::string& job : {with_tree("", ", looks: to a side"), with_tree(", looks: straight on", "")}) {
    const Plan plan = plan_of_text(job);
    EXPECT_EQ(plan.verdict, Verdict::not_yet);
    EXPECT_FALSE(stands_upright(plan));
    EXPECT_THAT(said_of(plan, "relief_valve_turned_aside"), testing::HasSubstr("'looks: straight on'"));
  }
  // A tree out of a side: straight on lies, and to a side can be turned up.
  const auto out_of_a_side = [](const std::string& job) {
    return plan_of_text(with(job, kReliefBung, "relief bung: {port: 3/4 FNPT, where: side, face height: 12 in}"));
  };
  EXPECT_TRUE(has(out_of_a_side(with_tree("", ", looks: straight on")), "relief_valve_lies_flat"));
  EXPECT_TRUE(stands_upright(out_of_a_side(with_tree("", ", looks: to a side"))));
}

TEST(ReliefValve, OnAnElbowOutOfTheLidLies) {
  const Plan turned = ready_with("from: relief bung, ends in", "from: relief bung, need: [90 elbow], ends in");
  EXPECT_TRUE(has(turned, "relief_valve_turned_aside"));
  // A second one turns it up again.
  const Plan up = ready_with("from: relief bung, ends in", "from: relief bung, need: [90 elbow, 90 elbow], ends in");
  EXPECT_TRUE(stands_upright(up));
}

class ReliefPlaces : public testing::TestWithParam<Place> {};

TEST_P(ReliefPlaces, AreJudged) {
  const Place& row = GetParam();
  const std::string job = with(kReady, "ports: {shop air: 1/4 FNPT}", "ports: {shop air: 1/4 FNPT, main: 3/4 FNPT}");
  const Plan plan = plan_of_text(with(job, row.from, row.to));
  const std::string code = row.code;
  if (code.empty()) {
    EXPECT_THAT(open_in(plan), testing::IsEmpty());
    EXPECT_EQ(plan.relief.valves.size(), 1u);
    return;
  }
  EXPECT_TRUE(has(plan, code)) << testing::PrintToString(open_in(plan));
  EXPECT_FALSE(has(plan, "no_relief_valve"));  // it is there, in the wrong place
  EXPECT_FALSE(plan.relief.given);
  EXPECT_EQ(plan.verdict, Verdict::not_yet);
  // Nothing is counted on: the walls may see the whole supply.
  EXPECT_EQ(plan.relief.greatest, plan.walls.full_supply);
  for (const Finding& finding : plan.findings)
    if (finding.reason.code == code) {
      EXPECT_THAT(report::sentences_of(finding, UnitSystem::inch),
                  testing::AnyOf(testing::HasSubstr("a port of its own"), testing::HasSubstr("' in the lid instead")));
    }
}

INSTANTIATE_TEST_SUITE_P(
    Of, ReliefPlaces,
    testing::Values(
        Place{"OnItsBung", kFromItsBung, kFromItsBung, ""},
        Place{"BehindANippleAndAUnion", kFromItsBung, "{name: relief, from: relief bung, need: [union], ends in", ""},
        Place{"BehindABallValve", kFromItsBung, "{name: relief, from: relief bung, need: [ball valve], ends in",
              "relief_valve_behind"},
        Place{"BehindACheckValve", kFromItsBung,
              "{name: relief, from: relief bung, need: [light spring check valve], ends in", "relief_valve_behind"},
        Place{"BehindARegulator", kFromItsBung,
              "{name: relief, from: relief bung, need: [0 to 15 psi air regulator], ends in", "relief_valve_behind"},
        Place{"UpstreamOfTheRegulator", kFromItsBung, "{name: relief, from: main, ends in",
              "relief_valve_on_the_supply"},
        Place{"OnTheTable", kFromItsBung, "{name: relief, from: outlet, ends in", "relief_valve_off_the_reservoir"},
        Place{"InTheFloor", kReliefBung, "relief bung: {port: 3/4 FNPT, where: floor}", "relief_valve_under_water"},
        Place{"InASideUnderTheWater", kReliefBung, "relief bung: {port: 3/4 FNPT, where: side, face height: 8.9 in}",
              "relief_valve_under_water"}),
    name_of<Place>);

// The valve on the vent's far side is no second one: the one on its bung counts, the other is said to be idle.
TEST(ReliefPlaces, AnIdleValveDoesNotStandInForOneThatGuards) {
  const Plan plan = ready_with("ends in: 1/2 brass ball valve, carries: air}\n",
                               "carries: air, need: [ball valve], special order: yes, ends in: 3/4 relief valve set 2 "
                               "psi}\n");
  EXPECT_EQ(plan.relief.valves.size(), 1u);
  EXPECT_EQ(plan.relief.valves.front().connection, "relief");
  EXPECT_THAT(open_in(plan), testing::Contains("relief_valve_behind"));
}

constexpr const char* kReliefLine =
    "  - {name: relief, from: relief bung, ends in: 3/4 relief valve set 2 psi, special order: yes, carries: air}\n";

std::string ready_set_to(const char* psi) {
  return with(with(kReady, kReliefLine, ""), "set pressure: 1.6 psi", std::string("set pressure: ") + psi + " psi");
}

// Walls that keep 4 to 1 up to 1.73 psi.
TEST(AdvisedReliefSetting, StaysBelowWhatKeepsTheFactorWhereThereIsRoom) {
  const Plan plan = plan_of_text(ready_set_to("1.6"));
  EXPECT_TRUE(has(plan, "no_relief_valve"));
  EXPECT_FALSE(has(plan, "relief_setting_passes_four_to_one"));
  EXPECT_GT(plan.relief.set_pressure, plan.transfer.setting);
  EXPECT_LE(plan.relief.set_pressure, plan.walls.four_to_one);
}

TEST(AdvisedReliefSetting, ThatPassesTheFactorIsAFinding) {
  const double four = in_psi(plan_of_text(ready_set_to("1.6")).walls.four_to_one);
  const auto set_to = [](double psi) { return plan_of_text(ready_set_to(fmt::format("{:.4f}", psi).c_str())); };
  EXPECT_FALSE(has(set_to(four - 0.002), "relief_setting_passes_four_to_one"));
  const Plan over = set_to(four + 0.002);
  EXPECT_TRUE(has(over, "relief_setting_passes_four_to_one"));
  EXPECT_GT(over.relief.set_pressure, over.walls.four_to_one);
}

// Thin walls under a table so high that the water needs more than 4 to 1 allows: both settings are said.
TEST(AdvisedReliefSetting, OfASettingOfTheProgramsOwnIsAFindingToo) {
  const Plan plan = plan_of_text(R"(reservoir:
  inside: {length: 30 in, width: 18 in, height: 14 in}
  sheet: 11 ga A36
  supports: {baffles across: 1}
  charge: 9 in
table:
  inside: {length: 28 in, width: 16 in}
  floor height: 36 in
  depth: 4 in
air: {delivery: 3 scfm, receiver: 8 gal}
)");
  EXPECT_GT(plan.relief.set_pressure, plan.walls.four_to_one);
  EXPECT_TRUE(has(plan, "setting_passes_four_to_one"));
  EXPECT_TRUE(has(plan, "relief_setting_passes_four_to_one"));
}

// Between 1.6 and 1.73 psi none is sold: the mend makes room for the next one.
TEST(AdvisedReliefSetting, SaysWhenNoValveThatIsSoldFits) {
  const auto advice = [](const Plan& plan) {
    for (const Finding& finding : plan.findings)
      if (finding.reason.code == "no_relief_valve") return report::sentences_of(finding, UnitSystem::inch);
    return std::string();
  };
  const std::string said = advice(plan_of_text(ready_set_to("1.6")));
  // Two plates stand across: who welds these in welds in a third before he fits posts and stiffeners.
  EXPECT_THAT(said, testing::HasSubstr("'baffles across: 3, baffles along: 1' in all: the limit rises to"));
  EXPECT_THAT(said, testing::Not(testing::HasSubstr("posts")));
  EXPECT_THAT(said, testing::HasSubstr("together with a relief valve set at 2 psi"));
  // 1.5 psi is sold.
  EXPECT_THAT(advice(plan_of_text(ready_set_to("1.2"))), testing::Not(testing::HasSubstr("none that is sold")));
}

}  // namespace
}  // namespace riserun::plan
