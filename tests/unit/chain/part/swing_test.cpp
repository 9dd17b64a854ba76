// What hands and wrenches need: a body that is held has something to hold it by, and what is screwed up can be turned.
#include "chain/part/swing.h"

#include "report/words/say.h"
#include "unit/chain/small_world.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace riserun::chain::testing {
namespace {

TEST(Grip, ACloseNippleIsNeverHeldWhileSomethingIsJoinedToItWithoutTurning) {
  const SmallWorld shop(R"(
    close nipple: 1 A male, 1 H male, 100c
    long nipple: 1 A male, 1 H male, 300c
    hose: 1 H female, 1 H female, 50c
  )");
  EXPECT_EQ(shop.chain(shop.ask("1 A female", "1 H female")), "long nipple");
  EXPECT_EQ(shop.chain(shop.ask("1 A female", "1 A female")), "long nipple, hose, long nipple");
  ChainRequest request = shop.ask("1 H female", "1 A female");
  request.banned.assign(shop.catalog().parts().size(), false);
  request.banned[shop.part("long nipple").row] = true;
  EXPECT_THAT(shop.chain(request), ::testing::StartsWith("none:"));
}

TEST(Grip, ACloseNippleServesWhereWhatGoesOntoItIsTurned) {
  const SmallWorld shop("close nipple: 1 A male, 1 A male, 100c");
  EXPECT_EQ(shop.chain(shop.ask("1 A female", "1 A female")), "close nipple");
}

std::vector<std::string> steps(const SmallWorld& shop, const ChainRequest& request) {
  std::vector<std::string> texts;
  const Answer answer = shop.find(request);
  for (const BuildStep& step : std::get<Chain>(answer).steps) texts.push_back(report::say(step.what, UnitSystem::inch));
  return texts;
}

TEST(Grip, TheBuildOrderKeepsWrenchesOffACloseNipple) {
  const SmallWorld shop("close nipple: 1 A male, 1 A male, 100c");
  const auto texts = steps(shop, shop.ask("1 A female", "1 A female"));
  EXPECT_THAT(texts.front(),
              ::testing::HasSubstr(": turn part 1 hand-tight and no more: what goes onto it draws it up; "));
  EXPECT_THAT(texts.back(),
              ::testing::HasSubstr("; part 1 draws up in both, so no wrench touches its threads, and hold "
                                   "the first port with a second wrench."));
}

TEST(Facing, ABendStopsWhereItFacesRightAndIsNeverTurnedBack) {
  const SmallWorld shop("elbow: 1 A male, 3/4 A female, bend");
  EXPECT_THAT(steps(shop, shop.ask("1 A female", "3/4 A male")).front(),
              ::testing::HasSubstr("Stop where its other end faces right, at most one turn further and never back."));
  const SmallWorld straight("adapter: 1 A male, 3/4 A female");
  EXPECT_THAT(steps(straight, straight.ask("1 A female", "3/4 A male")).front(),
              ::testing::Not(::testing::HasSubstr("faces right")));
}

// 1 A is 38 mm outside, 3/4 A 32 mm; a female end is taken as 1.4 times that.
const char* const kElbows = R"(
  elbow: 1 A male, 3/4 A female, bend, reach 50, 100c
  coupling: 1 A male, 3/4 A female, 700c
)";

double swing(const SmallWorld& shop, const std::string& part, std::size_t port) {
  return in_millimetres(swing_radius(shop.catalog(), shop.catalog().part(shop.part(part)), port));
}

TEST(Room, ABendSweepsAsFarAsTheRimOfItsOtherEnd) {
  const SmallWorld shop(kElbows);
  EXPECT_NEAR(swing(shop, "elbow", 0), std::hypot(50.0, 0.7 * 32.0), 1e-9);
  EXPECT_NEAR(swing(shop, "elbow", 1), std::hypot(50.0, 0.5 * 38.0), 1e-9);
}

TEST(Room, AStraightBodyNeedsRoomForTheHeadOfTheWrench) {
  const SmallWorld shop(kElbows);
  EXPECT_NEAR(swing(shop, "coupling", 0), 1.1 * 1.4 * 32.0, 1e-9);
}

TEST(Room, WhatIsNotScrewedUpNeedsNone) {
  const SmallWorld shop("hose: 1 H female, 1 H female");
  EXPECT_EQ(swing(shop, "hose", 0), 0.0);
}

TEST(Room, ABodyThatCannotSwingIsLeftOut) {
  const SmallWorld shop(kElbows);
  ChainRequest request = shop.ask("1 A female", "3/4 A male");
  EXPECT_EQ(shop.chain(request), "elbow");
  request.room = millimetres(55.0);
  EXPECT_EQ(shop.chain(request), "elbow");
  request.room = millimetres(54.0);
  EXPECT_EQ(shop.chain(request), "coupling");
  request.room = millimetres(40.0);
  const Answer answer = shop.find(request);
  EXPECT_EQ(said(std::get<NoChain>(answer).reason),
            "every chain holds a body that cannot be turned within 1.57 in of the run");
  EXPECT_THAT(said(std::get<NoChain>(answer).mends),
              ::testing::ElementsAre("make more room round the run than 1.57 in, at least 2.2 in"));
}

}  // namespace
}  // namespace riserun::chain::testing
