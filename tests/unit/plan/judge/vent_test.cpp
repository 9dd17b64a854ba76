// A vent that throttles, and the valve that does not.
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;

TEST(Vent, ThatThrottlesIsToBeWiderAndItsMendMends) {
  const Plan plan = plan_of_text(
      with(with(kReady, "vent bung: 1/2 FNPT", "vent bung: 1/4 FNPT"), "1/2 brass ball valve", "1/4 needle valve"));
  ASSERT_TRUE(has(plan, "vent_is_a_throttle")) << testing::PrintToString(open_in(plan));
  ASSERT_TRUE(plan.transfer.vent);
  EXPECT_GT(plan.transfer.drain.time, 1.5 * plan.transfer.vent->unthrottled);
  EXPECT_THAT(said_of(plan, "vent_is_a_throttle"), AllOf(HasSubstr("'vent'"), HasSubstr("ball valve")));
  ASSERT_TRUE(plan.transfer.vent->enough);
  EXPECT_LE(plan.transfer.vent->with_enough, 1.5 * plan.transfer.vent->unthrottled);
  const catalog::Part& valve = plan.catalog->part(*plan.transfer.vent->enough);
  const std::string size = valve.name.substr(0, valve.name.find(' '));
  EXPECT_THAT(open_in(plan_of_text(with(with(kReady, "vent bung: 1/2 FNPT", "vent bung: " + size + " FNPT"),
                                        "1/2 brass ball valve", size + " full-bore ball valve brass"))),
              IsEmpty());
}

TEST(Vent, ThatIsPluggedTakesAValveInThePlugsPlace) {
  const Plan plan = ready_with("1/2 brass ball valve", "1/2 square head plug");
  ASSERT_TRUE(has(plan, "no_vent_behind_check_valve")) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "no_vent_behind_check_valve"),
              AllOf(HasSubstr("in place of the plug on 'vent bung'"),
                    HasSubstr("'ends in: 1/2 full-bore ball valve brass'"), testing::Not(HasSubstr("coupling"))));
  EXPECT_THAT(open_in(ready_with("1/2 brass ball valve", "1/2 full-bore ball valve brass")), IsEmpty());
  for (const ListItem& item : plan.list.buy) EXPECT_THAT(item.name, testing::Not(HasSubstr("3/4 half coupling")));
}

TEST(Vent, InACouplerIsOpenedByNoHand) {
  const Plan plan = ready_with("1/2 brass ball valve", "1/4 air coupler");
  ASSERT_TRUE(has(plan, "vent_that_no_hand_opens")) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "vent_that_no_hand_opens"), HasSubstr("ball valve"));
  // One on a tree, too; and a valve before it does not help, for the coupler stays shut.
  EXPECT_TRUE(has(ready_with("ends in: 1/2 brass ball valve", "ends in: 1/4 air coupler, need: [1/2 brass ball valve]"),
                  "vent_that_no_hand_opens"));
}

TEST(Vent, AsWideAsAUsualOneIsNone) { EXPECT_FALSE(has(ready(), "vent_is_a_throttle")); }

}  // namespace
}  // namespace riserun::plan
