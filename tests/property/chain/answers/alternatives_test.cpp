// The alternatives and the answers to an empty shelf, of thousands of small random catalogs, against every chain there
// is.
#include "chain/ask/answer.h"
#include "chain/finder.h"
#include "chain/search/best_chain.h"
#include "chain/search/pareto_chains.h"
#include "property/chain/assembly.h"
#include "property/chain/exhaustive.h"
#include "property/chain/random_world.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <iostream>
#include <map>

namespace riserun::chain::testing::alternatives_test {
namespace {

constexpr std::uint32_t kWorlds = 5500;
constexpr std::size_t kBeginnings = 400;  // looked at for each depth of the exhaustive search
constexpr std::size_t kAll = SIZE_MAX;

using Figures = std::array<std::int64_t, 5>;

Figures figures_of(const Sums& s) { return {s.parts, s.cents, s.micrometres, s.nanometres, s.buy}; }

bool beats(const Figures& a, const Figures& b) {
  bool better_in_one = false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i] > b[i]) return false;
    better_in_one = better_in_one || a[i] < b[i];
  }
  return better_in_one;
}

/// The definition, word for word: of equal figures one, of the rest those that nothing beats.
std::vector<Sums> unbeaten(const std::vector<Sums>& every) {
  std::map<Figures, Sums> one_of_equals;
  std::int64_t fewest = INT64_MAX;
  for (const Sums& sums : every) fewest = std::min(fewest, sums.parts);
  for (const Sums& sums : every) {
    if (sums.parts > fewest + kMorePartsThanFewest) continue;
    const auto [known, is_new] = one_of_equals.try_emplace(figures_of(sums), sums);
    if (!is_new && std::tie(sums.drawbacks, sums.ids, sums.ways) <
                       std::tie(known->second.drawbacks, known->second.ids, known->second.ways))
      known->second = sums;
  }
  std::vector<Sums> kept;
  for (const auto& [figures, sums] : one_of_equals) {
    const bool beaten = std::any_of(one_of_equals.begin(), one_of_equals.end(),
                                    [&, mine = figures](const auto& other) { return beats(other.first, mine); });
    if (!beaten) kept.push_back(sums);
  }
  return kept;
}

/// As a rule one that has a chain, and one with parts in it: else there is nothing to weigh.
ChainRequest telling_request(Dice& dice, const catalog::Catalog& catalog, std::vector<PartId>& best_parts) {
  const Finder finder(catalog);
  ChainRequest request;
  for (int tries = 0; tries < 6 && best_parts.empty(); ++tries) {
    request = random_request(dice, catalog);
    if (dice.chance(40)) request.most_parts = dice.between(2, 4);
    if (const std::optional<Route> best = best_chain(finder.prepared(), request))
      for (const Move& move : best->moves) best_parts.push_back(move.part);
  }
  return request;
}

/// Beside these parts, like ones of another price, length, bore or material, so that there is something to weigh.
catalog::Catalog with_variants(Dice& dice, const catalog::Catalog& catalog, const std::vector<PartId>& parts) {
  catalog::CatalogBuilder builder(catalog);
  const int count = parts.empty() ? 0 : dice.between(1, 4);
  for (int i = 0; i < count; ++i) {
    catalog::Part part = catalog.part(parts[static_cast<std::size_t>(dice.below(static_cast<int>(parts.size())))]);
    part.id = std::string(1, static_cast<char>('a' + dice.below(26))) + "v" + std::to_string(i);
    part.price = cents(dice.one_of({0, 50, 100, 200}));
    part.stocked = true;
    if (dice.chance(50)) part.material = {static_cast<std::uint32_t>(dice.below(5))};
    const bool other_bore = dice.chance(30);
    for (catalog::Port& port : part.ports) {
      port.reach = millimetres(dice.one_of({0.0, 12.0, 20.0, 30.0}));
      if (other_bore) port.bore = millimetres(dice.one_of({10.0, 15.0, 20.0}));
    }
    builder.add(std::move(part));
  }
  return std::move(builder).build();
}

class Alternatives : public ::testing::Test {
 protected:
  void check_world(std::uint32_t seed);
  void check_rows(const catalog::Catalog& catalog, const Finder& finder, const ChainRequest& request,
                  const Exhausted& every, Exhaustive& judge);
  void check_shelf(const catalog::Catalog& catalog, const Finder& finder, const ChainRequest& request,
                   const Chain& chain);
  void check_substitute(const catalog::Catalog& catalog, const ChainRequest& request, const Chain& chain,
                        const Substitute& answer);
  int compared_ = 0;
  int rows_ = 0;
  int folded_ = 0;
  int too_long_ = 0;
  int substitutes_ = 0;
  int no_substitutes_ = 0;
};

