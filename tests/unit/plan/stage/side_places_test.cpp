// Bungs in a side that the job gives no place: clear of corner, baffles, stiffeners and each other.
#include "report/words/lid_rows.h"
#include "unit/plan/judge/ready_job.h"

#include <gtest/gtest.h>

#include <string>

namespace riserun::plan {
namespace {

/// The ready job with a drain in a side; `more` stands in its entry.
std::string with_drain(const std::string& more, const std::string& text = kReady) {
  const std::string port =
      with(text, "    relief bung:",
           "    drain: {port: 3/4 FNPT, bung: half coupling, where: side" + more + "}\n    relief bung:");
  return with(port, "  - {name: vent,",
              "  - {name: drain, from: drain, ends in: 3/4 brass ball valve, carries: water}\n  - {name: vent,");
}

const LidBung& bung_of(const Plan& plan, const std::string& port) {
  return *std::find_if(plan.lid_map.bungs.begin(), plan.lid_map.bungs.end(),
                       [&](const LidBung& bung) { return bung.port == port; });
}

// The end of 20 in has a baffle in its middle; half of a boss of 1-3/8 in and 1/2 in for the welds over the floor.
TEST(SidePlaces, OfADrainIsLowInTheMiddleOfABay) {
  const Plan plan = plan_of_text(with_drain(", welded in: no"));
  const LidBung& drain = bung_of(plan, "drain");
  ASSERT_TRUE(drain.on_side);
  EXPECT_FALSE(drain.on_side->in_front);
  EXPECT_NEAR(in_inches(drain.on_side->along), 5.0, 1e-9);
  EXPECT_NEAR(in_inches(*drain.over_floor), 1.25, 1e-9);
  const auto holes = report::holes_to_cut(plan, UnitSystem::inch);
  ASSERT_FALSE(holes.empty());
  EXPECT_EQ(holes[0].where, "in the right end, 5 in from the front, 1-1/4 in over the floor (proposed)");
  EXPECT_EQ(plan.verdict, Verdict::ready) << testing::PrintToString(open_in(plan));
}

TEST(SidePlaces, KeepAHeightThatTheJobGives) {
  const Plan plan = plan_of_text(with_drain(", face height: 2 in"));
  EXPECT_NEAR(in_inches(*bung_of(plan, "drain").over_floor), 2.0, 1e-9);
  EXPECT_TRUE(bung_of(plan, "drain").on_side);
}

TEST(SidePlaces, AreLeftAloneWhereTheBungIsThere) {
  const Plan plan = plan_of_text(with_drain(", welded in: yes"));
  EXPECT_FALSE(bung_of(plan, "drain").on_side);
  EXPECT_FALSE(bung_of(plan, "drain").over_floor);
}

// Stiffeners every 2 in leave no boss room there: the front has it.
TEST(SidePlaces, GoToTheFrontWhereTheEndIsFullOfStiffeners) {
  const Plan plan = plan_of_text(
      with_drain(", welded in: no", with(kReady, "baffles along: 1}", "baffles along: 1, short side bays: 10 x 1}")));
  const LidBung& drain = bung_of(plan, "drain");
  ASSERT_TRUE(drain.on_side);
  EXPECT_TRUE(drain.on_side->in_front);
  EXPECT_NEAR(in_inches(drain.on_side->along), 20.0, 1e-9) << "the middle bay of three";
}

TEST(SidePlaces, OfTwoAreApart) {
  const std::string two =
      with(with_drain(", welded in: no"),
           "    relief bung:", "    sight: {port: 3/4 FNPT, bung: half coupling, where: side}\n    relief bung:");
  const Plan plan = plan_of_text(
      with(two, "  - {name: vent,", "  - {name: sight, from: sight, ends in: plug, carries: water}\n  - {name: vent,"));
  const LidBung& drain = bung_of(plan, "drain");
  const LidBung& sight = bung_of(plan, "sight");
  ASSERT_TRUE(drain.on_side && sight.on_side);
  EXPECT_GE(distance({drain.on_side->along, *drain.over_floor}, {sight.on_side->along, *sight.over_floor}),
            least_apart(drain, sight));
}

}  // namespace
}  // namespace riserun::plan
