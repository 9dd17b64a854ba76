#include "plan/stage/list.h"

#include "plan/stage/bungs.h"
#include "plan/stage/consumables.h"
#include "plan/stage/cuts.h"
#include "plan/stage/instead.h"
#include "plan/stage/part_tally.h"
#include "plan/stage/riser_bushing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace riserun::plan {

namespace {

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
  item.each = Price::unknown();
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

/// What the rig holds, where its place in it has no part of the catalog's; and a rig's own parts, of which those that
/// the job lends stand on the list already.
void add_rig(const LeakTestPlan& test, PartTally& tally) {
  if (!test.rig) return;
  for (const std::vector<RigPart>& parts : {test.rig->parts, test.at_supply})
    for (const RigPart& part : parts) {
      if (part.whose == RigPart::Whose::job)
        tally.used_too(part.part, kLeakTestUse);
      else
        tally.add(part.part, part.whose == RigPart::Whose::bin, kLeakTestUse);
    }
}

void add_test_gear(const LeakTestPlan& test, PartTally& tally) {
  if (test.steps.empty()) return;
  add_rig(test, tally);
  const chain::Run* run = test.rig ? test.rig->run() : nullptr;
  const auto stands_in_rig = [&](std::size_t end) { return run != nullptr && run->ends[end].device.has_value(); };
  if (!(test.gauge_full_scale > psig(0.0)))
    tally.add_unlisted(unlisted("water-column", "clear hose for a water column",
                                fact("hose_for_water_column", test.water_column_leg * 2.0), "hose and clamps",
                                kLeakTestUse));
  else if (!stands_in_rig(0))
    tally.add_unlisted(unlisted("test-gauge", "low-pressure gauge",
                                fact("gauge_to_and_marks", test.gauge_full_scale, test.gauge_mark), "gauges and air",
                                kLeakTestUse));
  if (!stands_in_rig(1))
    tally.add_unlisted(unlisted("test-relief", "relief valve", fact("set_at", test.relief_opens.value_or(test.relief)),
                                "gauges and air", kLeakTestUse));
}

/// What the leak test buys stays on the reservoir where the job lacks it.
bool bought_for_rig(const LeakTestPlan& test, const std::optional<PartId>& part) {
  return part && test.rig && std::any_of(test.rig->parts.begin(), test.rig->parts.end(), [&](const RigPart& rig) {
           return rig.part == *part && rig.whose == RigPart::Whose::bought;
         });
}

/// What is missing in the job.
void add_open(const std::vector<Finding>& findings, const LeakTestPlan& test, BinLeft& bin, PartTally& tally) {
  // Of these a reservoir has one, however many findings ask for it.
  constexpr std::string_view kOnce[] = {"regulator", "relief", "gauge", "water-column", "fill-plug", "vent-valve"};
  std::vector<const Purchase*> bought;
  const auto add = [&](const Purchase& buy) {
    const bool is_there = std::any_of(bought.begin(), bought.end(), [&](const Purchase* other) {
      return other->id == buy.id && other->part == buy.part && other->measure == buy.measure;
    });
    if (is_there && std::find(std::begin(kOnce), std::end(kOnce), buy.id) != std::end(kOnce)) return;
    bought.push_back(&buy);
    if (!bought_for_rig(test, buy.part))
      add_part_or_thing(buy.part, unlisted(buy.id, buy.name, buy.measure, "gauges and air", "reservoir"), bin, tally);
  };
  for (const Finding& finding : findings) {
    if (finding.buy) add(*finding.buy);
    for (const Purchase& also : finding.also_buy) add(also);
  }
}

/// The one that the job counts on, where no run has it.
void add_drilled_restrictor(const Inputs& inputs, const std::vector<ConnectionPlan>& connections, PartTally& tally) {
  if (!inputs.job.air.restrictor) return;
  const Catalog& catalog = inputs.catalog;
  for (const ConnectionPlan& connection : connections) {
    if (connection.run() == nullptr) continue;
    for (const chain::RunPart& part : connection.run()->parts)
      if (catalog.family(catalog.part(part.part).family).role == catalog::Role::restrictor) return;
  }
  tally.add_unlisted(unlisted("restrictor", "drilled restrictor, right before the regulator",
                              fact("hole_no_larger_than", *inputs.job.air.restrictor), "gauges and air", "air supply"));
}

/// A bushing that is tapped from both sides, and the wider coupling that it is screwed into: two things that a lid
/// seldom has, so they are bought unless the job says that they are there.
void add_double_tapped(const Inputs& inputs, const JobPort& port, Length pipe, BinLeft& bin, PartTally& tally) {
  const Catalog& catalog = inputs.catalog;
  const auto bushing = riser_bushing(catalog, port.type, pipe, port.bung_part, metal_of_tank(inputs.settled));
  add_part_or_thing(
      bushing ? std::optional(bushing->part) : port.bung_part,
      unlisted("double-tapped-bushing", "double-tapped bushing",
               fact("tapped_from_both_sides", catalog.written(port.type)), "special order", "screw in: " + port.name),
      bin, tally);
  if (!bushing) return;
  const auto coupling = bushing->coupling && welds_to_tank(inputs, catalog.part(*bushing->coupling).material)
                            ? bushing->coupling
                            : std::nullopt;
  add_part_or_thing(coupling,
                    unlisted("bung", "weld bung", fact("bung_for_port", bushing->large, "full coupling"),
                             "weld fittings", "weld in: " + port.name),
                    bin, tally);
}

/// Bungs that are not welded in yet, and what is screwed onto a riser that is welded through the lid.
void add_bungs(const Inputs& inputs, Length riser_pipe, BinLeft& bin, PartTally& tally) {
  const Catalog& catalog = inputs.catalog;
  for (const JobPort& port : inputs.job.reservoir.ports) {
    const bool screwed_in = port.bung == reservoir::BungKind::double_tapped_bushing;
    const bool on_riser = port.bung == reservoir::BungKind::welded_riser;
    if (port.welded_in.value_or(!screwed_in && !on_riser)) continue;
    if (on_riser && !has_coupling_on_top(catalog, port)) continue;
    const std::string used_for = (on_riser ? "screw on: " : "weld in: ") + port.name;
    if (screwed_in) {
      add_double_tapped(inputs, port, riser_pipe, bin, tally);
      continue;
    }
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
                 "weld fittings", used_for),
        bin, tally);
  }
}

