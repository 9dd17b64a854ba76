// What may stand beyond a valve.
#include "unit/chain/small_world.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::chain::testing {
namespace {

std::string names_of(const SmallWorld& shop, const std::optional<Chain>& chain) {
  if (!chain) return "none";
  std::string names;
  for (const RunPart& link : chain->parts) names += (names.empty() ? "" : ", ") + shop.catalog().part(link.part).name;
  return names;
}

// Common practice: a cock between two hoses comes off with either of them, and then nothing is left to shut.
TEST(ValveSide, AValveThatComesOffIsNotWhatStandsBeyondIt) {
  const SmallWorld shop(R"(
    cock: 1 H male, 1 H male, 900c, valve
    tubing: 1 H female, 1 H female, 100c, flexible
    barb: 1 A male, 1 H male, 100c
    nipple: 1 A male, 1 A male, 100c
    union: 1 A female, 1 A female, 900c, union
  )");
  ChainRequest request = shop.ask("1 A female", "1 A female");
  request.needs = {shop.need("valve", {"cock"})};
  const Finder finder(shop.catalog());
  EXPECT_EQ(opening_beyond_valve(shop.catalog(), request, ReservoirEnd::first), "union");
  EXPECT_EQ(names_of(shop, finder.best_with_valve_left(request, ReservoirEnd::first)),
            "barb, tubing, cock, tubing, barb, union, nipple");
  EXPECT_EQ(names_of(shop, finder.best_with_valve_left(request, ReservoirEnd::last)),
            "nipple, union, barb, tubing, cock, tubing, barb");
}

}  // namespace
}  // namespace riserun::chain::testing
