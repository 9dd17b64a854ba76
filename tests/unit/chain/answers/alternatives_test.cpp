// Which alternatives stand beside the best chain, why, and what to take when the shelf is empty, in worlds of a few
// parts.
#include "chain/ask/answer.h"
#include "chain/finder.h"
#include "report/words/reason.h"
#include "unit/chain/small_world.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace riserun::chain::testing::alternatives_test {
namespace {

using report::reason;
using ::testing::ElementsAre;
using ::testing::IsEmpty;

std::string names(const SmallWorld& world, const Chain& chain) {
  std::string text;
  for (const RunPart& link : chain.parts)
    text += (text.empty() ? "" : ", ") + world.catalog().part(link.part).name + (link.from_bin ? "*" : "");
  return text.empty() ? "straight together" : text;
}

std::vector<std::string> rows(const SmallWorld& world, const ChainRequest& request, std::size_t most = 99) {
  std::vector<std::string> lines;
  for (const Alternative& row : Finder(world.catalog()).alternatives(request, most)) {
    lines.push_back(names(world, row.chain));
    for (const std::string& material : row.same_in) lines.back() += " | " + material;
  }
  return lines;
}

std::vector<std::string> reasons(const SmallWorld& world, const ChainRequest& request, UnitSystem units) {
  const std::vector<Alternative> all = Finder(world.catalog()).alternatives(request, 99);
  std::vector<std::string> lines;
  for (std::size_t i = 1; i < all.size(); ++i) lines.push_back(reason(all[0].chain, all[i].chain, units));
  return lines;
}

// 20 mm of reach a port and 15 mm of make-up: a part between two ends that are screwed into it is 10 mm long.
const char* const kShop = R"(
  adapter: 1 A female, 3/4 A female, 900c
  coupling: 1 A female, 1 A female, 100c
  bushing: 1 A male, 3/4 A female, 120c, bushing
  long adapter: 1 A female, 3/4 A female, 300c, reach 60
)";

TEST(Alternatives, EachIsBetterThanEachOtherInSomething) {
  const SmallWorld shop(kShop);
  EXPECT_THAT(rows(shop, shop.ask("1 A male", "3/4 A male")),
              ElementsAre("long adapter", "adapter", "coupling, bushing"));
  EXPECT_THAT(rows(shop, shop.ask("1 A male", "3/4 A male", Order::length)).front(), "adapter");
}

TEST(Alternatives, TheBestIsTheFirstOfAsManyAsAreAskedFor) {
  const SmallWorld shop(kShop);
  EXPECT_THAT(rows(shop, shop.ask("1 A male", "3/4 A male"), 1), ElementsAre("long adapter"));
  EXPECT_THAT(rows(shop, shop.ask("1 A male", "3/4 A male"), 2), ElementsAre("long adapter", "adapter"));
  EXPECT_THAT(rows(shop, shop.ask("1 A male", "3/4 A male", Order::price), 1), ElementsAre("coupling, bushing"));
}

TEST(Alternatives, NoneWhereThereIsNoChain) {
  const SmallWorld shop(kShop);
  EXPECT_THAT(rows(shop, shop.ask("1 A male", "3/4 G male")), IsEmpty());
}

TEST(Alternatives, NothingBesideTwoEndsThatGoStraightTogether) {
  const SmallWorld shop(kShop);
  EXPECT_THAT(rows(shop, shop.ask("1 A male", "1 A female")), ElementsAre("straight together"));
}

TEST(Alternatives, HaveAtMostThreePartsMoreThanTheFewest) {
  // Cheaper chains of 4 and of 5 parts beside the one of 1 part.
  const SmallWorld shop(R"(
    adapter: 1 A female, 3/4 A female, 900c
    a: 1 A female, 1 B male, 10c
    b: 1 B female, 1 G male, 10c
    c: 1 G female, 3/4 G male, 10c
    d: 3/4 G female, 3/4 A female, 10c
    e: 3/4 G female, 3/4 B male, 1c
    f: 3/4 B female, 3/4 A female, 1c
  )");
  EXPECT_THAT(rows(shop, shop.ask("1 A male", "3/4 A male")), ElementsAre("adapter", "a, b, c, d"));
  EXPECT_THAT(rows(shop, shop.ask("1 A male", "3/4 A male", Order::price)).front(), "a, b, c, e, f")
      << "the best stands there however long it is";
}