std::string shape(const catalog::Catalog& catalog, const Sums& sums) {
  std::string text;
  for (const std::string& id : sums.ids) {
    const catalog::Part& part = catalog.part(*catalog.find_part(id));
    text += std::to_string(part.family.row) + "/" + part.size;
    for (const catalog::Port& port : part.ports) text += "/" + std::to_string(port.type.row);
    text += ";";
  }
  for (const auto& [enter, leave] : sums.ways) text += std::to_string(enter) + "-" + std::to_string(leave) + ";";
  return text;
}

std::vector<MaterialId> metals(const catalog::Catalog& catalog, const Sums& sums) {
  std::vector<MaterialId> all;
  for (const std::string& id : sums.ids) {
    const catalog::Part& part = catalog.part(*catalog.find_part(id));
    all.push_back(part.material);
    all.push_back(part.far_material.value_or(part.material));
  }
  return all;
}

void Alternatives::check_rows(const catalog::Catalog& catalog, const Finder& finder, const ChainRequest& request,
                              const Exhausted& every, Exhaustive& judge) {
  const std::vector<Alternative> answer = finder.alternatives(request, kAll);
  const std::optional<Route> best = best_chain(finder.prepared(), request);
  ASSERT_EQ(answer.empty(), !best.has_value());
  if (!best) return;
  std::vector<Sums> found;
  std::size_t folded = 0;
  for (const Alternative& row : answer) {
    std::string why;
    const std::optional<Sums> sums = judge.judge(row.chain, why);
    ASSERT_TRUE(sums.has_value()) << why;
    EXPECT_EQ(carry_out(catalog, request, row.chain), "");
    EXPECT_EQ(row.chain.price.cents(), sums->cents);
    EXPECT_EQ(row.chain.part_count, sums->parts);
    EXPECT_EQ(row.chain.buy_count, sums->buy);
    EXPECT_NEAR(in_metres(row.chain.length) * 1e6, static_cast<double>(sums->micrometres), 20.0);
    EXPECT_NEAR(in_metres(row.chain.head) * 1e9, static_cast<double>(sums->nanometres),
                20.0 + 1e-9 * static_cast<double>(sums->nanometres));
    found.push_back(*sums);
    folded += row.same_in.size();
  }
  std::int64_t most = request.most_parts.value_or(INT32_MAX);
  for (const Sums& sums : found) most = std::min(most, sums.parts + kMorePartsThanFewest);
  if (std::max(most, found.front().parts) > every.depth) {
    ++too_long_;
    for (std::size_t i = 1; i < found.size(); ++i)
      for (const Sums& sums : every.chains)
        EXPECT_FALSE(sums.parts <= most && beats(figures_of(sums), figures_of(found[i])));
    return;
  }
  // The best first, the others in the order's own order; what is like an earlier row but for its materials left out.
  std::vector<Sums> expected = unbeaten(every.chains);
  std::sort(expected.begin(), expected.end(),
            [&](const Sums& a, const Sums& b) { return better(request.order, a, b); });
  const Sums& first = *every.best[static_cast<std::size_t>(request.order)];
  std::erase(expected, first);
  expected.insert(expected.begin(), first);
  std::vector<Sums> shown;
  for (const Sums& sums : expected) {
    const bool folds = std::any_of(shown.begin(), shown.end(), [&](const Sums& earlier) {
      return shape(catalog, earlier) == shape(catalog, sums) && metals(catalog, earlier) != metals(catalog, sums);
    });
    if (!folds) shown.push_back(sums);
  }
  EXPECT_EQ(found, shown);
  EXPECT_EQ(folded, expected.size() - shown.size());
  ++compared_;
  rows_ += static_cast<int>(shown.size());
  folded_ += static_cast<int>(folded);
}

void Alternatives::check_world(std::uint32_t seed) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  Dice dice(seed);
  const catalog::Catalog plain = random_catalog(dice);
  std::vector<PartId> best_parts;
  ChainRequest request = telling_request(dice, plain, best_parts);
  const catalog::Catalog catalog = with_variants(dice, plain, best_parts);
  if (!request.banned.empty()) request.banned.resize(catalog.parts().size(), false);
  request.order = static_cast<Order>(seed % 5);
  const Finder finder(catalog);
  Exhaustive exhaustive(catalog, request);
  const Exhausted every = exhaustive.run(kBeginnings);
  check_rows(catalog, finder, request, every, exhaustive);
  const Answer answer = finder.find(request);
  const Chain* chain = std::get_if<Chain>(&answer);
  if (chain && seed % 4 == 0) check_shelf(catalog, finder, request, *chain);
}

