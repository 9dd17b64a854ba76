// The way to one end of a run that branches, seen from either side.
#include "chain/ask/run.h"

#include "chain/finder.h"
#include "unit/chain/small_world.h"

#include <gtest/gtest.h>

namespace riserun::chain::testing::run_test {
namespace {

Assembly branched(const SmallWorld& shop) {
  AssemblyRequest request;
  request.rules.from = shop.end("1 A male");
  request.targets = {shop.end("1 A male"), shop.end("1/2 A male"), shop.end("1/2 A male")};
  return std::get<Assembly>(find_assembly(shop.catalog(), request));
}

/// "0 tee 2 > 0 bushing 1": the parts in a row, each with the ports that it is entered and left by.
std::string written(const SmallWorld& shop, const Chain& way) {
  std::string text;
  for (const RunPart& link : way.parts)
    text += (text.empty() ? "" : " > ") + std::to_string(link.enter) + " " + shop.catalog().part(link.part).name + " " +
            std::to_string(link.leave());
  return text;
}

const char* const kShop = R"(
  cross: 1 A female, 1 A female, 1 A female, 1 A female, 100c
  bushing: 1 A male, 1/2 A female, 50c, bushing
)";

TEST(Run, TheWayToAnEndIsAChainWithWhatBranchesOffAside) {
  const SmallWorld shop(kShop);
  const Assembly assembly = branched(shop);
  const Chain way = way_to(assembly, 1);
  EXPECT_EQ(written(shop, way), "0 cross 2 > 0 bushing 1");
  ASSERT_EQ(way.joints.size(), 3u);
  EXPECT_EQ(way.joints[0].inner, kBase);
  EXPECT_EQ(way.joints[1].inner, 0u);
  EXPECT_EQ(way.joints[1].inner_port, 2);
  EXPECT_TRUE(way.joints[2].to_end);
  EXPECT_EQ(way.ends.size(), 1u);
  EXPECT_EQ(way.ends[0].port.called, "target 2");
  EXPECT_EQ(way.parts[0].ports[1].what, Follower::What::aside);
  EXPECT_EQ(way.parts[0].ports[3].what, Follower::What::aside);
}

TEST(Run, TurnedRoundAWayIsEnteredWhereItWasLeft) {
  const SmallWorld shop(kShop);
  const Chain way = way_to(branched(shop), 1);
  const Chain back = turned_round(way);
  EXPECT_EQ(written(shop, back), "1 bushing 0 > 2 cross 0");
  EXPECT_EQ(back.base.called, "target 2");
  EXPECT_EQ(back.ends[0].port.called, "the base");
  EXPECT_EQ(back.joints[0].a, way.joints[2].b);
  EXPECT_EQ(back.joints[1].inner_port, 0);
  EXPECT_EQ(written(shop, turned_round(back)), written(shop, way));
}

TEST(Run, OfARunWithOneEndItIsTheWholeRun) {
  const SmallWorld shop(R"(
    coupling: 1 A female, 1 A female, 100c
    bushing: 1 A male, 1/2 A female, 50c, bushing
  )");
  ChainRequest request;
  request.from = shop.end("1 A male");
  request.to = shop.end("1/2 A male");
  const Chain chain = std::get<Chain>(find_chain(shop.catalog(), request));
  EXPECT_EQ(written(shop, way_to(chain, 0)), written(shop, chain));
  EXPECT_EQ(written(shop, chain), "0 coupling 1 > 0 bushing 1");
}

}  // namespace
}  // namespace riserun::chain::testing::run_test
