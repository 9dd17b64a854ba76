#include "chain/answers/valve_side.h"

#include "chain/build/assemble.h"
#include "chain/build/span_run.h"
#include "chain/part/move.h"
#include "chain/search/best_chain.h"
#include "chain/search/tie_key.h"
#include "chain/span/best_span.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace riserun::chain {

using quantity::fact;

namespace {

bool is_valve(const Catalog& catalog, PartId id) {
  const catalog::Part& part = catalog.part(id);
  return catalog.family(part.family).can_shut && !part.one_way && !part.closing;
}

bool holds(const std::vector<PartId>& parts, PartId part) {
  return std::find(parts.begin(), parts.end(), part) != parts.end();
}

/// A union, or what comes off at both its ends without turning: a hose.
bool opens(const Catalog& catalog, PartId id) {
  const catalog::Part& part = catalog.part(id);
  return part.closing || std::all_of(part.ports.begin(), part.ports.end(), [&](const catalog::Port& port) {
           const std::span<const catalog::Mate> mates = catalog.mates(port.type);
           return !mates.empty() && std::all_of(mates.begin(), mates.end(), [&](const catalog::Mate& mate) {
             return catalog.mating_rules()[mate.rule].closing;
           });
         });
}

/// A valve that comes off at both its ends leaves nothing that could shut.
bool is_opening_need(const Catalog& catalog, const Need& need) {
  return std::all_of(need.parts.begin(), need.parts.end(),
                     [&](PartId part) { return opens(catalog, part) && !is_valve(catalog, part); });
}

/// Stands in any run unasked.
bool is_usual_fitting(const Catalog& catalog, const catalog::Part& part) {
  return is_plain_connector(catalog, part) && !catalog.family(part.family).for_vacuum;
}

/// Unions that stand in a run unasked.
Need any_union(const Catalog& catalog) {
  Need need{"union", {}};
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row)
    if (const catalog::Part& part = catalog.part({row}); part.closing && is_usual_fitting(catalog, part))
      need.parts.push_back({row});
  return need;
}

/// Where a part meets two unlike needs, needs in turn are not the same as needs in no order.
bool needs_overlap(const std::vector<Need>& needs) {
  for (const Need& a : needs) {
    for (const Need& b : needs) {
      const auto in_b =
          std::count_if(a.parts.begin(), a.parts.end(), [&](PartId part) { return holds(b.parts, part); });
      if (in_b > 0 && !std::is_permutation(a.parts.begin(), a.parts.end(), b.parts.begin(), b.parts.end())) return true;
    }
  }
  return false;
}

/// Where a fitting or a device may meet a need, a device stands in a run only if no fitting met it before.
bool is_met_by_fittings_and_devices(const Catalog& catalog, const Need& need) {
  const auto fittings = std::count_if(need.parts.begin(), need.parts.end(),
                                      [&](PartId part) { return is_usual_fitting(catalog, catalog.part(part)); });
  return fittings > 0 && static_cast<std::size_t>(fittings) < need.parts.size();
}

/// The first of the needs that opens and may stand beyond a valve.
const Need* asked_opening(const Catalog& catalog, const ChainRequest& request, ReservoirEnd end) {
  const std::vector<std::size_t> valves = valve_needs(catalog, request);
  const auto may_stand_beyond = [&](std::size_t row) {
    return !request.needs_in_order || std::any_of(valves.begin(), valves.end(), [&](std::size_t valve) {
      return end == ReservoirEnd::first ? valve < row : row < valve;
    });
  };
  for (std::size_t row = 0; row < request.needs.size(); ++row)
    if (is_opening_need(catalog, request.needs[row]) && may_stand_beyond(row)) return &request.needs[row];
  return nullptr;
}

/// The request with the need for a union at its end, where nothing is asked for that may open beyond a valve.
ChainRequest with_opening(const Catalog& catalog, ChainRequest request, ReservoirEnd end) {
  if (!asked_opening(catalog, request, end)) request.needs.push_back(any_union(catalog));
  return request;
}

