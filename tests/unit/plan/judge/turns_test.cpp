// Runs that turn: round a corner, beside a hose, out of a wall and back into it.
#include "quantity/quantities.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

#include <numbers>

namespace riserun::plan {
namespace {

using testing::HasSubstr;

constexpr const char* kInletInFloor = "inlet: {port: 1 FNPT, where: floor}";
constexpr const char* kInletInSide = "inlet: {port: 1 FNPT, where: side, opens at: 1 in}";
constexpr const char* kInletOverRim = "inlet: {port: 1 FNPT, where: over rim, crest: 7 in, opens at: 1 in}";

/// The ready job with that in place of its measured gap and its union.
std::string up_by(const std::string& need) { return with(with(kReady, "gap: 14-3/8 in, ", ""), "need: [union]", need); }

// A bung looks up and the inlet aside: what a rigid run measures between them no height tells.
TEST(RoundACorner, ARigidRunIsNotWorkedOut) {
  for (const char* inlet : {kInletInSide, kInletOverRim}) {
    const Plan rigid = plan_of_text(with(up_by("need: [union]"), kInletInFloor, inlet));
    ASSERT_TRUE(has(rigid, "rigid_run_round_a_corner")) << inlet << testing::PrintToString(open_in(rigid));
    EXPECT_THAT(said_of(rigid, "rigid_run_round_a_corner"), HasSubstr("'need: [hose]'"));
    const auto finding = std::find_if(rigid.findings.begin(), rigid.findings.end(), [](const Finding& each) {
      return each.reason.code == "rigid_run_round_a_corner";
    });
    ASSERT_EQ(finding->ways_to_try.size(), 1u);
    ASSERT_TRUE(finding->ways_to_try[0][0].part);
    const catalog::Part& hose = rigid.catalog->part(*finding->ways_to_try[0][0].part);
    EXPECT_TRUE(hose.flexible && hose.cut_to_length) << hose.name;
    EXPECT_EQ(rigid.catalog->size_name(rigid.catalog->port_type(hose.ports[0].type).size), "1") << hose.name;
    EXPECT_FALSE(has(plan_of_text(with(up_by("need: [hose]"), kInletInFloor, inlet)), "rigid_run_round_a_corner"))
        << inlet;
  }
  // A hose that is bought made up bends as one by the foot does.
  const Plan made_up = plan_of_text(with(up_by("need: [flexible connector]"), kInletInFloor, kInletInSide));
  ASSERT_NE(made_up.connections.front().chain(), nullptr);
  EXPECT_FALSE(has(made_up, "rigid_run_round_a_corner")) << testing::PrintToString(open_in(made_up));
  EXPECT_FALSE(has(ready(), "rigid_run_round_a_corner"));
}

TEST(RoundACorner, HasNoStraightGap) {
  const Plan plan = plan_of_text(with(kReady, kInletInFloor, kInletInSide));
  ASSERT_TRUE(has(plan, "gap_round_a_corner")) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "gap_round_a_corner"), HasSubstr("'face height'"));
  EXPECT_FALSE(plan.connections.front().gap);
  EXPECT_FALSE(has(ready(), "gap_round_a_corner"));
}

// With one elbow the hose leaves flat and has to turn up again: it is longer than gap less fittings.
TEST(ElbowBesideAHose, LeavesItsLengthToBeLaid) {
  const Plan turned = plan_of_text(up_by("need: [90 elbow, hose]"));
  ASSERT_TRUE(has(turned, "fitting_turns_beside_a_hose")) << testing::PrintToString(open_in(turned));
  EXPECT_THAT(said_of(turned, "fitting_turns_beside_a_hose"), HasSubstr("elbow out, or bend a piece of hose"));
  const Plan laid = plan_of_text(up_by("need: [90 elbow, hose], hose length: 18 in"));
  EXPECT_FALSE(has(laid, "fitting_turns_beside_a_hose"));
  EXPECT_FALSE(has(laid, "hose_short_beside_a_turn")) << testing::PrintToString(open_in(laid));
  const Plan too_short = plan_of_text(up_by("need: [90 elbow, hose], hose length: 8 in"));
  EXPECT_TRUE(has(too_short, "hose_short_beside_a_turn")) << testing::PrintToString(open_in(too_short));
  EXPECT_FALSE(has(plan_of_text(up_by("need: [hose]")), "fitting_turns_beside_a_hose"));
}

/// The ready job with a sight tube on the reservoir's side, its ports so far apart.
std::string sighted(const std::string& upper, const std::string& need) {
  const std::string ports = with(kReady, "    vent bung: 1/2 FNPT\n",
                                 "    vent bung: 1/2 FNPT\n    low: {port: 1/4 FNPT, where: side, face height: 2 in}\n"
                                 "    high: {port: 1/4 FNPT, where: side, face height: " +
                                     upper + " in}\n");
  return with(ports, "water temperature:",
              "  - {name: sight, from: low, to: high, carries: water, need: [" + need + "]}\nwater temperature:");
}

const ConnectionPlan& sight(const Plan& plan) { return *connection_named(plan.connections, "sight"); }

// Out of the wall and back in a hose makes two quarter turns: of radius r they take pi r and make 2 r of the distance.
TEST(SightTube, BendsOutOfTheWallAndBackIn) {
  const Plan plan = plan_of_text(sighted("12", "vinyl hose"));
  ASSERT_TRUE(sight(plan).hose_rise && sight(plan).hose_length) << testing::PrintToString(open_in(plan));
  EXPECT_NEAR(in_inches(sight(plan).hose_rise->rise), 10.0, 1e-9);
  EXPECT_GT(*sight(plan).hose_length, inches(10.0));
  const Plan cut = plan_of_text(sighted("12", "vinyl hose], hose length: 10 in, avoid: [iron"));
  EXPECT_TRUE(has(cut, "hose_short_of_its_bends")) << testing::PrintToString(open_in(cut));
}

// Elbows that look at each other hold it straight, and it is as much shorter as they and the nipples reach.
TEST(SightTube, BetweenTwoElbowsIsStraight) {
  const Plan plan = plan_of_text(sighted("12", "90 elbow, 90 elbow, vinyl hose"));
  ASSERT_TRUE(sight(plan).run() != nullptr && sight(plan).hose_length) << testing::PrintToString(open_in(plan));
  const auto& parts = sight(plan).run()->parts;
  const auto is_elbow = [&](const chain::RunPart& link) {
    return turn_between(plan.catalog->part(link.part), link.enter, link.leave()) > 1.0;
  };
  const auto hose = std::find_if(parts.begin(), parts.end(),
                                 [&](const chain::RunPart& link) { return plan.catalog->part(link.part).flexible; });
  const auto first = std::find_if(parts.begin(), parts.end(), is_elbow);
  const bool around = first < hose && std::find_if(hose, parts.end(), is_elbow) != parts.end();
  if (around)
    EXPECT_LT(*sight(plan).hose_length, inches(10.0));
  else
    EXPECT_TRUE(has(plan, "fitting_turns_beside_a_hose")) << testing::PrintToString(open_in(plan));
}

}  // namespace
}  // namespace riserun::plan
