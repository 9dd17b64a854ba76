// Parts without a price: they win nothing by it, and every sum says how many there are.
#include "catalog/load/load.h"
#include "plan/job/read_job.h"
#include "report/json/plan_json.h"
#include "report/text/plan_text.h"
#include "report/words/say.h"
#include "unit/plan/bench_job.h"
#include "unit/plan/shipped.h"
#include "unit/report/words/said.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>

namespace riserun::plan {
namespace {

using testing::HasSubstr;
using testing::Not;

/// The shipped catalog and a union of one's own, the same as that of black iron but for its price.
std::shared_ptr<const Catalog> with_own_union(const std::string& price) {
  const std::filesystem::path file = std::filesystem::path(testing::TempDir()) / ("own-union" + price + ".yaml");
  std::ofstream(file) << "parts:\n  - {id: a-union, name: 1 plain union, size: 1, family: union, material: black iron, "
                         "rating: 300 psi, source: mine, closing: yes, across flats: 2 in,"
                      << (price.empty() ? "" : " price: " + price + ",")
                      << " ports: [{port: 1 FNPT, bore: 1.049 in, reach: 1.1 in}, "
                         "{port: 1 FNPT, bore: 1.049 in, reach: 1.1 in}]}\n";
  const std::vector<std::filesystem::path> own{file};
  return std::make_shared<const Catalog>(catalog::load_catalog(std::string(RISERUN_SOURCE_DIR) + "/catalog", own));
}

Plan planned(const std::shared_ptr<const Catalog>& catalog, const std::string& text) {
  return make_plan(catalog, read_job(*catalog, text, "job.yaml"));
}

bool buys(const Plan& plan, const std::string& id) {
  return std::any_of(plan.list.buy.begin(), plan.list.buy.end(), [&](const ListItem& item) { return item.id == id; });
}

TEST(PartWithoutPrice, DoesNotWinByIt) {
  for (const char* order : {"line", "price", "parts"}) {
    const std::string job = with(kBench, "need: [union]", std::string("need: [union], order: ") + order);
    EXPECT_TRUE(buys(planned(with_own_union("1 usd"), job), "a-union")) << order;
    EXPECT_FALSE(buys(planned(with_own_union(""), job), "a-union")) << order;
  }
}

TEST(PartWithoutPrice, IsCountedWhereverASumIsPrinted) {
  const auto catalog = with_own_union("");
  const Plan plan = planned(catalog, with(kBench, "need: [union]", "need: [a-union]"));
  ASSERT_TRUE(buys(plan, "a-union"));
  const Price run = plan.connections[0].run()->price;
  EXPECT_EQ(run.without_price(), 1);
  EXPECT_GT(run.cents(), 0);
  std::int64_t rows = 0;
  for (const ListItem& item : plan.list.buy) rows += item.each.known() ? 0 : 1;
  EXPECT_GE(rows, 1);
  EXPECT_EQ(plan.list.total.without_price(), rows);

  const std::string text = report::plan_text(plan, {});
  EXPECT_THAT(text, Not(HasSubstr("$0.00")));
  EXPECT_THAT(text, HasSubstr("buy no price"));
  EXPECT_THAT(text, HasSubstr(quantity::write_about(run)));
  EXPECT_THAT(text, HasSubstr("in all; prices are indicative."));
  EXPECT_THAT(text, HasSubstr(fmt::format(" and {} without price", rows)));

  const auto json = nlohmann::json::parse(report::plan_json(plan, UnitSystem::inch));
  EXPECT_EQ(json["list"]["without_price"], rows);
  for (const auto& item : json["list"]["buy"])
    if (item["id"] == "a-union") {
      EXPECT_TRUE(item["price_usd"].is_null());
    }
}

TEST(CostCap, SaysWhatHasNoPrice) {
  const auto catalog = with_own_union("");
  const std::string job = with(kBench, "need: [union]", "need: [a-union]");
  const auto said = [&](const std::string& cap) {
    std::string all;
    for (const Caution& caution : planned(catalog, job + "wishes: {cost cap: " + cap + "}\n").cautions)
      if (caution.where == Topic::whole_job) all += report::said(caution.fact) + "\n";
    return all;
  };
  EXPECT_THAT(said("9000 usd"), HasSubstr("the $9000.00 wished for is not known"));
  EXPECT_THAT(said("9000 usd"), HasSubstr("1 plain union"));
  EXPECT_THAT(said("5 usd"), HasSubstr("more than the $5.00 wished for"));
}

}  // namespace
}  // namespace riserun::plan
