// What the rules of a request do to each other: the least set that cannot be kept together, and the least to give up.
//
// How it works: whether a set of rules can be kept is a search with the others given up (best_chain, or makes_span
// where a distance is asked for), remembered by the set. The least sets are minimum hitting sets (hitting_set.h).
//
// Worst case: a search for each set of rules. Searches for a distance are given up after kMostLabels beginnings of runs
// in all, three seconds or so: what is not known by then is taken to be kept in a conflict, which then may not be the
// least, and is no mend.
#pragma once

#include "chain/ask/answer.h"
#include "chain/graph/folded_catalog.h"
#include "chain/refusal/request_rules.h"

#include <map>
#include <optional>
#include <vector>

namespace riserun::chain {

/// The least sets among the rules. Sets are bits by row of rules().
class Conflict {
 public:
  Conflict(const FoldedCatalog& folded, const ChainRequest& request);
  /// The distance is one more rule, the last. Without it the ends may be anywhere; where the rule on held ends is given
  /// up, the last end turns but does not move along its axis.
  Conflict(const FoldedCatalog& folded, const ChainRequest& request, const Span& span);

  const std::vector<RequestRule>& rules() const { return rules_; }

  /// The smallest set of rules that no chain keeps together, so that every smaller set can be kept; of equally small
  /// ones the first. Other rules may be broken then, but parts with more than two ports and devices still come in only
  /// where they meet one of the request's needs. nullopt: there is none, whatever rules are given up.
  std::optional<RuleSet> least_conflict();
  /// The smallest set of rules that, given up together, makes a chain; of equally small ones the first.
  /// @pre least_conflict() is not nullopt
  RuleSet least_to_give_up();
  /// The request without those rules.
  ChainRequest without(RuleSet given_up) const;
  /// All rules but one can be kept.
  bool mends(std::size_t row) { return can_keep(all_ & ~(RuleSet{1} << row)).value_or(false); }

 private:
  static constexpr std::size_t kMostLabels = 1'000'000;

  std::optional<bool> can_keep(RuleSet kept);  // nullopt: not known
  std::optional<bool> implied_by_known(RuleSet kept) const;
  std::optional<bool> search(RuleSet kept);
  std::optional<bool> search_in_order(RuleSet kept);
  std::optional<bool> is_made(const ChainRequest& request, RuleSet kept);

  const FoldedCatalog& folded_;
  const ChainRequest& request_;
  std::optional<Span> span_;
  std::vector<RequestRule> rules_;
  RuleSet all_ = 0;
  RuleSet order_ = 0;     // bit of the rule on the order of the needs; 0: there is none
  RuleSet distance_ = 0;  // bit of the distance; 0: there is none
  std::map<RuleSet, std::optional<bool>> known_;
  std::size_t labels_left_ = kMostLabels;
};

/// Rows of a set, in order.
std::vector<std::size_t> rows_of(RuleSet set);

}  // namespace riserun::chain
