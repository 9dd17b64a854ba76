// Other runs that make a distance, in the shipped catalog.
#include "catalog/load/load.h"
#include "catalog/words/part_search.h"
#include "chain/finder.h"
#include "chain/span/best_span.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace riserun::chain {
namespace {

const Catalog& shipped() {
  static const Catalog catalog = catalog::load_catalog(std::string(RISERUN_SOURCE_DIR) + "/catalog");
  return catalog;
}

using ::testing::Contains;
using ::testing::Not;

using Ids = std::vector<std::string>;

Ids ids_of(const Chain& chain) {
  Ids ids;
  for (const RunPart& link : chain.parts) ids.push_back(shipped().part(link.part).id);
  return ids;
}

/// Between two welded female threads of 1 in, by a hose.
ChainRequest by_hose() {
  ChainRequest request;
  const auto npt = *shipped().find_kind("npt");
  const auto size = *shipped().find_size("1");
  request.from.type = request.to.type = *shipped().find_port_type({npt, size, catalog::End::female});
  request.from.freedom = request.to.freedom = Freedom::fixed;
  request.needs.push_back({"hose", catalog::find_parts(shipped(), "hose")});
  request.order = Order::parts;
  return request;
}

const Span kGap{inches(21.25), {}, {}};

TEST(SpanAlternatives, EachRowMakesTheDistanceAndTheBestIsFirst) {
  const Finder finder(shipped());
  const std::vector<Alternative> rows = finder.alternatives(by_hose(), kGap, 8);
  ASSERT_GE(rows.size(), 3U);
  EXPECT_EQ(ids_of(rows[0].chain), ids_of(std::get<Chain>(finder.find_span(by_hose(), kGap))));
  std::vector<Ids> seen;
  for (const Alternative& row : rows) {
    ASSERT_TRUE(row.chain.span);
    EXPECT_LE(std::abs(in_inches(row.chain.span->miss())), in_inches(row.chain.span->band));
    EXPECT_NEAR(in_inches(row.chain.length), 21.25, in_inches(row.chain.span->band) + 0.04 * 21.25);  // a hose's slack
    EXPECT_THAT(seen, Not(Contains(ids_of(row.chain))));
    seen.push_back(ids_of(row.chain));
    // What is sold by the foot costs each foot that the cut takes.
    std::int64_t cents = 0;
    for (const RunPart& link : row.chain.parts) cents += shipped().part(link.part).price.cents() * link.pieces;
    EXPECT_EQ(row.chain.price.cents(), cents);
    EXPECT_TRUE(std::any_of(row.chain.parts.begin(), row.chain.parts.end(), [](const RunPart& link) {
      return link.cut_length && link.pieces == std::ceil(in_feet(*link.cut_length) - 1e-9);
    }));
  }
}

TEST(SpanAlternatives, NoneWhereNothingMakesTheDistance) {
  ChainRequest request = by_hose();
  request.needs.clear();
  request.most_parts = 2;
  EXPECT_TRUE(Finder(shipped()).alternatives(request, kGap, 8).empty());
}

TEST(SpanAlternatives, AnEndThatMovesTakesUpTheDistance) {
  ChainRequest request = by_hose();
  request.to.freedom = Freedom::loose;
  const Finder finder(shipped());
  const std::vector<Alternative> guided = finder.alternatives(request, kGap, 4);
  const std::vector<Alternative> plain = finder.alternatives(request, 4);
  ASSERT_EQ(guided.size(), plain.size());
  for (std::size_t row = 0; row < plain.size(); ++row) EXPECT_EQ(ids_of(guided[row].chain), ids_of(plain[row].chain));
}

/// Beginnings of runs that are looked at until it is known whether one makes the distance.
struct LookedAt {
  bool is_made = false;
  std::size_t beginnings = 0;
};
LookedAt look_for(const ChainRequest& request, const Span& span) {
  constexpr std::size_t kMany = 1'000'000;
  std::size_t left = kMany;
  const FoldedCatalog folded(shipped());
  const std::optional<bool> made = makes_span(folded, request, span, left);
  EXPECT_TRUE(made.has_value());
  return {made.value_or(false), kMany - left};
}

// Two bends of pipe of 1-1/4 in travel further than an offset of 1-1/4 in lets them: so much is seen of each bend
// before a run is begun with it. 101,000 beginnings were looked at where it was not.
TEST(SpanReach, OfBendsThatCannotTravelSoLittleIsKnownSoon) {
  const auto port = [](const char* size) {
    return *shipped().find_port_type({*shipped().find_kind("npt"), *shipped().find_size(size), catalog::End::female});
  };
  ChainRequest request = by_hose();
  request.from.type = port("1-1/4");
  request.to.type = port("1-1/2");
  request.needs = {{"ball valve", catalog::find_parts(shipped(), "ball valve")}};
  request.most_bushings = 1;
  const LookedAt near = look_for(request, {inches(6.0), inches(1.25), {}});
  EXPECT_FALSE(near.is_made);
  EXPECT_LT(near.beginnings, 30000U);
  EXPECT_TRUE(look_for(request, {inches(16.0), inches(4.0), {}}).is_made);
}

}  // namespace
}  // namespace riserun::chain
