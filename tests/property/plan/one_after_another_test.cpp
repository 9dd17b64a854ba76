// A job that is read and planned after others, as the window does at each change, is read and planned as it is by
// itself: nothing that was kept from before shows.
#include "plan/planning.h"
#include "property/plan/random_job.h"
#include "report/json/plan_json.h"
#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace riserun::plan {
namespace {

std::string json_of(const Plan& plan) { return report::plan_json(plan, plan.job.units); }
std::string alone(const std::string& text) {
  return json_of(make_plan(shipped_catalog(), read_job(*shipped_catalog(), text, "job.yaml")));
}

class OneAfterAnother : public testing::Test {
 protected:
  std::string next(const std::string& text) {
    return json_of(planning_.plan(read_job(*shipped_catalog(), text, "job.yaml", before_)));
  }
  ReadBefore before_;
  Planning planning_{shipped_catalog()};
};

TEST_F(OneAfterAnother, RandomJobsArePlannedAsAlone) {
  constexpr std::uint32_t kUsual = 12;
  for (std::uint32_t seed = 1; seed <= count_of_jobs(kUsual); ++seed) {
    const std::string text = random_job(seed);
    EXPECT_EQ(next(text), alone(text)) << text;
  }
}

TEST_F(OneAfterAnother, ChangesOfOneJobArePlannedAsAlone) {
  const std::string bench = example_text("bevel-bench");
  const std::vector<std::string> changes{
      bench,
      with(bench, "clearance: 5/8 in", "clearance: 3/4 in"),
      with(bench, "measured:\n", "prices:\n  - {part: 3/4 close nipple black iron, price: 3 usd}\n\nmeasured:\n"),
      with(bench, "measured:\n", "prices:\n  - {part: 3/4 close nipple black iron, price: 4 usd}\n\nmeasured:\n"),
      with(bench, "bin:\n", "bin:\n  - {part: 1-1/4 close nipple black iron, count: 2}\n"),
      bench.substr(0, bench.find("bin:\n")),  // no parts of its own
      bench,
  };
  for (const std::string& text : changes) EXPECT_EQ(next(text), alone(text)) << text;
}

TEST_F(OneAfterAnother, TheJobsOwnCatalogIsKeptWhereItsPartsAreTheSame) {
  const std::string bench = example_text("bevel-bench");
  const auto own = [&](const std::string& text) {
    return read_job(*shipped_catalog(), text, "job.yaml", before_).own_catalog;
  };
  const auto first = own(bench);
  ASSERT_NE(first, nullptr);
  EXPECT_EQ(own(with(bench, "clearance: 5/8 in", "clearance: 3/4 in")), first);
  EXPECT_NE(own(with(bench, "length: 2-5/8 in", "length: 2-3/4 in")), first);
  EXPECT_EQ(own(bench.substr(0, bench.find("bin:\n"))), nullptr);
}

}  // namespace
}  // namespace riserun::plan
