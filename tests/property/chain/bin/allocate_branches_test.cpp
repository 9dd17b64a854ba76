// One bin shared by branched assemblies and chains, in many small random catalogs, against every way to deal it out.
#include "chain/build/assemble.h"
#include "chain/finder.h"
#include "chain/search/best_chain.h"
#include "chain/tree/best_tree.h"
#include "property/chain/assembly.h"
#include "property/chain/bin/dealt.h"
#include "property/chain/exhaustive.h"
#include "property/chain/random_assembly.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>
#include <map>

namespace riserun::chain::testing::allocate_branches_test {
namespace {

constexpr std::uint32_t kWorlds = 1500;
constexpr std::size_t kBeginnings = 250;

/// The best that one demand can have of so much of the bin, by the judges.
struct Judged {
  bool met = false;
  Tuple tuple{};
  std::vector<std::pair<std::string, std::size_t>> tokens;  // of a tree
  std::vector<std::string> ids;                             // of a chain
  std::vector<std::pair<std::uint8_t, std::uint8_t>> ways;
  bool operator==(const Judged&) const = default;
  auto key() const { return std::tie(tuple, tokens, ids, ways); }
};

using Shared = Dealt<Judged>;

/// Every way to deal the bin out, each demand served as the judges find best.
class EveryDeal {
 public:
  explicit EveryDeal(const DemandsOfOneBin& world) : world_(world), known_(world.demands.size()) {}

  Shared best() {
    std::vector<int> left;
    for (const catalog::BinItem& item : world_.bin.items) left.push_back(item.count);
    deal(left, {});
    return *best_;
  }
  int depth = 8;  // all runs of up to that many parts were tried

 private:
  void deal(const std::vector<int>& left, const Shared& so_far) {
    if (so_far.of.size() == world_.demands.size()) {
      if (!best_ || better(so_far, *best_)) best_ = so_far;
      return;
    }
    std::vector<int> share(left.size(), 0);
    while (true) {
      Shared next = so_far;
      next.add(served(so_far.of.size(), share));
      std::vector<int> rest = left;
      for (std::size_t i = 0; i < rest.size(); ++i) rest[i] -= share[i];
      deal(rest, next);
      std::size_t item = 0;
      while (item < share.size() && ++share[item] > left[item]) share[item++] = 0;
      if (item == share.size()) return;
    }
  }

  const Judged& served(std::size_t demand, const std::vector<int>& share) {
    const auto [known, is_new] = known_[demand].try_emplace(share);
    if (is_new) known->second = serve(world_.demands[demand], share);
    return known->second;
  }

  Judged serve(const Demand& demand, const std::vector<int>& share) {
    catalog::Bin bin;
    for (std::size_t i = 0; i < share.size(); ++i)
      if (share[i] > 0) bin.add(world_.bin.items[i].part, share[i]);
    const auto order = static_cast<std::size_t>(world_.order);
    if (demand.branched) {
      AssemblyRequest request = *demand.branched;
      request.rules.bin = bin;
      const EveryTree every = TreeTrial(world_.catalog, request).run(kBeginnings);
      depth = std::min(depth, every.depth);
      if (!every.best[order]) return {};
      return {true, tuple_of(world_.order, *every.best[order]), every.best[order]->tokens, {}, {}};
    }
    ChainRequest request = *demand.request;
    request.bin = bin;
    const Exhausted every = Exhaustive(world_.catalog, request).run(kBeginnings);
    depth = std::min(depth, every.depth);
    if (!every.best[order]) return {};
    const Sums& sums = *every.best[order];
    return {true, tuple_of(world_.order, sums), {}, sums.ids, sums.ways};
  }

