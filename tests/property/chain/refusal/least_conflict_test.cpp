// The least sets of conflicting rules, of thousands of small random catalogs, against every set of rules: for each set
// every chain there is.
#include "chain/refusal/least_conflict.h"

#include "chain/finder.h"
#include "chain/search/best_chain.h"
#include "property/chain/exhaustive.h"
#include "property/chain/random_world.h"

#include <gtest/gtest.h>

#include <bit>
#include <iostream>
#include <map>

namespace riserun::chain::testing::least_conflict_test {
namespace {

constexpr std::uint32_t kWorlds = 6400;

using Set = std::uint32_t;

bool has(Set set, std::size_t row) { return set >> row & 1u; }

/// A request that asks for more than most catalogs can give.
ChainRequest strict_request(Dice& dice, const catalog::Catalog& catalog) {
  ChainRequest request = random_request(dice, catalog);
  request.special_order = dice.chance(15);
  if (dice.chance(25)) request.rating = psig(dice.one_of({120.0, 150.0, 300.0}));
  if (dice.chance(15)) request.smallest_bore = millimetres(dice.one_of({15.0, 20.0}));
  if (dice.chance(25)) request.most_parts = dice.between(0, 3);
  if (dice.chance(35)) request.most_bushings = 0;
  if (dice.chance(10)) request.hottest = degrees_celsius(60.0);
  for (int i = dice.below(2); i > 0; --i) {
    Avoidance avoidance{"things", {}};
    request.banned.resize(catalog.parts().size(), false);
    for (int k = 0; k < 3; ++k) {
      const PartId part{static_cast<std::uint32_t>(dice.below(static_cast<int>(catalog.parts().size())))};
      avoidance.parts.push_back(part);
      request.banned[part.row] = true;
    }
    request.avoided.push_back(avoidance);
  }
  request.flow = us_gallons_per_minute(0.0);
  return request;
}

/// All sets of rules by trial. Names stand for the rules, in the order in which refusals name them.
class Judge {
 public:
  Judge(const catalog::Catalog& catalog, const ChainRequest& request) : catalog_(catalog), request_(request) {
    const auto turns = [](Freedom f) { return f == Freedom::loose || f == Freedom::spinning; };
    const auto moves = [](Freedom f) { return f == Freedom::loose || f == Freedom::sliding; };
    const bool turned = turns(request.from.freedom) || turns(request.to.freedom);
    if (!turned || (!moves(request.from.freedom) && !moves(request.to.freedom))) names_.emplace_back("held_ends");
    for (std::size_t i = 0; i < request.needs.size(); ++i) names_.emplace_back("need");
    if (request.needs_in_order && request.needs.size() > 1) names_.emplace_back("order_of_needs");
    if (request.most_parts) names_.emplace_back("most_parts");
    if (request.most_bushings) names_.emplace_back("most_bushings");
    if (request.rating) names_.emplace_back("rating");
    if (request.hottest) names_.emplace_back("hottest");
    if (request.vacuum) names_.emplace_back("vacuum");
    if (request.smallest_bore) names_.emplace_back("smallest_bore");
    if (request.room) names_.emplace_back("room");
    if (request.galvanic == Galvanic::avoid) names_.emplace_back("galvanic");
    if (request.service == Service::air) names_.emplace_back("air");
    for (std::size_t i = 0; i < request.avoided.size(); ++i) names_.emplace_back("avoid");
    std::vector<bool> left = request.banned;
    for (const Avoidance& avoidance : request.avoided)
      for (const PartId part : avoidance.parts) left[part.row] = false;
    if (std::find(left.begin(), left.end(), true) != left.end()) names_.emplace_back("ruled_out");
    if (!request.special_order) names_.emplace_back("stocked_only");
  }

  const std::vector<std::string>& names() const { return names_; }
  std::size_t count() const { return names_.size(); }

