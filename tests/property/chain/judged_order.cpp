#include "property/chain/judged_order.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

Tuple tuple_of(Order order, const Sums& s) {
  // A part of another material weighs as much as 8 dollars.
  const std::int64_t worth = s.cents + 800 * s.not_of_one + s.off_weight;
  switch (order) {
    case Order::line:
      return {s.narrowing,
              s.foreign_threads,
              s.other_kinds + s.size_changes,
              s.size_changes,
              s.parts,
              s.clashing,
              s.not_the_ends_own,
              s.far_from_it,
              worth,
              s.cents,
              s.drawbacks};
    case Order::parts:
      return {s.parts, s.cents, s.drawbacks};
    case Order::price:
      return {s.cents, s.parts, s.drawbacks};
    case Order::loss:
      return {s.nanometres, s.parts, s.cents, s.drawbacks};
    case Order::length:
      return {s.micrometres, s.parts, s.cents, s.drawbacks};
    case Order::bin:
      return {s.narrowing,    s.foreign_threads,
              s.buy,          s.other_kinds + s.size_changes,
              s.size_changes, s.parts,
              s.clashing,     s.not_the_ends_own,
              s.far_from_it,  worth,
              s.cents,        s.drawbacks};
  }
  return {};
}

bool is_of_ends_alone(const Catalog& catalog, std::uint32_t kind) {
  for (const ForeignThread& thread : catalog.foreign_threads())
    if (thread.kind.row == kind && thread.only_at_end) return true;
  return false;
}

bool asks_for_such_a_hose(const Catalog& catalog, const std::vector<Need>& needs) {
  for (const Need& need : needs) {
    for (const PartId id : need.parts) {
      const Part& part = catalog.part(id);
      if (!part.flexible && !catalog.family(part.family).flexible) continue;
      for (const Port& port : part.ports)
        if (is_of_ends_alone(catalog, catalog.port_type(port.type).kind.row)) return true;
    }
  }
  return false;
}

void count_inner_joint(const Catalog& catalog, PortTypeId entered, const std::vector<std::uint32_t>& kinds,
                       Sums& sums) {
  const std::uint32_t kind = catalog.port_type(entered).kind.row;
  const auto have_it = std::count(kinds.begin(), kinds.end(), kind);
  const bool some_end = have_it > 0 && have_it < static_cast<std::ptrdiff_t>(kinds.size());
  if (some_end && is_of_ends_alone(catalog, kind)) ++sums.foreign_threads;
}

bool is_coated(const Catalog& catalog, MaterialId a, MaterialId b) {
  for (const auto& [coat, metal] : {std::pair(a, b), std::pair(b, a)})
    for (const Material& under : catalog.materials())
      if (under.id == catalog.material(coat).coat_on && catalog.material(metal).metal &&
          under.anodic_index_volts == catalog.material(metal).anodic_index_volts)
        return true;
  return false;
}

bool eats(const Catalog& catalog, bool wet, MaterialId a, MaterialId b) {
  if (is_coated(catalog, a, b)) return false;
  const double apart = std::abs(catalog.material(a).anodic_index_volts - catalog.material(b).anodic_index_volts);
  const GalvanicVerdict verdict = catalog.galvanic(a, b);
  // Half a volt where it is dry.
  return wet ? verdict != GalvanicVerdict::fine : verdict == GalvanicVerdict::keep_apart && apart > 0.5 + 1e-9;
}

double size_of_line(const Catalog& catalog, const PortType& type) {
  const double named = catalog.nominal_inches(type.size);
  if (!catalog.kind(type.kind).by_outside) return named;
  return named > 0.25 ? named - 0.125 : named / 2.0;
}

