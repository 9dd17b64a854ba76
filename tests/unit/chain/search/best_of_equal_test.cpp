// What the order `line` prefers, key by key, in worlds of a few parts; each key decides against all that come after it.
#include "chain/search/best_of_equal.h"

#include "unit/chain/small_world.h"

#include <fmt/format.h>
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

TEST(OrderOfTheLine, TakesADielectricUnionOnlyWhereMetalsAreParted) {
  const SmallWorld shop(R"(
    nipple: 1 A male, 1 A male, 100c, iron
    union: 1 A female, 1 A female, 900c, union, iron
    dielectric union: 1 A female, 1 A female, 100c, union, dielectric, iron
    brass nipple: 1 A male, 1 A male, 900c, brass
  )");
  ChainRequest request = shop.ask("1 A female", "1 A female", Order::line);
  request.from.freedom = request.to.freedom = Freedom::fixed;
  EXPECT_EQ(shop.chain(request), "nipple, union, nipple");
  request.from.material = MaterialId{0};
  request.to.material = MaterialId{1};
  request.galvanic = Galvanic::avoid;
  EXPECT_EQ(shop.chain(request), "nipple, dielectric union, brass nipple");
}

// Behind the union the other metal begins: steel goes to steel, and nothing dear is bought to please both ends.
TEST(OrderOfTheLine, HoldsEachSideOfADielectricUnionAgainstItsOwnEnd) {
  const SmallWorld shop(R"(
    dielectric union: 1 A female, 1 G male, 900c, union, dielectric, iron
    iron nipple: 1 A male, 1 A male, 100c, iron
    stainless nipple: 1 A male, 1 A male, 80c, stainless
  )");
  ChainRequest request = shop.ask("1 G female", "1 A female", Order::line);
  request.from.freedom = request.to.freedom = Freedom::fixed;
  request.from.material = MaterialId{1};
  request.to.material = MaterialId{0};
  EXPECT_EQ(shop.chain(request), "dielectric union, iron nipple");
  std::swap(request.from, request.to);
  EXPECT_EQ(shop.chain(request), "iron nipple, dielectric union");
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
  stainless nipple: 1 A male, 1 A male, 500c, stainless
  iron coupling: 1 A female, 1 A female, 100c, iron
  brass coupling: 1 A female, 1 A female, 300c, brass
  brass valve: 1 A female, 1 A female, 900c, valve, brass
)";

TEST(OrderOfTheLine, IsOfOneMaterialBeforeItIsCheap) {
  const SmallWorld shop(kMetals);
  ChainRequest request = shop.ask("1 A female", "1 A female", Order::line);
  request.needs = {shop.need("coupling", {"brass coupling"})};
  EXPECT_EQ(shop.chain(request), "brass nipple, brass coupling, brass nipple");
  EXPECT_EQ(shop.chain(shop.ask("1 A female", "1 A female", Order::line)), "iron nipple");
}

// Common practice: a brass ball valve between nipples of black iron.
TEST(OrderOfTheLine, DoesNotTakeItsMetalFromAValve) {
  const SmallWorld shop(kMetals);
  ChainRequest request = shop.ask("1 A female", "1 A female", Order::line);
  request.needs = {shop.need("valve", {"brass valve"})};
  EXPECT_EQ(shop.chain(request), "iron nipple, brass valve, iron nipple");
  request.needs.push_back(shop.need("coupling", {"brass coupling"}));
  EXPECT_EQ(shop.chain(request), "brass nipple, brass coupling, brass nipple, brass valve, brass nipple");
}

// Common practice: brass into a copper fitting, and between copper and steel; never iron into copper.
TEST(OrderOfTheLine, TakesTheNearestMetalWhereAnEndsOwnIsNotMade) {
  const SmallWorld shop(R"(
    nylon nipple: 1 A male, 1 A male, 100c, nylon
    stainless nipple: 1 A male, 1 A male, 200c, stainless
    brass nipple: 1 A male, 1 A male, 300c, brass
  )");
  ChainRequest request = shop.ask("1 A female", "1 A female", Order::line);
  EXPECT_EQ(shop.chain(request), "nylon nipple");
  request.to.material = MaterialId{0};
  EXPECT_EQ(shop.chain(request), "stainless nipple");
}

