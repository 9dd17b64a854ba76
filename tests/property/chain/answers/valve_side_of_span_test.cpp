// The best run that makes a distance and leaves its valve with the reservoir: of every order of the needs in which
// something that opens comes beyond a valve, the best of all runs there are.
#include "chain/finder.h"
#include "property/chain/every_span.h"
#include "property/chain/random_span.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>
#include <numeric>

namespace riserun::chain::testing::valve_side_of_span_test {
namespace {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

constexpr std::uint32_t kWorlds = 6000;
constexpr std::size_t kBeginnings = 400;

bool is_valve(const Catalog& catalog, PartId id) {
  const Part& part = catalog.part(id);
  const Family& family = catalog.family(part.family);
  return family.can_shut && !part.one_way && !part.closing && family.role == Role::device;
}

/// It comes off without turning what it is screwed to: a union, or a piece whose joints are all made by a clamp.
bool opens(const Catalog& catalog, PartId id) {
  const Part& part = catalog.part(id);
  if (part.closing) return true;
  return std::all_of(part.ports.begin(), part.ports.end(), [&](const Port& port) {
    const auto mates = catalog.mates(port.type);
    return !mates.empty() && std::all_of(mates.begin(), mates.end(), [&](const Mate& mate) {
      return catalog.mating_rule(port.type, mate.other)->closing;
    });
  });
}

bool can_shut(const Catalog& catalog, PartId id) { return catalog.family(catalog.part(id).family).can_shut; }

/// Some fitting that is neither.
void ask_for_another(Dice& dice, const Catalog& catalog, ChainRequest& request) {
  Need other{"other", {}};
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const Part& part = catalog.part({row});
    const bool joins = part.ports.size() == 2 && catalog.family(part.family).role == Role::connector;
    if (joins && !opens(catalog, {row}) && !can_shut(catalog, {row}) && dice.chance(30)) other.parts.push_back({row});
  }
  if (!other.parts.empty()) request.needs.push_back(other);
}

/// A valve, something that opens, and as a rule one thing more.
void ask_for_valve_and_opening(Dice& dice, const Catalog& catalog, ChainRequest& request) {
  lift_other_rules(request);
  request.needs_in_order = false;
  if (dice.chance(60)) request.order = dice.one_of({Order::line, Order::bin});
  request.needs.clear();
  Need valve{"valve", {}};
  Need opening{"opening", {}};
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    if (catalog.part({row}).ports.size() != 2) continue;
    if (is_valve(catalog, {row}) && !opens(catalog, {row}))
      valve.parts.push_back({row});
    else if (opens(catalog, {row}) && !can_shut(catalog, {row}) && dice.chance(70))
      opening.parts.push_back({row});
  }
  if (valve.parts.empty() || opening.parts.empty()) return;
  // A need that fittings and devices meet is another question.
  const auto role = [&](PartId part) { return catalog.family(catalog.part(part).family).role; };
  const Role first = role(opening.parts.front());
  std::erase_if(opening.parts, [&](PartId part) { return role(part) != first; });
  request.needs = {valve, opening};
  if (dice.chance(90)) ask_for_another(dice, catalog, request);
}

/// Of all orders of the needs that leave the valve with the reservoir.
std::optional<JudgedRun> best_of_orders(const SpanWorld& world, ReservoirEnd end, int& depth) {
  std::optional<JudgedRun> best;
  std::vector<std::size_t> order(world.request.needs.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  depth = 1000;
  do {
    const auto valve = std::find(order.begin(), order.end(), std::size_t{0});
    const auto opening = std::find(order.begin(), order.end(), std::size_t{1});
    if (end == ReservoirEnd::first ? opening < valve : valve < opening) continue;
    ChainRequest in_turn = world.request;
    in_turn.needs_in_order = true;
    for (std::size_t need = 0; need < order.size(); ++need) in_turn.needs[need] = world.request.needs[order[need]];
    EverySpan every(world.catalog, in_turn, world.span);
    const std::optional<JudgedRun> run = every.best(kBeginnings);
    depth = std::min(depth, every.depth());
    if (run && (!best || run->before(*best))) best = run;
  } while (std::next_permutation(order.begin(), order.end()));
  return best;
}

struct Tally {
  int kinds[9] = {}, nones = 0, compared = 0, of_three = 0;
};

void expect_same(const Catalog& catalog, const Chain& chain, const JudgedRun& best) {
  std::vector<std::string> ids;
  std::vector<std::int64_t> cut;
  for (const RunPart& link : chain.parts) {
    ids.push_back(catalog.part(link.part).id);
    for (const Follower& plug : link.plugs()) ids.push_back(catalog.part(plug.plug).id);
    cut.push_back(link.cut_length ? std::llround(in_metres(*link.cut_length) * 1e6) : 0);
  }
  EXPECT_EQ(ids, best.ids);
  EXPECT_EQ(cut, best.cut);
}

void check_world(std::uint32_t seed, Tally& tally) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  const SpanWorld world = random_span_world(seed, ask_for_valve_and_opening);
  if (world.request.needs.size() < 2) return;
  const ReservoirEnd end = seed % 2 == 0 ? ReservoirEnd::first : ReservoirEnd::last;
  int depth = 0;
  const std::optional<JudgedRun> best = best_of_orders(world, end, depth);
  const auto chain = Finder(world.catalog).best_with_valve_left(world.request, end, world.span);
  if (!chain) {
    ++tally.nones;
    ASSERT_FALSE(best) << "there is a run of kind " << best->kind;
    return;
  }
  EXPECT_FALSE(valve_that_comes_off(world.catalog, world.request, *chain, end));
  if (chain->part_count > depth) return;
  ASSERT_TRUE(best);
  ++tally.compared;
  ++tally.kinds[best->kind];
  tally.of_three += world.request.needs.size() == 3 ? 1 : 0;
  expect_same(world.catalog, *chain, *best);
}

TEST(ValveSideOfSpan, OfARunThatMakesADistanceIsTheBestThatLeavesTheValve) {
  Tally tally;
  for (std::uint32_t seed = first_world(); seed < first_world() + kWorlds && !::testing::Test::HasFailure(); ++seed)
    check_world(seed, tally);
  const int* kinds = tally.kinds;
  std::cout << tally.compared << " compared, of them " << kinds[0] + kinds[1] << " cut tube, " << kinds[2] + kinds[3]
            << " stock, " << kinds[4] + kinds[5] << " cut pipe, " << kinds[6] + kinds[7] + kinds[8] << " hose; "
            << tally.of_three << " of three needs, " << tally.nones << " with none\n";
  EXPECT_GT(tally.compared, 60);
  EXPECT_GT(tally.of_three, 30);
}

}  // namespace
}  // namespace riserun::chain::testing::valve_side_of_span_test
