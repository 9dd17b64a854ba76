// The rules of a request as things that can be given up one by one, and what they do to each other.
#pragma once

#include "chain/ask/answer.h"
#include "chain/graph/folded_catalog.h"

#include <functional>
#include <map>
#include <string>
#include <vector>

namespace riserun::chain {

/// One rule of a request.
struct RequestRule {
  std::string key;                             // "smallest_bore"
  std::string text;                            // "1-1/2 in bore everywhere"
  std::string alone;                           // why there is no chain where this rule by itself allows none
  std::vector<std::string> mends;              // what to do to be rid of it; each is enough
  bool freedom = false;                        // it is about how the ends are held
  std::function<void(ChainRequest&)> give_up;  // empty: `need` or `avoided` says what goes
  std::optional<std::size_t> need;             // row of the request's needs
  std::optional<std::size_t> avoided;          // row of the request's avoidances
};

/// All rules of the request, in the order in which refusals name them.
std::vector<RequestRule> rules_of(const Catalog& catalog, const ChainRequest& request);

/// The least sets among the rules. Sets are bits by row of rules().
class Conflict {
 public:
  Conflict(const FoldedCatalog& folded, const ChainRequest& request);

  const std::vector<RequestRule>& rules() const { return rules_; }

  /// The smallest set of rules that no chain keeps together, so that every smaller set can be kept; of equally small
  /// ones the first. Other rules may be broken then, but parts with more than two ports and devices still come in only
  /// where they meet one of the request's needs. nullopt: there is none, whatever rules are given up.
  std::optional<std::uint64_t> least_conflict();
  /// The smallest set of rules that, given up together, makes a chain; of equally small ones the first.
  /// @pre least_conflict() is not nullopt
  std::uint64_t least_to_give_up();
  /// The request without those rules.
  ChainRequest without(std::uint64_t given_up) const;

 private:
  bool can_keep(std::uint64_t kept);
  bool search(std::uint64_t kept) const;
  bool search_in_order(std::uint64_t kept) const;
  ChainRequest relaxed(std::uint64_t kept) const;

  const FoldedCatalog& folded_;
  const ChainRequest& request_;
  std::vector<RequestRule> rules_;
  std::uint64_t all_ = 0;
  std::uint64_t order_ = 0;  // bit of the rule on the order of the needs; 0: there is none
  std::map<std::uint64_t, bool> known_;
};

}  // namespace riserun::chain
