// The best chain of thousands of small random catalogs against every chain there is.
#include "chain/search/best_chain.h"

#include "chain/build/assemble.h"
#include "chain/finder.h"
#include "chain/refusal/missing_part.h"
#include "property/chain/assembly.h"
#include "property/chain/exhaustive.h"
#include "property/chain/random_world.h"

#include <gtest/gtest.h>

#include <cmath>
#include <iostream>

namespace riserun::chain::testing::best_chain_test {
namespace {

constexpr std::uint32_t kWorlds = 5000;
constexpr std::size_t kBeginnings = 1000;  // looked at for each depth of the exhaustive search

struct MixedRadix {
  int chains = 0;
  int nones = 0;
  int compared = 0;  // whole answers compared with the exhaustive search's
  int too_long = 0;  // chains longer than what was tried exhaustively
  int needs_met = 0;
  int bins_overdrawn = 0;
};

class BestChain : public ::testing::Test {
 protected:
  void check_world(std::uint32_t seed);
  void check_order(const catalog::Catalog& catalog, const Finder& finder, const ChainRequest& request,
                   const Exhausted& every, Exhaustive& judge);
  void check_sums(const catalog::Catalog& catalog, const ChainRequest& request, const Chain& chain, const Sums& sums);
  void check_none(const catalog::Catalog& catalog, const Finder& finder, const ChainRequest& request);
  MixedRadix tally_;
  int explained_ = 0;
};

void BestChain::check_sums(const catalog::Catalog& catalog, const ChainRequest& request, const Chain& chain,
                           const Sums& sums) {
  EXPECT_EQ(chain.part_count, sums.parts);
  EXPECT_EQ(chain.buy_count, sums.buy);
  EXPECT_EQ(chain.price.cents(), sums.cents);
  EXPECT_NEAR(in_metres(chain.length) * 1e6, static_cast<double>(sums.micrometres), 20.0);
  EXPECT_NEAR(in_metres(chain.head) * 1e9, static_cast<double>(sums.nanometres),
              20.0 + 1e-9 * static_cast<double>(sums.nanometres));
  ASSERT_EQ(chain.joints.size(), chain.parts.size() + 1);
  for (const RunJoint& joint : chain.joints) {
    ASSERT_NE(catalog.mating_rule(joint.a, joint.b), nullptr);
    EXPECT_EQ(catalog.mating_rule(joint.a, joint.b), &catalog.mating_rules()[joint.rule]);
  }
  EXPECT_EQ(chain.joints.front().a, request.from.type);
  EXPECT_EQ(chain.joints.back().b, request.to.type);
  std::vector<int> taken(catalog.parts().size(), 0);
  for (const RunPart& link : chain.parts) {
    taken[link.part.row] += link.from_bin ? 1 : 0;
    for (const Follower& plug : link.plugs()) taken[plug.plug.row] += plug.from_bin ? 1 : 0;
  }
  for (std::uint32_t row = 0; row < taken.size(); ++row) EXPECT_LE(taken[row], request.bin.count_of({row}));
  EXPECT_EQ(carry_out(catalog, request, chain), "");
}

void BestChain::check_order(const catalog::Catalog& catalog, const Finder& finder, const ChainRequest& request,
                            const Exhausted& every, Exhaustive& judge) {
  const std::optional<Sums>& best = every.best[static_cast<std::size_t>(request.order)];
  const std::optional<Route> route = best_chain(finder.prepared(), request);
  if (!route) {
    ++tally_.nones;
    ASSERT_FALSE(best.has_value()) << "there is a chain of " << best->parts << " parts";
    if (request.order == Order::price) check_none(catalog, finder, request);
    return;
  }
  ++tally_.chains;
  const Chain chain = assemble(catalog, request, route->moves);
  std::string why;
  const std::optional<Sums> sums = judge.judge(chain, why);
  ASSERT_TRUE(sums.has_value()) << why;
  check_sums(catalog, request, chain, *sums);
  tally_.needs_met += request.needs.empty() ? 0 : 1;
  if (sums->parts <= every.depth) {
    ASSERT_TRUE(best.has_value());
    EXPECT_EQ(*sums, *best);
    ++tally_.compared;
  } else {
    ++tally_.too_long;
    EXPECT_FALSE(best && better(request.order, *best, *sums));
  }
}

// What is said to complete a chain does complete one.
void BestChain::check_none(const catalog::Catalog& catalog, const Finder& finder, const ChainRequest& request) {
  if (++explained_ % 4 != 0) return;
  const Answer answer = finder.find(request);
  ASSERT_TRUE(std::holds_alternative<NoChain>(answer));
  EXPECT_FALSE(std::get<NoChain>(answer).reason.code.empty());
  if (const auto special = completing_special_order(finder.prepared().folded(), request)) {
    catalog::CatalogBuilder builder(catalog);
    catalog::Part part = catalog.part(*special);
    part.stocked = true;
    builder.replace(*special, part);
    EXPECT_TRUE(Finder(std::move(builder).build()).can_join(request)) << part.id;
  }
  if (const auto missing = missing_part(finder.prepared().folded(), request)) {
    catalog::CatalogBuilder builder(catalog);
    catalog::Part part;
    part.id = part.name = "missing";
    // Proved for all that can be asked.
    part.family = builder.add(catalog::Family{});
    catalog::Duty duty;
    duty.families = {part.family};
    duty.heat = {{degrees_celsius(200.0), 1.0}};
    duty.under_air = catalog::UnderAir::as_water;
    duty.vacuum = catalog::InVacuum::stands;
    builder.add(duty);
    part.material = {0};
    part.dielectric = true;
    part.rating = psig(1.0e6);
    part.closing = missing->closing;
    part.ports = {{missing->enter, metres(1.0), {}, 180.0}, {missing->leave, metres(1.0), {}, 0.0}};
    builder.add(part);
    const catalog::Catalog with = std::move(builder).build();
    ChainRequest there = request;  // told of one part more
    if (!there.banned.empty()) there.banned.resize(with.parts().size(), false);
    if (!there.not_sold.empty()) there.not_sold.resize(with.parts().size(), false);
    EXPECT_TRUE(Finder(with).can_join(there))
        << catalog.written(missing->enter) << " x " << catalog.written(missing->leave);
  }
}

void BestChain::check_world(std::uint32_t seed) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  Dice dice(seed);
  const catalog::Catalog catalog = random_catalog(dice);
  ChainRequest request = random_request(dice, catalog);
  Exhaustive exhaustive(catalog, request);
  const Exhausted every = exhaustive.run(kBeginnings);
  const Finder finder(catalog);
  for (const Order order : {Order::price, Order::parts, Order::line, Order::bin, Order::loss, Order::length}) {
    SCOPED_TRACE("order " + std::to_string(static_cast<int>(order)));
    request.order = order;
    const int nones = tally_.nones;
    check_order(catalog, finder, request, every, exhaustive);
    // Whether there is a chain at all is the same under each order: two are enough to see that.
    if (tally_.nones != nones && order == Order::parts) break;
  }
}

TEST_F(BestChain, IsTheBestOfAllChainsUnderEveryOrderAndBreaksTiesBySortedIds) {
  for (std::uint32_t seed = first_world(); seed < first_world() + kWorlds && !HasFailure(); ++seed) check_world(seed);
  std::cout << tally_.chains << " chains (" << tally_.compared << " compared whole, " << tally_.too_long
            << " longer than tried, " << tally_.needs_met << " with needs), " << tally_.nones << " refusals\n";
  EXPECT_GT(tally_.compared, 4000);
  EXPECT_GT(tally_.nones, 1000);
  EXPECT_LT(tally_.too_long, tally_.chains / 20);
}

}  // namespace
}  // namespace riserun::chain::testing::best_chain_test
