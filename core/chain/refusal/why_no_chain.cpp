#include "chain/refusal/why_no_chain.h"

#include "chain/refusal/cheapest_purchase.h"
#include "chain/refusal/least_conflict.h"
#include "chain/refusal/missing_part.h"
#include "chain/refusal/reachability.h"
#include "chain/search/best_chain.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::chain {

namespace {

class WhyNoChain {
 public:
  WhyNoChain(const FoldedCatalog& folded, const ChainRequest& request)
      : folded_(folded), catalog_(folded.catalog()), request_(request), conflict_(folded, request) {}

  NoChain explain();

 private:
  std::string reason(const std::vector<std::size_t>& at_odds) const;
  void add_lifts(const std::vector<std::size_t>& at_odds, NoChain& answer);
  void add_special_order(NoChain& answer) const;
  std::optional<Lift> lift(std::uint64_t given_up) const;
  std::optional<std::string> need_without_part() const;
  bool joined_without_rules() const;
  bool nothing_is_sold() const {
    return !request_.not_sold.empty() &&
           std::find(request_.not_sold.begin(), request_.not_sold.end(), false) == request_.not_sold.end();
  }
  std::string purchase(const std::vector<PartId>& parts) const;
  void add_purchase(NoChain& answer) const;

  const FoldedCatalog& folded_;
  const Catalog& catalog_;
  const ChainRequest& request_;
  Conflict conflict_;
};

// "these two cannot both be kept: 1-1/2 in bore everywhere; no more than 2 parts"
std::string sentence(const std::vector<RequestRule>& rules, const std::vector<std::size_t>& at_odds) {
  std::vector<std::string> texts;
  for (const std::size_t row : at_odds) texts.push_back(rules[row].text);
  return conflict_sentence(texts);
}

std::vector<std::size_t> rows_of(std::uint64_t set) {
  std::vector<std::size_t> rows;
  for (std::size_t row = 0; row < 64; ++row)
    if (set >> row & 1u) rows.push_back(row);
  return rows;
}

Lift cost_of_lift(const Route& route) {
  Lift lift;
  for (const Move& move : route.moves) {
    lift.part_count += static_cast<int>(move.own.parts);
    lift.buy_count += static_cast<int>(move.own.buy);
    lift.price = lift.price + cents(move.own.cents);
  }
  return lift;
}

std::optional<Lift> WhyNoChain::lift(std::uint64_t given_up) const {
  const std::optional<Route> route = best_chain(folded_, conflict_.without(given_up));
  return route ? std::optional(cost_of_lift(*route)) : std::nullopt;
}

std::optional<std::string> WhyNoChain::need_without_part() const {
  const Rules rules(catalog_, request_);
  for (const Need& need : request_.needs) {
    const auto has_two_ports = [&](PartId part) { return catalog_.part(part).ports.size() >= 2; };
    if (std::none_of(need.parts.begin(), need.parts.end(), has_two_ports))
      return fmt::format("a {} has one port only and cannot stand in a chain", need.words);
    const auto may_be_had = [&](PartId part) {
      return has_two_ports(part) && rules.admits(part) && (rules.buyable(part) || request_.bin.count_of(part) > 0);
    };
    if (std::none_of(need.parts.begin(), need.parts.end(), may_be_had))
      return fmt::format("no {} is {} that the other rules allow", need.words,
                         nothing_is_sold() ? "in the bin" : "stocked");
  }
  return std::nullopt;
}

bool WhyNoChain::joined_without_rules() const {
  ChainRequest bare;
  bare.from = {request_.from.type, {}, Freedom::loose};
  bare.to = {request_.to.type, {}, Freedom::loose};
  bare.special_order = request_.special_order;
  bare.bin = request_.bin;
  bare.not_sold = request_.not_sold;
  return best_chain(folded_, bare).has_value();
}

std::string WhyNoChain::reason(const std::vector<std::size_t>& at_odds) const {
  const std::string from = catalog_.written(request_.from.type);
  const std::string to = catalog_.written(request_.to.type);
  if (const auto need = need_without_part()) return *need;
  if (at_odds.empty() || !joined_without_rules())
    return fmt::format("no run of {}parts {}leads from {} to {}",
                       request_.special_order || nothing_is_sold() ? "" : "stocked ",
                       nothing_is_sold() ? "in the bin " : "", from, to);
  const RequestRule& first = conflict_.rules()[at_odds.front()];
  if (at_odds.size() > 1) return sentence(conflict_.rules(), at_odds);
  if (first.key == "held_ends" && request_.needs.empty() && catalog_.mating_rule(request_.from.type, request_.to.type))
    return fmt::format("{} and {} would go straight together, but {}", from, to, first.alone);
  return first.alone;
}

void WhyNoChain::add_special_order(NoChain& answer) const {
  answer.special_order = completing_special_order(folded_, request_);
  if (!answer.special_order) return;
  GraphExtras extras;
  extras.special_order_is_wish = true;
  Lift lift = cost_of_lift(*best_chain(folded_, request_, extras));
  lift.by = Lift::By::part;
  lift.text = fmt::format("order the {}", catalog_.part(*answer.special_order).name);
  answer.lifts.push_back(std::move(lift));
}

// Only a rule of the conflict can mend it by itself: every conflict must lose one of its rules.
void WhyNoChain::add_lifts(const std::vector<std::size_t>& at_odds, NoChain& answer) {
  const std::vector<RequestRule>& rules = conflict_.rules();
  for (const std::size_t row : at_odds) {
    if (rules[row].key == "stocked_only" && answer.special_order) continue;
    if (rules[row].key == "bin_only" && !answer.to_buy.empty()) continue;
    const std::optional<Lift> made = lift(std::uint64_t{1} << row);
    if (!made) continue;
    for (const std::string& mend : rules[row].mends) {
      Lift& lifted = answer.lifts.emplace_back(*made);
      lifted.by = rules[row].freedom ? Lift::By::freedom : Lift::By::rule;
      lifted.text = mend;
    }
  }
  if (!answer.lifts.empty() || at_odds.empty()) return;
  const std::uint64_t least = conflict_.least_to_give_up();
  std::optional<Lift> made = lift(least);
  if (!made) return;
  made->by = Lift::By::several_rules;
  for (const std::size_t row : rows_of(least)) {
    if (!made->text.empty()) made->text += ", and ";
    made->text += rules[row].mends.front();
  }
  answer.lifts.push_back(std::move(*made));
}

std::string WhyNoChain::purchase(const std::vector<PartId>& parts) const {
  std::string text;
  Price price;
  for (const PartId id : parts) {
    const catalog::Part& part = catalog_.part(id);
    text += fmt::format("{} {} ({})", text.empty() ? "buy the" : " and the", part.name,
                        catalog_.material(part.material).name);
    price = price + part.price;
  }
  return fmt::format("{}, about ${:.2f}", text, in_dollars(price));
}

void WhyNoChain::add_purchase(NoChain& answer) const {
  answer.to_buy = cheapest_purchase(folded_, request_);
  if (answer.to_buy.empty()) return;
  ChainRequest bought = request_;
  Lift lift;
  for (const PartId part : answer.to_buy) {
    const auto item =
        std::find_if(bought.bin.items.begin(), bought.bin.items.end(), [&](const auto& i) { return i.part == part; });
    if (item == bought.bin.items.end())
      bought.bin.items.push_back({part, 1});
    else
      item->count = std::max(item->count, 0) + 1;
    lift.price = lift.price + catalog_.part(part).price;
  }
  if (const auto route = best_chain(folded_, bought)) lift.part_count = static_cast<int>(part_count(route->moves));
  lift.by = Lift::By::part;
  lift.buy_count = static_cast<int>(answer.to_buy.size());
  lift.text = purchase(answer.to_buy);
  answer.lifts.push_back(std::move(lift));
}

NoChain WhyNoChain::explain() {
  NoChain answer;
  const Rules rules(catalog_, request_);
  GraphExtras extras;
  extras.counted.assign(request_.bin.items.size(), false);
  const PortGraph graph(folded_, rules, extras);
  answer.reachable_from = reachable_from(rules, graph);
  answer.reachable_to = reachable_to(rules, graph);
  // Where parts do lead across, only the two ends themselves can be mistaken for mates.
  if (joined_without_rules())
    answer.look_alikes = look_alike_traps(catalog_, request_, {}, {});
  else
    answer.look_alikes = look_alike_traps(catalog_, request_, answer.reachable_from, answer.reachable_to);
  const std::vector<std::size_t> at_odds = rows_of(conflict_.least_conflict().value_or(0));
  for (const std::size_t row : at_odds)
    answer.conflict.push_back({conflict_.rules()[row].key, conflict_.rules()[row].text});
  answer.reason = reason(at_odds);
  if (nothing_is_sold())
    add_purchase(answer);
  else
    add_special_order(answer);
  if (answer.to_buy.empty())
    if (const auto missing = missing_part(folded_, request_)) answer.missing_part = missing->name;
  add_lifts(at_odds, answer);
  for (const Lift& lift : answer.lifts) answer.mends.push_back(lift.text);
  return answer;
}

}  // namespace

NoChain why_no_chain(const FoldedCatalog& folded, const ChainRequest& request) {
  return WhyNoChain(folded, request).explain();
}

}  // namespace riserun::chain
