// The mends of one card, done one after the other from the top: none is bought twice, none undoes one before it.
#include "plan/advice/change.h"
#include "report/words/say.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;

/// A relief valve too low for the setting that is worked out: the setting, the test and the gauge hang on it.
std::string low_valve() {
  const std::string high =
      with(with(kStiff, "  set pressure: 1.6 psi\n", ""), "floor height: 30 in", "floor height: 72 in");
  return with(with(high, "gap: 14-3/8 in, ", ""), "need: [union]", "need: [hose]") + "test pressure: 3 psi\n";
}

std::optional<Changes> only_way(const Finding& finding) {
  if (finding.ways_to_mend.size() + finding.ways_to_try.size() != 1) return std::nullopt;
  return finding.ways_to_mend.empty() ? finding.ways_to_try.front() : finding.ways_to_mend.front();
}

bool is_open(const std::vector<Finding>& findings, const Finding& wanted) {
  return std::any_of(findings.begin(), findings.end(),
                     [&](const Finding& each) { return each.reason.code == wanted.reason.code; });
}

// With the valve that the first asks for the walls see 4.3 psi and not 4.2: the test of the card as it was falls short,
// and one of 4.3 psi and over has a relief valve that is sold.
TEST(MendsInTurn, AreWorkedOutAnewWhereOneBeforeAsksForMore) {
  const Plan plan = plan_of_text(low_valve());
  ASSERT_EQ(open_in(plan).front(), "relief_valve_blows_in_use");
  EXPECT_THAT(said_of(plan, "test_below_what_may_be_seen"),
              AllOf(HasSubstr("with what is said above done: a 'test pressure' of 4.32 psi"),
                    HasSubstr("by itself: a 'test pressure' of 4.22 psi")));
  EXPECT_THAT(said_of(plan, "no_relief_sold_for_the_test"), HasSubstr("what is said above, done, settles this, too"));
  Changes all = *only_way(plan.findings.front());
  all.push_back({"test pressure", psig(4.32)});
  const Changes gauge = *only_way(plan.findings.back());
  all.insert(all.end(), gauge.begin(), gauge.end());
  EXPECT_THAT(findings_of(plan.catalog, changed(*plan.catalog, plan.job, all)), testing::IsEmpty());
}

// Each job is done from the top by what its card says: what is settled by then is said to be, and the rest still helps.
TEST(MendsInTurn, AreTrueOfTheJobWithThoseBeforeDone) {
  int settled = 0;
  int anew = 0;
  for (const std::string& text : {low_valve(), example_text("walls-too-thin"),
                                  with(example_text("walls-too-thin"), "16 ga steel", "3/16 in steel")}) {
    const Plan plan = plan_of_text(text);
    Changes taken;
    for (const Finding& finding : plan.findings) {
      if (!finding.mend) continue;
      const std::string_view code = finding.mend->code;
      const auto now = findings_of(plan.catalog, changed(*plan.catalog, plan.job, taken));
      if (code == "mend_unless_those_before" || code == "goes_with_those_before") {
        ++settled;
        EXPECT_FALSE(is_open(now, finding)) << finding.reason.code;
        EXPECT_FALSE(finding.buy || !finding.also_buy.empty()) << finding.reason.code;
      } else if (const auto way = only_way(finding); way && code != "mend_once_those_before") {
        EXPECT_TRUE(is_open(now, finding)) << finding.reason.code;
        taken.insert(taken.end(), way->begin(), way->end());
        const auto after = findings_of(plan.catalog, changed(*plan.catalog, plan.job, taken));
        EXPECT_FALSE(is_open(after, finding)) << finding.reason.code;
      } else if (code == "mend_once_those_before") {
        ++anew;
        EXPECT_TRUE(is_open(now, finding)) << finding.reason.code;
        break;  // what stands below is said of the job with this, too
      }
    }
  }
  EXPECT_GT(settled, 1);
  EXPECT_GT(anew, 0);
}

}  // namespace
}  // namespace riserun::plan
