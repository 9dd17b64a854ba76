#include "chain/search/taken_chain.h"

#include "chain/part/head.h"
#include "chain/part/run_ends.h"
#include "chain/rules/rules.h"
#include "chain/search/yardstick.h"

#include <algorithm>

namespace riserun::chain {

namespace {

using catalog::MatingRule;
using catalog::Part;
using quantity::Fact;
using quantity::fact;

/// A part of the run with the plugs that stand behind it.
struct TakenLink {
  TakenPart taken;
  std::vector<PartId> plugs;
};

/// The run up to an open end.
struct TakenSoFar {
  PortTypeId open;
  MaterialId material;
  std::int64_t bore = 0;
  bool no_grip = false;
  Bow bow = Bow::none;
  bool closed = false;
  Cost cost;
  std::vector<Move> moves;
};

class TakenRun {
 public:
  TakenRun(const FoldedCatalog& folded, const ChainRequest& request)
      : folded_(folded),
        catalog_(folded.catalog()),
        rules_(catalog_, request),
        request_(request),
        ends_(run_ends(catalog_, request)),
        bin_(request.bin) {}

  std::variant<Route, NotTaken> walk() {
    if (!read_links()) return NotTaken{reason_};
    std::vector<TakenSoFar> begun{{request_.from.type,
                                   request_.from.material.value_or(MaterialId{}),
                                   0,
                                   false,
                                   Bow::none,
                                   rules_.closing() == Closing::none,
                                   {},
                                   {}}};
    for (const TakenLink& link : links_)
      if (!let_in(link) || !follow(link, begun)) return NotTaken{reason_};
    if (!counts_are_kept()) return NotTaken{reason_};
    return finish(std::move(begun));
  }

 private:
  Fact name(PartId part) const {
    return fact("part_of_material", catalog_.part(part).name, catalog_.material(catalog_.part(part).material).name);
  }
  bool refuse(Fact reason) {
    reason_ = std::move(reason);
    return false;
  }

  bool read_links();
  bool let_in(const TakenLink& link);
  bool admits(PartId part);
  bool pay(PartId part, Measures& own);
  bool follow(const TakenLink& link, std::vector<TakenSoFar>& begun);
  Fact why_none_follows(const TakenLink& link, const std::vector<TakenSoFar>& begun) const;
  std::optional<TakenSoFar> joined(const TakenSoFar& begun, Move move) const;
  bool plugs_fit(const Part& host, const TakenLink& link, std::size_t enter, std::size_t leave) const;
  bool counts_are_kept();
  std::variant<Route, NotTaken> finish(std::vector<TakenSoFar> begun);
  Fact why_unmet() const;

