// Needs that name two parts are met by two: what a search's rules let pass against every way to share the parts out.
#include "chain/ask/needs.h"
#include "chain/rules/rules.h"
#include "property/chain/random_world.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace riserun::chain::testing::needs_apart_test {
namespace {

constexpr int kFamilies = 20000;
constexpr std::uint32_t kParts = 6;

/// Sets of parts of which any two are one within the other, or have nothing in common: halves of halves.
std::vector<std::vector<PartId>> random_family(std::mt19937& dice) {
  std::vector<PartId> all;
  for (std::uint32_t row = 0; row < kParts; ++row) all.push_back({row});
  std::shuffle(all.begin(), all.end(), dice);
  const std::ptrdiff_t cut = 1 + static_cast<std::ptrdiff_t>(dice() % (kParts - 1));
  const auto middle = all.begin() + cut;
  return {all, {all.begin(), middle}, {middle, all.end()}, {all.front()}};
}

bool holds(const Need& need, PartId part) {
  return std::find(need.parts.begin(), need.parts.end(), part) != need.parts.end();
}

/// Each need has a part of its own, tried every way.
bool shared_out(const std::vector<Need>& needs, std::size_t from, std::vector<PartId> run) {
  if (from == needs.size()) return true;
  for (std::size_t place = 0; place < run.size(); ++place) {
    if (!holds(needs[from], run[place])) continue;
    std::vector<PartId> left = run;
    left.erase(left.begin() + static_cast<std::ptrdiff_t>(place));
    if (shared_out(needs, from + 1, left)) return true;
  }
  return false;
}

/// The same, each behind the one before: the first that will do is the best to take.
bool in_turn(const std::vector<Need>& needs, const std::vector<PartId>& run) {
  std::size_t next = 0;
  for (const PartId part : run)
    if (next < needs.size() && holds(needs[next], part)) ++next;
  return next == needs.size();
}

/// Rows of the parts: of each need, then of the run.
std::vector<std::vector<std::uint32_t>> rows_of(const ChainRequest& request, const std::vector<PartId>& run) {
  std::vector<std::vector<std::uint32_t>> rows;
  const auto add = [&](const std::vector<PartId>& parts) {
    rows.emplace_back();
    for (const PartId part : parts) rows.back().push_back(part.row);
  };
  for (const Need& need : request.needs) add(need.parts);
  add(run);
  return rows;
}

bool met_by(const Catalog& catalog, ChainRequest request, const std::vector<PartId>& run) {
  request.needs = told_apart(request.needs, request.needs_in_order);
  const Rules rules(catalog, request);
  std::uint8_t met = 0;
  for (const PartId part : run) met = rules.advance(met, rules.groups_of(part));
  return rules.satisfied(met);
}

TEST(NeedsThatNameTwoParts, AreMetByTwoParts) {
  Dice world(1);
  const Catalog catalog = random_catalog(world);
  ASSERT_GE(catalog.parts().size(), kParts);
  std::mt19937 dice(7);
  int met = 0;
  int nested = 0;
  for (int family = 0; family < kFamilies; ++family) {
    const auto sets = random_family(dice);
    ChainRequest request;
    request.needs_in_order = dice() % 2 == 0;
    const std::size_t most = request.needs_in_order ? 6 : 3;
    for (std::size_t more = 1 + dice() % most; more > 0; --more) request.needs.push_back({"one", sets[dice() % 4]});
    nested += told_apart(request.needs, request.needs_in_order).size() > request.needs.size() ? 1 : 0;
    std::vector<PartId> run;
    for (std::size_t length = dice() % 8; length > 0; --length)
      run.push_back({static_cast<std::uint32_t>(dice() % kParts)});
    const bool wanted = request.needs_in_order ? in_turn(request.needs, run) : shared_out(request.needs, 0, run);
    EXPECT_EQ(met_by(catalog, request, run), wanted)
        << "family " << family << (request.needs_in_order ? " in order " : " ")
        << ::testing::PrintToString(rows_of(request, run));
    met += wanted ? 1 : 0;
  }
  EXPECT_GT(met, kFamilies / 10);
  EXPECT_LT(met, kFamilies * 9 / 10);
  EXPECT_GT(nested, kFamilies / 10);
}

}  // namespace
}  // namespace riserun::chain::testing::needs_apart_test
