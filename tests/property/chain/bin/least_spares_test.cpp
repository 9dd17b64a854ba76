// The least spare set of thousands of small random catalogs against every set of spares there is.
#include "chain/ask/spares.h"
#include "chain/build/assemble.h"
#include "chain/finder.h"
#include "chain/search/best_chain.h"
#include "property/chain/assembly.h"
#include "property/chain/exhaustive.h"
#include "property/chain/random_world.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>
#include <map>
#include <set>

namespace riserun::chain::testing::least_spares_test {
namespace {

constexpr std::uint32_t kWorlds = 5000;
constexpr std::size_t kBeginnings = 120;  // looked at for each depth of the exhaustive search

using Counts = std::map<std::string, int>;

bool within(const Counts& less, const Counts& more) {
  return std::all_of(less.begin(), less.end(), [&](const auto& piece) {
    const auto there = more.find(piece.first);
    return there != more.end() && there->second >= piece.second;
  });
}

Counts bought_in(const catalog::Catalog& catalog, const Chain& chain) {
  Counts bought;
  for (const RunPart& link : chain.parts) {
    if (!link.from_bin) ++bought[catalog.part(link.part).id];
    for (const Follower& plug : link.plugs())
      if (!plug.from_bin) ++bought[catalog.part(plug.plug).id];
  }
  return bought;
}

/// What is missing, and each set of further parts with which some chain can be made.
struct Out {
  std::size_t chosen = 0;
  std::string missing;
  std::set<Counts> ways;
};

class EverySpareSet {
 public:
  EverySpareSet(const catalog::Catalog& catalog, const std::vector<Chosen>& chosen) : catalog_(catalog) {
    for (std::size_t i = 0; i < chosen.size(); ++i) add_outs(i, chosen[i]);
    std::set<std::string> named;
    for (const Out& out : outs)
      for (const Counts& way : out.ways)
        for (const auto& [id, count] : way) named.insert(id);
    ids_.assign(named.begin(), named.end());
  }

  /// By size, then price, then ids: tried one after the other.
  /// Nullopt: the chains that were tried are all too short.
  std::optional<std::vector<std::string>> least() {
    for (std::size_t size = 0; size <= outs.size() && !best_; ++size) try_all(size, 0, {});
    return best_ ? std::optional(best_->second) : std::nullopt;
  }

  std::vector<Out> outs;
  int depth = 8;

 private:
  void add_outs(std::size_t row, const Chosen& chosen) {
    const Counts cart = bought_in(catalog_, chosen.chain);
    if (cart.empty()) return;
    ChainRequest request = chosen.request;
    request.bin.items.clear();
    Counts there = cart;
    for (const catalog::BinItem& item : chosen.request.bin.items) there[catalog_.part(item.part).id] += item.count;
    for (const auto& [id, count] : there)
      if (count > 0) request.bin.items.push_back({*catalog_.find_part(id), count});
    const Exhausted every = Exhaustive(catalog_, request).run(kBeginnings);
    depth = std::min(depth, every.depth);
    for (const auto& [missing, count] : cart) {
      Out out{row, missing, {}};
      for (const Sums& sums : every.chains) {
        Counts further;
        for (const std::string& id : sums.ids) ++further[id];
        for (auto& [id, needed] : further) {
          const auto at_hand = there.find(id);
          needed -= (at_hand == there.end() ? 0 : at_hand->second) - (id == missing ? 1 : 0);
        }
        std::erase_if(further, [](const auto& piece) { return piece.second <= 0; });
        int pieces = 0;
        for (const auto& piece : further) pieces += piece.second;
        if (pieces <= static_cast<int>(kMostTogether)) out.ways.insert(further);
      }
      outs.push_back(std::move(out));
    }
  }

  void try_all(std::size_t left, std::size_t from, std::vector<std::string> so_far) {
    if (left == 0) {
      Counts set;
      std::int64_t cents = 0;
      for (const std::string& id : so_far) {
        ++set[id];
        cents += catalog_.part(*catalog_.find_part(id)).price.cents();
      }
      for (const Out& out : outs)
        if (std::none_of(out.ways.begin(), out.ways.end(), [&](const Counts& way) { return within(way, set); })) return;
      if (!best_ || std::pair(cents, so_far) < *best_) best_ = std::pair(cents, so_far);
      return;
    }
    for (std::size_t i = from; i < ids_.size(); ++i) {
      so_far.push_back(ids_[i]);
      try_all(left - 1, i, so_far);
      so_far.pop_back();
    }
  }

