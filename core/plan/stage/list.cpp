#include "plan/stage/list.h"

#include "chain/finder.h"
#include "plan/stage/bungs.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

namespace riserun::plan {

namespace {

const Length kKerf = inches(1.0 / 16.0);  // of a hacksaw or a pipe cutter's wheel: common practice

/// Counts parts by where they come from, and keeps what each is for.
class PartTally {
 public:
  explicit PartTally(const Catalog& catalog) : catalog_(catalog) {}

  void add(PartId part, bool from_bin, const std::string& used_for, int quantity = 1) {
    ListItem& item = items_[{from_bin, part}];
    if (item.quantity == 0) item = described(part);
    item.quantity += quantity;
    if (std::find(item.used_for.begin(), item.used_for.end(), used_for) == item.used_for.end())
      item.used_for.push_back(used_for);
  }
  /// The same thing twice is one line with a quantity of two.
  void add_unlisted(ListItem item) {
    for (ListItem& there : unlisted_) {
      if (there.id != item.id || there.measure != item.measure) continue;
      there.quantity += item.quantity;
      if (there.used_for != item.used_for)
        there.used_for.insert(there.used_for.end(), item.used_for.begin(), item.used_for.end());
      return;
    }
    unlisted_.push_back(std::move(item));
  }

  /// In the order in which a store is walked: shelf by shelf, then by name and size.
  std::vector<ListItem> taken(bool from_bin) const {
    std::vector<ListItem> list;
    for (const auto& [key, item] : items_)
      if (key.first == from_bin) list.push_back(item);
    if (!from_bin) list.insert(list.end(), unlisted_.begin(), unlisted_.end());
    std::stable_sort(list.begin(), list.end(), [](const ListItem& a, const ListItem& b) {
      return std::tie(a.shelf, a.name, a.id) < std::tie(b.shelf, b.name, b.id);
    });
    return list;
  }

 private:
  ListItem described(PartId id) const {
    const catalog::Part& part = catalog_.part(id);
    ListItem item;
    item.part = id;
    item.id = part.id;
    item.name = part.name;
    item.size = part.size;
    item.material = catalog_.material(part.material).name;
    item.shelf = catalog_.family(part.family).shelf;
    item.each = part.price;
    item.special_order = !part.stocked;
    item.measured = part.measured;
    return item;
  }

