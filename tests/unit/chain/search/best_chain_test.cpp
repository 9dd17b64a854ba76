// Which chain is found, rule by rule, in worlds of a few parts. A star marks a part that comes from the bin.
#include "chain/search/best_chain.h"

#include "chain/finder.h"
#include "unit/chain/small_world.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace riserun::chain::testing::best_chain_test {
namespace {

const char* const kShop = R"(
  coupling 1: 1 A female, 1 A female, 200c
  coupling 3/4: 3/4 A female, 3/4 A female, 150c
  nipple 1: 1 A male, 1 A male, 100c
  nipple 3/4: 3/4 A male, 3/4 A male, 90c
  reducing coupling: 1 A female, 3/4 A female, 350c
  bushing: 1 A male, 3/4 A female, 120c, bushing
  hose adapter: 3/4 A male, 3/4 G male, 400c, brass
  union 3/4: 3/4 A female, 3/4 A female, 900c, union
  ball valve: 3/4 A female, 3/4 A female, 1500c, device, brass
  check valve: 3/4 A female, 3/4 A female, 1400c, device, one way
  tee: 3/4 A female, 3/4 A female, 1/2 A female, 500c
  plug: 1/2 A male, 60c
  brass plug: 1/2 A male, 50c, brass
)";

TEST(FindChain, EndsThatGoTogetherNeedNoPart) {
  const SmallWorld shop(kShop);
  EXPECT_EQ(shop.chain(shop.ask("1 A male", "1 A female")), "straight together");
}

TEST(FindChain, FewestPartsThenLowestPrice) {
  const SmallWorld shop(kShop);
  EXPECT_EQ(shop.chain(shop.ask("1 A female", "3/4 G female")), "bushing, hose adapter");
  EXPECT_EQ(shop.chain(shop.ask("1 A male", "3/4 G female")), "reducing coupling, hose adapter");
}

TEST(FindChain, PriceOrderTakesMorePartsWhereTheyCostLess) {
  const SmallWorld shop(kShop);
  EXPECT_EQ(shop.chain(shop.ask("1 A male", "3/4 A male", Order::price)), "coupling 1, bushing");
  EXPECT_EQ(shop.chain(shop.ask("1 A male", "3/4 A male", Order::parts)), "reducing coupling");
}

TEST(FindChain, ABinPartIsFreeOnlyAsOftenAsItIsThere) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("1 A male", "3/4 A male", Order::price);
  request.bin.items = {{shop.part("reducing coupling"), 1}};
  EXPECT_EQ(shop.chain(request), "reducing coupling*");

  ChainRequest twice = shop.ask("1 A female", "1 A female", Order::bin);
  twice.needs = {shop.need("coupling", {"coupling 1"})};
  twice.bin.items = {{shop.part("nipple 1"), 1}};
  EXPECT_EQ(shop.chain(twice), "nipple 1*, coupling 1, nipple 1");
}

TEST(FindChain, WhatIsOnlyInTheBinCannotBeUsedMoreOftenThanItIsThere) {
  const SmallWorld shop(R"(
    odd nipple: 1 A male, 1 A male, 100c, special
    coupling: 1 A female, 1 A female, 100c
  )");
  ChainRequest request = shop.ask("1 A female", "1 A female");
  EXPECT_THAT(shop.chain(request), ::testing::StartsWith("none"));
  request.bin.items = {{shop.part("odd nipple"), 1}};
  EXPECT_EQ(shop.chain(request), "odd nipple*");
  request.needs = {shop.need("coupling", {"coupling"})};
  EXPECT_THAT(shop.chain(request), ::testing::StartsWith("none"));
  request.bin.items[0].count = 2;
  EXPECT_EQ(shop.chain(request), "odd nipple*, coupling, odd nipple*");
}

TEST(FindChain, DevicesAreOnlyPutInWhereANeedAsksForThem) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("3/4 A male", "3/4 A male");
  EXPECT_EQ(shop.chain(request), "coupling 3/4");
  request.needs = {shop.need("ball valve", {"ball valve"})};
  EXPECT_EQ(shop.chain(request), "ball valve");
}

TEST(FindChain, ANeedNamedTwiceAsksForTwo) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("3/4 A male", "3/4 A male");
  request.needs = {shop.need("ball valve", {"ball valve"}), shop.need("ball valve", {"ball valve"})};
  EXPECT_EQ(shop.chain(request), "ball valve, nipple 3/4, ball valve");
}

TEST(FindChain, OnePartMeetsAllNeedsThatItMatches) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("3/4 A male", "3/4 A male");
  request.needs = {shop.need("ball valve", {"ball valve"}), shop.need("brass", {"ball valve", "hose adapter"})};
  EXPECT_EQ(shop.chain(request), "ball valve");
}

TEST(FindChain, SparePortsOfANeededTeeAreClosedByTheBestPlug) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("3/4 A male", "3/4 A male");
  request.needs = {shop.need("tee", {"tee"})};
  EXPECT_EQ(shop.chain(request), "tee [brass plug]");
  request.galvanic = Galvanic::avoid;
  EXPECT_EQ(shop.chain(request), "tee [plug]");
  const Answer answer = shop.find(request);
  EXPECT_EQ(std::get<Chain>(answer).part_count, 2);
  EXPECT_EQ(std::get<Chain>(answer).price, cents(560));
}

