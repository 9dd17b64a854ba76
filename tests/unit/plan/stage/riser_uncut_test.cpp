// A stock piece that is left uncut ends higher, and leaves more water under it.
#include "plan/job/starter_job.h"
#include "unit/plan/shipped.h"

namespace riserun::plan {
namespace {

TEST(UncutRiser, IsOfferedWhereTheWaterOverItsEndFillsTheTable) {
  // The 12 in nipple would end 2-11/16 in above the floor, and with it 19.5 gal of the 24.5 asked are lifted.
  const Plan& bench = bevel_bench();
  EXPECT_FALSE(bench.riser.riser.stock_uncut);
  EXPECT_FALSE(bench.riser.uncut_part);
  const std::string text = example_text("bevel-bench");
  const Plan higher = plan_of_text(with(text, "clearance: 5/8 in", "clearance: 2-11/16 in"));
  EXPECT_EQ(higher.verdict, Verdict::refused);
}

TEST(UncutRiser, ThatIsOfferedMayBeTaken) {
  const Plan starter = plan_of_text(starter_job());
  ASSERT_TRUE(starter.riser.riser.stock_uncut);
  const double clearance = in_inches(starter.riser.riser.stock_uncut_clearance);
  const Plan taken = plan_of_text(starter_job() + "\nriser: {clearance: " + std::to_string(clearance) + " in}\n");
  EXPECT_EQ(taken.verdict, Verdict::ready);
}

}  // namespace
}  // namespace riserun::plan