  const catalog::Catalog& catalog_;
  std::vector<std::string> ids_;
  std::optional<std::pair<std::int64_t, std::vector<std::string>>> best_;
};

class LeastSpares : public ::testing::Test {
 protected:
  void check_world(std::uint32_t seed);
  void check_stand_in(const catalog::Catalog& catalog, const Chosen& chosen, const StockOut& out,
                      std::int64_t& longest);
  int compared_ = 0, too_long_ = 0, fewer_ = 0, outs_ = 0, only_itself_ = 0, none_ = 0, two_ = 0, not_so_lonely_ = 0;
};

// Made of the bin, the rest of the cart and the spares, and of nothing else; and it holds all rules.
void LeastSpares::check_stand_in(const catalog::Catalog& catalog, const Chosen& chosen, const StockOut& out,
                                 std::int64_t& longest) {
  SCOPED_TRACE("without " + catalog.part(out.missing).id);
  Counts there = bought_in(catalog, chosen.chain);
  EXPECT_GT(there[catalog.part(out.missing).id]--, 0);
  for (const catalog::BinItem& item : chosen.request.bin.items) there[catalog.part(item.part).id] += item.count;
  for (const PartId spare : out.spares) ++there[catalog.part(spare).id];
  ChainRequest request = chosen.request;
  request.bin.items.clear();
  for (const auto& [id, count] : there)
    if (count > 0) request.bin.items.push_back({*catalog.find_part(id), count});
  std::string why;
  const std::optional<Sums> sums = Exhaustive(catalog, request).judge(out.stand_in, why);
  ASSERT_TRUE(sums) << why;
  EXPECT_EQ(sums->buy, 0);
  EXPECT_EQ(out.stand_in.buy_count, 0);
  EXPECT_EQ(carry_out(catalog, request, out.stand_in), "");
  longest = std::max(longest, sums->parts);
}

void LeastSpares::check_world(std::uint32_t seed) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  Dice dice(seed);
  const catalog::Catalog catalog = random_catalog(dice);
  const Finder finder(catalog);
  std::vector<Chosen> chosen;
  const std::size_t wanted = dice.chance(60) ? 1 : 2;
  for (int tries = 0; tries < 12 && chosen.size() < wanted; ++tries) {
    ChainRequest request = random_request(dice, catalog);
    request.order = static_cast<Order>(dice.below(5));
    const std::optional<Route> route = best_chain(finder.prepared(), request);
    if (!route) continue;
    const Chain chain = assemble(catalog, request, route->moves);
    if (chain.buy_count > 1 || (chain.buy_count > 0 && dice.chance(30))) chosen.push_back({request, chain});
  }
  const Spares answer = finder.least_spares(chosen);
  EverySpareSet every(catalog, chosen);
  ASSERT_EQ(answer.stock_outs.size(), every.outs.size());
  std::vector<std::string> found;
  Price price;
  for (const PartId part : answer.parts) {
    found.push_back(catalog.part(part).id);
    price += catalog.part(part).price;
  }
  EXPECT_EQ(price, answer.price);
  std::int64_t longest = 0;
  for (const StockOut& out : answer.stock_outs) {
    check_stand_in(catalog, chosen[out.chosen], out, longest);
    for (const PartId spare : out.spares)
      EXPECT_NE(std::find(answer.parts.begin(), answer.parts.end(), spare), answer.parts.end());
  }
  const std::optional<std::vector<std::string>> least = every.least();
  if (longest > every.depth) {
    ++too_long_;
    EXPECT_TRUE(!least || found.size() <= least->size());
    return;
  }
  ASSERT_TRUE(least);
  EXPECT_EQ(found, *least);
  for (const Out& out : every.outs) {
    const auto same = std::find_if(answer.stock_outs.begin(), answer.stock_outs.end(), [&](const StockOut& o) {
      return o.chosen == out.chosen && catalog.part(o.missing).id == out.missing;
    });
    ASSERT_NE(same, answer.stock_outs.end());
    const bool lonely = std::all_of(out.ways.begin(), out.ways.end(), [&](const Counts& way) {
      return within({{out.missing, 1}}, way);
    });
    EXPECT_TRUE(lonely || !same->only_itself) << out.missing;
    not_so_lonely_ += lonely && !same->only_itself ? 1 : 0;  // a chain longer than what was tried
    only_itself_ += same->only_itself ? 1 : 0;
    none_ += same->spares.empty() ? 1 : 0;
  }
  ++compared_;
  outs_ += static_cast<int>(every.outs.size());
  two_ += chosen.size() == 2 ? 1 : 0;
  fewer_ += found.size() < every.outs.size() ? 1 : 0;
}

TEST_F(LeastSpares, AreTheLeastOfAllSetsThatOutlastAnyMissingPart) {
  for (std::uint32_t seed = first_world(); seed < first_world() + kWorlds && !HasFailure(); ++seed) check_world(seed);
  std::cout << compared_ << " sets compared whole, " << two_ << " of two chains, " << outs_ << " missing parts, "
            << fewer_ << " with fewer spares than those, " << only_itself_ << " that nothing else stands in for, "
            << none_ << " that can be done without; " << too_long_ << " longer than tried\n";
  EXPECT_GT(compared_, 4000);
  EXPECT_GT(fewer_, 200);
  EXPECT_GT(only_itself_, 500);
  EXPECT_LT(not_so_lonely_, only_itself_ / 20);
  EXPECT_LT(too_long_, 500);
}

}  // namespace
}  // namespace riserun::chain::testing::least_spares_test