  const FoldedCatalog& folded_;
  const Catalog& catalog_;
  const Rules rules_;
  const ChainRequest& request_;
  const RunEnds ends_;
  catalog::Bin bin_;  // what is left of it
  std::vector<TakenLink> links_;
  Measures own_;  // of the link that is let in, plugs included
  std::uint8_t met_ = 0;
  Fact reason_;
};

bool TakenRun::read_links() {
  for (const TakenPart& taken : *request_.taken) {
    if (catalog_.part(taken.part).ports.size() > 1) {
      links_.push_back({taken, {}});
    } else {
      if (links_.empty()) return refuse(fact("taken_plugs_nothing", name(taken.part)));
      links_.back().plugs.push_back(taken.part);
    }
  }
  for (const TakenLink& link : links_) {
    const std::size_t spare = catalog_.part(link.taken.part).ports.size() - 2;
    if (link.plugs.size() != spare)
      return refuse(fact("taken_wants_other_plugs", name(link.taken.part), spare, link.plugs.size()));
  }
  return true;
}

bool TakenRun::admits(PartId part) {
  if (rules_.admits(part)) return true;
  for (const Avoidance& avoided : request_.avoided)
    if (std::find(avoided.parts.begin(), avoided.parts.end(), part) != avoided.parts.end())
      return refuse(fact("taken_is_avoided", name(part), avoided.words));
  if (part.row < request_.banned.size() && request_.banned[part.row])
    return refuse(fact("taken_is_ruled_out", name(part)));
  return refuse(fact("taken_is_not_proved", name(part)));
}

bool TakenRun::pay(PartId part, Measures& own) {
  own.parts += 1;
  for (catalog::BinItem& item : bin_.items) {
    if (item.part != part || item.count <= 0) continue;
    --item.count;
    return true;
  }
  own.buy += 1;
  own.cents += catalog_.part(part).price.weight();
  return rules_.buyable(part) || refuse(fact("taken_is_not_stocked", name(part)));
}

/// What does not depend on the ways through.
bool TakenRun::let_in(const TakenLink& link) {
  const PartId id = link.taken.part;
  own_ = {};
  if (!admits(id) || !pay(id, own_)) return false;
  const std::uint8_t met = rules_.advance(met_, rules_.groups_of(id));
  if (met == met_ && !goes_in_unasked(catalog_, request_, catalog_.part(id)))
    return refuse(fact("taken_is_not_asked_for", name(id)));
  met_ = met;
  for (const PartId plug : link.plugs) {
    if (catalog_.family(catalog_.part(plug).family).role != catalog::Role::plug)
      return refuse(fact("taken_is_no_plug", name(plug)));
    if (!admits(plug) || !pay(plug, own_)) return false;
    add_plugging(catalog_, ends_, catalog_.part(plug).ports[0].type, own_);
  }
  return true;
}

bool TakenRun::plugs_fit(const Part& host, const TakenLink& link, std::size_t enter, std::size_t leave) const {
  std::size_t next = 0;
  for (std::size_t port = 0; port < host.ports.size(); ++port) {
    if (port == enter || port == leave) continue;
    const Part& plug = catalog_.part(link.plugs[next++]);
    if (catalog_.mating_rule(host.ports[port].type, plug.ports[0].type) == nullptr) return false;
    if (!rules_.may_meet(plug.material, host.material_at(port))) return false;
  }
  return true;
}

std::optional<TakenSoFar> TakenRun::joined(const TakenSoFar& begun, Move move) const {
  const MatingRule* rule = catalog_.mating_rule(begun.open, move.enter_type);
  if (rule == nullptr || !rules_.may_meet(begun.material, move.enter_material)) return std::nullopt;
  if ((begun.no_grip || move.no_grip) && rule->turning == catalog::Turning::neither) return std::nullopt;
  Measures measures = move.own;
  measures.micrometres += folded_.insertion_micrometres(begun.open) -
                          in_micrometres(make_up(catalog_, begun.open, move.enter_type, *rule)) -
                          folded_.insertion_micrometres(move.leave_type);
  add_passing(catalog_, ends_, move.enter_type, measures);
  if (!begun.moves.empty()) add_inner_joint(catalog_, ends_, move.enter_type, measures);
  add_passing(catalog_, ends_, move.leave_type, measures);
  if (request_.order == Order::loss && begun.bore > 0)
    measures.nanometres += change_of_bore_head(begun.bore, move.enter_bore, request_.flow);
  TakenSoFar next{move.leave_type,
                  move.leave_material,
                  move.leave_bore,
                  move.no_grip,
                  move.bow,
                  begun.closed || move.closes || rules_.joint_closes(*rule, begun.bow, move.bow),
                  begun.cost + cost_of(request_.order, measures),
                  begun.moves};
  next.moves.push_back(std::move(move));
  return next;
}

bool taken_goes_first(const TakenSoFar& a, const TakenSoFar& b) {
  if (a.cost != b.cost) return a.cost < b.cost;
  return std::lexicographical_compare(
      a.moves.begin(), a.moves.end(), b.moves.begin(), b.moves.end(),
      [](const Move& x, const Move& y) { return std::pair(x.enter, x.leave) < std::pair(y.enter, y.leave); });
}

bool TakenRun::follow(const TakenLink& link, std::vector<TakenSoFar>& begun) {
  const PartId id = link.taken.part;
  const Part& part = catalog_.part(id);
  std::vector<TakenSoFar> longer;
  for (std::size_t enter = 0; enter < part.ports.size(); ++enter) {
    for (std::size_t leave = 0; leave < part.ports.size(); ++leave) {
      const TakenPart::Through way{static_cast<std::uint8_t>(enter), static_cast<std::uint8_t>(leave)};
      if (enter == leave || link.taken.through.value_or(way) != way) continue;
      if (!rules_.admits_way(part, enter, leave) || !plugs_fit(part, link, enter, leave)) continue;
      Move move = bought_move(catalog_, request_, id, enter, leave);
      move.own.parts = move.own.cents = move.own.buy = 0;
      move.own += own_;
      move.groups = rules_.groups_of(id);
      move.plugs = link.plugs;
      if (request_.order == Order::loss) move.own.nanometres = own_head(catalog_, move, request_.flow);
      for (const TakenSoFar& before : begun) {
        std::optional<TakenSoFar> next = joined(before, move);
        if (!next) continue;
        const auto alike = std::find_if(longer.begin(), longer.end(), [&](const TakenSoFar& other) {
          return other.moves.back().leave == leave && other.closed == next->closed;
        });
        if (alike == longer.end())
          longer.push_back(std::move(*next));
        else if (taken_goes_first(*next, *alike))
          *alike = std::move(*next);
      }
    }
  }
  if (longer.empty()) return refuse(why_none_follows(link, begun));
  begun = std::move(longer);
  return true;
}

/// The first rule, from the coarse to the fine, that no way through the part keeps.
Fact TakenRun::why_none_follows(const TakenLink& link, const std::vector<TakenSoFar>& begun) const {
  const PartId id = link.taken.part;
  const Part& part = catalog_.part(id);
  const auto any = [&](auto keeps) {
    for (std::uint8_t enter = 0; enter < part.ports.size(); ++enter)
      for (std::uint8_t leave = 0; leave < part.ports.size(); ++leave)
        if (enter != leave && keeps(TakenPart::Through{enter, leave})) return true;
    return false;
  };
  const Fact before = begun.front().moves.empty() ? fact("end_named", name_of_first(request_.from))
                                                  : fact("the_thing", name(begun.front().moves.back().part));
  const auto mates = [&](const TakenPart::Through& way) {
    return std::any_of(begun.begin(), begun.end(), [&](const TakenSoFar& one) {
      return catalog_.mating_rule(one.open, part.ports[way.enter].type) != nullptr;
    });
  };
  if (!any(mates)) return fact("taken_does_not_go_onto", fact("the_thing", name(id)), before);
  if (!any([&](const TakenPart::Through& way) { return plugs_fit(part, link, way.enter, way.leave); }))
    return fact("taken_plugs_do_not_fit", name(id));
  if (!any([&](const TakenPart::Through& way) { return mates(way) && rules_.admits_way(part, way.enter, way.leave); }))
    return fact("taken_way_is_not_let_in", name(id));
  return fact("taken_joint_cannot_be_made", fact("the_thing", name(id)), before);
}

bool TakenRun::counts_are_kept() {
  int parts = 0;
  int bushings = 0;
  for (const TakenLink& link : links_) {
    parts += 1 + static_cast<int>(link.plugs.size());
    bushings += is_bushing(catalog_, catalog_.part(link.taken.part)) ? 1 : 0;
  }
  if (request_.most_parts && parts > *request_.most_parts)
    return refuse(fact("taken_has_too_many_parts", parts, *request_.most_parts));
  if (request_.most_bushings && bushings > *request_.most_bushings)
    return refuse(fact("taken_has_too_many_bushings", bushings, *request_.most_bushings));
  if (!rules_.satisfied(met_)) return refuse(why_unmet());
  return true;
}

Fact TakenRun::why_unmet() const {
  for (const Need& need : request_.needs) {
    const bool held = std::any_of(links_.begin(), links_.end(), [&](const TakenLink& link) {
      return std::find(need.parts.begin(), need.parts.end(), link.taken.part) != need.parts.end();
    });
    if (need.required && !held) return fact("taken_lacks", need.words);
  }
  return fact("taken_lacks_needs_or_their_order");
}

std::variant<Route, NotTaken> TakenRun::finish(std::vector<TakenSoFar> begun) {
  const Fact last = links_.empty() ? fact("end_named", name_of_first(request_.from))
                                   : fact("the_thing", name(links_.back().taken.part));
  std::optional<TakenSoFar> best;
  bool mates = false;
  bool joins = false;
  for (TakenSoFar& one : begun) {
    const MatingRule* rule = catalog_.mating_rule(one.open, request_.to.type);
    if (rule == nullptr) continue;
    mates = true;
    if (!rules_.may_meet(one.material, request_.to.material.value_or(MaterialId{}))) continue;
    if (one.no_grip && rule->turning == catalog::Turning::neither) continue;
    joins = true;
    if (!one.closed && !rules_.joint_closes(*rule, one.bow, Bow::none)) continue;
    Measures measures;
    measures.micrometres = folded_.insertion_micrometres(one.open) + folded_.insertion_micrometres(request_.to.type) -
                           in_micrometres(make_up(catalog_, one.open, request_.to.type, *rule));
    one.cost = one.cost + cost_of(request_.order, measures);
    if (!best || taken_goes_first(one, *best)) best = std::move(one);
  }
  if (best) {
    const Rest rest = rest_of(catalog_, request_.order, end_metals(catalog_, request_), best->moves);
    return Route{std::move(best->moves), best->cost, rest};
  }
  if (!mates) return NotTaken{fact("taken_does_not_go_onto", last, fact("end_named", name_of_last(request_.to)))};
  if (!joins) return NotTaken{fact("taken_joint_cannot_be_made", last, fact("end_named", name_of_last(request_.to)))};
  return NotTaken{fact("taken_closes_nowhere")};
}

}  // namespace

std::variant<Route, NotTaken> taken_chain(const FoldedCatalog& folded, const ChainRequest& request) {
  return TakenRun(folded, request).walk();
}

}  // namespace riserun::chain