// A plug that bends counts as hose does, of no metal; the cheaper one of iron, as the line is of brass, for one part of
// another.
TEST(FindChain, APlugThatBendsIsToldFromOneOfItsMaterialThatDoesNot) {
  const SmallWorld shop(R"(
    tee: 3/4 A female, 3/4 A female, 1/2 A female, 500c, brass
    plug: 1/2 A male, 50c
    soft plug: 1/2 A male, 60c, flexible
  )");
  ChainRequest request = shop.ask("3/4 A male", "3/4 A male", Order::line);
  request.needs = {shop.need("tee", {"tee"})};
  request.from.material = shop.catalog().part(shop.part("tee")).material;
  EXPECT_EQ(shop.chain(request), "tee [soft plug]");
}

TEST(FindChain, OneWayPartsFaceFromTheFromEndToTheToEnd) {
  const SmallWorld shop(R"(
    check valve: 3/4 A female, 1 A female, 1400c, device, one way
    coupling: 1 A female, 3/4 A female, 100c
    nipple: 1 A male, 1 A male, 100c
  )");
  ChainRequest request = shop.ask("3/4 A male", "1 A male");
  request.needs = {shop.need("check valve", {"check valve"})};
  EXPECT_EQ(shop.chain(request), "check valve");
  std::swap(request.from, request.to);
  EXPECT_THAT(shop.chain(request), ::testing::StartsWith("none"));
}

TEST(FindChain, MostPartsIsALimit) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("1 A male", "3/4 A male", Order::price);
  request.most_parts = 1;
  EXPECT_EQ(shop.chain(request), "reducing coupling");
  request.most_parts = 0;
  EXPECT_EQ(shop.chain(request), "none: every chain takes more than 0 parts");
}

TEST(FindChain, RatingBoreAndBansRuleOut) {
  const SmallWorld shop(R"(
    weak: 1 A female, 1 A female, 50c, rating 100, bore 25
    narrow: 1 A female, 1 A female, 60c, bore 10
    sound: 1 A female, 1 A female, 90c, bore 25
    spare: 1 A female, 1 A female, 95c, bore 25
  )");
  ChainRequest request = shop.ask("1 A male", "1 A male");
  EXPECT_EQ(shop.chain(request), "weak");
  request.rating = psig(125.0);
  EXPECT_EQ(shop.chain(request), "narrow");
  request.smallest_bore = millimetres(20.0);
  EXPECT_EQ(shop.chain(request), "sound");
  request.banned.assign(shop.catalog().parts().size(), false);
  request.banned[shop.part("sound").row] = true;
  EXPECT_EQ(shop.chain(request), "spare");
}

TEST(FindChain, NoPvcUnderCompressedAir) {  // OSHA Hazard Information Bulletin, 13 December 1990
  const SmallWorld shop(R"(
    pvc coupling: 1 A female, 1 A female, 50c, pvc
    iron coupling: 1 A female, 1 A female, 90c
  )");
  ChainRequest request = shop.ask("1 A male", "1 A male");
  EXPECT_EQ(shop.chain(request), "pvc coupling");
  request.service = Service::air;
  EXPECT_EQ(shop.chain(request), "iron coupling");
}

TEST(FindChain, MetalsToKeepApartTakeADielectricJoint) {
  const SmallWorld shop(R"(
    iron nipple: 1 A male, 1 A male, 50c
    lined nipple: 1 A male, 1 A male, 200c, dielectric
  )");
  ChainRequest request = shop.ask("1 A female", "1 A female");
  request.from.material = shop.catalog().find_material("brass");
  EXPECT_EQ(shop.chain(request), "iron nipple");
  request.galvanic = Galvanic::avoid;
  EXPECT_EQ(shop.chain(request), "lined nipple");
}

// Brass on steel is watched, and avoided only where water makes a cell of them (MIL-STD-889 practice, from memory).
TEST(FindChain, MetalsToWatchAreAvoidedWhereItIsWet) {
  const SmallWorld shop(R"(
    stainless nipple: 1 A male, 1 A male, 50c, stainless
    iron nipple: 1 A male, 1 A male, 200c
  )");
  ChainRequest request = shop.ask("1 A female", "1 A female");
  request.from.material = shop.catalog().find_material("iron");
  ASSERT_EQ(shop.catalog().galvanic(*shop.catalog().find_material("iron"), *shop.catalog().find_material("stainless")),
            catalog::GalvanicVerdict::watch);
  EXPECT_EQ(shop.chain(request), "stainless nipple");
  request.galvanic = Galvanic::avoid;
  EXPECT_EQ(shop.chain(request), "iron nipple");
  request.service = Service::air;
  EXPECT_EQ(shop.chain(request), "stainless nipple");
}