TEST(Alternatives, TheSameChainInAnotherMaterialIsNoRowOfItsOwn) {
  const SmallWorld shop(R"(
    iron adapter: 1 A female, 3/4 A female, 300c, iron
    brass adapter: 1 A female, 3/4 A female, 500c, brass, reach 18
    nylon adapter: 1 A female, 3/4 A female, 700c, nylon, reach 16
    second iron adapter: 1 A female, 3/4 A female, 400c, iron, reach 19
  )");
  EXPECT_THAT(rows(shop, shop.ask("1 A male", "3/4 A male")),
              ElementsAre("iron adapter | brass | nylon", "second iron adapter"));
}

TEST(Alternatives, OtherFittingsAreNotFoldedWhateverTheirMaterial) {
  const SmallWorld shop(R"(
    adapter: 1 A female, 3/4 A female, 300c, iron
    bushing: 1 A female, 3/4 A female, 500c, brass, reach 18, bushing
  )");
  EXPECT_THAT(rows(shop, shop.ask("1 A male", "3/4 A male")), ElementsAre("adapter", "bushing"));
}

TEST(Alternatives, WeighTheBinByWhatMustBeBought) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("1 A male", "3/4 A male", Order::parts);
  request.bin.items = {{shop.part("coupling"), 1}, {shop.part("bushing"), 1}};
  EXPECT_THAT(rows(shop, request), ElementsAre("long adapter", "adapter", "coupling*, bushing*"));
  EXPECT_THAT(reasons(shop, request, UnitSystem::inch).back(), ::testing::HasSubstr("1 fewer to buy"));
}

TEST(Reason, SaysFirstWhatSpeaksForTheChainAndThenWhatAgainst) {
  const SmallWorld shop(kShop);
  const auto inch = reasons(shop, shop.ask("1 A male", "3/4 A male"), UnitSystem::inch);
  ASSERT_EQ(inch.size(), 2u);
  EXPECT_THAT(inch[0], ::testing::StartsWith("3-1/8 in shorter, "));
  EXPECT_THAT(inch[0], ::testing::HasSubstr("$6.00 dearer"));
  const auto metric = reasons(shop, shop.ask("1 A male", "3/4 A male"), UnitSystem::metric);
  EXPECT_THAT(metric[0], ::testing::StartsWith("80 mm shorter, "));
}

struct Figures {
  int parts;
  int buy;
  int cents;
  double inches;
  double head_inches;
  const char* says;
};

class ReasonOf : public ::testing::TestWithParam<Figures> {};

Chain chain_of(const Figures& figures) {
  Chain chain;
  chain.part_count = figures.parts;
  chain.buy_count = figures.buy;
  chain.price = cents(figures.cents);
  chain.length = inches(figures.inches);
  chain.head = metres_of_head(figures.head_inches * 0.0254);
  return chain;
}

TEST_P(ReasonOf, NamesTheDifferencesThatShow) {
  const Chain best = chain_of({3, 3, 1000, 6.0, 2.0, ""});
  EXPECT_EQ(reason(best, chain_of(GetParam()), UnitSystem::inch), GetParam().says);
}

INSTANTIATE_TEST_SUITE_P(Table, ReasonOf,
                         ::testing::Values(Figures{2, 2, 1210, 6.0, 2.0, "1 part fewer, $2.10 dearer"},
                                           Figures{5, 5, 1000, 5.5, 2.0, "1/2 in shorter, 2 parts more"},
                                           Figures{3, 1, 400, 6.0, 2.0, "2 fewer to buy, $6.00 cheaper"},
                                           Figures{4, 3, 1000, 6.0, 1.0, "1 in less head lost, 1 part more"},
                                           Figures{3, 3, 900, 6.01, 2.01, "$1.00 cheaper"},
                                           Figures{3, 3, 1000, 5.99, 2.0, "0.01 in shorter"},
                                           Figures{3, 3, 1000, 6.0, 2.0, "the same figures"}));