/// Needs in one order after the other, so that the reservoir's end comes first where it is the first port.
class NeedOrders {
 public:
  NeedOrders(const Catalog& catalog, const ChainRequest& request, ReservoirEnd end) : request_(request), end_(end) {
    valves_ = valve_needs(catalog, request);
    for (std::size_t row = 0; row < request.needs.size(); ++row)
      if (is_opening_need(catalog, request.needs[row])) openings_.push_back(row);
    order_.resize(request.needs.size());
    std::iota(order_.begin(), order_.end(), std::size_t{0});
  }

  bool next() { return std::next_permutation(order_.begin(), order_.end()); }

  /// Something that opens comes beyond some valve, and needs that were in order still are.
  bool fits() const {
    const auto place = [&](std::size_t need) { return std::find(order_.begin(), order_.end(), need); };
    const bool was_in_order = request_.needs_in_order;
    const std::size_t given = was_in_order ? request_.needs.size() : 0;
    for (std::size_t need = 1; need < given; ++need)
      if (!is_added(need) && place(need) < place(need - 1)) return false;
    for (const std::size_t valve : valves_)
      for (const std::size_t far : openings_)
        if (end_ == ReservoirEnd::first ? place(valve) < place(far) : place(far) < place(valve)) return true;
    return false;
  }

  ChainRequest request() const {
    ChainRequest made = request_;
    made.needs_in_order = true;
    for (std::size_t row = 0; row < order_.size(); ++row) made.needs[row] = request_.needs[order_[row]];
    return made;
  }

  void last_was_added() { added_ = request_.needs.size() - 1; }

 private:
  bool is_added(std::size_t need) const { return added_ == need; }

  const ChainRequest& request_;
  ReservoirEnd end_;
  std::vector<std::size_t> valves_;
  std::vector<std::size_t> openings_;
  std::vector<std::size_t> order_;
  std::optional<std::size_t> added_;
};

/// Ties end as those of a search do: at the ids, then at the ports.
bool better(const FoldedCatalog& folded, const Route& a, const Route& b) {
  if (a.cost != b.cost) return a.cost < b.cost;
  return a.rest != b.rest ? a.rest < b.rest : tie_key(folded, a.moves) < tie_key(folded, b.moves);
}

}  // namespace

std::vector<std::size_t> valve_needs(const Catalog& catalog, const ChainRequest& request) {
  std::vector<std::size_t> rows;
  for (std::size_t row = 0; row < request.needs.size(); ++row) {
    const Need& need = request.needs[row];
    if (need.required &&
        std::all_of(need.parts.begin(), need.parts.end(), [&](PartId p) { return is_valve(catalog, p); }))
      rows.push_back(row);
  }
  return rows;
}

namespace {

/// What is met one after the other along a chain: a valve, or a place where it opens.
struct Met {
  std::optional<PartId> valve;
  quantity::Fact opening;
};

std::vector<Met> along(const Catalog& catalog, const ChainRequest& request, const Chain& chain) {
  const std::vector<std::size_t> valves = valve_needs(catalog, request);
  const auto name = [&](std::size_t body) {
    if (body == 0) return fact("end", name_of_first(request.from));
    if (body > chain.parts.size()) return fact("end", name_of_last(request.to));
    return fact("the_part", catalog.part(chain.parts[body - 1].part).name);
  };
  std::vector<Met> met;
  for (std::size_t joint = 0; joint < chain.joints.size(); ++joint) {
    if (catalog.mating_rules()[chain.joints[joint].rule].closing)
      met.push_back({std::nullopt, fact("joint_of", name(joint), name(joint + 1))});
    if (joint == chain.parts.size()) break;
    const PartId part = chain.parts[joint].part;
    if (catalog.part(part).closing) met.push_back({std::nullopt, fact("name", catalog.part(part).name)});
    if (std::any_of(valves.begin(), valves.end(),
                    [&](std::size_t row) { return holds(request.needs[row].parts, part); }))
      met.push_back({part, {}});
  }
  return met;
}

}  // namespace