void count_port(const Catalog& catalog, PortTypeId port, double line_inches, const std::vector<std::uint32_t>& kinds,
                bool is_plug, bool parts_its_ends, Sums& sums) {
  const PortType& type = catalog.port_type(port);
  const auto is_an_ends = [&](KindId kind) { return std::find(kinds.begin(), kinds.end(), kind.row) != kinds.end(); };
  // A port that goes onto nothing but ends of the run's kinds is one of theirs.
  const auto mates = catalog.mates(port);
  const bool is_for_them = !mates.empty() && std::all_of(mates.begin(), mates.end(), [&](const Mate& mate) {
    return is_an_ends(catalog.port_type(mate.other).kind);
  });
  bool own = is_an_ends(type.kind) || is_for_them;
  for (const ForeignThread& thread : catalog.foreign_threads()) {
    if (thread.kind != type.kind) continue;
    const bool parts_metals =
        parts_its_ends && std::any_of(thread.keeps_apart.begin(), thread.keeps_apart.end(), is_an_ends);
    if (parts_metals || std::any_of(thread.at_home.begin(), thread.at_home.end(), is_an_ends))
      own = true;
    else
      ++sums.foreign_threads;
  }
  sums.other_kinds += own ? 0 : 1;
  const double inches = size_of_line(catalog, type);
  if (!is_plug && inches < line_inches)
    sums.narrowing += std::llround(10.0 * (std::pow(line_inches / inches, 4.0) - 1.0));
}

std::int64_t count_body(const Catalog& catalog, const Part& part, const ChainRequest& request) {
  std::int64_t weight = 0;
  if (part.flexible || catalog.family(part.family).flexible) weight += in_psi(part.rating) < 60.0 ? 2 : 1;
  std::set<std::uint32_t> kinds;
  for (const Port& port : part.ports) kinds.insert(catalog.port_type(port.type).kind.row);
  const std::optional<MaterialId>& one = request.from.material;
  const std::optional<MaterialId>& other = request.to.material;
  bool has_cause = one && other && catalog.galvanic(*one, *other) == GalvanicVerdict::keep_apart;
  if (one.has_value() != other.has_value() && part.ports.size() == 2 && request.to.type.valid())
    for (const std::size_t near : {0u, 1u})
      has_cause = has_cause || (catalog.mating_rule(part.ports[near].type, request.from.type) != nullptr &&
                                catalog.mating_rule(part.ports[1 - near].type, request.to.type) != nullptr);
  if (part.dielectric && (kinds.size() == 1 || !has_cause) && request.galvanic != Galvanic::avoid) weight += 1;
  return weight;
}

bool hose_closes(const Catalog& catalog, const Part& part, std::size_t one, std::size_t other) {
  if (!part.flexible && !catalog.family(part.family).flexible) return false;
  for (const std::size_t port : {one, other}) {
    bool all = !catalog.mates(part.ports[port].type).empty();
    for (const Mate& mate : catalog.mates(part.ports[port].type))
      all = all && catalog.mating_rule(part.ports[port].type, mate.other)->closing;
    if (all) return true;
  }
  return false;
}

Shown shown_at(const Catalog& catalog, PartId id, std::size_t port) {
  const Part& part = catalog.part(id);
  const Family& family = catalog.family(part.family);
  const bool is_device = family.role != Role::connector && family.role != Role::plug;
  Shown shown{std::nullopt, part.flexible || family.flexible};
  if (!is_device && !(part.dielectric && !part.far_material)) shown.metal = part.material_at(port);
  return shown;
}

