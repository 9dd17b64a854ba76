// Words that name no pressure mean the device that suits the tank, and no 125 psi relief valve.
#include "plan/job/starter_job.h"
#include "report/words/remark_words.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::IsEmpty;

/// What the connection ends in, by its mark in psi.
double end_mark(const Plan& plan, const std::string& connection) {
  for (const ConnectionPlan& run : plan.connections)
    if (run.name == connection && run.ends_in) {
      const catalog::Part& part = plan.catalog->part(*run.ends_in);
      return in_psi(part.opens_at ? *part.opens_at : part.full_scale.value_or(psig(0.0)));
    }
  return 0.0;
}

int marks_assumed(const Plan& plan) {
  return static_cast<int>(std::count_if(plan.assumptions.begin(), plan.assumptions.end(),
                                        [](const Assumption& row) { return row.fact.code == "mark_of_device"; }));
}

const std::string kBare = with(with(kReady, "ends in: 3/4 relief valve set 2 psi", "ends in: relief valve"),
                               "ends in: 5 psi gauge", "ends in: gauge");

TEST(MarkedDevices, SuitTheSetting) {
  const Plan plan = plan_of_text(kBare);
  EXPECT_DOUBLE_EQ(end_mark(plan, "relief"), 2.0);  // from 1.92 psi on
  EXPECT_DOUBLE_EQ(end_mark(plan, "gauge"), 5.0);   // from 3.2 psi on
  EXPECT_EQ(marks_assumed(plan), 2);
  EXPECT_THAT(open_in(plan), IsEmpty());
  EXPECT_DOUBLE_EQ(end_mark(plan_of_text(with(kBare, "set pressure: 1.6 psi", "set pressure: 1.7 psi")), "relief"),
                   2.5);
}

TEST(MarkedDevices, SuitTheWatersHeightWhereThereIsNoSetting) {
  // 34 in of water are 1.23 psi, and a quarter over that 1.56.
  const Plan plan = plan_of_text(with(kBare, "  set pressure: 1.6 psi\n", ""));
  EXPECT_DOUBLE_EQ(end_mark(plan, "relief"), 2.0);
  EXPECT_DOUBLE_EQ(end_mark(plan, "gauge"), 5.0);
  EXPECT_FALSE(has(plan, "relief_valve_blows_in_use"));
  EXPECT_FALSE(has(plan, "relief_valve_weeps"));
}

// 47-1/2 in of water are 1.72 psi: a valve of 2.5 psi leaves the setting that goes down for it a quarter over that and
// more, and one of 3 psi would ask for stiffer walls.
TEST(MarkedDevices, AskNoMoreOfTheWallsThanTheyNeed) {
  std::string high = with(starter_job(), "floor height: 30 in", "floor height: 44 in");
  high = with(with(high, "baffles across: 3", "baffles across: 4"), "baffles along: 1", "baffles along: 2");
  const Plan plan = plan_of_text(high);
  EXPECT_DOUBLE_EQ(end_mark(plan, "relief valve"), 2.5);
  EXPECT_THAT(open_in(plan), IsEmpty());
}

TEST(MarkedDevices, AreThoseThatTheWordsNameWhereTheyNameOne) {
  EXPECT_EQ(marks_assumed(ready()), 0);
  const Plan plan = plan_of_text(with(kReady, "relief valve set 2 psi", "relief valve set 5 psi"));
  EXPECT_DOUBLE_EQ(end_mark(plan, "relief"), 5.0);
}

TEST(MarkedDevices, OfARegulatorAreOfTheRangeThatIsGiven) {
  const std::string any = with(kReady, "0 to 15 psi air regulator", "air regulator");
  const auto range = [](const Plan& plan) {
    for (const ConnectionPlan& run : plan.connections)
      if (run.chain() != nullptr)
        for (const chain::RunPart& link : run.chain()->parts)
          if (plan.catalog->family(plan.catalog->part(link.part).family).role == catalog::Role::regulator)
            return in_psi(*plan.catalog->part(link.part).full_scale);
    return 0.0;
  };
  EXPECT_DOUBLE_EQ(range(plan_of_text(any)), 15.0);
  EXPECT_LT(range(plan_of_text(with(any, "  regulator range: 15 psi\n", ""))), 15.0);
}

// A check valve of half a psi leaves 1.15 psi too high for a relief valve of 1 psi: the next one that is sold suits.
TEST(MarkedDevices, SuitTheSettingThatResults) {
  const std::string bare = with(with(with(kBare, "10 ga steel", "3/16 in steel"), "  set pressure: 1.6 psi\n", ""),
                                "light spring check valve", "check valve");
  const auto check = [](const Plan& plan) {
    for (const ConnectionPlan& run : plan.connections)
      if (run.chain() != nullptr)
        for (const chain::RunPart& link : run.chain()->parts)
          if (plan.catalog->family(plan.catalog->part(link.part).family).role == catalog::Role::check_valve)
            return in_psi(*plan.catalog->part(link.part).opens_at);
    return 0.0;
  };
  const Plan light = plan_of_text(bare);
  EXPECT_NEAR(check(light), 0.2, 1e-9);
  EXPECT_THAT(open_in(light), IsEmpty());
  const std::string low = with(with(bare, "floor height: 30 in", "floor height: 20 in"), "gap: 14-3/8 in, ", "");
  for (const char* height : {"20 in", "22 in", "24 in", "26 in", "28 in"}) {
    const Plan plan = plan_of_text(with(low, "floor height: 20 in", std::string("floor height: ") + height));
    EXPECT_FALSE(has(plan, "relief_valve_blows_in_use")) << height;
    EXPECT_FALSE(has(plan, "relief_valve_weeps")) << height;
  }
}

}  // namespace
}  // namespace riserun::plan
