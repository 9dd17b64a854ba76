// Why there is no chain, and the smallest change that would make one.
#include "unit/chain/small_world.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace riserun::chain::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

NoChain none_for(const SmallWorld& shop, const ChainRequest& request) {
  const Answer answer = shop.find(request);
  EXPECT_TRUE(std::holds_alternative<NoChain>(answer));
  return std::holds_alternative<NoChain>(answer) ? std::get<NoChain>(answer) : NoChain{};
}

std::vector<std::string> written(const SmallWorld& shop, const std::vector<PortTypeId>& types) {
  std::vector<std::string> names;
  for (const PortTypeId type : types) names.push_back(shop.catalog().written(type));
  return names;
}

TEST(WhyNoChain, NamesTheMissingAdapterAndWhatIsReachable) {
  const SmallWorld shop(R"(
    reducing coupling: 1 A female, 3/4 A female, 350c
    hose nipple: 3/4 G male, 3/4 G male, 300c
  )");
  const NoChain none = none_for(shop, shop.ask("1 A male", "3/4 G female"));
  EXPECT_EQ(said(none.reason), "no run of stocked parts leads from 1 MA to 3/4 FG");
  EXPECT_EQ(said(none.missing_part.value()), "3/4 MA x 3/4 MG adapter");
  EXPECT_THAT(written(shop, none.reachable_from), ElementsAre("3/4 FA"));
  EXPECT_THAT(written(shop, none.reachable_to), ElementsAre("3/4 MG"));
  EXPECT_THAT(said(none.mends), IsEmpty());
}

TEST(WhyNoChain, PrefersAPartOfOneKindOverAnAdapter) {
  const SmallWorld shop("hose adapter: 3/4 A male, 3/4 G male, 400c");
  EXPECT_EQ(said(none_for(shop, shop.ask("1 A male", "3/4 G female")).missing_part.value()), "1 FA x 3/4 FA adapter");
}

TEST(WhyNoChain, NamesTheOneSpecialOrderPart) {
  const SmallWorld shop(R"(
    odd coupling: 1 A female, 1 A female, 200c, special
    dear coupling: 1 A female, 1 A female, 900c, special
  )");
  const NoChain none = none_for(shop, shop.ask("1 A male", "1 A male"));
  ASSERT_TRUE(none.special_order.has_value());
  EXPECT_EQ(shop.catalog().part(*none.special_order).name, "odd coupling");
  EXPECT_THAT(said(none.mends), ElementsAre("order the odd coupling"));
}

TEST(WhyNoChain, TwoSpecialOrderPartsAreNotOne) {
  const SmallWorld shop(R"(
    odd coupling: 1 A female, 1/2 A female, 200c, special
    odd nipple: 1/2 A male, 3/4 A male, 200c, special
  )");
  EXPECT_FALSE(none_for(shop, shop.ask("1 A male", "3/4 A female")).special_order.has_value());
}

TEST(WhyNoChain, LookAlikesAreNeverJoinedAndAreNamed) {
  const SmallWorld shop("coupling: 1 A female, 1 A female, 200c");
  const NoChain none = none_for(shop, shop.ask("1 A male", "1 B female"));
  EXPECT_THAT(said(none.look_alikes),
              ElementsAre("never join 1 MA and 1 FB: the pitch is the same, the thread form is not"));
}

TEST(WhyNoChain, EachMendIsEnoughByItself) {
  const SmallWorld shop("coupling: 1 A female, 1 A female, 200c, rating 100, bore 20");
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.rating = psig(150.0);
  EXPECT_EQ(said(none_for(shop, request).reason), "no chain stands 150 psi in every part");
  EXPECT_THAT(said(none_for(shop, request).mends), ElementsAre("accept a rating below 150 psi"));
  request.smallest_bore = inches(1.0);
  EXPECT_EQ(said(none_for(shop, request).reason), "no chain stands 150 psi in every part");
  EXPECT_THAT(said(none_for(shop, request).mends),
              ElementsAre("accept a rating below 150 psi, and accept a bore below 1 in, down to 0.75 in"));
  request.rating.reset();
  EXPECT_THAT(said(none_for(shop, request).mends), ElementsAre("accept a bore below 1 in, down to 0.75 in"));
}