  const Catalog& catalog_;
  std::map<std::pair<bool, PartId>, ListItem> items_;
  std::vector<ListItem> unlisted_;
};

/// Hose is sold in pieces: how many of them make the length.
int pieces_of(const Catalog& catalog, const ConnectionPlan& connection, PartId part) {
  const catalog::Part& row = catalog.part(part);
  const Length piece = straight_length(row);
  if (!row.cut_to_length || !connection.hose_length || !(piece > metres(0.0))) return 1;
  return std::max(1, static_cast<int>(std::ceil((*connection.hose_length / piece).value() - 1e-9)));
}

void add_run(const Catalog& catalog, const ConnectionPlan& connection, BinLeft& bin, PartTally& tally) {
  for (const chain::RunPart& part : connection.run()->parts) {
    tally.add(part.part, part.from_bin, connection.name, part.pieces);
    const int pieces = part.cut_length ? 1 : pieces_of(catalog, connection, part.part);
    for (int more = pieces - 1; more > 0; --more) tally.add(part.part, bin.take(part.part), connection.name);
    for (const chain::Follower& plug : part.plugs()) tally.add(plug.plug, plug.from_bin, connection.name);
  }
}

/// A chain lets the other part in the place of each such part and plug of its own.
bool chain_lets(const Catalog& catalog, const ConnectionPlan& connection, PartId part, PartId other) {
  const auto allows = [&](const chain::PlacedPart& placed) -> bool {
    return chain::allowed_parts(catalog, connection.request, {placed}).front();
  };
  const std::vector<chain::RunPart>& parts = connection.chain()->parts;
  for (std::size_t row = 0; row < parts.size(); ++row) {
    const std::vector<chain::Follower> plugs = parts[row].plugs();
    const bool plugged =
        std::any_of(plugs.begin(), plugs.end(), [&](const chain::Follower& plug) { return plug.plug == part; });
    if (plugged && !allows({other, 0, 0})) return false;
    if (parts[row].part != part) continue;
    chain::PlacedPart placed{other, parts[row].enter, parts[row].leave()};
    placed.before = row == 0 ? connection.request.from.material
                             : std::optional(catalog.part(parts[row - 1].part).material_at(parts[row - 1].leave()));
    placed.behind = row + 1 == parts.size()
                        ? connection.request.to.material
                        : std::optional(catalog.part(parts[row + 1].part).material_at(parts[row + 1].enter));
    if (!allows(placed)) return false;
  }
  return true;
}

bool assembly_lets(const Catalog& catalog, const ConnectionPlan& connection, PartId other) {
  // Another metal would meet what stands round it in the tree.
  if (connection.request.galvanic == chain::Galvanic::avoid) return false;
  const bool has_a_way = catalog.part(other).ports.size() > 1;
  const chain::PlacedPart placed{other, 0, static_cast<std::uint8_t>(has_a_way ? 1 : 0)};
  return chain::allowed_parts(catalog, connection.request, {placed}).front();
}

/// The runs that a line of the list is for let the other part in its place.
bool may_stand_in(const Catalog& catalog, const ListedSections& sections, const ListItem& item, PartId other) {
  for (const ConnectionPlan& connection : sections.connections) {
    const auto& names = item.used_for;
    if (connection.run() == nullptr || std::find(names.begin(), names.end(), connection.name) == names.end()) continue;
    const std::vector<chain::RunEnd>& ends = connection.run()->ends;
    const bool at_end =
        std::any_of(ends.begin(), ends.end(), [&](const chain::RunEnd& end) { return end.device == item.part; });
    // What ends a run need not stand what the run must.
    if (at_end && !connection.request.banned.empty() && connection.request.banned[other.row]) return false;
    if (connection.chain() != nullptr && !chain_lets(catalog, connection, *item.part, other)) return false;
    if (connection.branched && !at_end && !assembly_lets(catalog, connection, other)) return false;
  }
  return true;
}

/// Parts with the same ports that could stand in for one that is bought: another material or the next length.
void suggest_instead(const Catalog& catalog, const ListedSections& sections, ListItem& item) {
  if (!item.part) return;
  const catalog::Part& part = catalog.part(*item.part);
  if (part.ports.empty()) return;
  const auto same_ports = [&](const catalog::Part& other) {
    return std::equal(part.ports.begin(), part.ports.end(), other.ports.begin(), other.ports.end(),
                      [](const catalog::Port& a, const catalog::Port& b) { return a.type == b.type; });
  };
  for (const catalog::PortUse& use : catalog.uses(part.ports[0].type)) {
    const catalog::Part& other = catalog.part(use.part);
    if (item.instead.size() == 2) return;
    if (use.port != 0 || use.part == *item.part || other.family != part.family || !other.stocked || !same_ports(other))
      continue;
    if (straight_length(other) != straight_length(part) || !other.air || other.material == part.material) continue;
    if (!may_stand_in(catalog, sections, item, use.part)) continue;
    item.instead.push_back(part_title(catalog, use.part));
  }
}

/// The clamp of the catalog that the hose size takes.
std::optional<PartId> clamp_for(const Catalog& catalog, catalog::SizeId hose_size) {
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.part(PartId{row});
    const bool is_clamp = catalog.family(part.family).role == catalog::Role::hose_clamp;
    if (is_clamp && catalog.port_type(part.ports[0].type).size == hose_size) return PartId{row};
  }
  return std::nullopt;
}

ListItem unlisted(std::string id, std::string name, Fact measure, std::string shelf, std::string used_for) {
  ListItem item;
  item.id = std::move(id);
  item.name = std::move(name);
  item.measure = std::move(measure);
  item.shelf = std::move(shelf);
  item.quantity = 1;
  item.priced = false;
  item.used_for = {std::move(used_for)};
  return item;
}

/// The cheapest part, of all that the predicate lets in; larger ports first where the price is the same.
template <class Fits>
std::optional<PartId> cheapest(const Catalog& catalog, Fits fits) {
  std::optional<PartId> best;
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const PartId id{row};
    if (fits(id) && (!best || catalog.part(id).price <= catalog.part(*best).price)) best = id;
  }
  return best;
}

