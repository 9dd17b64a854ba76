// What the order `line` prefers, key by key, in worlds of a few parts; each key decides against all that come after it.
#include "chain/search/best_of_equal.h"

#include "unit/chain/small_world.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace riserun::chain::testing {
namespace {

TEST(OrderOfTheLine, KeepsTheSizeAgainstKindSizeChangesPartsAndPrice) {
  const SmallWorld shop(R"(
    cheap reducer: 1 A male, 3/4 A male, 1c
    cheap union: 3/4 A female, 3/4 A female, 1c, union
    flange: 1 A male, 1 C male, 900c
    flange union: 1 C female, 1 C female, 900c, union
  )");
  ChainRequest request = shop.ask("1 A female", "1 A female", Order::line);
  request.from.freedom = request.to.freedom = Freedom::fixed;
  EXPECT_EQ(shop.chain(request), "flange, flange union, flange");
  request.order = Order::parts;
  EXPECT_EQ(shop.chain(request), "cheap reducer, cheap union, cheap reducer");
}

TEST(OrderOfTheLine, WhereItMustNarrowItNarrowsAsLittleAsItCan) {
  const SmallWorld shop(R"(
    reducer 3/4: 1 A male, 3/4 A male, 900c
    reducer 1/2: 1 A male, 1/2 A male, 1c
    union 3/4: 3/4 A female, 3/4 A female, 900c, union
    union 1/2: 1/2 A female, 1/2 A female, 1c, union
  )");
  ChainRequest request = shop.ask("1 A female", "1 A female", Order::line);
  request.from.freedom = request.to.freedom = Freedom::fixed;
  EXPECT_EQ(shop.chain(request), "reducer 3/4, union 3/4, reducer 3/4");
}

TEST(OrderOfTheLine, ClosesARigidRunWithAHoseBeforeAForeignThread) {
  const SmallWorld shop(R"(
    adapter in: 1 A male, 1 G male, 1c
    adapter out: 1 G female, 1 A male, 1c, union
    barb: 1 A male, 1 H male, 900c
    tubing: 1 H female, 1 H female, 900c, flexible
  )");
  ChainRequest request = shop.ask("1 A female", "1 A female", Order::line);
  request.from.freedom = request.to.freedom = Freedom::fixed;
  EXPECT_EQ(shop.chain(request), "barb, tubing, barb");
  request.to = shop.end("1 G male", Freedom::loose);
  EXPECT_EQ(shop.chain(request), "adapter out");
}

TEST(OrderOfTheLine, TakesFewestSizeChangesBeforeFewestParts) {
  const SmallWorld shop(R"(
    wide union: 3/4 A male, 1 A female, 1c, union
    wide nipple: 1 A male, 3/4 A male, 1c
    nipple: 3/4 A male, 3/4 A male, 100c
    union: 3/4 A female, 3/4 A female, 100c, union
  )");
  ChainRequest request = shop.ask("3/4 A female", "3/4 A female", Order::line);
  request.from.freedom = request.to.freedom = Freedom::fixed;
  EXPECT_EQ(shop.chain(request), "nipple, union, nipple");
  request.order = Order::parts;
  EXPECT_EQ(shop.chain(request), "wide nipple, wide union");
}

const char* const kMetals = R"(
  iron nipple: 1 A male, 1 A male, 100c, iron
  brass nipple: 1 A male, 1 A male, 300c, brass
  iron coupling: 1 A female, 1 A female, 100c, iron
  brass valve: 1 A female, 1 A female, 900c, valve, brass
)";

TEST(OrderOfTheLine, IsOfOneMaterialBeforeItIsCheap) {
  const SmallWorld shop(kMetals);
  ChainRequest request = shop.ask("1 A female", "1 A female", Order::line);
  request.needs = {shop.need("valve", {"brass valve"})};
  EXPECT_EQ(shop.chain(request), "brass nipple, brass valve, brass nipple");
  EXPECT_EQ(shop.chain(shop.ask("1 A female", "1 A female", Order::line)), "iron nipple");
}

TEST(OrderOfTheLine, IsOfAnEndsOwnMaterialWhereThatIsKnown) {
  const SmallWorld shop(kMetals);
  ChainRequest request = shop.ask("1 A female", "1 A female", Order::line);
  request.needs = {shop.need("valve", {"brass valve"})};
  request.from.material = MaterialId{0};
  EXPECT_EQ(shop.chain(request), "iron nipple, brass valve, iron nipple");
  request.needs.clear();
  request.from.material.reset();
  request.to.material = MaterialId{1};
  EXPECT_EQ(shop.chain(request), "brass nipple");
}

TEST(OrderOfTheBin, TakesAHoseThatIsThereBeforeAUnionIsBought) {
  const SmallWorld shop(R"(
    nipple: 1 A male, 1 A male, 1c
    union: 1 A female, 1 A female, 1c, union
    barb: 1 A male, 1 H male, 1c
    tubing: 1 H female, 1 H female, 1c, flexible
  )");
  ChainRequest request = shop.ask("1 A female", "1 A female", Order::bin);
  request.from.freedom = request.to.freedom = Freedom::fixed;
  request.bin.items = {{shop.part("barb"), 2}, {shop.part("tubing"), 1}};
  EXPECT_EQ(shop.chain(request), "barb*, tubing*, barb*");
  request.order = Order::line;
  EXPECT_EQ(shop.chain(request), "nipple, union, nipple");
}

TEST(RestOfAChain, IsMeasuredByItsCommonestMaterial) {
  const SmallWorld shop(kMetals);
  const auto move = [&](const std::string& name) { return bought_move(shop.catalog(), shop.part(name), 0, 1); };
  const std::vector<Move> moves{move("iron nipple"), move("brass valve"), move("iron nipple")};
  EXPECT_EQ(rest_of(shop.catalog(), Order::line, {MaterialId{}}, moves), (Rest{{0, 1, 1100, 0, 0}}));
  EXPECT_EQ(rest_of(shop.catalog(), Order::line, {MaterialId{1}}, moves), (Rest{{2, 1, 1100, 0, 0}}));
  EXPECT_EQ(rest_of(shop.catalog(), Order::parts, {MaterialId{1}}, moves), Rest{});
}

}  // namespace
}  // namespace riserun::chain::testing
