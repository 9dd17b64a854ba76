// Alternatives and substitutes as they are printed and as JSON, in a world of four parts.
#include "chain/finder.h"
#include "report/json/answer_json.h"
#include "report/text/chain_text.h"
#include "unit/chain/small_world.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <sstream>

namespace riserun::report {
namespace {

using chain::testing::SmallWorld;
using ::testing::HasSubstr;

const char* const kShop = R"(
  adapter: 1 A female, 3/4 A female, 900c, iron
  long adapter: 1 A female, 3/4 A female, 300c, iron, reach 60
  brass adapter: 1 A female, 3/4 A female, 1000c, brass, reach 19
  nipple: 3/4 A male, 3/4 A male, 90c, iron
)";

struct Asked {
  explicit Asked(const char* to) : request(shop.ask("1 A male", to)), finder(shop.catalog()) {
    rows = finder.alternatives(request, 9);
    substitutes = finder.substitutes(request, rows.front().chain);
  }
  std::string text() const { return alternatives_text(shop.catalog(), request, rows, substitutes, {}); }
  nlohmann::json json() const {
    return nlohmann::json::parse(alternatives_json(shop.catalog(), request, rows, substitutes, UnitSystem::inch));
  }
  SmallWorld shop{kShop};
  chain::ChainRequest request;
  chain::Finder finder;
  std::vector<chain::Alternative> rows;
  std::vector<chain::Substitute> substitutes;
};

/// The text with one blank between words, wherever its lines break.
std::string words_of(const std::string& text) {
  std::istringstream words(text);
  std::string result;
  for (std::string word; words >> word;) result += (result.empty() ? "" : " ") + word;
  return result;
}

TEST(AlternativesText, ShowsTheFiguresSideBySideWithTheReasonOfEachRow) {
  const std::string text = words_of(Asked("3/4 A male").text());
  EXPECT_THAT(text, HasSubstr("parts buy price length head lost weakest air beside the first"));
  EXPECT_THAT(text, HasSubstr("1. 1 1 $3.00"));
  EXPECT_THAT(text, HasSubstr("the best by the order asked for"));
  EXPECT_THAT(text, HasSubstr("$6.00 dearer"));
  EXPECT_THAT(text, HasSubstr("1. 1 part: long adapter, iron; the same in brass"));
}

TEST(AlternativesText, ShowsTheFirstInFullWithWhatToTakeWhenTheShelfIsEmpty) {
  const std::string text = Asked("3/4 A female").text();
  const std::size_t in_full = text.find("The first in full\n");
  ASSERT_NE(in_full, std::string::npos);
  EXPECT_THAT(text.substr(in_full),
              HasSubstr("or, if the shelf is empty: adapter (iron); 2 parts in all, $6.00 more\n"));
  EXPECT_THAT(text.substr(in_full), HasSubstr("or, if the shelf is empty: nothing else on sale makes up for it\n"));
  EXPECT_THAT(text.substr(in_full), HasSubstr("Build order"));
}

TEST(AlternativesJson, HoldsAllRowsWithTheirReasonAndEachSubstitute) {
  const nlohmann::json json = Asked("3/4 A female").json();
  ASSERT_GE(json["chains"].size(), 2u);
  EXPECT_EQ(json["chains"][0]["reason"], "the best by the order asked for");
  EXPECT_THAT(json["chains"][1]["reason"].get<std::string>(), HasSubstr("$6.00 dearer"));
  EXPECT_EQ(json["chains"][0]["parts"][0]["id"], "long adapter");
  EXPECT_TRUE(json["why_none"].is_null());
  ASSERT_EQ(json["shelf_empty"].size(), 2u);
  EXPECT_EQ(json["shelf_empty"][0]["instead_of"], "long adapter");
  EXPECT_EQ(json["shelf_empty"][0]["buy_also"], nlohmann::json::array({"adapter"}));
  EXPECT_EQ(json["shelf_empty"][0]["chain"]["part_count"], 2);
  EXPECT_EQ(json["shelf_empty"][1]["instead_of"], "nipple");
  EXPECT_TRUE(json["shelf_empty"][1]["chain"].is_null());
}

}  // namespace
}  // namespace riserun::report