void add_part_or_thing(const std::optional<PartId>& part, ListItem thing, BinLeft& bin, PartTally& tally) {
  if (part) {
    tally.add(*part, bin.take(*part), thing.used_for.front());
  } else {
    tally.add_unlisted(std::move(thing));
  }
}

void add_clamps_of(const Catalog& catalog, const chain::RunJoint& joint, int each, const std::string& used_for,
                   BinLeft& bin, PartTally& tally) {
  if (!is_clamped(catalog, joint)) return;
  const catalog::SizeId hose = catalog.port_type(joint.b).size;
  const std::string& size = catalog.size_name(hose);
  for (int i = 0; i < std::max(1, each); ++i)
    add_part_or_thing(
        clamp_for(catalog, hose),
        unlisted("hose-clamp/" + size, "hose clamp", fact("clamp_for_hose", size), "hose and clamps", used_for), bin,
        tally);
}

void add_clamps(const Catalog& catalog, const ConnectionPlan& connection, BinLeft& bin, PartTally& tally) {
  if (connection.hose_joints == 0) return;
  const int each = connection.clamps / connection.hose_joints;
  for (const chain::RunJoint& joint : connection.run()->joints)
    add_clamps_of(catalog, joint, each, connection.name, bin, tally);
}

void add_test_gauge(const Catalog& catalog, const LeakTestPlan& test, BinLeft& bin, PartTally& tally) {
  if (!(test.gauge_full_scale > psig(0.0))) {
    tally.add_unlisted(unlisted("water-column", "clear hose for a water column",
                                fact("hose_for_water_column", test.water_column_leg * 2.0), "hose and clamps",
                                "leak test"));
    return;
  }
  const auto dial = cheapest(catalog, [&](PartId id) {
    const auto scale = full_scale(catalog, id);
    return scale && std::abs(in_pascals(*scale) - in_pascals(test.gauge_full_scale)) < 100.0;
  });
  add_part_or_thing(
      dial,
      unlisted("test-gauge", "low-pressure gauge", fact("gauge_to_and_marks", test.gauge_full_scale, test.gauge_mark),
               "gauges and air", "leak test"),
      bin, tally);
}

/// The relief valve that opens nearest below the wanted pressure and still above the pressure that it must hold.
std::optional<PartId> relief_part(const Catalog& catalog, GaugePressure holds, GaugePressure opens_by) {
  std::optional<GaugePressure> nearest;
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const auto opens = relief_setting(catalog, PartId{row});
    if (opens && *opens > holds && *opens <= opens_by && (!nearest || *opens > *nearest)) nearest = opens;
  }
  if (!nearest) return std::nullopt;
  return cheapest(catalog, [&](PartId id) { return relief_setting(catalog, id) == nearest; });
}

void add_test_gear(const Catalog& catalog, const LeakTestPlan& test, const ReliefPlan& relief, BinLeft& bin,
                   PartTally& tally) {
  if (test.possible) {
    add_test_gauge(catalog, test, bin, tally);
    add_part_or_thing(
        relief_part(catalog, test.pressure, test.relief),
        unlisted("test-relief", "relief valve", fact("set_at", test.relief), "gauges and air", "leak test"), bin,
        tally);
  }
  if (!relief.given && relief.set_pressure > psig(0.0)) {
    Fact measure = relief.valve_bore ? fact("set_at_with_clear_bore", relief.set_pressure, *relief.valve_bore)
                                     : fact("set_at", relief.set_pressure);
    tally.add_unlisted(unlisted("relief", "relief valve", std::move(measure), "gauges and air", "reservoir"));
  }
}

