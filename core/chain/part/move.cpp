#include "chain/part/move.h"

#include <algorithm>
#include <cmath>

namespace riserun::chain {

using catalog::End;
using catalog::JointSize;
using catalog::Part;

bool is_plain_connector(const Catalog& catalog, const Part& part) {
  return part.ports.size() == 2 && catalog.family(part.family).role == catalog::Role::connector;
}

bool goes_in_unasked(const Catalog& catalog, const ChainRequest& request, const Part& part) {
  return is_plain_connector(catalog, part) && !is_only_for_vacuum(request, catalog.family(part.family));
}

bool is_bushing(const Catalog& catalog, const Part& part) { return catalog.family(part.family).is_bushing; }

bool is_close_nipple(const Part& part) { return part.close; }

bool is_bent(const Part& part) {
  const double first = part.ports.front().heading_degrees;
  return std::any_of(part.ports.begin(), part.ports.end(), [&](const catalog::Port& port) {
    return std::abs(std::remainder(port.heading_degrees - first, 180.0)) > 1.0;
  });
}

bool bends(const Catalog& catalog, const Part& part) { return part.flexible || catalog.family(part.family).flexible; }

bool is_made_up_hose(const Catalog& catalog, const Part& part) {
  return bends(catalog, part) && !part.cut_to_length && part.ports.size() == 2;
}

bool fills_by_bending(const Catalog& catalog, const Part& part) {
  return part.flexible || is_made_up_hose(catalog, part);
}

bool has_no_one_length(const Catalog& catalog, const Part& part) {
  return part.cut_to_length || is_made_up_hose(catalog, part);
}

bool gives_way(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave) {
  const auto always_closes = [&](std::size_t port) {
    const auto mates = catalog.mates(part.ports[port].type);
    return !mates.empty() && std::all_of(mates.begin(), mates.end(), [&](const catalog::Mate& mate) {
      return catalog.mating_rules()[mate.rule].closing;
    });
  };
  return bends(catalog, part) && (always_closes(enter) || always_closes(leave));
}

std::int64_t bending(const Catalog& catalog, const Part& part) {
  if (!bends(catalog, part)) return 0;
  return part.rating < kHouseWater ? 2 : 1;
}

PartingCause parting_cause(const Catalog& catalog, const ChainRequest& request) {
  const std::optional<MaterialId>& from = request.from.material;
  const std::optional<MaterialId>& to = request.to.material;
  if (!from && !to) return PartingCause::none;
  if (!from || !to) return PartingCause::between_the_ends;
  const bool apart = catalog.galvanic(*from, *to) == catalog::GalvanicVerdict::keep_apart;
  return apart ? PartingCause::anywhere : PartingCause::none;
}

namespace {

/// With both ends it goes together.
bool joins_the_ends(const Catalog& catalog, const ChainRequest& request, const Part& part) {
  if (part.ports.size() != 2 || !request.from.type.valid() || !request.to.type.valid()) return false;
  const auto mates = [&](std::size_t port, const PortEnd& end) {
    return catalog.mating_rule(part.ports[port].type, end.type) != nullptr;
  };
  return (mates(0, request.from) && mates(1, request.to)) || (mates(1, request.from) && mates(0, request.to));
}

}  // namespace

bool parts_metals_for_nothing(const Catalog& catalog, const ChainRequest& request, const Part& part) {
  if (!part.dielectric || request.galvanic == Galvanic::avoid) return false;
  const PartingCause cause = parting_cause(catalog, request);
  if (cause == PartingCause::none) return true;
  if (cause == PartingCause::between_the_ends && !joins_the_ends(catalog, request, part)) return true;
  const auto kind = [&](const catalog::Port& port) { return catalog.port_type(port.type).kind; };
  return std::all_of(part.ports.begin(), part.ports.end(),
                     [&](const catalog::Port& port) { return kind(port) == kind(part.ports.front()); });
}

std::int64_t other_kinds_of(const Catalog& catalog, const ChainRequest& request, const Part& part) {
  return bending(catalog, part) + (parts_metals_for_nothing(catalog, request, part) ? 1 : 0);
}

bool changes_size(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave) {
  const auto size = [&](std::size_t port) { return catalog.line_inches(part.ports[port].type); };
  return size(enter) != size(leave);
}

Make make_of(const Catalog& catalog, PartId id) {
  const Part& part = catalog.part(id);
  return {part.material, catalog::only_if_asked(catalog.family(part.family).role), bends(catalog, part)};
}

std::vector<Make> makes_of(const Catalog& catalog, const Move& move) {
  std::vector<Make> makes;
  if (move.part.valid()) makes.push_back(make_of(catalog, move.part));
  for (const PartId plug : move.plugs) makes.push_back(make_of(catalog, plug));
  return makes;
}

Length insertion(const Catalog& catalog, PortTypeId type) {
  const catalog::PortType& port = catalog.port_type(type);
  if (port.end == End::female) return {};
  const JointSize* size = catalog.joint_size(port);
  return size ? size->make_up() : Length{};
}

namespace {

/// The row that says how far the joint between two kinds goes in; nullptr: both are of one kind, or it says nothing.
const JointSize* ruling_size(const Catalog& catalog, PortTypeId a, PortTypeId b, const catalog::MatingRule& rule) {
  if (rule.kind_a == rule.kind_b) return nullptr;
  return catalog.joint_size(catalog.port_type(catalog.port_type(a).kind == rule.kind_a ? a : b));
}

/// What every fitting with such an end can put in; what is cut from the length has no such bound.
Length least_put_in(const Catalog& catalog, PortTypeId type, Length most) {
  for (const catalog::PortUse& use : catalog.uses(type)) {
    const Part& part = catalog.part(use.part);
    if (part.cut_to_length) continue;
    for (std::size_t other = 0; other < part.ports.size(); ++other) {
      if (other == use.port) continue;
      const Length body = part.ports[use.port].reach + part.ports[other].reach;
      const Length taken = insertion(catalog, part.ports[other].type);
      most = std::min(most, taken > Length{} ? std::min(body - taken, body / 2.0) : body);
    }
  }
  return most;
}

}  // namespace

Length deepest_insertion(const Catalog& catalog, PortTypeId type) {
  Length deepest = insertion(catalog, type);
  if (catalog.port_type(type).end == End::female) return deepest;
  for (const catalog::Mate& mate : catalog.mates(type))
    deepest = std::max(deepest, make_up(catalog, type, mate.other, catalog.mating_rules()[mate.rule]));
  return deepest;
}

Length make_up(const Catalog& catalog, PortTypeId a, PortTypeId b, const catalog::MatingRule& rule) {
  const Length own = std::max(insertion(catalog, a), insertion(catalog, b));
  const JointSize* size = ruling_size(catalog, a, b, rule);
  if (size == nullptr) return own;
  if (size->make_up() <= own) return size->make_up();
  const PortTypeId inserted = catalog.port_type(a).end == End::female ? b : a;
  return std::max(own, least_put_in(catalog, inserted, size->make_up()));
}

Length make_up_tolerance(const Catalog& catalog, PortTypeId a, PortTypeId b, const catalog::MatingRule& rule) {
  if (const JointSize* ruling = ruling_size(catalog, a, b, rule)) return ruling->make_up_tolerance;
  const PortTypeId inserted = insertion(catalog, a) < insertion(catalog, b) ? b : a;
  const JointSize* size = catalog.joint_size(catalog.port_type(inserted));
  return size ? size->make_up_tolerance : Length{};
}

Length body_length(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave) {
  const Length stated = part.ports[enter].reach + part.ports[leave].reach;
  const Length inserted =
      deepest_insertion(catalog, part.ports[enter].type) + deepest_insertion(catalog, part.ports[leave].type);
  return std::max(stated, inserted);
}

Length port_bore(const Catalog& catalog, const Part& part, std::size_t port) {
  if (part.ports[port].bore > Length{}) return part.ports[port].bore;
  const JointSize* size = catalog.joint_size(catalog.port_type(part.ports[port].type));
  if (size && size->bore > Length{}) return size->bore;
  for (const catalog::Port& other : part.ports)
    if (other.bore > Length{}) return other.bore;
  return {};
}

std::int64_t in_micrometres(Length length) { return std::llround(in_metres(length) * 1e6); }
Length from_micrometres(std::int64_t micrometres) { return metres(static_cast<double>(micrometres) * 1e-6); }
std::int64_t in_nanometres(Length length) { return std::llround(in_metres(length) * 1e9); }

namespace {

// A lined part without a second metal of its own meets no neighbour's metal in the water.
MaterialId facing_material(const Part& part, std::size_t port) {
  if (part.dielectric && !part.far_material) return {};
  return part.material_at(port);
}

}  // namespace

ShownMetal shown_metal(const Catalog& catalog, PartId id, std::size_t port) {
  if (!id.valid()) return {};
  const Part& part = catalog.part(id);
  const Make make = make_of(catalog, id);
  return {make.device ? MaterialId{} : facing_material(part, port), make.bends};
}

namespace {

bool may_be_joined_still(const Catalog& catalog, PortTypeId type) {
  const auto mates = catalog.mates(type);
  return std::any_of(mates.begin(), mates.end(), [&](const catalog::Mate& mate) {
    return catalog.mating_rules()[mate.rule].turning == catalog::Turning::neither;
  });
}

std::int64_t leg_micrometres(const Catalog& catalog, const Part& part, std::size_t port) {
  return std::max(in_micrometres(part.ports[port].reach),
                  in_micrometres(deepest_insertion(catalog, part.ports[port].type)));
}

// Ports look outwards: straight through, the second looks the other way than the first.
std::int32_t bend_between(const Part& part, std::size_t enter, std::size_t leave) {
  const double turn = part.ports[leave].heading_degrees - part.ports[enter].heading_degrees - 180.0;
  return static_cast<std::int32_t>(std::llround(std::abs(std::remainder(turn, 360.0)) * 1000.0));
}

std::int64_t body_micrometres(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave) {
  const std::int64_t stated = in_micrometres(part.ports[enter].reach) + in_micrometres(part.ports[leave].reach);
  const std::int64_t inserted = in_micrometres(deepest_insertion(catalog, part.ports[enter].type)) +
                                in_micrometres(deepest_insertion(catalog, part.ports[leave].type));
  return std::max(stated, inserted);
}

}  // namespace

Move bought_move(const Catalog& catalog, PartId id, std::size_t enter, std::size_t leave) {
  const Part& part = catalog.part(id);
  Move move;
  move.part = id;
  move.enter = static_cast<std::uint8_t>(enter);
  move.leave = static_cast<std::uint8_t>(leave);
  move.enter_type = part.ports[enter].type;
  move.leave_type = part.ports[leave].type;
  move.enter_material = facing_material(part, enter);
  move.leave_material = facing_material(part, leave);
  move.enter_bore = in_nanometres(port_bore(catalog, part, enter));
  move.leave_bore = in_nanometres(port_bore(catalog, part, leave));
  move.closes = part.closing || gives_way(catalog, part, enter, leave);
  move.bow = part.cut_to_length ? Bow::has_room : Bow::none;
  move.only_for_need = !is_plain_connector(catalog, part);
  move.no_grip = is_close_nipple(part) && std::any_of(part.ports.begin(), part.ports.end(), [&](const auto& port) {
                   return may_be_joined_still(catalog, port.type);
                 });
  move.own.parts = 1;
  move.own.buy = 1;
  move.own.cents = part.price.weight();
  move.own.micrometres = body_micrometres(catalog, part, enter, leave);
  move.bushing = is_bushing(catalog, part);
  move.bend = bend_between(part, enter, leave);
  if (move.bend != 0) {
    move.before_bend = leg_micrometres(catalog, part, enter);
    move.after_bend = leg_micrometres(catalog, part, leave);
  }
  move.own.drawbacks = (move.bushing ? 1 : 0) + (is_close_nipple(part) ? 1 : 0);
  move.own.other_kinds = bending(catalog, part);
  move.own.size_changes = changes_size(catalog, part, enter, leave) ? 1 : 0;
  return move;
}

Move bought_move(const Catalog& catalog, const ChainRequest& request, PartId id, std::size_t enter, std::size_t leave) {
  Move move = bought_move(catalog, id, enter, leave);
  move.own.other_kinds = other_kinds_of(catalog, request, catalog.part(id));
  move.only_for_need = !goes_in_unasked(catalog, request, catalog.part(id));
  return move;
}

}  // namespace riserun::chain