  /// Some chain keeps these rules and perhaps more: a need that is not in the set may be met, the order kept, every
  /// part proved for vacuum. So a set within one that can be kept can be kept, and one around one that cannot, cannot.
  bool can_keep(Set kept) {
    const auto within = [&](Set known) { return (kept & ~known) == 0; };
    const auto around = [&](Set known) { return (known & ~kept) == 0; };
    if (std::any_of(can_.begin(), can_.end(), within)) return true;
    if (std::any_of(cannot_.begin(), cannot_.end(), around)) return false;
    const bool can = try_to_keep(kept);
    (can ? can_ : cannot_).push_back(kept);
    return can;
  }

  /// The smallest set of that many rules for which the test holds, the first by its rows.
  template <class Test>
  Set least(Test test) {
    for (int size = 0;; ++size)
      if (const auto found = least_of(size, 0, 0, test)) return *found;
  }

 private:
  bool try_to_keep(Set kept) {
    Set free = 0;
    for (std::size_t row = 0; row < count(); ++row)
      if (!has(kept, row) && (names_[row] == "need" || names_[row] == "order_of_needs" || names_[row] == "vacuum"))
        free |= 1u << row;
    for (Set more = free;; more = (more - 1) & free) {
      if (just(kept | more)) return true;
      if (more == 0) return false;
    }
  }

  template <class Test>
  std::optional<Set> least_of(int left, std::size_t from, Set taken, Test test) {
    if (left == 0) return test(taken) ? std::optional(taken) : std::nullopt;
    for (std::size_t row = from; row < count(); ++row)
      if (const auto found = least_of(left - 1, row + 1, taken | 1u << row, test)) return found;
    return std::nullopt;
  }

  bool just(Set kept) {
    const auto [known, is_new] = known_.try_emplace(kept, false);
    if (!is_new) return known->second;
    const ChainRequest request = request_with(kept);
    return known->second = Exhaustive(catalog_, request).any_chain();
  }

  ChainRequest request_with(Set kept) const {
    ChainRequest r = request_;
    r.needs.clear();
    std::vector<bool> named(r.banned.size(), false);
    std::vector<bool> banned(r.banned.size(), false);
    for (const Avoidance& avoidance : r.avoided)
      for (const PartId part : avoidance.parts) named[part.row] = true;
    std::size_t need = 0;
    std::size_t avoided = 0;
    for (std::size_t row = 0; row < count(); ++row) {
      const std::string& name = names_[row];
      const bool keep = has(kept, row);
      if (name == "need" && keep) r.needs.push_back(request_.needs[need]);
      if (name == "need") ++need;
      if (name == "avoid" && keep)
        for (const PartId part : r.avoided[avoided].parts) banned[part.row] = true;
      if (name == "avoid") ++avoided;
      for (std::size_t part = 0; name == "ruled_out" && keep && part < banned.size(); ++part)
        if (request_.banned[part] && !named[part]) banned[part] = true;
      if (keep) continue;
      if (name == "held_ends") r.to.freedom = Freedom::loose;
      if (name == "order_of_needs") r.needs_in_order = false;
      if (name == "most_parts") r.most_parts.reset();
      if (name == "most_bushings") r.most_bushings.reset();
      if (name == "rating") r.rating.reset();
      if (name == "hottest") r.hottest.reset();
      if (name == "vacuum") r.vacuum = false;
      if (name == "smallest_bore") r.smallest_bore.reset();
      if (name == "room") r.room.reset();
      if (name == "galvanic") r.galvanic = Galvanic::warn;
      if (name == "air") {  // it stays dry
        r.service = Service::water;
        r.dry = true;
      }
      if (name == "stocked_only") r.special_order = true;
    }
    r.banned = banned;
    return r;
  }