/// Bungs that are not welded in yet.
void add_bungs(const Inputs& inputs, BinLeft& bin, PartTally& tally) {
  const Catalog& catalog = inputs.catalog;
  for (const JobPort& port : inputs.job.reservoir.ports) {
    if (port.welded_in.value_or(true)) continue;
    const bool half = port.bung.value_or(reservoir::BungKind::half_coupling) == reservoir::BungKind::half_coupling;
    const catalog::WeldBung wanted = half ? catalog::WeldBung::half_coupling : catalog::WeldBung::full_coupling;
    const auto part = port.bung_part ? port.bung_part : cheapest(catalog, [&](PartId id) {
      const catalog::Part& row = catalog.part(id);
      const bool has_port = std::any_of(row.ports.begin(), row.ports.end(),
                                        [&](const catalog::Port& end) { return end.type == port.type; });
      return has_port && catalog.family(row.family).weld_bung == wanted &&
             (port.material ? *port.material == row.material : welds_to_tank(inputs, row.material));
    });
    add_part_or_thing(
        part,
        unlisted("bung", "weld bung",
                 fact("bung_for_port", catalog.written(port.type), half ? "half coupling" : "full coupling"),
                 "weld fittings", "weld in: " + port.name),
        bin, tally);
  }
}

void cut_riser(const Catalog& catalog, const RiserPlan& plan, ShoppingList& list) {
  if (!(plan.riser.cut_length > metres(0.0))) return;
  CutItem cut;
  cut.stock =
      plan.stock_part ? part_title(catalog, *plan.stock_part) : plan.request.pipe.name + ", to be threaded at one end";
  cut.length = plan.riser.cut_length;
  cut.offcut = plan.riser.offcut;
  cut.used_for = "riser";
  cut.datum =
      plan.request.bung == reservoir::BungKind::welded_riser ? "from the lid's inside" : "from the threaded end";
  list.cut.push_back(std::move(cut));
}

/// In a branched connection each hose has the length that the catalog sells it in.
void cut_hoses(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, ShoppingList& list) {
  for (const ConnectionPlan& connection : connections) {
    if (connection.run() == nullptr || connection.run()->span) continue;
    std::map<PartId, int> hoses;
    for (const chain::RunPart& part : connection.run()->parts)
      if (catalog.part(part.part).cut_to_length) ++hoses[part.part];
    for (const auto& [hose, count] : hoses)
      list.cut.push_back({part_title(catalog, hose),
                          connection.hose_length.value_or(straight_length(catalog.part(hose))), metres(0.0), count,
                          connection.name, "end to end, cut square"});
  }
}

/// Pieces that the runs between ports with a measured gap are made up with.
void cut_spans(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, ShoppingList& list) {
  for (const ConnectionPlan& connection : connections) {
    if (connection.chain() == nullptr) continue;
    for (const chain::RunPart& part : connection.chain()->parts) {
      if (!part.cut_length) continue;
      const catalog::Part& row = catalog.part(part.part);
      const Length offcut = straight_length(row) * static_cast<double>(part.pieces) - *part.cut_length - kKerf;
      list.cut.push_back({part_title(catalog, part.part), *part.cut_length,
                          row.threaded_when_cut ? std::max(metres(0.0), offcut) : metres(0.0), 1, connection.name,
                          row.threaded_when_cut ? "end to end, then thread both ends" : "end to end, cut square"});
    }
  }
}

/// Joints over the whole job, by what makes them tight.
std::map<std::string, int> joints_by_seal(const Inputs& inputs, const ListedSections& sections) {
  const Catalog& catalog = inputs.catalog;
  std::map<std::string, int> count;
  const auto count_mate = [&](PortTypeId a) {
    const auto mates = catalog.mates(a);
    if (!mates.empty()) ++count[catalog.mating_rules()[mates.front().rule].seal];
  };
  for (const ConnectionPlan& connection : sections.connections) {
    if (connection.run() == nullptr) continue;
    for (const chain::RunJoint& joint : connection.run()->joints) ++count[catalog.mating_rules()[joint.rule].seal];
    for (const chain::RunPart& part : connection.run()->parts)
      for (const chain::Follower& plug : part.plugs()) count_mate(catalog.part(plug.plug).ports[0].type);
  }
  for (const TestPlug& plug : sections.leak_test.plugs)
    if (plug.part) count_mate(catalog.part(*plug.part).ports[0].type);
  const JobPort* bung = riser_bung(inputs.job);
  if (sections.riser.request.bung != reservoir::BungKind::welded_riser) {
    if (bung != nullptr) count_mate(bung->type);
    if (bung == nullptr) ++count["thread sealant"];
  }
  return count;
}

