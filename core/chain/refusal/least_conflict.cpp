#include "chain/refusal/least_conflict.h"

#include "chain/search/best_chain.h"
#include "chain/search/hitting_set.h"

#include <algorithm>

namespace riserun::chain {

namespace {

using Set = std::uint64_t;

bool holds(Set set, std::size_t row) { return set >> row & 1u; }

/// What the request rules out and no kept avoidance names stays out only where the rule on it is kept.
std::vector<bool> bans_kept(const ChainRequest& request, const std::vector<RequestRule>& rules, Set kept) {
  std::vector<bool> banned(request.banned.size(), false);
  std::vector<bool> named(request.banned.size(), false);
  const auto mark = [&](const Avoidance& avoidance, std::vector<bool>& list) {
    for (const PartId part : avoidance.parts)
      if (part.row < list.size() && request.banned[part.row]) list[part.row] = true;
  };
  for (const RequestRule& rule : rules)
    if (rule.avoided) mark(request.avoided[*rule.avoided], named);
  for (std::size_t row = 0; row < rules.size(); ++row) {
    if (!holds(kept, row)) continue;
    if (rules[row].avoided) mark(request.avoided[*rules[row].avoided], banned);
    if (rules[row].key != "ruled_out") continue;
    for (std::size_t part = 0; part < banned.size(); ++part)
      if (request.banned[part] && !named[part]) banned[part] = true;
  }
  return banned;
}

}  // namespace

Conflict::Conflict(const FoldedCatalog& folded, const ChainRequest& request)
    : folded_(folded), request_(request), rules_(rules_of(folded.catalog(), request)) {
  all_ = (Set{1} << rules_.size()) - 1;
  for (std::size_t row = 0; row < rules_.size(); ++row)
    if (rules_[row].key == "order_of_needs") order_ = Set{1} << row;
}

// The needs as they are.
ChainRequest Conflict::relaxed(Set kept) const {
  ChainRequest request = request_;
  request.banned = bans_kept(request_, rules_, kept);
  request.avoided.clear();
  for (std::size_t row = 0; row < rules_.size(); ++row)
    if (!holds(kept, row) && rules_[row].give_up) rules_[row].give_up(request);
  return request;
}

ChainRequest Conflict::without(Set given_up) const {
  ChainRequest request = relaxed(all_ & ~given_up);
  request.needs.clear();
  for (std::size_t row = 0; row < rules_.size(); ++row)
    if (rules_[row].need && !holds(given_up, row)) request.needs.push_back(request_.needs[*rules_[row].need]);
  return request;
}

// A need that is given up may be met all the same, else a chain that meets more would not count for fewer.
bool Conflict::search(Set kept) const {
  ChainRequest request = relaxed(kept);
  for (std::size_t row = 0; row < rules_.size(); ++row)
    if (rules_[row].need) request.needs[*rules_[row].need].required = holds(kept, row);
  return best_chain(folded_, request).has_value();
}

// Needs in order cannot stay open: each set of those that are given up is tried as met in its place. Only those matter
// that let parts in which would otherwise stay out.
bool Conflict::search_in_order(Set kept) const {
  const Catalog& catalog = folded_.catalog();
  std::vector<Set> may_be_met;
  for (std::size_t row = 0; row < rules_.size(); ++row) {
    if (!rules_[row].need || holds(kept, row)) continue;
    const std::vector<PartId>& parts = request_.needs[*rules_[row].need].parts;
    if (std::any_of(parts.begin(), parts.end(),
                    [&](PartId part) { return !is_plain_connector(catalog, catalog.part(part)); }))
      may_be_met.push_back(Set{1} << row);
  }
  for (Set tried = 0; tried < Set{1} << may_be_met.size(); ++tried) {
    Set met = kept;
    for (std::size_t i = 0; i < may_be_met.size(); ++i)
      if (holds(tried, i)) met |= may_be_met[i];
    if (best_chain(folded_, without(all_ & ~met))) return true;
  }
  return false;
}

bool Conflict::can_keep(Set kept) {
  if (const auto found = known_.find(kept); found != known_.end()) return found->second;
  bool can = false;
  if (order_ == 0)
    can = search(kept);
  else if (kept & order_)
    can = search_in_order(kept);
  else
    can = search(kept) || can_keep(kept | order_);
  return known_[kept] = can;
}

std::optional<Set> Conflict::least_conflict() {
  if (!can_keep(0)) return std::nullopt;
  return least_set(static_cast<int>(rules_.size()), [this](Set kept) { return !can_keep(kept); });
}

Set Conflict::least_to_give_up() {
  return *least_set(static_cast<int>(rules_.size()), [this](Set given_up) { return can_keep(all_ & ~given_up); });
}

}  // namespace riserun::chain
