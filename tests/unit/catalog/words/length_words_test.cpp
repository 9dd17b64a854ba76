// Lengths in feet, and what is said twice or in another order than it is printed.
#include "catalog/words/part_search.h"
#include "unit/catalog/shipped_catalog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace riserun::catalog {
namespace {

/// Of the first part that the words find; empty: none.
std::string found_by(const std::string& words) {
  const auto found = PartSearch(testing::shipped_catalog()).find_all(words);
  const auto* parts = std::get_if<std::vector<PartId>>(&found);
  return parts == nullptr || parts->empty() ? "" : testing::shipped_catalog().part(parts->front()).name;
}

// Common practice: pipe and hose are asked for by the foot, nipples by the inch.
TEST(Feet, AreTwelveInches) {
  EXPECT_EQ(found_by("1 x 3 ft pipe"), "1 x 36 pipe, threaded both ends");
  EXPECT_EQ(found_by("3 feet of 1 in pipe"), found_by("1 x 36 pipe"));
  EXPECT_EQ(found_by("1 in pipe 10 ft"), "1 x 120 pipe, threaded both ends");
  EXPECT_EQ(found_by("1 x 1 ft nipple"), "1 x 12 nipple");
  EXPECT_THAT(found_by("50 ft garden hose"), ::testing::HasSubstr("50 ft garden hose"));
}

TEST(Feet, AreReadWithTheirFraction) {
  EXPECT_EQ(found_by("1/2 pipe 2-1/2 ft"), "") << "not 2-1/2 in";
  EXPECT_EQ(found_by("1 x 1-1/2 ft pipe"), found_by("1 x 18 pipe"));
  EXPECT_NE(found_by("1 x 1-1/2 ft pipe"), "");
}

TEST(Feet, ThatNothingHasFindNothing) {
  EXPECT_EQ(found_by("1 in pipe 11 ft"), "");
  EXPECT_EQ(found_by("nipple 1 x 12 ft"), "");
}

TEST(HalfCoupling, IsHalfInAnyOrder) {
  for (const char* words : {"half coupling 3/4 class 3000", "class 3000 half coupling 3/4", "3/4 half coupling"})
    EXPECT_EQ(found_by(words), "3/4 half coupling, class 3000") << words;
}

TEST(Ports, ThatAreSaidTwiceAreTwo) {
  const auto found = PartSearch(testing::shipped_catalog()).find_all("3/4 FNPT x 3/4 FNPT");
  ASSERT_TRUE(std::holds_alternative<std::vector<PartId>>(found));
  const Catalog& catalog = testing::shipped_catalog();
  for (const PartId id : std::get<std::vector<PartId>>(found)) {
    int ports = 0;
    for (const Port& port : catalog.part(id).ports) ports += catalog.written(port.type) == "3/4 FNPT" ? 1 : 0;
    EXPECT_GE(ports, 2) << catalog.part(id).name;
  }
}

}  // namespace
}  // namespace riserun::catalog
