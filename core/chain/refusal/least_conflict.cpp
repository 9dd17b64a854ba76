#include "chain/refusal/least_conflict.h"

#include "chain/search/best_chain.h"
#include "chain/search/hitting_set.h"
#include "chain/span/best_span.h"

#include <algorithm>

namespace riserun::chain {

namespace {

RequestRule distance_rule(const Span& span) {
  const Askable& row = askable("distance");
  Facts aside;
  if (span.aside() > Length{}) aside.push_back(quantity::fact("with_axes_apart", span.aside()));
  RequestRule rule;
  rule.row = &row;
  rule.rule = rule_of(row, {span.along, std::move(aside)});
  return rule;
}

// One end is enough.
void let_the_last_end_go(const Catalog& catalog, const ChainRequest& request, RequestRule& rule) {
  rule.give_up = [](ChainRequest& r) { r.to.freedom = Freedom::loose; };
  rule.reliefs = {relief_of(*rule.row, {name_of_last(request.to), catalog.written(request.to.type)})};
}

// Of two answers that may be not known.
std::optional<bool> either(std::optional<bool> a, std::optional<bool> b) {
  if (a == true || b == true) return true;
  return a && b ? std::optional(false) : std::nullopt;
}

}  // namespace

std::vector<std::size_t> rows_of(RuleSet set) {
  std::vector<std::size_t> rows;
  for (std::size_t row = 0; row < 64; ++row)
    if (holds(set, row)) rows.push_back(row);
  return rows;
}

Conflict::Conflict(const FoldedCatalog& folded, const ChainRequest& request)
    : folded_(folded),
      request_(request),
      rules_(rules_of(folded.catalog(), request, asked_chain(folded.catalog(), request))) {
  all_ = (RuleSet{1} << rules_.size()) - 1;
  for (std::size_t row = 0; row < rules_.size(); ++row)
    if (rules_[row].code() == "order_of_needs") order_ = RuleSet{1} << row;
}

Conflict::Conflict(const FoldedCatalog& folded, const ChainRequest& request, const Span& span)
    : Conflict(folded, request) {
  span_ = span;
  for (RequestRule& rule : rules_)
    if (rule.is_freedom()) let_the_last_end_go(folded.catalog(), request, rule);
  rules_.push_back(distance_rule(span));
  distance_ = all_ + 1;
  all_ |= distance_;
}

ChainRequest Conflict::without(RuleSet given_up) const { return chain::without(request_, rules_, given_up); }

// What is proved for vacuum keeps the other rules as well, though some of it goes in unasked only where vacuum counts.
std::optional<bool> Conflict::is_made(const ChainRequest& request, RuleSet kept) {
  const auto makes = [&](const ChainRequest& asked) -> std::optional<bool> {
    if (kept & distance_) return makes_span(folded_, asked, *span_, labels_left_);
    return best_chain(folded_, asked).has_value();
  };
  const std::optional<bool> made = makes(request);
  if (made == true || request.vacuum || !request_.vacuum) return made;
  ChainRequest for_vacuum = request;
  for_vacuum.vacuum = true;
  return either(made, makes(for_vacuum));
}

// A need that is given up may be met all the same, else a chain that meets more would not count for fewer.
std::optional<bool> Conflict::search(RuleSet kept) {
  ChainRequest request = without_but_needs(request_, rules_, all_ & ~kept);
  for (std::size_t row = 0; row < rules_.size(); ++row)
    if (rules_[row].need) request.needs[*rules_[row].need].required = holds(kept, row);
  return is_made(request, kept);
}

// Needs in order cannot stay open: each set of those that are given up is tried as met in its place. Only those matter
// that let parts in which would otherwise stay out.
std::optional<bool> Conflict::search_in_order(RuleSet kept) {
  const Catalog& catalog = folded_.catalog();
  ChainRequest without_vacuum = request_;  // which is one of the rules
  without_vacuum.vacuum = false;
  std::vector<RuleSet> may_be_met;
  for (std::size_t row = 0; row < rules_.size(); ++row) {
    if (!rules_[row].need || holds(kept, row)) continue;
    const std::vector<PartId>& parts = request_.needs[*rules_[row].need].parts;
    if (std::any_of(parts.begin(), parts.end(),
                    [&](PartId part) { return !goes_in_unasked(catalog, without_vacuum, catalog.part(part)); }))
      may_be_met.push_back(RuleSet{1} << row);
  }
  std::optional<bool> made = false;
  for (RuleSet tried = 0; tried < RuleSet{1} << may_be_met.size(); ++tried) {
    RuleSet met = kept;
    for (std::size_t i = 0; i < may_be_met.size(); ++i)
      if (holds(tried, i)) met |= may_be_met[i];
    made = either(made, is_made(without(all_ & ~met), kept));
    if (made == true) break;
  }
  return made;
}

// What keeps more keeps those, and what cannot keep some of them cannot keep all.
std::optional<bool> Conflict::implied_by_known(RuleSet kept) const {
  for (const auto& [other, can] : known_) {
    if (can == true && (kept & ~other) == 0) return true;
    if (can == false && (other & ~kept) == 0) return false;
  }
  return std::nullopt;
}

std::optional<bool> Conflict::can_keep(RuleSet kept) {
  if (const auto found = known_.find(kept); found != known_.end()) return found->second;
  if (const std::optional<bool> implied = implied_by_known(kept)) return known_[kept] = implied;
  std::optional<bool> can;
  if (order_ != 0 && (kept & order_))
    can = search_in_order(kept);
  else
    can = search(kept);
  if (order_ != 0 && !(kept & order_) && can != true) can = either(can, can_keep(kept | order_));
  return known_[kept] = can;
}

std::optional<RuleSet> Conflict::least_conflict() {
  if (can_keep(0) == false) return std::nullopt;
  return least_set(static_cast<int>(rules_.size()), [this](RuleSet kept) { return can_keep(kept) == false; });
}

RuleSet Conflict::least_to_give_up() {
  return *least_set(static_cast<int>(rules_.size()),
                    [this](RuleSet given_up) { return can_keep(all_ & ~given_up).value_or(false); });
}

}  // namespace riserun::chain