std::optional<ValveAndOpening> valve_that_comes_off(const Catalog& catalog, const ChainRequest& request,
                                                    const Chain& chain, ReservoirEnd end) {
  std::vector<Met> from_reservoir = along(catalog, request, chain);
  if (end == ReservoirEnd::last) std::reverse(from_reservoir.begin(), from_reservoir.end());
  ValveAndOpening found;
  for (const Met& met : from_reservoir) {
    if (met.valve) {
      found.valve = *met.valve;
    } else if (found.valve.valid()) {
      return std::nullopt;
    } else {
      found.opening = met.opening;
    }
  }
  if (!found.valve.valid() || found.opening.code.empty()) return std::nullopt;
  return found;
}

bool can_weigh_valve_sides(const Catalog& catalog, const ChainRequest& request, ReservoirEnd end) {
  const std::vector<Need> needs = with_opening(catalog, request, end).needs;
  const bool needs_in_turn_are_the_same =
      request.needs_in_order ||
      (!needs_overlap(needs) && std::none_of(needs.begin(), needs.end(), [&](const Need& need) {
        return is_met_by_fittings_and_devices(catalog, need);
      }));
  return !valve_needs(catalog, request).empty() && needs.size() <= kMostNeedsInTurn &&
         std::all_of(needs.begin(), needs.end(), [](const Need& need) { return need.required; }) &&
         needs_in_turn_are_the_same;
}

std::string opening_beyond_valve(const Catalog& catalog, const ChainRequest& request, ReservoirEnd end) {
  const Need* asked = asked_opening(catalog, request, end);
  return asked ? asked->words : "union";
}

namespace {

/// Calls `ask` with the request in each order of its needs that leaves the valve with the reservoir.
/// @pre can_weigh_valve_sides
template <class Ask>
void ask_each_order(const Catalog& catalog, const ChainRequest& request, ReservoirEnd end, const Ask& ask) {
  const ChainRequest asked = with_opening(catalog, request, end);
  NeedOrders turns(catalog, asked, end);
  if (asked.needs.size() > request.needs.size()) turns.last_was_added();
  do {
    if (turns.fits()) ask(turns.request());
  } while (turns.next());
}

}  // namespace

std::optional<Chain> best_with_valve_left(const PreparedCatalog& prepared, const ChainRequest& request,
                                          ReservoirEnd end) {
  const Catalog& catalog = prepared.catalog();
  if (!can_weigh_valve_sides(catalog, request, end)) return std::nullopt;
  std::optional<Route> best;
  ChainRequest best_request;
  ask_each_order(catalog, request, end, [&](ChainRequest in_turn) {
    auto route = best_chain(prepared, in_turn);
    if (!route || (best && !better(prepared.folded(), *route, *best))) return;
    best = std::move(route);
    best_request = std::move(in_turn);
  });
  if (!best) return std::nullopt;
  return assemble(catalog, best_request, best->moves);
}

std::optional<Chain> best_span_with_valve_left(const PreparedCatalog& prepared, const ChainRequest& request,
                                               const Span& span, ReservoirEnd end) {
  const Catalog& catalog = prepared.catalog();
  if (!can_weigh_valve_sides(catalog, request, end)) return std::nullopt;
  std::optional<SpanChoice> best;
  ChainRequest best_request;
  ask_each_order(catalog, request, end, [&](ChainRequest in_turn) {
    auto choice = best_span(prepared.folded(), in_turn, span);
    if (!choice || (best && !comes_before(prepared.folded(), request.order, *choice, *best))) return;
    best = std::move(choice);
    best_request = std::move(in_turn);
  });
  return best ? span_run(prepared.folded(), best_request, span) : std::nullopt;
}

}  // namespace riserun::chain
