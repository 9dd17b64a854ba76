#include "chain/refusal/why_no_chain.h"

#include "chain/refusal/cheapest_purchase.h"
#include "chain/refusal/enough.h"
#include "chain/refusal/least_conflict.h"
#include "chain/refusal/missing_part.h"
#include "chain/refusal/reachability.h"
#include "chain/search/best_chain.h"
#include "chain/search/taken_chain.h"
#include "chain/span/best_span.h"

#include <algorithm>

namespace riserun::chain {

namespace {

using quantity::fact;

// Of searches for a distance, all together: a second or so. What is not known by then is no mend.
constexpr std::size_t kMostLabels = 400'000;

class WhyNoChain {
 public:
  WhyNoChain(const FoldedCatalog& folded, const ChainRequest& request, const Span* span)
      : folded_(folded), catalog_(folded.catalog()), request_(request), span_(span), conflict_(folded, request) {}

  NoChain explain();

 private:
  Fact reason(const std::vector<std::size_t>& at_odds) const;
  Fact no_run() const;
  void add_lifts(const std::vector<std::size_t>& at_odds, NoChain& answer);
  void add_special_order(NoChain& answer) const;
  bool makes_distance(const ChainRequest& request) const;
  std::optional<Lift> lift(RuleSet given_up) const;
  std::optional<Fact> need_without_part() const;
  Facts place_of(const Need& need) const;
  std::optional<Fact> duty_of_need(const Need& need) const;
  std::optional<Fact> avoided_need(const Need& need) const;
  std::optional<Fact> way_round() const;
  bool joined_without_rules() const;
  bool nothing_is_sold() const {
    return !request_.not_sold.empty() &&
           std::find(request_.not_sold.begin(), request_.not_sold.end(), false) == request_.not_sold.end();
  }
  Fact purchase(const std::vector<PartId>& parts) const;
  void add_purchase(NoChain& answer) const;
  std::optional<Fact> part_to_ask_for() const;
  bool is_sold(const MissingPart& missing) const;
  void add_missing_part(NoChain& answer) const;