  const DemandsOfOneBin& world_;
  std::vector<std::map<std::vector<int>, Judged>> known_;
  std::optional<Shared> best_;
};

/// One or two assemblies and perhaps a chain, and a bin with a few of the parts that they take when each is alone.
DemandsOfOneBin random_branching_demands(Dice& dice) {
  DemandsOfOneBin world{with_branching_parts(random_catalog(dice), dice), {}, {}, Order::line, {}};
  world.order = dice.one_of({Order::line, Order::parts, Order::price, Order::bin});
  const Finder finder(world.catalog);
  std::vector<PartId> wanted;
  const auto want = [&](const Run& run) {
    for (const RunPart& link : run.parts) {
      wanted.push_back(link.part);
      for (const Follower& plug : link.plugs()) wanted.push_back(plug.plug);
    }
    for (const RunEnd& end : run.ends)
      if (end.device) wanted.push_back(*end.device);
  };
  const int count = dice.one_of({2, 2, 3});
  while (static_cast<int>(world.demands.size()) < count) {
    Demand& demand = world.demands.emplace_back();
    if (world.demands.size() > 1 && dice.chance(40)) {
      demand = world.demands.front();
    } else if (world.demands.size() == 1 || dice.chance(50)) {
      for (int tries = 0; tries < 4; ++tries) {
        demand.branched = random_assembly(dice, world.catalog);
        demand.branched->rules.bin.items.clear();
        demand.branched->rules.order = world.order;
        const auto tree = best_tree(finder.prepared().folded(), *demand.branched);
        if (!tree) continue;
        want(assemble(world.catalog, *demand.branched, tree->tree));
        break;
      }
    } else {
      demand.request = random_request(dice, world.catalog);
      demand.request->bin.items.clear();
      demand.request->order = world.order;
      if (const auto best = best_chain(finder.prepared(), *demand.request))
        for (const Move& move : best->moves) wanted.push_back(move.part);
    }
  }
  for (int i = dice.between(1, 3); i > 0 && !wanted.empty(); --i) {
    const PartId part = wanted[static_cast<std::size_t>(dice.below(static_cast<int>(wanted.size())))];
    if (world.bin.count_of(part) == 0) world.bin.add(part, dice.one_of({1, 1, 2}));
  }
  return world;
}

/// What the solver gave one demand, by the judges.
std::optional<Judged> judged(const DemandsOfOneBin& world, const Demand& demand, const Allotment& answer,
                             std::int64_t& parts) {
  if (!answer.met) return Judged{};
  std::string why;
  if (demand.branched) {
    AssemblyRequest request = *demand.branched;
    request.rules.bin = answer.given;
    const TreeTrial trial(world.catalog, request);
    const std::optional<TreeSums> sums = trial.judge(as_list(*answer.run, trial), why);
    EXPECT_TRUE(sums) << why;
    if (!sums) return std::nullopt;
    EXPECT_EQ(answer.run->price.cents(), sums->cents);
    EXPECT_EQ(answer.run->buy_count, sums->buy);
    parts = std::max(parts, sums->parts);
    return Judged{true, tuple_of(world.order, *sums), sums->tokens, {}, {}};
  }
  ChainRequest request = *demand.request;
  request.bin = answer.given;
  const std::optional<Sums> sums = Exhaustive(world.catalog, request).judge(*answer.run, why);
  EXPECT_TRUE(sums) << why;
  if (!sums) return std::nullopt;
  parts = std::max(parts, sums->parts);
  return Judged{true, tuple_of(world.order, *sums), {}, sums->ids, sums->ways};
}

TEST(OneBinWithBranches, IsSharedAsTheBestOfAllWaysToDealItOut) {
  Comparison comparison;
  for (std::uint32_t seed = 1; seed <= kWorlds && !::testing::Test::HasFailure(); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Dice dice(seed);
    const DemandsOfOneBin world = random_branching_demands(dice);
    const Allocation answer = Finder(world.catalog).allocate(world.demands, world.bin, world.order);
    Shared found;
    std::int64_t longest = 0;
    for (std::size_t i = 0; i < world.demands.size(); ++i) {
      const std::optional<Judged> one = judged(world, world.demands[i], answer.of[i], longest);
      ASSERT_TRUE(one);
      found.add(*one);
    }
    EveryDeal every(world);
    const Shared best = every.best();
    comparison.compare(world, answer, found, longest, best, every.depth);
  }
  const auto [compared, shared, unmet, too_long] = comparison;
  std::cout << compared << " allocations with assemblies compared whole, " << shared
            << " with parts that more than one wanted, " << unmet << " with demands unmet; " << too_long
            << " longer than tried\n";
  EXPECT_GT(compared, 500);
  EXPECT_GT(shared, 50);
}

void expect_same(const Allocation& found, const Allocation& wanted) {
  EXPECT_EQ(found.proof.splits, wanted.proof.splits);
  EXPECT_EQ(found.proof.contested, wanted.proof.contested);
  ASSERT_EQ(found.of.size(), wanted.of.size());
  for (std::size_t i = 0; i < found.of.size(); ++i) {
    EXPECT_EQ(found.of[i].met, wanted.of[i].met);
    EXPECT_EQ(found.of[i].given, wanted.of[i].given);
    EXPECT_EQ(found.of[i].end, wanted.of[i].end);
    ASSERT_EQ(found.of[i].run.has_value(), wanted.of[i].run.has_value());
    if (!found.of[i].run) continue;
    const auto parts_of = [](const Run& run) {
      std::vector<PartId> parts;
      for (const RunPart& link : run.parts) parts.push_back(link.part);
      return parts;
    };
    EXPECT_EQ(parts_of(*found.of[i].run), parts_of(*wanted.of[i].run));
  }
}

/// Of another bin, for other orders, for other demands of the same catalog, and for the very same.
TEST(OneBinWithBranches, IsSharedAlikeWhateverWasServedBefore) {
  for (std::uint32_t seed = 1; seed <= 60 && !::testing::Test::HasFailure(); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Dice dice(seed);
    const DemandsOfOneBin world = random_branching_demands(dice);
    const Finder finder(world.catalog);
    const Allocation wanted = finder.allocate(world.demands, world.bin, world.order);
    Served served;
    finder.allocate(world.demands, {}, world.order, &served);
    for (const Order order : {Order::parts, Order::price})
      if (order != world.order) finder.allocate(world.demands, world.bin, order, &served);
    std::vector<Demand> others = world.demands;
    for (Demand& demand : others)
      if (demand.request) demand.request->special_order = !demand.request->special_order;
    finder.allocate(others, world.bin, world.order, &served);
    for (int time = 0; time < 2; ++time)
      expect_same(finder.allocate(world.demands, world.bin, world.order, &served), wanted);
  }
}

}  // namespace
}  // namespace riserun::chain::testing::allocate_branches_test