TEST(WhyNoChain, ANeedThatNoTwoEndedPartMeets) {
  const SmallWorld shop(R"(
    coupling: 1 A female, 1 A female, 200c
    gauge: 1/2 A male, 900c, device
  )");
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.needs = {shop.need("gauge", {"gauge"})};
  EXPECT_EQ(
      said(none_for(shop, request).reason),
      "a gauge has one port only and cannot stand in a chain: ask for the port that it goes into, 1/2 FA, as a third "
      "end, and a tee takes it in");
  EXPECT_THAT(said(none_for(shop, request).mends), ElementsAre("do without the gauge"));
}

TEST(WhyNoChain, NamesTheWordThatAvoidsAllThatIsNeeded) {
  const SmallWorld shop(R"(
    coupling: 1 A female, 1 A female, 200c
    ball valve: 1 A female, 1 A female, 900c, brass, valve
    gate valve: 1 A female, 1 A female, 900c, brass, valve
  )");
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.needs = {shop.need("valve", {"ball valve", "gate valve"})};
  request.banned.assign(shop.catalog().parts().size(), false);
  const auto avoid = [&](const char* words, const char* part) {
    request.avoided.push_back({words, {shop.part(part)}});
    request.banned[shop.part(part).row] = true;
  };
  avoid("lever", "ball valve");
  EXPECT_EQ(shop.chain(request), "gate valve");
  avoid("coupling", "coupling");
  avoid("wheel", "gate valve");
  EXPECT_EQ(said(none_for(shop, request).reason), "every valve that may be had is avoided by the word lever and wheel");
  // What is ruled out without a word is no fault of the words.
  request.avoided.pop_back();
  EXPECT_EQ(said(none_for(shop, request).reason), "no valve is stocked that the other rules allow");
}

TEST(WhyNoChain, NamesTheDirectionOfWhatIsPassedOneWay) {
  const SmallWorld shop(R"(
    check valve: 3/4 A female, 1 A female, 1400c, device, one way
    filter: 1 A male, 1 A male, 1400c, device, arrow
    coupling: 1 A female, 3/4 A female, 100c
  )");
  ChainRequest request = shop.ask("1 A male", "3/4 A male");
  request.needs = {shop.need("check valve", {"check valve"})};
  EXPECT_EQ(said(none_for(shop, request).reason),
            "check valve can be passed one way only: no run leads so from 1 MA to 3/4 MA, but one does from 3/4 MA to "
            "1 MA");
  std::swap(request.from, request.to);
  EXPECT_EQ(shop.chain(request), "check valve");
  // Where neither end serves, the direction is not to blame.
  request.needs.push_back(shop.need("filter", {"filter"}));
  EXPECT_EQ(said(none_for(shop, request).reason).find("one way only"), std::string::npos);
}

TEST(WhyNoChain, AMissingUnionIsAsked) {
  const SmallWorld shop("coupling: 1 A female, 1 A female, 200c");
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.from.freedom = request.to.freedom = Freedom::fixed;
  EXPECT_EQ(said(none_for(shop, request).missing_part.value()), "1 FA x 1 FA union");
}

TEST(WhyNoChain, WhereNothingIsBoughtTheCheapestPurchaseMendsIt) {
  const SmallWorld shop(R"(
    coupling: 1 A female, 1 A female, 200c
    union: 1 A female, 1 A female, 900c, union
    gilt union: 1 A female, 1 A female, 9000c, union
  )");
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.not_sold.assign(shop.catalog().parts().size(), true);
  EXPECT_EQ(said(none_for(shop, request).reason), "no run of parts in the bin leads from 1 MA to 1 MA");
  EXPECT_THAT(said(none_for(shop, request).mends), ElementsAre("buy the coupling (iron), about $2.00"));
  request.bin.items = {{shop.part("coupling"), 1}};
  EXPECT_EQ(shop.chain(request), "coupling*");
  request.from.freedom = request.to.freedom = Freedom::fixed;
  EXPECT_THAT(said(none_for(shop, request).mends),
              ElementsAre("buy the union (iron), about $9.00", "let the first port (1 MA) turn and move",
                          "let the last port (1 MA) turn and move"));
  EXPECT_THAT(none_for(shop, request).to_buy, ElementsAre(shop.part("union")));
}

}  // namespace
}  // namespace riserun::chain::testing