  const FoldedCatalog& folded_;
  const Catalog& catalog_;
  const ChainRequest& request_;
  const Span* span_;  // nullptr: no distance is asked for
  mutable std::size_t labels_left_ = kMostLabels;
  Conflict conflict_;
};

Lift cost_of_lift(const Route& route) {
  Lift lift;
  for (const Move& move : route.moves) {
    lift.part_count += static_cast<int>(move.own.parts);
    lift.buy_count += static_cast<int>(move.own.buy);
    lift.price += Price::of_weight(move.own.cents);
  }
  return lift;
}

/// A mend is one with the distance that was asked for; where an end moves along its axis that is only a guide.
bool WhyNoChain::makes_distance(const ChainRequest& request) const {
  if (span_ == nullptr || moves_along(request.from.freedom) || moves_along(request.to.freedom)) return true;
  return makes_span(folded_, request, *span_, labels_left_).value_or(false);
}

/// What to do is that of each rule's first relief; a figure is moved only as far as it takes.
std::optional<Lift> WhyNoChain::lift(RuleSet given_up) const {
  ChainRequest request = conflict_.without(given_up);
  const std::optional<Route> best = best_chain(folded_, request);
  if (!best || !makes_distance(request)) return std::nullopt;
  const Lift least = cost_of_lift(*best);
  // Half an inch of room is not worth four parts more.
  const auto as_good = [&](const ChainRequest& tried) {
    const std::optional<Route> found = best_chain(folded_, tried);
    if (!found) return false;
    const Lift made = cost_of_lift(*found);
    return made.part_count <= least.part_count && made.price <= least.price;
  };
  Facts what;
  for (const std::size_t row : rows_of(given_up)) {
    const RequestRule& rule = conflict_.rules()[row];
    Fact& relief = what.emplace_back(rule.reliefs.front());
    const bool has_figure = span_ == nullptr;  // with a distance each search may take a second
    if (!has_figure) continue;
    if (Facts figure = move_to_enough(catalog_, request_, rule.code(), as_good, request); !figure.empty())
      relief.values[1] = std::move(figure);
  }
  Lift made = cost_of_lift(*best_chain(folded_, request));
  made.what = std::move(what);
  return made;
}

/// What keeps all of a need's parts out, where it is heat, vacuum, both or compressed air.
std::optional<Fact> WhyNoChain::duty_of_need(const Need& need) const {
  const auto admitted = [&](bool heat, bool vacuum, bool air) {
    ChainRequest request = request_;
    if (!heat) request.hottest.reset();
    request.vacuum = request.vacuum && vacuum;
    if (!air) {
      request.service = Service::water;
      request.dry = true;
    }
    const Rules rules(catalog_, request);
    return std::any_of(need.parts.begin(), need.parts.end(), [&](PartId part) {
      return rules.admits(part) && (rules.buyable(part) || request.bin.count_of(part) > 0);
    });
  };
  if (admitted(true, true, true)) return std::nullopt;
  if (request_.service == Service::water && admitted(true, true, false))
    return fact("need_is_for_air_alone", need.words);
  if (request_.hottest && admitted(false, true, true))
    return fact("need_not_proved_for_heat", need.words, *request_.hottest);
  if (admitted(true, false, true)) return fact("need_not_proved_for_vacuum", need.words);
  if (admitted(true, true, false)) return fact("need_not_proved_for_air", need.words);
  if (request_.hottest && admitted(false, false, true))
    return fact("need_not_proved_for_heat_and_vacuum", need.words, *request_.hottest);
  return std::nullopt;
}

/// All that could meet the need is avoided: by which words.
std::optional<Fact> WhyNoChain::avoided_need(const Need& need) const {
  ChainRequest allowed = request_;
  allowed.banned.clear();
  const Rules rules(catalog_, allowed);
  std::vector<PartId> wanted = need.parts;
  std::erase_if(wanted, [&](PartId part) {
    return catalog_.part(part).ports.size() < 2 || !rules.admits(part) ||
           !(rules.buyable(part) || request_.bin.count_of(part) > 0);
  });
  if (wanted.empty()) return std::nullopt;
  quantity::Texts words;
  for (const Avoidance& avoidance : request_.avoided) {
    const auto left = wanted.size();
    std::erase_if(wanted, [&](PartId part) {
      return std::find(avoidance.parts.begin(), avoidance.parts.end(), part) != avoidance.parts.end();
    });
    if (wanted.size() < left) words.push_back(avoidance.words);
  }
  if (!wanted.empty() || words.empty()) return std::nullopt;  // others are ruled out without a word
  return fact("every_need_is_avoided", need.words, std::move(words));
}

/// It would do from the other end: what lets through one way only stands against it. All rules but that look alike
/// from both ends.
std::optional<Fact> WhyNoChain::way_round() const {
  quantity::Texts one_way;
  for (const Need& need : request_.needs)
    if (std::all_of(need.parts.begin(), need.parts.end(), [&](PartId part) { return catalog_.part(part).arrow; }))
      one_way.push_back(need.words);
  if (one_way.empty()) return std::nullopt;
  ChainRequest turned = request_;
  std::swap(turned.from, turned.to);
  std::reverse(turned.needs.begin(), turned.needs.end());
  if (!best_chain(folded_, turned)) return std::nullopt;
  return fact("need_faces_the_other_way", std::move(one_way), catalog_.written(request_.from.type),
              catalog_.written(request_.to.type));
}

// A clamp goes over a hose, a foot valve stands at the end of a suction line, all else at the side of a run.
Facts WhyNoChain::place_of(const Need& need) const {
  const double line = std::min(catalog_.line_inches(request_.from.type), catalog_.line_inches(request_.to.type));
  const auto is_of_line = [&](PartId part) {
    return catalog_.line_inches(catalog_.part(part).ports.front().type) == line;
  };
  const auto found = std::find_if(need.parts.begin(), need.parts.end(), is_of_line);
  const catalog::Part& part = catalog_.part(found == need.parts.end() ? need.parts.front() : *found);
  const catalog::Role role = catalog_.family(part.family).role;
  if (role == catalog::Role::hose_clamp) return {fact("goes_over_a_hose")};
  if (role == catalog::Role::check_valve) return {fact("ends_a_suction", catalog_.written(part.ports.front().type))};
  const auto mates = catalog_.mates(part.ports.front().type);
  return mates.empty() ? Facts{} : Facts{fact("as_a_third_end", catalog_.written(mates.front().other))};
}

std::optional<Fact> WhyNoChain::need_without_part() const {
  const Rules rules(catalog_, request_);
  for (const Need& need : request_.needs) {
    const auto has_two_ports = [&](PartId part) { return catalog_.part(part).ports.size() >= 2; };
    if (std::none_of(need.parts.begin(), need.parts.end(), has_two_ports))
      return fact("need_has_one_port", need.words, place_of(need));
    const auto may_be_had = [&](PartId part) {
      return has_two_ports(part) && rules.admits(part) && (rules.buyable(part) || request_.bin.count_of(part) > 0);
    };
    if (std::any_of(need.parts.begin(), need.parts.end(), may_be_had)) continue;
    if (auto duty = duty_of_need(need)) return duty;
    if (auto avoided = avoided_need(need)) return avoided;
    return nothing_is_sold()        ? fact("no_need_in_the_bin", need.words)
           : request_.special_order ? fact("no_need_to_be_had", need.words)
                                    : fact("no_need_stocked", need.words);
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

Fact WhyNoChain::no_run() const {
  const Fact leads = asked_chain(catalog_, request_).leads;
  if (nothing_is_sold()) return fact("no_run_of_the_bin", leads);
  if (request_.special_order) return fact("no_run", leads);
  return alone_of(askable("stocked_only"), {quantity::value_of(leads)});
}

Fact WhyNoChain::reason(const std::vector<std::size_t>& at_odds) const {
  if (const auto need = need_without_part()) return *need;
  if (at_odds.empty() || !joined_without_rules()) return no_run();
  if (const auto turned = way_round()) return *turned;
  const std::vector<RequestRule>& rules = conflict_.rules();
  if (at_odds.size() > 1) {
    Facts each;
    for (const std::size_t row : at_odds) each.push_back(rules[row].rule);
    return cannot_be_kept(std::move(each));
  }
  const RequestRule& first = rules[at_odds.front()];
  if (first.is_freedom() && request_.needs.empty() && catalog_.mating_rule(request_.from.type, request_.to.type))
    return fact("would_go_straight_but", catalog_.written(request_.from.type), catalog_.written(request_.to.type),
                first.alone);
  return first.alone;
}

void WhyNoChain::add_special_order(NoChain& answer) const {
  answer.special_order = completing_special_order(folded_, request_);
  if (!answer.special_order) return;
  ChainRequest ordered = request_;
  ordered.special_order = true;
  if (!makes_distance(ordered)) return answer.special_order.reset();
  GraphExtras extras;
  extras.special_order_is_wish = true;
  Lift lift = cost_of_lift(*best_chain(folded_, request_, extras));
  lift.by = Lift::By::part;
  lift.what = {fact("order_the_part", catalog_.part(*answer.special_order).name)};
  answer.lifts.push_back(std::move(lift));
}

// Only a rule of the conflict can mend it by itself: every conflict must lose one of its rules.
void WhyNoChain::add_lifts(const std::vector<std::size_t>& at_odds, NoChain& answer) {
  const std::vector<RequestRule>& rules = conflict_.rules();
  for (const std::size_t row : at_odds) {
    if (rules[row].code() == "stocked_only" && answer.special_order) continue;
    if (rules[row].code() == "bin_only" && !answer.to_buy.empty()) continue;
    const std::optional<Lift> made = lift(RuleSet{1} << row);
    if (!made) continue;
    const Facts& reliefs = rules[row].reliefs;
    for (std::size_t way = 0; way < reliefs.size(); ++way) {
      Lift& lifted = answer.lifts.emplace_back(*made);
      lifted.by = rules[row].is_freedom() ? Lift::By::freedom : Lift::By::rule;
      if (way > 0) lifted.what = {reliefs[way]};
    }
  }
  if (!answer.lifts.empty() || at_odds.empty()) return;
  const RuleSet least = conflict_.least_to_give_up();
  std::optional<Lift> made = lift(least);
  if (!made) return;
  made->by = Lift::By::several_rules;
  answer.lifts.push_back(std::move(*made));
}

Fact WhyNoChain::purchase(const std::vector<PartId>& parts) const {
  Facts each;
  Price price;
  for (const PartId id : parts) {
    const catalog::Part& part = catalog_.part(id);
    each.push_back(fact("the_part_of", part.name, catalog_.material(part.material).name));
    price = price + part.price;
  }
  return fact("buy_parts", each, price);
}

void WhyNoChain::add_purchase(NoChain& answer) const {
  answer.to_buy = cheapest_purchase(folded_, request_);
  if (answer.to_buy.empty()) return;
  ChainRequest bought = request_;
  Lift lift;
  for (const PartId part : answer.to_buy) {
    bought.bin.add(part);
    lift.price = lift.price + catalog_.part(part).price;
  }
  if (const auto route = best_chain(folded_, bought)) lift.part_count = static_cast<int>(part_count(route->moves));
  lift.by = Lift::By::part;
  lift.buy_count = static_cast<int>(answer.to_buy.size());
  lift.what = {purchase(answer.to_buy)};
  answer.lifts.push_back(std::move(lift));
}

/// An end that nothing but devices mates, as an air plug its coupler: they come into a run only where they are asked
/// for, and one of them is sold.
std::optional<Fact> WhyNoChain::part_to_ask_for() const {
  for (const bool at_from : {true, false}) {
    Need need;
    for (const catalog::Mate& mate : catalog_.mates((at_from ? request_.from : request_.to).type))
      for (const catalog::PortUse& use : catalog_.uses(mate.other)) need.parts.push_back(use.part);
    const auto is_device = [&](PartId part) {
      return catalog_.family(catalog_.part(part).family).role == catalog::Role::device &&
             catalog_.part(part).ports.size() == 2;
    };
    if (need.parts.empty() || !std::all_of(need.parts.begin(), need.parts.end(), is_device)) continue;
    need.words = catalog_.family(catalog_.part(need.parts.front()).family).name;
    ChainRequest asked = request_;
    asked.needs.insert(at_from ? asked.needs.begin() : asked.needs.end(), need);
    if (best_chain(folded_, asked)) return fact("part_to_ask_for", need.words);
  }
  return std::nullopt;
}

/// A part with these two ends is in the catalog: it is not missing, but kept out, which the reason tells.
bool WhyNoChain::is_sold(const MissingPart& missing) const {
  const auto has_both = [&](const catalog::PortUse& use) {
    const std::vector<catalog::Port>& ports = catalog_.part(use.part).ports;
    return ports.size() == 2 && ports[1 - use.port].type == missing.leave;
  };
  const auto uses = catalog_.uses(missing.enter);
  return !missing.closing && std::any_of(uses.begin(), uses.end(), has_both);
}

void WhyNoChain::add_missing_part(NoChain& answer) const {
  if ((answer.missing_part = part_to_ask_for())) return;
  const auto missing = missing_part(folded_, request_);
  if (!missing || is_sold(*missing)) return;
  const std::string enter = catalog_.written(missing->enter);
  const std::string leave = catalog_.written(missing->leave);
  answer.missing_part = missing->closing ? fact("union_between", enter, leave) : fact("adapter_between", enter, leave);
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
  for (const std::size_t row : at_odds) answer.conflict.push_back(conflict_.rules()[row].rule);
  answer.reason = reason(at_odds);
  if (nothing_is_sold())
    add_purchase(answer);
  else
    add_special_order(answer);
  if (answer.to_buy.empty()) add_missing_part(answer);
  add_lifts(at_odds, answer);
  for (const Lift& lift : answer.lifts)
    answer.mends.push_back(lift.what.size() == 1 ? lift.what.front() : fact("all_of_these", lift.what));
  return answer;
}

}  // namespace

NoChain why_not_taken(Fact reason) {
  NoChain none;
  none.reason = fact("taken_cannot_be_made", std::move(reason));
  none.mends.push_back(fact("leave_take_out"));
  return none;
}

NoChain why_no_chain(const FoldedCatalog& folded, const ChainRequest& request, const Span* span) {
  if (request.taken) return why_not_taken(std::get<NotTaken>(taken_chain(folded, request)).reason);
  return WhyNoChain(folded, request, span).explain();
}

}  // namespace riserun::chain