TEST(OrderOfTheLine, ShunsWhatAnEndsMetalMustBeKeptApartFrom) {
  const SmallWorld shop(R"(
    iron nipple: 1 A male, 1 A male, 100c, iron
    stainless nipple: 1 A male, 1 A male, 300c, stainless
  )");
  ChainRequest request = shop.ask("1 A female", "1 A female", Order::line);
  request.to.material = MaterialId{1};
  EXPECT_EQ(shop.chain(request), "stainless nipple") << "brass and iron are far apart";
  request.from.material = MaterialId{0};
  EXPECT_EQ(shop.chain(request), "stainless nipple") << "before it is of an end's own";
  request.to.material.reset();
  EXPECT_EQ(shop.chain(request), "iron nipple");
}

// Where iron must be in it, what meets it is of iron, too: one joint clashes then, and not two.
TEST(OrderOfTheLine, HasAsFewJointsOfBadPairsAsItCan) {
  const SmallWorld shop(R"(
    iron nipple: 1 A male, 1 A male, 900c, iron
    brass nipple: 1 A male, 1 A male, 100c, brass
    coupling: 1 A female, 1 A female, 100c, iron
  )");
  ChainRequest request = shop.ask("1 A female", "1 A female", Order::line);
  request.needs = {shop.need("coupling", {"coupling"})};
  EXPECT_EQ(shop.chain(request), "iron nipple, coupling, iron nipple");
  request.to.material = MaterialId{1};
  EXPECT_EQ(shop.chain(request), "iron nipple, coupling, brass nipple");
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

// A fitter pays more for one metal all the way, and not any price: 8 dollars for each part of another.
TEST(OrderOfTheLine, PaysForOneMetalNoMoreThanThatIsWorth) {
  const auto chosen = [](const char* brass_cents) {
    const SmallWorld shop(fmt::format(R"(
      iron nipple: 1 A male, 1 A male, 100c, iron
      stainless nipple: 1 A male, 1 A male, {}, stainless
      union: 1 A female, 1 A female, 900c, union, stainless
    )",
                                      brass_cents));
    ChainRequest request = shop.ask("1 A female", "1 A female", Order::line);
    request.from.freedom = request.to.freedom = Freedom::fixed;
    return shop.chain(request);
  };
  EXPECT_EQ(chosen("490c"), "stainless nipple, union, stainless nipple");  // 7.80 for one union of another metal
  EXPECT_EQ(chosen("510c"), "iron nipple, union, iron nipple");
}

TEST(RestOfAChain, IsMeasuredByItsCommonestMaterial) {
  const SmallWorld shop(kMetals);
  const auto move = [&](const std::string& name) { return bought_move(shop.catalog(), shop.part(name), 0, 1); };
  const std::vector<Move> moves{move("iron nipple"), move("brass valve"), move("iron nipple")};
  // Two are not of its own; a valve clashes with nothing.
  constexpr std::int64_t kTwo = std::int64_t{2} << 20;
  const EndMetals brass{{MaterialId{1}}, false};
  EXPECT_EQ(rest_of(shop.catalog(), Order::line, EndMetals{}, moves), (Rest{{0, 1100, 1100, 0, 0}}));
  EXPECT_EQ(rest_of(shop.catalog(), Order::line, brass, moves), (Rest{{kTwo, 1100, 1100, 0, 0}}));
  EXPECT_EQ(rest_of(shop.catalog(), Order::parts, brass, moves), Rest{});
  // Two joints clash, each of them eleven steps of 0.05 V.
  const std::vector<Move> mixed{move("iron nipple"), move("brass coupling"), move("iron nipple")};
  EXPECT_EQ(rest_of(shop.catalog(), Order::line, EndMetals{}, mixed), (Rest{{kTwo * kTwo / 2, 800 + 500, 500, 0, 0}}));
  EXPECT_EQ(rest_of(shop.catalog(), Order::line, brass, mixed),
            (Rest{{kTwo * kTwo / 2 + kTwo + 22, 800 + 500, 500, 0, 0}}));
  EXPECT_EQ(rest_of(shop.catalog(), Order::line, EndMetals{{MaterialId{1}}, true}, mixed),
            (Rest{{kTwo, 800 + 500, 500, 0, 0}}));
}

}  // namespace
}  // namespace riserun::chain::testing