quantity::Texts without_price(const ShoppingList& list) {
  quantity::Texts names;
  for (const ListItem& item : list.buy)
    if (!item.each.known()) names.push_back(item.name);
  return names;
}

void check_cost(const Wishes& wishes, const ShoppingList& list, Remarks& remarks) {
  const auto& cap = wishes.cost_cap;
  if (!cap) return;
  if (list.total.cents() > cap->cents())
    remarks.caution(Topic::whole_job, fact("list_above_cost_cap", list.total, *cap), "indicative prices");
  else if (!list.total.known())
    remarks.caution(Topic::whole_job, fact("cost_cap_not_sure", list.total, *cap, without_price(list)),
                    "indicative prices");
}

/// What ends the connections, what the riser is cut from and what plugs the ports for the test.
void add_single_parts(const Catalog& catalog, const ListedSections& sections, BinLeft& bin, PartTally& tally) {
  const RiserPlan& riser = sections.riser;
  if (riser.stock_part)
    tally.add(*riser.stock_part, riser.stock_from_bin, "riser");
  else if (riser.material && riser.riser.cut_length > metres(0.0))
    tally.add_unlisted(unlisted(
        "riser-pipe", riser.request.pipe.name,
        fact("pipe_threaded_at_one_end", riser.riser.cut_length, catalog.written(*riser.thread)), "pipe", "riser"));
  if (riser.holder)
    for (const chain::RunPart& part : riser.holder->parts) tally.add(part.part, bin.take(part.part), "riser");
  for (const ConnectionPlan& connection : sections.connections) {
    if (connection.run() == nullptr) continue;
    for (const chain::RunEnd& end : connection.run()->ends)
      if (end.device) tally.add(*end.device, end.from_bin, connection.name);
  }
  for (const TestPlug& plug : sections.leak_test.plugs)
    if (plug.part && !plug.of_job) tally.add(*plug.part, plug.from_bin, kLeakTestUse);
}

/// The first bins are emptied first.
std::vector<BinPlace> places_of(const std::vector<catalog::NamedBin>& bins, const ListItem& item) {
  std::vector<BinPlace> places;
  if (bins.size() < 2 || !item.part) return places;
  int left = item.quantity;
  for (const catalog::NamedBin& bin : bins) {
    const int here = std::min(left, bin.bin.count_of(*item.part));
    if (here > 0) places.push_back({bin.name, here});
    left -= std::max(here, 0);
  }
  return places;
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
  add_single_parts(catalog, sections, bin, tally);
  add_bungs(inputs, sections.riser.request.pipe.outside_diameter, bin, tally);
  add_drilled_restrictor(inputs, sections.connections, tally);
  add_test_gear(sections.leak_test, tally);
  add_open(sections.findings, sections.leak_test, bin, tally);
  ShoppingList list;
  list.buy = tally.taken(false);
  list.from_bin = tally.taken(true);
  for (ListItem& item : list.from_bin) item.lies_in = places_of(inputs.job.bins, item);
  for (ListItem& item : list.buy) {
    const bool in_a_named_metal = inputs.job.riser.material && item.part == sections.riser.stock_part;
    if (!in_a_named_metal) suggest_instead(catalog, sections.connections, item);
    // A row without price is one thing to ask for, however many of it.
    list.total += item.each.known() ? item.price() : Price::unknown();
  }
  cut_riser(catalog, sections.riser, list);
  cut_hoses(catalog, sections.connections, list);
  cut_spans(catalog, sections.connections, list);
  cut_baffles(inputs, sections.walls, list);
  cut_stays(inputs, sections.walls, list);
  add_consumables(inputs, sections, list);
  check_cost(inputs.job.wishes, list, remarks);
  return list;
}

}  // namespace riserun::plan
