// The shop's own prices, as a list and as a table; what holds where two say the same; the starter of own parts.
#include "catalog/load/starter_part.h"
#include "catalog/words/part_search.h"
#include "catalog/yaml/document.h"
#include "unit/catalog/small_catalog.h"

#include <gmock/gmock.h>

#include <cctype>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace riserun::catalog {
namespace {

using ::testing::HasSubstr;

const Part& part_in(const Catalog& catalog, std::string_view words) {
  return catalog.part(std::get<PartId>(PartSearch(catalog).find_one(words)));
}

Catalog with_own(const std::vector<SourceText>& own) { return load_catalog(testing::small_catalog_texts(), own); }

std::string any_part() { return with_own({}).parts().front().id; }

TEST(PriceTable, PricesByIdOrWordsAndLeavesTheRest) {
  const std::string id = any_part();
  for (const char* head : {"id,price", "part,Price Each ($)", "ID,supplier,price"}) {
    const std::string cells = std::string(head).find("supplier") == std::string::npos ? "" : "corner store,";
    const Catalog catalog = with_own({{"mine.csv", std::string(head) + "\n" + id + "," + cells + "4.35\n"}});
    const Part& part = catalog.part(*catalog.find_part(id));
    EXPECT_EQ(part.price.cents(), 435) << head;
    EXPECT_EQ(part.priced_by, "mine.csv");
  }
}

TEST(PriceTable, ANumberIsInDollarsWithPointOrComma) {
  const std::string id = any_part();
  for (const char* price : {"4.35", "\"4,35\"", "$4.35", "435 cents", "4.35 usd"}) {
    const Catalog catalog = with_own({{"mine.csv", "id,price\n" + id + "," + price + "\n"}});
    EXPECT_EQ(catalog.part(*catalog.find_part(id)).price.cents(), 435) << price;
  }
}

TEST(PriceTable, OfTwoFilesTheLaterHolds) {
  const std::string id = any_part();
  const SourceText list{"list.yaml", "prices:\n  - {part: " + id + ", price: 7 usd}\n"};
  const SourceText table{"table.csv", "id,price\n" + id + ",8\n"};
  const auto price = [&](const std::vector<SourceText>& own) {
    const Catalog catalog = with_own(own);
    return catalog.part(*catalog.find_part(id)).price.cents();
  };
  EXPECT_EQ(price({list, table}), 800);
  EXPECT_EQ(price({table, list}), 700);
}

TEST(PriceTable, AllMistakesAreSaidEachAtItsPlace) {
  const std::string id = any_part();
  try {
    with_own(
        {{"mine.csv", "id,price\n" + id + ",4\nno such part,3\n" + id + ",much\n,2\n" + id + ",-1\n" + id + ",5\n"}});
    FAIL() << "it loaded";
  } catch (const quantity::InputError& error) {
    std::vector<int> lines;
    for (const quantity::Problem& problem : error.problems()) lines.push_back(problem.line);
    EXPECT_THAT(lines, ::testing::ElementsAre(3, 4, 5, 6, 7));
    EXPECT_THAT(error.what(), HasSubstr("mine.csv:5:2: error: whose price is that?"));
    EXPECT_THAT(error.what(), HasSubstr("has a price on line 2 already"));
  }
}

TEST(PriceTable, WithoutAPriceIsNoTableOfPrices) {
  try {
    with_own({{"mine.csv", "id,cost\nx,4\n"}});
    FAIL() << "it loaded";
  } catch (const quantity::InputError& error) {
    EXPECT_THAT(error.what(), HasSubstr("the table has no price"));
  }
}

TEST(BinTable, IsReadLikeAList) {
  CatalogBuilder builder(with_own({}));
  const std::string id = any_part();
  const Bin bin = load_bin(builder, SourceText{"bin.csv", "part;count\n" + id + ";3\n"});
  ASSERT_EQ(bin.items.size(), 1U);
  EXPECT_EQ(bin.items.front().count, 3);
}

TEST(StarterPart, LoadsAndIsFound) {
  const std::filesystem::path file = std::filesystem::path(::testing::TempDir()) / "starter-part.yaml";
  std::ofstream(file) << starter_part();
  const std::vector<std::filesystem::path> own{file};
  const Catalog catalog = load_catalog(std::string(RISERUN_SOURCE_DIR) + "/catalog", own);
  EXPECT_EQ(part_in(catalog, "1 x 6 turned spacer").id, "shop/spacer-1");
}

/// Each line that is a comment for the reader to switch on is a good line once it is.
TEST(StarterPart, ItsCommentsAreGoodLines) {
  std::string text;
  std::istringstream lines(starter_part());
  for (std::string line; std::getline(lines, line);) {
    const std::size_t mark = line.find("# ");
    const bool key = mark != std::string::npos && line.find_first_not_of(' ') == mark &&
                     line.find(": ") != std::string::npos && mark > 0 &&
                     std::islower(static_cast<unsigned char>(line[mark + 2]));
    const bool of_this_part = mark == 4 || mark == 6;
    if (key && of_this_part) line.erase(mark, 2);
    text += line + "\n";
  }
  ASSERT_THAT(text, HasSubstr("\n    price: 12.50 usd"));
  ASSERT_THAT(text, HasSubstr("\n    dielectric: yes"));
  const std::filesystem::path file = std::filesystem::path(::testing::TempDir()) / "starter-part-all.yaml";
  std::ofstream(file) << text;
  const std::vector<std::filesystem::path> own{file};
  const Catalog catalog = load_catalog(std::string(RISERUN_SOURCE_DIR) + "/catalog", own);
  EXPECT_EQ(catalog.part(*catalog.find_part("shop/spacer-1")).price.cents(), 1250);
}

}  // namespace
}  // namespace riserun::catalog