std::string shelf(const SmallWorld& world, const ChainRequest& request) {
  const Finder finder(world.catalog());
  const Answer answer = finder.find(request);
  std::string text;
  for (const Substitute& substitute : finder.substitutes(request, std::get<Chain>(answer))) {
    text += "no " + world.catalog().part(substitute.instead_of).name + ":";
    for (const PartId part : substitute.buy_also) text += " +" + world.catalog().part(part).name;
    for (const PartId part : substitute.put_back) text += " -" + world.catalog().part(part).name;
    text += substitute.chain ? " = " + names(world, *substitute.chain) + "; " : " nothing; ";
  }
  return text;
}

TEST(ShelfEmpty, KeepsTheRestOfTheCartWhereThatTakesFewestPurchases) {
  // Without the hose adapter, one part beside the bushing is fewer purchases than the cheaper pair that needs none.
  const SmallWorld shop(R"(
    bushing: 1 A male, 3/4 A female, 120c, bushing
    hose adapter: 3/4 A male, 3/4 G male, 400c
    dear hose adapter: 3/4 A male, 3/4 G male, 4000c
    tube adapter: 1 A male, 1 C male, 10c
    cup adapter: 1 C female, 3/4 G male, 500c
  )");
  EXPECT_EQ(shelf(shop, shop.ask("1 A female", "3/4 G female")),
            "no tube adapter: +bushing +hose adapter -cup adapter = bushing, hose adapter; "
            "no cup adapter: +bushing +hose adapter -tube adapter = bushing, hose adapter; ")
      << "510c is the least for two parts";
  ChainRequest without = shop.ask("1 A female", "3/4 G female");
  without.banned.assign(shop.catalog().parts().size(), false);
  without.banned[shop.part("tube adapter").row] = true;
  EXPECT_EQ(shelf(shop, without),
            "no bushing: nothing; no hose adapter: +dear hose adapter = bushing, dear hose adapter; ");
}

TEST(ShelfEmpty, WhatTheBinHasOfThePartStaysUsable) {
  const SmallWorld shop(R"(
    nipple: 1 A male, 1 A male, 100c
    coupling: 1 A female, 1 A female, 200c
    long coupling: 1 A female, 1 A female, 900c, reach 60
  )");
  ChainRequest request = shop.ask("1 A female", "1 A female");
  request.bin.items = {{shop.part("nipple"), 1}};
  EXPECT_EQ(shelf(shop, request), "") << "nothing is bought";
  request.needs = {shop.need("coupling", {"coupling", "long coupling"})};
  EXPECT_EQ(shelf(shop, request), "no coupling: +long coupling = nipple*, long coupling, nipple; no nipple: nothing; ");
}

// Equal in parts, price, length, head and purchases: what is left is common practice, then the ids.
TEST(Alternatives, OfEqualsTheOneWithoutABushingStands) {
  const SmallWorld shop(R"(
    a bushing: 1 A female, 1 B female, 100c, bushing
    b adapter: 1 A female, 1 B female, 100c
  )");
  EXPECT_THAT(rows(shop, shop.ask("1 A male", "1 B male")), ElementsAre("b adapter"));
  const SmallWorld longer(R"(
    a bushing: 1 A female, 3/4 A female, 100c, bushing
    b second: 3/4 A male, 1 B female, 100c
    c first: 1 A female, 3/4 A male, 100c
    d second: 3/4 A female, 1 B female, 100c, bushing
    e first: 1 A female, 3/4 A female, 100c
  )");
  EXPECT_THAT(rows(longer, longer.ask("1 A male", "1 B male")), ElementsAre("e first, b second"));
}

}  // namespace
}  // namespace riserun::chain::testing::alternatives_test
