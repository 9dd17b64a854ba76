// How hose and tube bend between two ends.
#include "chain/span/bow.h"

#include "catalog/load/load.h"
#include "catalog/words/part_search.h"
#include "chain/span/cut_pieces.h"

#include <gtest/gtest.h>

#include <numbers>
#include <string>

namespace riserun::chain {
namespace {

// One name of its own: files are built as one.
const Catalog& shop_of_hoses() {
  static const Catalog catalog = catalog::load_catalog(std::string(RISERUN_SOURCE_DIR) + "/catalog");
  return catalog;
}

constexpr double kInch = 25400.0;  // micrometres

const catalog::Part& part_of(const char* words) {
  const auto parts = catalog::find_parts(shop_of_hoses(), words);
  EXPECT_FALSE(parts.empty()) << words;
  return shop_of_hoses().part(parts.front());
}

// SAE J844 has for nylon tube of 1/4, 3/8 and 1/2 in 1, 1-1/2 and 2 in (from memory); PPI eight outside diameters for
// PEX.
TEST(Bow, BendsTubeNoTighterThanItsStandardSays) {
  EXPECT_NEAR(least_radius(shop_of_hoses(), part_of("1/4 air tube")) / kInch, 1.0, 0.1);
  EXPECT_NEAR(least_radius(shop_of_hoses(), part_of("3/8 air tube")) / kInch, 1.5, 0.2);
  EXPECT_NEAR(least_radius(shop_of_hoses(), part_of("1/2 air tube")) / kInch, 2.0, 0.3);
  EXPECT_NEAR(least_radius(shop_of_hoses(), part_of("1/2 PEX tube")) / kInch, 8.0 * 0.625, 0.2);
}

// Four quarter circles: 2 pi r of length span 4 r.
TEST(Bow, DrawsBackByFourArcs) {
  EXPECT_NEAR(drawn_back(2.0 * std::numbers::pi, 1.0), 2.0 * std::numbers::pi - 4.0, 1e-12);
  EXPECT_NEAR(drawn_back(9.0, 1.0), 2.0 * std::numbers::pi - 4.0, 1e-12);
  for (const double by : {0.01, 0.2, 1.3}) EXPECT_NEAR(drawn_back(least_bowed(by, 1.5), 1.5), by, 1e-9);
}

// Onto a barb 1.3 in long, bent to 3 in: 4 r (a - sin a) = 1.3 in gives a = 0.877, that is 10.5 in between the barbs.
TEST(Bow, AHoseOfOneInchNeedsTenInchesBetweenItsBarbs) {
  const double room = static_cast<double>(room_to_bow(shop_of_hoses(), part_of("1 rubber hose"))) / kInch;
  EXPECT_NEAR((room - 2.6) * 1.04, 10.5, 0.1);
}

TEST(Bow, AMadeUpHoseGoesOverLessThanItsLengthAndNoLessThanHalf) {
  const catalog::Part& hose = part_of("5/8 x 10 ft garden hose");
  const auto reach = reach_of(shop_of_hoses(), hose, 0, 0);
  ASSERT_TRUE(reach);
  EXPECT_NEAR(static_cast<double>(reach->least) / kInch, 60.0, 0.1);
  EXPECT_NEAR(static_cast<double>(reach->most) / kInch, 120.0 / 1.02, 0.1);
  EXPECT_FALSE(reach_of(shop_of_hoses(), hose, 0, static_cast<std::int64_t>(80.0 * kInch)));
  // A short one is stiff: of 12 in with a bore of 0.6 in the arcs turn by no more than 12 / (4 * 3.6) radians.
  const auto stiff = reach_of(shop_of_hoses(), part_of("3/4 x 12 in flexible connector"), 0, 0);
  ASSERT_TRUE(stiff);
  EXPECT_NEAR(static_cast<double>(stiff->least) / kInch, 10.66, 0.05);
  const auto aside =
      reach_of(shop_of_hoses(), part_of("3/4 x 24 in flexible connector"), 0, static_cast<std::int64_t>(4.0 * kInch));
  ASSERT_TRUE(aside);
  EXPECT_LT(static_cast<double>(aside->least) / kInch, 17.0);
  EXPECT_GT(static_cast<double>(aside->most) / kInch, 17.0);
}

}  // namespace
}  // namespace riserun::chain
