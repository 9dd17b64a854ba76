// Head lost in a part whose ends are narrower than its body.
#include "chain/part/head.h"

#include "unit/catalog/shipped_catalog.h"

#include <gtest/gtest.h>

namespace riserun::chain {
namespace {

// Darcy-Weisbach by hand for smooth hose of 5/8 in over 25 ft at 3 gpm (3.14 ft/s, Re 15,000, f 0.028 by Colebrook):
// 25 in of water. With the bore of its end fittings, 0.469 in, all along it would be 97 in.
TEST(Head, OfAGardenHoseIsThatOfItsHoseAndTwoNecks) {
  const catalog::Catalog& catalog = catalog::testing::shipped_catalog();
  const auto part = catalog.find_part("garden-hose/rubber/5-8x25ft");
  ASSERT_TRUE(part);
  const auto elements = elements_of(catalog, catalog.part(*part), 0, 1);
  ASSERT_EQ(elements.size(), 3U);
  EXPECT_NEAR(in_inches(elements[0].bore), 0.469, 1e-6);
  EXPECT_NEAR(in_inches(elements[1].bore), 0.625, 1e-6);
  EXPECT_NEAR(in_inches(elements[1].length), 300.0, 2.0);
  EXPECT_NEAR(in_inches(elements[2].bore), 0.469, 1e-6);
  const hydraulics::Line hose({elements[1]}, {0.0, 0.0, 0.0, {}}, {0.0, 0.0, 0.0, {}});
  const VolumeFlow flow = us_gallons_per_minute(3.0);
  EXPECT_NEAR(in_metres(hose.head_loss(flow, hydraulics::Direction::forward, chain_water())) / 0.0254, 25.0, 2.5);
  Move move;
  move.part = *part;
  move.leave = 1;
  const double whole = static_cast<double>(own_head(catalog, move, flow)) * 1e-9 / 0.0254;
  EXPECT_GT(whole, 25.0);
  EXPECT_LT(whole, 40.0);
}

}  // namespace
}  // namespace riserun::chain
