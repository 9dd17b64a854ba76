#include "chain/refusal/missing_part.h"

#include "chain/part/move.h"
#include "chain/part/swing.h"
#include "chain/refusal/reachability.h"
#include "chain/search/best_chain.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace riserun::chain {

using catalog::JointSize;
using catalog::PortType;

namespace {

// One wish always weighs less than two, however unlikely the part.
constexpr std::int64_t kWish = 1000;

std::int64_t size_steps(const Catalog& catalog, const PortType& a, const PortType& b) {
  const JointSize* first = catalog.joint_size(a);
  const JointSize* second = catalog.joint_size(b);
  const bool known = first && second && first->outside_diameter > Length{} && second->outside_diameter > Length{};
  if (!known) return 4;
  const double ratio = first->outside_diameter / second->outside_diameter;
  return std::min<std::int64_t>(8, std::llround(4.0 * std::abs(std::log2(ratio))));
}

// The less likely that somebody makes it, the heavier. A judgement, not a standard.
std::int64_t unlikeliness(const Catalog& catalog, PortTypeId a, PortTypeId b) {
  const PortType& first = catalog.port_type(a);
  const PortType& second = catalog.port_type(b);
  if (first.kind == second.kind) return first.size == second.size ? 0 : 1 + size_steps(catalog, first, second);
  return first.size == second.size ? 10 : 100;
}

Move wished_move(const FoldedCatalog& folded, PortTypeId enter, PortTypeId leave, bool closing) {
  Move move;
  move.enter_type = enter;
  move.leave_type = leave;
  move.closes = closing;
  move.own.wishes = kWish + 2 * unlikeliness(folded.catalog(), enter, leave) + (closing ? 1 : 0);
  move.own.parts = 1;
  move.own.buy = 1;
  move.own.micrometres = folded.insertion_micrometres(enter) + folded.insertion_micrometres(leave);
  return move;
}

/// An end that a part made for what is asked could have: of its kind of joint some part is proved for it, as of PVC
/// sockets none is for compressed air, and of the very end some part is wide enough. Of what no part has nothing is
/// known.
bool could_be_made(const Rules& duty, const Catalog& catalog, PortTypeId end) {
  bool of_kind = false;
  bool proved = false;
  bool of_end = false;
  bool wide = false;
  for (std::uint32_t row = 0; row < catalog.parts().size() && !(proved && wide); ++row) {
    const catalog::Part& part = catalog.part({row});
    for (std::size_t port = 0; port < part.ports.size(); ++port) {
      if (catalog.port_type(part.ports[port].type).kind != catalog.port_type(end).kind) continue;
      of_kind = true;
      proved = proved || duty.admits({row});
      if (part.ports[port].type != end) continue;
      of_end = true;
      const auto& least = duty.request().smallest_bore;
      wide = wide || !least || port_bore(catalog, part, port) >= *least;
    }
  }
  return (proved || !of_kind) && (wide || !of_end);
}

/// Those ends of them that could be made.
std::set<PortTypeId> made_for(const ChainRequest& request, const Catalog& catalog, std::set<PortTypeId> ends) {
  ChainRequest asked = request;
  asked.banned.clear();
  const Rules duty(catalog, asked);
  std::erase_if(ends, [&](PortTypeId end) { return !could_be_made(duty, catalog, end); });
  return ends;
}

/// A straight part of that kind could be turned in the room that there is.
bool has_room(const ChainRequest& request, const Catalog& catalog, PortTypeId enter, PortTypeId leave) {
  if (!request.room) return true;
  catalog::Part part;
  part.ports = {{enter, {}, {}, 180.0}, {leave, {}, {}, 0.0}};
  return std::max(swing_radius(catalog, part, 0), swing_radius(catalog, part, 1)) <= *request.room;
}

std::set<PortTypeId> ends_that_fit(const Catalog& catalog, PortTypeId end, const std::vector<PortTypeId>& side) {
  std::set<PortTypeId> fitting;
  for (const catalog::Mate& mate : catalog.mates(end)) fitting.insert(mate.other);
  for (const PortTypeId open : side)
    for (const catalog::Mate& mate : catalog.mates(open)) fitting.insert(mate.other);
  return fitting;
}

std::vector<Move> wished_moves(const FoldedCatalog& folded, const ChainRequest& request) {
  const Catalog& catalog = folded.catalog();
  const Rules rules(catalog, request);
  GraphExtras none;
  none.counted.assign(request.bin.items.size(), false);
  const PortGraph graph(folded, rules, none);
  const auto enters =
      made_for(request, catalog, ends_that_fit(catalog, request.from.type, reachable_from(rules, graph)));
  const auto leaves = made_for(request, catalog, ends_that_fit(catalog, request.to.type, reachable_to(rules, graph)));
  const auto likely = [&](PortTypeId a, PortTypeId b) {
    if (catalog.mating_rule(request.from.type, a) && catalog.mating_rule(b, request.to.type)) return true;
    return catalog.port_type(a).kind == catalog.port_type(b).kind ||
           catalog.port_type(a).size == catalog.port_type(b).size;
  };
  std::vector<Move> wished;
  for (const PortTypeId enter : enters) {
    for (const PortTypeId leave : leaves) {
      if (!likely(enter, leave) || !has_room(request, catalog, enter, leave)) continue;
      // Of ends alike it is a piece of pipe or hose, and where the catalog has none nobody makes it.
      if (enter != leave) wished.push_back(wished_move(folded, enter, leave, false));
      if (rules.closing() != Closing::none && unlikeliness(catalog, enter, leave) == 0)
        wished.push_back(wished_move(folded, enter, leave, true));
    }
  }
  return wished;
}

}  // namespace

std::optional<PartId> completing_special_order(const FoldedCatalog& folded, const ChainRequest& request) {
  if (request.special_order) return std::nullopt;
  const std::optional<Route> route = best_chain(folded, request, {{}, true, {}});
  if (!route || route->cost.tuple[0] != 1) return std::nullopt;
  const auto is_special = [&](PartId part) {
    return !folded.catalog().part(part).stocked && request.bin.count_of(part) == 0;
  };
  for (const Move& move : route->moves) {
    if (move.own.wishes == 0) continue;
    if (is_special(move.part)) return move.part;
    for (const PartId plug : move.plugs)
      if (is_special(plug)) return plug;
    return move.part;
  }
  return std::nullopt;
}

std::optional<MissingPart> missing_part(const FoldedCatalog& folded, const ChainRequest& request) {
  ChainRequest simple = request;
  simple.order = Order::parts;
  const std::optional<Route> route = best_chain(folded, simple, {{}, false, wished_moves(folded, simple)});
  if (!route) return std::nullopt;
  std::optional<MissingPart> missing;
  for (const Move& move : route->moves) {
    if (move.part.valid()) continue;
    if (missing) return std::nullopt;  // two parts would be needed
    missing = MissingPart{move.enter_type, move.leave_type, move.closes};
  }
  return missing;
}

}  // namespace riserun::chain