  const catalog::Catalog& catalog_;
  const ChainRequest& request_;
  std::vector<std::string> names_;
  std::map<Set, bool> known_;
  std::vector<Set> can_, cannot_;
};

class Conflicts : public ::testing::Test {
 protected:
  void check_world(std::uint32_t seed);
  void check_lifts(Judge& judge, Set conflict, const NoChain& none);
  int chains_ = 0;
  int without_any_ = 0;
  int compared_ = 0;
  std::map<int, int> by_size_;
  std::map<int, int> given_up_;
};

// Each rule that lifts it alone is named, and only those.
void Conflicts::check_lifts(Judge& judge, Set conflict, const NoChain& none) {
  const Set all = (1u << judge.count()) - 1;
  std::size_t expected = 0;
  for (std::size_t row = 0; row < judge.count(); ++row) {
    if (!judge.can_keep(all & ~(1u << row))) continue;
    EXPECT_TRUE(has(conflict, row));
    if (judge.names()[row] == "stocked_only" && none.special_order) continue;
    expected += judge.names()[row] == "held_ends" ? 2 : 1;
  }
  std::size_t named = 0;
  for (const Lift& lift : none.lifts) named += lift.by == Lift::By::rule || lift.by == Lift::By::freedom ? 1 : 0;
  EXPECT_EQ(named, expected);
  EXPECT_FALSE(none.lifts.empty());
}

void Conflicts::check_world(std::uint32_t seed) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  Dice dice(seed);
  const catalog::Catalog catalog = random_catalog(dice);
  ChainRequest request;
  for (int tries = 0; tries < 3; ++tries) {  // as a rule one that some chain would do for, all rules aside
    request = strict_request(dice, catalog);
    if (Judge(catalog, request).can_keep(0)) break;
  }
  const Finder finder(catalog);
  Judge judge(catalog, request);
  const Set all = (1u << judge.count()) - 1;
  const Answer answer = finder.find(request);
  ASSERT_EQ(std::holds_alternative<Chain>(answer), judge.can_keep(all));
  if (std::holds_alternative<Chain>(answer)) {
    ++chains_;
    return;
  }
  Conflict conflict(finder.prepared().folded(), request);
  std::vector<std::string> keys;
  for (const RequestRule& rule : conflict.rules()) keys.emplace_back(rule.code());
  ASSERT_EQ(keys, judge.names());
  const auto found = conflict.least_conflict();
  const NoChain& none = std::get<NoChain>(answer);
  ASSERT_EQ(found.has_value(), judge.can_keep(0));
  if (!found) {
    EXPECT_TRUE(none.conflict.empty());
    ++without_any_;
    return;
  }
  const Set least = judge.least([&](Set set) { return !judge.can_keep(set); });
  EXPECT_EQ(*found, least);
  EXPECT_EQ(none.conflict.size(), static_cast<std::size_t>(std::popcount(least)));
  const Set given_up = judge.least([&](Set set) { return judge.can_keep(all & ~set); });
  EXPECT_EQ(conflict.least_to_give_up(), given_up);
  EXPECT_TRUE(best_chain(finder.prepared(), conflict.without(given_up)).has_value());
  check_lifts(judge, least, none);
  ++compared_;
  ++by_size_[std::popcount(least)];
  ++given_up_[std::popcount(given_up)];
}

TEST_F(Conflicts, AreTheLeastSetsOfRulesThatNoChainKeepsAndTheLeastToGiveUp) {
  for (std::uint32_t seed = first_world(); seed < first_world() + kWorlds && !HasFailure(); ++seed) check_world(seed);
  std::cout << chains_ << " chains, " << without_any_ << " without any, " << compared_ << " conflicts compared; sizes";
  for (const auto& [size, count] : by_size_) std::cout << ' ' << size << ": " << count;
  std::cout << "; given up";
  for (const auto& [size, count] : given_up_) std::cout << ' ' << size << ": " << count;
  std::cout << '\n';
  EXPECT_GT(compared_, 2000);
  EXPECT_GT(by_size_[2], 200);
  EXPECT_GT(by_size_[3], 20);
  EXPECT_GT(given_up_[2], 100);
}

}  // namespace
}  // namespace riserun::chain::testing::least_conflict_test
