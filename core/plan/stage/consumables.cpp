#include "plan/stage/consumables.h"

#include "plan/judge/limits.h"
#include "plan/stage/bungs.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

namespace riserun::plan {

namespace {

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
  if (const chain::Run* rig = sections.leak_test.rig ? sections.leak_test.rig->run() : nullptr) {
    for (const chain::RunJoint& joint : rig->joints) ++count[catalog.mating_rules()[joint.rule].seal];
    for (const chain::RunPart& part : rig->parts)
      for (const chain::Follower& plug : part.plugs()) count_mate(catalog.part(plug.plug).ports[0].type);
  }
  for (const TestPlug& plug : sections.leak_test.plugs)
    if (plug.part) count_mate(catalog.part(*plug.part).ports[0].type);
  const JobPort* bung = riser_bung(inputs.job);
  const bool is_welded = sections.riser.request.bung == reservoir::BungKind::welded_riser;
  if (bung == nullptr)
    ++count["thread sealant"];
  else if (!is_welded || has_coupling_on_top(catalog, *bung))
    count_mate(bung->type);
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

/// Rounded up, the feet to a multiple of that many.
std::string feet_or_metres(Length length, double feet) {
  return fmt::format("{:.0f} ft or {:.0f} m", std::ceil(in_feet(length) / feet - 0.01) * feet,
                     std::ceil(in_metres(length) - 0.01));
}

/// `, 1/2 or wider, with a barb for the vent's end,`: of the valve in the lid that lets the air out; empty: there is
/// none.
std::string vent_size(const Inputs& inputs, const std::vector<ConnectionPlan>& connections) {
  for (const ConnectionPlan& connection : connections) {
    if (connection.service != Service::air || !connection.ends_in) continue;
    const catalog::Part& part = inputs.catalog.part(*connection.ends_in);
    const catalog::Family& family = inputs.catalog.family(part.family);
    if (!family.can_shut || part.one_way || part.opens_at) continue;
    return fmt::format(", {} or wider, and a barb to suit,",
                       inputs.catalog.size_name(inputs.catalog.port_type(part.ports.back().type).size));
  }
  return "";
}

std::string square_feet_or_metres(Area area) {
  return fmt::format("{:.0f} sq ft or {:.1f} sq m", std::ceil(in_square_inches(area) / 144.0 - 0.01),
                     std::ceil(in_square_metres(area) * 10.0 - 0.01) / 10.0);
}

std::vector<Length> section_of(const CutItem& bar) {
  if (!bar.width || !bar.thickness) return {};
  return {*bar.width, *bar.thickness};
}

/// Of bars the length of each section and of sheet the area are said: the pieces stand in the cut list, and the shop's
/// rack has them or the steel yard.
void add_metal(ShoppingList& list) {
  struct Bar {
    std::string name;
    std::vector<Length> section;
    Length length{};
  };
  std::vector<Bar> bars;  // as they are cut
  std::map<std::string, Area> sheets;
  const auto add_bar = [&](const std::string& name, const std::vector<Length>& section, Length length) {
    auto bar = std::find_if(bars.begin(), bars.end(),
                            [&](const Bar& each) { return each.name == name && each.section == section; });
    if (bar == bars.end()) bar = bars.insert(bar, {name, section});
    bar->length += length;
  };
  for (const CutItem& item : list.cut) {
    const auto count = static_cast<double>(item.quantity);
    if (item.used_for.starts_with("stays, "))
      add_bar(item.stock.name, section_of(item), item.length * count);
    else if (item.used_for.starts_with("baffles "))
      sheets[item.stock.name] += item.length * item.width.value_or(Length{}) * count;
  }
  for (const Bar& bar : bars)
    list.consumables.push_back(
        {bar.name, feet_or_metres(bar.length, 1.0), "the stays, in the pieces of the cut list", bar.section, "stays"});
  for (const auto& [name, area] : sheets)
    list.consumables.push_back(
        {name, square_feet_or_metres(area), "the baffles, in the pieces of the cut list", {}, "baffles"});
}

/// The sizes that the hose of the leak test is joined to, at the rig and where the supply is worked.
std::string ends_of_test_hose(const Catalog& catalog, const LeakTestPlan& test) {
  const chain::Run* rig = test.rig->run();
  const std::optional<PartId> shut_off = rig == nullptr ? std::nullopt : rig->ends.back().device;
  std::string ends;
  if (shut_off)
    ends +=
        fmt::format("to the {} of the rig's shut-off; ", catalog.written(catalog.part(*shut_off).ports.back().type));
  if (test.at_supply.empty()) return ends;
  const catalog::PortType& outlet = catalog.port_type(catalog.part(test.at_supply.back().part).ports.back().type);
  return ends + fmt::format("tee and valve {}, behind the regulator; ", catalog.size_name(outlet.size));
}

std::string gallons_or_litres(Volume volume) {
  return fmt::format("{:.1f} gal or {:.0f} L", std::ceil(in_us_gallons(volume) * 2.0 - 0.01) / 2.0,
                     std::ceil(in_litres(volume) - 0.01));
}

/// What is said to be done against heat and frost, and must be had for it.
void add_measures(const Job& job, const Levels& levels, ShoppingList& list) {
  if (job.against_frost.antifreeze) {
    const double share = job.liquid.glycol > 0.0 ? job.liquid.glycol : kShareOfAntifreeze;
    list.consumables.push_back({"propylene glycol, inhibited, never ethylene glycol (poison)",
                                gallons_or_litres(levels.charge * share),
                                fmt::format("{:.0f} % of the charge freezes at {:.0f} degF or {:.0f} degC (ASHRAE "
                                            "Handbook, Fundamentals, from memory)",
                                            share * 100.0, in_degrees_fahrenheit(freezes_with(share)),
                                            in_degrees_celsius(freezes_with(share)))});
  }
  if (job.against_frost.heated)
    list.consumables.push_back({"water heater with a thermostat, for this tank and its water", "1", "against frost"});
  if (job.against_frost.insulated || job.against_heat.insulated)
    list.consumables.push_back({"pipe and tank insulation", "to measure", "as the job says"});
  if (job.against_heat.mixing_valve)
    list.consumables.push_back({"mixing valve (thermostatic, set under 140 degF or 60 degC)", "1", "against heat"});
}

}  // namespace

bool has_coupling_on_top(const Catalog& catalog, const JobPort& port) {
  return port.type.valid() && catalog.port_type(port.type).end == catalog::End::female;
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
  list.consumables.push_back({"dip rod", "1", "reads the charge"});
  if (sections.leak_test.possible && sections.leak_test.rig)
    list.consumables.push_back({"air hose, at its far end a tee and a valve to let down by",
                                feet_or_metres(sections.leak_test.energy.standoff, 10.0),
                                ends_of_test_hose(inputs.catalog, sections.leak_test) +
                                    "the leak test is worked from there; the shop's own does"});
  add_metal(list);
  const Job& job = inputs.job;
  add_measures(job, sections.levels, list);
  if ((job.cutting.aluminium || job.cutting.magnesium) && job.vent.stays_open)
    list.consumables.push_back(
        {fmt::format("hose{} from the vent to outdoors", vent_size(inputs, sections.connections)), "1",
         "hydrogen rises: it leads up all the way"});
  if (sections.leak_test.possible)
    list.consumables.push_back({"leak-test solution", "1 bottle", "every joint and weld; household soap will not do"});
}

}  // namespace riserun::plan