/// The material of which two parts meet whose threads seize on each other; nothing: none.
const catalog::Material* gall_on_each_other(const Catalog& catalog, const std::vector<ConnectionPlan>& connections) {
  for (const ConnectionPlan& connection : connections) {
    if (connection.chain() == nullptr) continue;
    const auto& parts = connection.chain()->parts;
    for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
      const auto material = [&](const chain::RunPart& part) -> const catalog::Material& {
        return catalog.material(catalog.part(part.part).material);
      };
      if (material(parts[i]).galls && material(parts[i + 1]).galls) return &material(parts[i]);
    }
  }
  return nullptr;
}

void add_consumables(const Inputs& inputs, const ListedSections& sections, ShoppingList& list) {
  for (const auto& [name, joints] : joints_by_seal(inputs, sections)) {
    const catalog::Seal* seal = inputs.catalog.seal(name);
    if (seal == nullptr || seal->consumable.empty() || seal->clamped) continue;
    const std::string why = fmt::format("{} joint{} with {}", joints, joints == 1 ? "" : "s", name);
    if (seal->tape_per_roll > metres(0.0)) {
      const double metres_of_tape = joints * in_metres(seal->tape_per_joint);
      const int rolls = static_cast<int>(std::ceil(metres_of_tape / in_metres(seal->tape_per_roll)));
      list.consumables.push_back({seal->consumable, fmt::format("{} roll{}", rolls, rolls == 1 ? "" : "s"), why});
    } else {
      list.consumables.push_back({seal->consumable, fmt::format("{}", joints), why});
    }
  }
  if (const catalog::Material* material = gall_on_each_other(inputs.catalog, sections.connections))
    list.consumables.push_back(
        {"anti-gall thread paste", "1 tube", fmt::format("{0} threads gall on {0}", material->name)});
  if (sections.leak_test.possible)
    list.consumables.push_back({"leak-test solution", "1 bottle", "every joint and weld; household soap will not do"});
}

void check_cost(const Wishes& wishes, const ShoppingList& list, Remarks& remarks) {
  const auto& cap = wishes.cost_cap;
  if (!cap || list.total <= *cap) return;
  remarks.caution(Topic::list, fact("list_above_cost_cap", list.total, *cap), "indicative prices");
}

/// What ends the connections, what the riser is cut from and what plugs the ports for the test.
void add_single_parts(const ListedSections& sections, PartTally& tally) {
  if (const RiserPlan& riser = sections.riser; riser.stock_part)
    tally.add(*riser.stock_part, riser.stock_from_bin, "riser");
  for (const ConnectionPlan& connection : sections.connections) {
    if (connection.run() == nullptr) continue;
    for (const chain::RunEnd& end : connection.run()->ends)
      if (end.device) tally.add(*end.device, end.from_bin, connection.name);
  }
  for (const TestPlug& plug : sections.leak_test.plugs)
    if (plug.part) tally.add(*plug.part, plug.from_bin, "leak test");
}

}  // namespace

ShoppingList plan_list(const Inputs& inputs, const ListedSections& sections, BinLeft bin, Remarks& remarks) {
  const Catalog& catalog = inputs.catalog;
  PartTally tally(catalog);
  for (const ConnectionPlan& connection : sections.connections) {
    if (connection.run() == nullptr) continue;
    add_run(catalog, connection, bin, tally);
    add_clamps(catalog, connection, bin, tally);
  }
  add_single_parts(sections, tally);
  add_bungs(inputs, bin, tally);
  add_test_gear(catalog, sections.leak_test, sections.relief, bin, tally);
  ShoppingList list;
  list.buy = tally.taken(false);
  list.from_bin = tally.taken(true);
  for (ListItem& item : list.buy) {
    suggest_instead(catalog, sections, item);
    list.total += item.price();
  }
  cut_riser(catalog, sections.riser, list);
  cut_hoses(catalog, sections.connections, list);
  cut_spans(catalog, sections.connections, list);
  add_consumables(inputs, sections, list);
  check_cost(inputs.job.wishes, list, remarks);
  return list;
}

}  // namespace riserun::plan
