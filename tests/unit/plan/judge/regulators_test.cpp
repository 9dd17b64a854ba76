// Regulators one behind the other, and a key that speaks of another one.
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr const char* kOne = "0 to 15 psi air regulator";

// The last one before the reservoir sets its pressure; one before it only takes the supply down.
TEST(FirstStage, IsNotJudgedByTheReservoirsSetting) {
  EXPECT_THAT(open_in(ready_with(kOne, "0 to 60 psi air regulator, 0 to 15 psi air regulator")), IsEmpty());
  const Plan turned = ready_with(kOne, "0 to 15 psi air regulator, 0 to 60 psi air regulator");
  EXPECT_TRUE(has(turned, "regulator_range_too_wide"));
}

TEST(FirstStage, GivesEnoughForTheOneBehindIt) {
  const auto set_to = [](const char* psi) {
    return plan_of_text(
        with(with(kReady, kOne, "0 to 2 psi air regulator, 0 to 15 psi air regulator"), "1.6 psi", psi));
  };
  EXPECT_FALSE(has(set_to("0.99 psi"), "first_stage_gives_too_little"));
  EXPECT_TRUE(has(set_to("1.01 psi"), "first_stage_gives_too_little"));
}

TEST(FirstStage, StaysWhereTheMendChangesTheLastOne) {
  const Plan wide = ready_with(kOne, "0 to 60 psi air regulator, 0 to 30 psi air regulator");
  EXPECT_THAT(said_of(wide, "regulator_range_too_wide"), HasSubstr("a regulator of 0 to"));
}

TEST(RegulatorRange, OfTheKeyIsThatOfThePart) {
  const Plan plan = ready_with("regulator range: 15 psi", "regulator range: 10 psi");
  EXPECT_TRUE(has(plan, "regulator_of_another_range"));
  EXPECT_THAT(said_of(plan, "regulator_of_another_range"),
              AllOf(HasSubstr("0 to 10 psi"), HasSubstr("air in"), HasSubstr("15 psi")));
  EXPECT_FALSE(has(ready_with("regulator range: 15 psi", "regulator range: 1.03 bar"), "regulator_of_another_range"));
}

}  // namespace
}  // namespace riserun::plan