// A steel port and black iron are one metal by two names: what a fitter screws into a steel table is no brass.
TEST(FindChain, TheEndsOwnMetalIsItsOwnUnderAnotherName) {
  const SmallWorld shop(R"(
    brass bushing: 1 A male, 3/4 A female, 100c, brass, bushing
    steel bushing: 1 A male, 3/4 A female, 200c, steel, bushing
  )");
  ChainRequest request = shop.ask("1 A female", "3/4 A male", Order::line);
  request.to.material = shop.catalog().find_material("iron");
  EXPECT_EQ(shop.chain(request), "steel bushing");
  request.to.material.reset();
  EXPECT_EQ(shop.chain(request), "brass bushing");
}

TEST(FindChain, ABushingLosesATieAndSoDoesACloseNipple) {
  const SmallWorld shop(R"(
    a bushing: 1 A male, 3/4 A female, 100c, bushing
    z reducer: 1 A male, 3/4 A female, 100c
    a close nipple: 3/4 A male, 3/4 A male, 100c
    z shoulder nipple: 3/4 A male, 3/4 A male, 100c
  )");
  EXPECT_EQ(shop.chain(shop.ask("1 A female", "3/4 A female")), "z reducer, z shoulder nipple");
}

TEST(FindChain, LastTiesAreBrokenBySortedIdsWhateverTheOrderOfTheCatalog) {
  const char* const forwards = R"(
    b: 1 A male, 1 A male, 100c
    a: 1 A male, 1 A male, 100c
    c: 1 A male, 1 A male, 100c
  )";
  const char* const backwards = R"(
    c: 1 A male, 1 A male, 100c
    a: 1 A male, 1 A male, 100c
    b: 1 A male, 1 A male, 100c
  )";
  for (const char* text : {forwards, backwards}) {
    const SmallWorld shop(text);
    for (const Order order : {Order::parts, Order::price, Order::loss, Order::length, Order::bin})
      EXPECT_EQ(shop.chain(shop.ask("1 A female", "1 A female", order)), "a");
  }
}

TEST(FindChain, LossOrderTakesTheWiderWay) {
  const SmallWorld shop(R"(
    tight: 1 A male, 1 A male, 10c, bore 8
    wide: 1 A male, 1 A male, 900c, bore 26
  )");
  EXPECT_EQ(shop.chain(shop.ask("1 A female", "1 A female", Order::loss)), "wide");
}

TEST(FindChain, LengthIsBodiesLessMakeUpsWithABandOfOneTurnAJoint) {
  const SmallWorld shop(R"(
    long: 1 A male, 1 A male, 10c, reach 60
    short: 1 A male, 1 A male, 20c, reach 40
    coupling: 1 A female, 1 A female, 100c, reach 21
  )");
  EXPECT_EQ(shop.chain(shop.ask("1 A female", "1 A female", Order::length)), "short");
  ChainRequest request = shop.ask("1 A male", "1 A female", Order::length);
  request.needs = {shop.need("coupling", {"coupling"})};
  const Answer answer = shop.find(request);
  const Chain& chain = std::get<Chain>(answer);
  ASSERT_EQ(chain.parts.size(), 2u);
  // 42 mm of coupling and 80 mm of nipple, less 15 mm in each of three joints; plus or minus 2 mm a joint.
  EXPECT_NEAR(in_millimetres(chain.length), 42.0 + 80.0 - 45.0, 1e-9);
  EXPECT_NEAR(in_millimetres(chain.length_tolerance), 6.0, 1e-9);
}

TEST(FindChain, TheSameAnswerEachTime) {
  const SmallWorld shop(kShop);
  const Finder finder(shop.catalog());
  const ChainRequest request = shop.ask("1 A female", "3/4 G female");
  const Answer first = finder.find(request);
  for (int i = 0; i < 3; ++i) {
    const Answer again = finder.find(request);
    ASSERT_EQ(std::get<Chain>(again).steps.size(), std::get<Chain>(first).steps.size());
    for (std::size_t k = 0; k < std::get<Chain>(first).steps.size(); ++k)
      EXPECT_EQ(std::get<Chain>(again).steps[k].what, std::get<Chain>(first).steps[k].what);
  }
}

// The heads of the parts and of the changes of bore, added up one by one as the search does, are the line's own head.
TEST(FindChain, HeadIsThatOfTheWholeLine) {
  const SmallWorld shop(R"(
    wide: 1 A male, 3/4 A female, 10c, bore 26
    tight: 3/4 A male, 1/2 A male, 10c, bore 8
    middle: 1/2 A female, 1 A male, 10c, bore 15
  )");
  const Finder finder(shop.catalog());
  const ChainRequest request = shop.ask("1 A female", "1 A female", Order::loss);
  const auto route = best_chain(finder.prepared(), request);
  ASSERT_TRUE(route.has_value());
  const Answer answer = finder.find(request);
  const Chain& chain = std::get<Chain>(answer);
  EXPECT_EQ(line_elements(shop.catalog(), chain).size(), 3u);
  EXPECT_GT(in_metres(chain.head), 0.1);
  EXPECT_NEAR(in_metres(chain.head), static_cast<double>(route->cost.tuple[1]) * 1e-9, 1e-8);
}

}  // namespace
}  // namespace riserun::chain::testing::best_chain_test
