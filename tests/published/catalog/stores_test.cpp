// What a well-run hardware store or supply house has on the shelf (common practice).
#include "published/catalog/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::catalog {
namespace {

using Reductions = std::vector<std::pair<std::string, std::vector<std::string>>>;

// Female by female, larger first.
const Reductions kReducingCouplings = {
    {"3/8", {"1/8", "1/4"}},
    {"1/2", {"1/4", "3/8"}},
    {"3/4", {"1/4", "3/8", "1/2"}},
    {"1", {"3/8", "1/2", "3/4"}},
    {"1-1/4", {"1/2", "3/4", "1"}},
    {"1-1/2", {"1/2", "3/4", "1", "1-1/4"}},
    {"2", {"1/2", "3/4", "1", "1-1/4", "1-1/2"}},
};
// Male by female.
const Reductions kHexBushings = {
    {"1/4", {"1/8"}},
    {"3/8", {"1/8", "1/4"}},
    {"1/2", {"1/8", "1/4", "3/8"}},
    {"3/4", {"1/8", "1/4", "3/8", "1/2"}},
    {"1", {"1/4", "3/8", "1/2", "3/4"}},
    {"1-1/4", {"1/2", "3/4", "1"}},
    {"1-1/2", {"1/2", "3/4", "1", "1-1/4"}},
    {"2", {"1/2", "3/4", "1", "1-1/4", "1-1/2"}},
};
// Male by female.
const Reductions kBrassHexBushings = {
    {"1/4", {"1/8"}},      {"3/8", {"1/8", "1/4"}}, {"1/2", {"1/8", "1/4", "3/8"}}, {"3/4", {"1/4", "3/8", "1/2"}},
    {"1", {"1/2", "3/4"}}, {"1-1/4", {"3/4", "1"}}, {"1-1/2", {"1", "1-1/4"}},      {"2", {"1-1/4", "1-1/2"}},
};
// Run by branch.
const Reductions kReducingTees = {
    {"1/2", {"1/4", "3/8"}},
    {"3/4", {"3/8", "1/2"}},
    {"1", {"1/2", "3/4"}},
    {"1-1/4", {"1/2", "3/4", "1"}},
    {"1-1/2", {"1/2", "3/4", "1", "1-1/4"}},
    {"2", {"1/2", "3/4", "1", "1-1/4", "1-1/2"}},
};
// Male by male: the hex ones of brass to 3/4. A swage nipple is special order.
const Reductions kReducingHexNipples = {
    {"1/4", {"1/8"}}, {"3/8", {"1/8", "1/4"}}, {"1/2", {"1/4", "3/8"}}, {"3/4", {"1/2"}}};
// Hose inside diameter by pipe size.
const Reductions kBarbsToMalePipe = {
    {"1/4", {"1/8", "1/4", "3/8"}},
    {"5/16", {"1/8", "1/4", "3/8"}},
    {"3/8", {"1/4", "3/8", "1/2"}},
    {"1/2", {"3/8", "1/2", "3/4"}},
    {"5/8", {"1/2", "3/4"}},
    {"3/4", {"1/2", "3/4", "1"}},
    {"1", {"3/4", "1"}},
};
// Hose inside diameter by pipe size.
const Reductions kBarbsToFemalePipe = {
    {"1/4", {"1/4"}}, {"3/8", {"1/4", "3/8"}}, {"1/2", {"1/2"}}, {"3/4", {"3/4"}}, {"1", {"1"}},
};

/// The sizes of a part's last and first port that are stocked, of one family and material, must be the list's, all of
/// them and no others.
void expect_stocked(std::string_view family, std::string_view material, const Reductions& shelf) {
  std::size_t listed = 0;
  for (const auto& row : shelf) listed += row.second.size();
  std::size_t stocked = 0;
  for (const Part& part : shipped().parts()) {
    if (shipped().family(part.family).name != family || shipped().material(part.material).id != material ||
        !part.stocked)
      continue;
    const std::string& first = shipped().size_name(shipped().port_type(part.ports.front().type).size);
    const std::string& last = shipped().size_name(shipped().port_type(part.ports.back().type).size);
    const bool known = std::any_of(shelf.begin(), shelf.end(), [&](const auto& row) {
      return row.first == first && std::find(row.second.begin(), row.second.end(), last) != row.second.end();
    });
    EXPECT_TRUE(known) << part.id << " is not on the shelf";
    ++stocked;
  }
  EXPECT_EQ(stocked, listed) << family << ", " << material;
}

TEST(Stores, HaveTheUsualReductions) {
  for (const char* material : {"black-iron", "galvanized"}) {
    expect_stocked("reducing coupling", material, kReducingCouplings);
    expect_stocked("hex bushing", material, kHexBushings);
    expect_stocked("reducing tee", material, kReducingTees);
    expect_stocked("reducing nipple", material, {});
  }
  expect_stocked("reducing hex nipple", "brass", kReducingHexNipples);
  expect_stocked("hex bushing", "brass", kBrassHexBushings);
  expect_stocked("barb to male pipe", "brass", kBarbsToMalePipe);
  expect_stocked("barb to female pipe", "brass", kBarbsToFemalePipe);
}

TEST(Stores, HaveStraightFittingsInBlackAndGalvanized) {
  for (const char* family : {"coupling", "90-elbow", "45-elbow", "tee", "cap", "plug", "close-nipple", "union"})
    for (const char* material : {"black-iron", "galvanized"})
      for (const char* size : {"1-4", "3-8", "1-2", "3-4", "1", "1-1-4", "1-1-2", "2"}) {
        const Part* part = shipped_part(std::string(family) + "/" + material + "/" + size);
        ASSERT_NE(part, nullptr) << family << ' ' << material << ' ' << size;
        EXPECT_TRUE(part->stocked) << part->id;
      }
}

}  // namespace
}  // namespace riserun::catalog