std::map<PartId, int> bought_in(const Chain& chain) {
  std::map<PartId, int> bought;
  for (const RunPart& link : chain.parts) {
    if (!link.from_bin) ++bought[link.part];
    for (const Follower& plug : link.plugs())
      if (!plug.from_bin) ++bought[plug.plug];
  }
  return bought;
}

void Alternatives::check_shelf(const catalog::Catalog& catalog, const Finder& finder, const ChainRequest& request,
                               const Chain& chain) {
  const std::vector<Substitute> substitutes = finder.substitutes(request, chain);
  ASSERT_EQ(substitutes.size(), bought_in(chain).size());
  for (const Substitute& answer : substitutes) check_substitute(catalog, request, chain, answer);
}

// The shelf told to the exhaustive search in its own words: the part can be had only from the bin, the rest of the cart
// is in the bin.
void Alternatives::check_substitute(const catalog::Catalog& catalog, const ChainRequest& request, const Chain& chain,
                                    const Substitute& answer) {
  SCOPED_TRACE("without " + catalog.part(answer.instead_of).id);
  std::map<PartId, int> cart = bought_in(chain);
  ASSERT_EQ(cart.erase(answer.instead_of), 1u);
  catalog::CatalogBuilder builder(catalog);
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    catalog::Part part = catalog.part({row});
    part.stocked = row != answer.instead_of.row && (part.stocked || request.special_order);
    builder.replace({row}, part);
  }
  const catalog::Catalog shelf = std::move(builder).build();
  ChainRequest again = request;
  again.special_order = false;
  again.bin.items.clear();
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const auto in_cart = cart.find({row});
    const int count = request.bin.count_of({row}) + (in_cart == cart.end() ? 0 : in_cart->second);
    if (count > 0) again.bin.items.push_back({{row}, count});
  }
  Exhaustive exhaustive(shelf, again);
  const Exhausted every = exhaustive.run(kBeginnings);
  const auto further_first = [&](const Sums& a, const Sums& b) {
    return a.buy != b.buy ? a.buy < b.buy : better(request.order, a, b);
  };
  const auto best = std::min_element(every.chains.begin(), every.chains.end(), further_first);
  if (!answer.chain) {
    EXPECT_TRUE(best == every.chains.end());
    ++no_substitutes_;
    return;
  }
  std::string why;
  const std::optional<Sums> sums = exhaustive.judge(*answer.chain, why);
  ASSERT_TRUE(sums.has_value()) << why;
  EXPECT_EQ(carry_out(catalog, request, *answer.chain), "");
  EXPECT_EQ(static_cast<std::int64_t>(answer.buy_also.size()), sums->buy);
  // Cart, less what is put back, and what is bought beside it: that is what the new chain has bought.
  std::map<PartId, int> bought = cart;
  for (const PartId part : answer.put_back) --bought[part];
  for (const PartId part : answer.buy_also) ++bought[part];
  std::erase_if(bought, [](const auto& entry) { return entry.second == 0; });
  EXPECT_EQ(bought, bought_in(*answer.chain));
  if (sums->parts > every.depth) {
    EXPECT_FALSE(best != every.chains.end() && further_first(*best, *sums));
    return;
  }
  ASSERT_TRUE(best != every.chains.end());
  EXPECT_EQ(*sums, *best);
  ++substitutes_;
}

TEST_F(Alternatives, AreTheUnbeatenChainsOfAllChainsAndAnEmptyShelfGetsTheBestThatKeepsTheCart) {
  for (std::uint32_t seed = first_world(); seed < first_world() + kWorlds && !HasFailure(); ++seed) check_world(seed);
  std::cout << compared_ << " sets compared whole (" << rows_ << " rows, " << folded_ << " folded), " << too_long_
            << " longer than tried; " << substitutes_ << " substitutes, " << no_substitutes_ << " parts without\n";
  EXPECT_GT(compared_, 2000);
  EXPECT_GT(rows_, 3500);
  EXPECT_GT(folded_, 500);
  EXPECT_GT(substitutes_, 500);
  EXPECT_GT(no_substitutes_, 100);
}

}  // namespace
}  // namespace riserun::chain::testing::alternatives_test
