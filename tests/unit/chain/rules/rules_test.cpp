// Rules of a request one by one: order of the needs, bushings, heat, air and vacuum, and what a refusal says of them.
#include "chain/part/wetted_area.h"
#include "report/words/say.h"
#include "unit/chain/small_world.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>

namespace riserun::chain::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

std::vector<std::string> keys(const NoChain& none) {
  std::vector<std::string> all;
  for (const Fact& rule : none.conflict) all.emplace_back(rule.code);
  return all;
}

TEST(NeedsInOrder, ComeAsGivenFromTheFirstPortOn) {
  const SmallWorld shop(R"(
    valve: 1 A female, 1 A male, 900c, device
    gauge tee: 1 A female, 1 A male, 500c, device
  )");
  ChainRequest request = shop.ask("1 A male", "1 A female");
  request.needs = {shop.need("valve", {"valve"}), shop.need("gauge tee", {"gauge tee"})};
  request.needs_in_order = true;
  EXPECT_EQ(shop.chain(request), "valve, gauge tee");
  std::swap(request.needs[0], request.needs[1]);
  EXPECT_EQ(shop.chain(request), "gauge tee, valve");
}

TEST(NeedsInOrder, OfWhichOneIsWithinTheOtherEachTakeAPart) {
  const SmallWorld shop(R"(
    gate valve: 1 A female, 1 A male, 900c, device
    ball valve: 1 A female, 1 A male, 500c, device
  )");
  ChainRequest request = shop.ask("1 A male", "1 A female");
  const Need valve = shop.need("valve", {"gate valve", "ball valve"});
  request.needs = {valve, shop.need("ball valve", {"ball valve"}), valve};
  request.needs_in_order = true;
  EXPECT_EQ(shop.chain(request), "ball valve, ball valve, ball valve");
}

TEST(NeedsInOrder, ThatCannotBeKeptIsNamedWithTheNeeds) {
  const SmallWorld shop(R"(
    valve: 1 A female, 3/4 A male, 900c, device
    gauge tee: 3/4 A female, 1 A male, 500c, device
  )");
  ChainRequest request = shop.ask("1 A male", "1 A female");
  request.needs = {shop.need("gauge tee", {"gauge tee"}), shop.need("valve", {"valve"})};
  request.needs_in_order = true;
  const NoChain none = std::get<NoChain>(shop.find(request));
  // Without a need for it the valve would not come in, so that no way would lead to the gauge tee.
  EXPECT_THAT(keys(none), ElementsAre("need", "order_of_needs"));
  EXPECT_EQ(said(none.reason), "these two cannot both be kept: the gauge tee asked for; the needs in the order given");
  EXPECT_THAT(said(none.mends), ElementsAre("let the needs come in any order"));
}

TEST(MostBushings, TakesTheDearerPartThatIsNone) {
  const SmallWorld shop(R"(
    big bushing: 1 A male, 3/4 A female, 100c, bushing
    small bushing: 3/4 A male, 1/2 A female, 100c, bushing
    bell: 3/4 A male, 1/2 A female, 900c
  )");
  ChainRequest request = shop.ask("1 A female", "1/2 A male");
  EXPECT_EQ(shop.chain(request), "big bushing, small bushing");
  request.most_bushings = 1;
  EXPECT_EQ(shop.chain(request), "big bushing, bell");
  request.most_bushings = 0;
  const NoChain none = std::get<NoChain>(shop.find(request));
  EXPECT_EQ(said(none.reason), "every chain takes more than 0 bushings");
  EXPECT_THAT(said(none.mends), ElementsAre("allow more bushings"));
}

TEST(Conflict, NamesTheTwoRulesAndWhatEachChangeCosts) {
  const SmallWorld shop(R"(
    narrow coupling: 1 A female, 1 A female, 200c, bore 10
    wide nipple: 1 A female, 3/4 A female, 300c, bore 25
    wide bell: 3/4 A male, 1 A female, 400c, bore 25
  )");
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.smallest_bore = inches(0.75);
  request.most_parts = 1;
  const NoChain none = std::get<NoChain>(shop.find(request));
  EXPECT_EQ(said(none.reason), "these two cannot both be kept: no more than one part; 3/4 in bore everywhere");
  ASSERT_EQ(none.lifts.size(), 2U);
  EXPECT_EQ(said(none.lifts[0].what.front()), "allow more parts");
  EXPECT_EQ(none.lifts[0].part_count, 2);
  EXPECT_EQ(none.lifts[0].price, cents(700));
  EXPECT_EQ(said(none.lifts[1].what.front()), "accept a bore below 0.75 in, down to 0.35 in");
  EXPECT_EQ(none.lifts[1].part_count, 1);
  EXPECT_EQ(none.lifts[1].price, cents(200));
}

TEST(Heat, IsNotProvedWithoutADuty) {
  const SmallWorld shop("coupling: 1 A female, 1 A female, 200c, rating 100");
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.hottest = degrees_fahrenheit(73.0);
  EXPECT_EQ(shop.chain(request), "coupling");
  request.hottest = degrees_fahrenheit(74.0);
  EXPECT_EQ(said(std::get<NoChain>(shop.find(request)).reason), "no chain is proved for 74 degF");
  request.hottest.reset();
  request.vacuum = true;
  EXPECT_EQ(said(std::get<NoChain>(shop.find(request)).reason), "no chain is proved for vacuum");
}

// Common practice: what is ten times as large tells.
TEST(GalvanicAreas, ASmallAnodeOnALargeCathodeIsWorst) {
  const Area one = square_metres(1.0);
  const Area wall = square_metres(std::numeric_limits<double>::infinity());
  EXPECT_EQ(effect_of_areas(one, square_metres(9.0)), AreaEffect::none);
  EXPECT_EQ(effect_of_areas(one, square_metres(10.0)), AreaEffect::worse);
  EXPECT_EQ(effect_of_areas(square_metres(10.0), one), AreaEffect::milder);
  EXPECT_EQ(effect_of_areas(one, wall), AreaEffect::worse);
  EXPECT_EQ(effect_of_areas(wall, one), AreaEffect::milder);
  EXPECT_EQ(effect_of_areas(wall, wall), AreaEffect::none);
  EXPECT_EQ(effect_of_areas(Area{}, one), AreaEffect::none);
}

TEST(GalvanicAreas, SayWhichCorrodesAndHow) {
  const SmallWorld shop("nipple: 1 A male, 1 A male, 200c, iron, bore 20, reach 40");
  ChainRequest request = shop.ask("1 A female", "1 A female");
  request.to.material = shop.catalog().find_material("brass");
  const auto cautions = [&] { return report::say_all(std::get<Chain>(shop.find(request)).cautions, UnitSystem::inch); };
  EXPECT_THAT(cautions(), ::testing::Contains(HasSubstr("in water the iron corrodes; put")));
  request.to.on_vessel = true;
  EXPECT_THAT(cautions(),
              ::testing::Contains(HasSubstr("the iron corrodes, and fast, for it is small beside the brass")));
}

}  // namespace
}  // namespace riserun::chain::testing