void count_materials(const Catalog& catalog, const std::vector<PartId>& parts,
                     const std::vector<std::optional<MaterialId>>& ends, const JudgedJoints& joints, Galvanic galvanic,
                     Shape shape, Sums& sums) {
  sums.clashing = 0;
  sums.not_of_one = INT64_MAX;
  const auto count = [&](const auto& is) { return std::count_if(parts.begin(), parts.end(), is); };
  // No hose is of the metal of a line: it counts against that of an end alone.
  const auto is_hose = [&](PartId part) {
    return catalog.part(part).flexible || catalog.family(catalog.part(part).family).flexible;
  };
  // Two metals with one anodic index are the same metal under two names; of others each 0.05 V is a step away.
  const auto steps_between = [&](const Material& end, const Material& own) -> std::optional<int> {
    if (own.id == end.id) return std::nullopt;
    if (!own.metal || !end.metal) return 40;
    const double volts = std::abs(own.anodic_index_volts - end.anodic_index_volts);
    if (volts < 1e-6) return std::nullopt;
    return std::min(40, static_cast<int>(std::lround(volts * 20.0)));
  };
  using Against = std::array<std::int64_t, 3>;  // clashing, not the end's own, steps from it
  Against least{INT64_MAX, 0, 0};
  // Between two such ends each part must go with both.
  const bool stands_between = shape == Shape::chain && ends.size() == 2 && ends[0] && ends[1] &&
                              galvanic == Galvanic::warn &&
                              catalog.galvanic(*ends[0], *ends[1]) == GalvanicVerdict::keep_apart;
  const auto clashes = [&](PartId part) {
    return std::any_of(ends.begin(), ends.end(), [&](const std::optional<MaterialId>& end) {
      return catalog.galvanic(*end, catalog.part(part).material) == GalvanicVerdict::keep_apart;
    });
  };
  std::int64_t clashing = 0;
  std::int64_t steps = 0;
  for (const auto& [one, other] : joints) {
    if (galvanic == Galvanic::avoid || !one.metal || !other.metal) continue;
    clashing += catalog.galvanic(*one.metal, *other.metal) == GalvanicVerdict::keep_apart ? 1 : 0;
    const auto is_of_no_metal = [&](const Shown& end) { return end.is_hose && !catalog.material(*end.metal).metal; };
    if (is_of_no_metal(one) || is_of_no_metal(other) || stands_between) continue;
    steps += steps_between(catalog.material(*one.metal), catalog.material(*other.metal)).value_or(0);
  }
  for (const std::optional<MaterialId>& end : ends) {
    if (!end) continue;
    Against of_this{clashing + (stands_between ? count(clashes) : 0), 0, steps};
    for (const PartId part : parts) {
      if (is_hose(part)) continue;
      const auto apart = steps_between(catalog.material(*end), catalog.material(catalog.part(part).material));
      of_this[1] += apart ? 1 : 0;
      of_this[2] += stands_between ? apart.value_or(0) : 0;
    }
    least = std::min(least, of_this);
  }
  // Beyond the first part that keeps the two ends apart only the far one counts, before it only the near one.
  const auto parting = std::find_if(parts.begin(), parts.end(), [&](PartId id) {
    const Part& part = catalog.part(id);
    const Role role = catalog.family(part.family).role;
    return role != Role::plug && (part.dielectric || !catalog.material(part.material).metal);
  });
  if (stands_between && parting != parts.end()) {
    Against of_sides{clashing, 0, steps};
    for (auto part = parts.begin(); part != parts.end(); ++part) {
      if (part == parting) continue;
      const MaterialId near = part < parting ? *ends[0] : *ends[1];
      of_sides[0] += catalog.galvanic(near, catalog.part(*part).material) == GalvanicVerdict::keep_apart ? 1 : 0;
      if (is_hose(*part)) continue;
      const auto apart = steps_between(catalog.material(near), catalog.material(catalog.part(*part).material));
      of_sides[1] += apart ? 1 : 0;
      of_sides[2] += apart.value_or(0);
    }
    least = std::min(least, of_sides);
  }
  if (least[0] == INT64_MAX) least[0] = clashing;
  sums.clashing = least[0];
  sums.not_the_ends_own = least[1];
  sums.far_from_it = least[2];
  // Devices are made in the metal that they are made in: what joins them is to be of one.
  const auto joins = [&](PartId part) {
    const Role role = catalog.family(catalog.part(part).family).role;
    return (role == Role::connector || role == Role::plug) && !is_hose(part);
  };
  for (const Material& one : catalog.materials())
    sums.not_of_one = std::min<std::int64_t>(
        sums.not_of_one,
        count([&](PartId part) { return joins(part) && catalog.material(catalog.part(part).material).id != one.id; }));
}

bool better(Order order, const Sums& a, const Sums& b) {
  const auto x = tuple_of(order, a);
  const auto y = tuple_of(order, b);
  if (x != y) return x < y;
  if (a.ids != b.ids) return a.ids < b.ids;
  return a.ways < b.ways;
}

}  // namespace riserun::chain::testing
