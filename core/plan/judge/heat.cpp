#include "chain/finder.h"
#include "plan/judge/drain.h"
#include "plan/judge/limits.h"
#include "plan/judge/open.h"
#include "plan/sold.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace riserun::plan {

namespace {

/// Temperatures that were written in other units meet their limits to within their rounding.
bool no_hotter(Temperature a, Temperature b) {
  constexpr double kSameKelvins = 0.01;
  return in_kelvins(a) <= in_kelvins(b) + kSameKelvins;
}

void judge_cooling(const Plan& plan, Open& open) {
  const WallsPlan& walls = plan.walls;
  if (!walls.cooling_vacuum || plan.job.vent.stays_open) return;
  const GaugePressure vacuum = GaugePressure() + *walls.cooling_vacuum;
  if (vacuum <= walls.vacuum_limit) return;
  open.not_yet(Topic::walls, fact("cooling_pulls_walls_in", walls.warmest, walls.coldest),
               Against{vacuum, walls.vacuum_limit}, fact("keep_vent_open_or_break_vacuum"), "worked out");
}

/// What the part is proved for, by its duty and its material; nullopt: nothing is stated of heat.
std::optional<Temperature> stands_water_of(const Catalog& catalog, const catalog::Part& part, PartId id) {
  std::optional<Temperature> proved = chain::hottest_proved(catalog, id);
  const auto& softens = catalog.material(part.material).hottest;
  if (softens && (!proved || *softens < *proved)) proved = softens;
  return proved;
}

bool stands(const Catalog& catalog, PartId id, Temperature hottest) {
  const auto proved = stands_water_of(catalog, catalog.part(id), id);
  return proved ? no_hotter(hottest, *proved) : no_hotter(hottest, kWarm);
}

/// One that does the same in the same place and stands the water: of the same role and ports, the cheapest.
const catalog::Part* instead_of(const Plan& plan, const catalog::Part& part, Temperature hottest) {
  const Catalog& catalog = *plan.catalog;
  const catalog::Family& family = catalog.family(part.family);
  const auto alike = [](const catalog::Port& a, const catalog::Port& b) { return a.type == b.type; };
  const catalog::Part* best = nullptr;
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& other = catalog.part({row});
    const catalog::Family& of_other = catalog.family(other.family);
    if (of_other.role != family.role || of_other.can_shut != family.can_shut || of_other.check != family.check ||
        other.opens_at != part.opens_at || other.full_scale != part.full_scale || other.flexible != part.flexible ||
        !std::equal(part.ports.begin(), part.ports.end(), other.ports.begin(), other.ports.end(), alike) ||
        !stands(catalog, {row}, hottest) || (best != nullptr && !(other.price < best->price)))
      continue;
    best = &other;
  }
  return best;
}

/// The parts of the runs that the water stands in, and their devices; each once.
std::vector<PartId> wetted_parts(const Plan& plan) {
  std::vector<PartId> parts;
  const auto add = [&](PartId part) {
    if (std::find(parts.begin(), parts.end(), part) == parts.end()) parts.push_back(part);
  };
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::water) continue;
    for (const WayPart& part : way.parts) add(part.part);
    if (way.device) add(*way.device);
  }
  for (const auto& of_riser : {plan.riser.stock_part, plan.riser.uncut_part})
    if (of_riser) add(*of_riser);
  if (plan.riser.holder)
    for (const chain::RunPart& part : plan.riser.holder->parts) add(part.part);
  return parts;
}

/// In air a part is as warm as the water that it stands over at most: there its stuff must not soften.
void judge_parts_over_the_water(const Plan& plan, Temperature hottest, const std::vector<PartId>& wetted, Open& open) {
  std::map<MaterialId, quantity::Texts> too_hot;
  const auto look_at = [&](PartId id) {
    const catalog::Part& part = plan.catalog->part(id);
    const auto& limit = plan.catalog->material(part.material).hottest;
    if (!limit || hottest <= *limit || std::find(wetted.begin(), wetted.end(), id) != wetted.end()) return;
    quantity::Texts& names = too_hot[part.material];
    if (std::find(names.begin(), names.end(), part.name) == names.end()) names.push_back(part.name);
  };
  for (const Way& way : plan.ways) {
    for (const WayPart& part : way.parts) look_at(part.part);
    if (way.device) look_at(*way.device);
  }
  for (auto& [material, names] : too_hot) {
    const catalog::Material& row = plan.catalog->material(material);
    open.not_yet(Topic::connections, fact("parts_too_hot", std::move(names), row.name), Against{hottest, *row.hottest},
                 fact("parts_for_hot_water", row.name), row.source);
  }
}

/// Of pipe or hose between a part and the lid: what stands further away is as cool as the shop. A 1/4 in pipe of steel
/// in still air has lost nine tenths of its excess of heat there (worked out, as a fin).
const Length kAwayFromHeat = inches(12.0);

/// `hottest` is of the water or of the place. In a place that is hot itself a part is no cooler at the end of a pipe:
/// it is the water alone that comes to it where the water's own temperature says so, where the job handles hot water,
/// or where no shop gets so hot (a loft under the sun stays below what scalds: common practice).
bool heat_is_the_waters(const Job& job, const Settled& settled, Temperature hottest) {
  return no_hotter(hottest, settled.temperature) || job.against_heat.handles() || no_hotter(kScalding, hottest);
}

struct Heat {
  Temperature hottest;
  bool is_the_waters = false;
};

/// The parts that hold air and stand as warm as the reservoir's lid, with what they hang on; each once.
/// @param by_water  what stands away from the lid is cool
struct WarmedPart {
  PartId part;
  const Way* way = nullptr;
};
std::vector<WarmedPart> warmed_parts(const Plan& plan, bool by_water) {
  std::vector<WarmedPart> warmed;
  const auto add = [&](PartId part, const Way& way) {
    if (std::none_of(warmed.begin(), warmed.end(), [&](const WarmedPart& known) { return known.part == part; }))
      warmed.push_back({part, &way});
  };
  for (const Way& way : plan.ways) {
    if (way.use == WayUse::water) continue;
    std::vector<WayPart> from_reservoir = way.parts;
    if (way.use == WayUse::feed) std::reverse(from_reservoir.begin(), from_reservoir.end());
    Length away{};
    for (const WayPart& part : from_reservoir) {
      if (!by_water || away < kAwayFromHeat) add(part.part, way);
      away += part.length;
    }
    if (way.device && (!by_water || away < kAwayFromHeat)) add(*way.device, way);
  }
  return warmed;
}

std::string size_of_thread(const Catalog& catalog, const catalog::Part& part) {
  return catalog.size_name(catalog.port_type(part.ports[0].type).size);
}

/// The first of the family, the metal and the size that is stocked.
std::optional<PartId> stocked(const Catalog& catalog, std::string_view family, const std::string& size) {
  for (const PartId id : parts_of(catalog, family, "black-iron"))
    if (catalog.part(id).stocked && catalog.part(id).size == size) return id;
  return std::nullopt;
}

/// A foot of pipe between it and the reservoir; where that stands too tall under the table, turned aside at its bung.
void set_away(const Plan& plan, const WarmedPart& warmed, const std::string& size, Finding& finding) {
  const Catalog& catalog = *plan.catalog;
  const bool is_regulator = catalog.family(catalog.part(warmed.part).family).role == catalog::Role::regulator;
  const auto nipple = stocked(catalog, "nipple", size + " x 12 in");
  const auto elbow = stocked(catalog, "90 elbow", size);
  if (!is_regulator || warmed.way->branched || !nipple || !elbow) return;
  const std::string& connection = warmed.way->connection;
  const Changes away = {{kNeedOf, connection, nipple}};
  const Changes aside = {{kNeedOf, connection, nipple}, {kNeedOf, connection, elbow}};
  finding.ways_to_try = {away};
  finding.or_else = {
      {fact("away_from_the_heat_aside", catalog.part(warmed.part).name, kAwayFromHeat, size), {}, {aside}}};
}

/// Regulator, hose, valve, gauge and relief valve are proved for what the lid comes to.
void judge_warmed_parts(const Plan& plan, Heat heat, const std::vector<PartId>& wetted, Open& open) {
  const Temperature hottest = heat.hottest;
  for (const WarmedPart& warmed : warmed_parts(plan, heat.is_the_waters)) {
    const catalog::Part& part = plan.catalog->part(warmed.part);
    const auto proved = chain::hottest_proved(*plan.catalog, warmed.part);
    const auto& softens = plan.catalog->material(part.material).hottest;
    const bool said_already = (softens && !no_hotter(hottest, *softens)) ||
                              std::find(wetted.begin(), wetted.end(), warmed.part) != wetted.end();
    if (said_already || !proved || no_hotter(hottest, *proved)) continue;
    const catalog::Part* other = instead_of(plan, part, hottest);
    const std::string& name = warmed.way->branched ? warmed.way->end : warmed.way->connection;
    const std::string size = size_of_thread(*plan.catalog, part);
    // Neither hangs on a hose.
    const bool stiff = warmed.way->use == WayUse::gauge || warmed.way->use == WayUse::relief;
    Finding& finding = open.not_yet(
        Topic::connections,
        fact(heat.is_the_waters ? "air_part_too_hot" : "air_part_in_hot_place", name, part.name, hottest),
        Against{hottest, *proved},
        other != nullptr ? fact("part_that_stands_the_heat", other->name, part.name)
        : heat.is_the_waters
            ? fact(stiff ? "away_from_the_heat_by_pipe" : "away_from_the_heat", part.name, kAwayFromHeat, size)
            : fact(stiff ? "cooler_place_or_pipe" : "cooler_place_or_water_alone", part.name, hottest, kAwayFromHeat,
                   size),
        plan.catalog->duty(warmed.part)->source);
    if (other == nullptr && heat.is_the_waters) set_away(plan, warmed, size, finding);
  }
}

/// A valve of a drain or its like, of its bung's own thread, that stands the water where none of its kind does;
/// nullopt: the part ends no connection of the reservoir's that could end in another.
std::optional<Mend> another_valve(const Plan& plan, PartId id, Temperature hottest) {
  const Catalog& catalog = *plan.catalog;
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::water || way.branched || way.device != id || !way_is_shut_by_hand(catalog, way)) continue;
    const ConnectionPlan* line = connection_named(plan.connections, way.connection);
    const JobPort* port = line != nullptr ? find_port(plan.job, line->from) : nullptr;
    if (port == nullptr || !port->type.valid()) continue;
    for (const PartId valve : vent_valves(catalog)) {
      const catalog::PortType& own = catalog.port_type(catalog.part(valve).ports[0].type);
      const catalog::PortType& bung = catalog.port_type(port->type);
      if (own.size == bung.size && own.kind == bung.kind && stands(catalog, valve, hottest))
        return Mend{fact("part_that_stands_the_heat", catalog.part(valve).name, catalog.part(id).name),
                    {},
                    {{{kDeviceOf, way.connection, valve}}}};
    }
  }
  return std::nullopt;
}

/// What a part in the water is proved for is at least what the water comes to; of what nothing is stated, warm water.
void judge_hot_parts(const Plan& plan, Heat heat, Open& open) {
  const Temperature hottest = heat.hottest;
  const std::vector<PartId> wetted = wetted_parts(plan);
  judge_parts_over_the_water(plan, hottest, wetted, open);
  judge_warmed_parts(plan, heat, wetted, open);
  for (const PartId id : wetted) {
    if (stands(*plan.catalog, id, hottest)) continue;
    const catalog::Part& part = plan.catalog->part(id);
    const auto proved = stands_water_of(*plan.catalog, part, id);
    const catalog::Part* other = instead_of(plan, part, hottest);
    const catalog::Duty* duty = plan.catalog->duty(id);
    const std::string& source = duty != nullptr ? duty->source : plan.catalog->material(part.material).source;
    Finding& finding =
        open.not_yet(Topic::connections, fact(proved ? "part_too_hot" : "part_of_unknown_heat", part.name),
                     Against{hottest, proved ? std::optional<quantity::Value>(*proved) : std::nullopt},
                     other != nullptr ? fact("part_that_stands_the_heat", other->name, part.name)
                                      : fact("ask_maker_of_heat", part.name, hottest),
                     source);
    if (other == nullptr && proved)
      if (const auto valve = another_valve(plan, id, hottest)) finding.or_else = {*valve};
  }
}

/// What is drained against frost, and by nothing else beside: of the lowest drain no more stays than lies under the
/// riser's end, or the riser's foot freezes in.
void judge_rest(const Plan& plan, Open& open) {
  const AgainstFrost& against = plan.job.against_frost;
  if (against.heated || against.antifreeze) return;
  const DrainPlan* lowest = nullptr;
  for (const DrainPlan& drain : plan.drains)
    if (!drain.of_table && (lowest == nullptr || drain.stays_at < lowest->stays_at)) lowest = &drain;
  if (lowest == nullptr || !quantity::more_than(lowest->stays_at, plan.riser.riser.end_height)) return;
  const Way& way = plan.ways[lowest->way];
  open.not_yet(
      Topic::connections,
      fact("drain_leaves_what_freezes", way.branched ? way.end : way.connection, lowest->stays_at, lowest->left),
      Against{lowest->stays_at, plan.riser.riser.end_height}, fact("drain_in_the_floor_or_more"), "common practice");
}

/// What is said to be drained, by that alone or beside heat or antifreeze, asks for something to drain it by.
void judge_drained(const Plan& plan, Open& open) {
  if (plan.job.against_frost.drained) judge_rest(plan, open);
  if (!plan.job.against_frost.drained || reservoir_can_be_emptied(plan)) return;
  open.not_yet(Topic::connections, fact("drained_by_nothing"), {}, fact("drain_low_on_the_reservoir"),
               "common practice");
}

void judge_frost(const Plan& plan, Temperature coldest, Open& open) {
  if (!(coldest < kFreezing)) {
    // Who says what is done against frost, and not how cold it gets, has frost.
    if (!plan.job.coldest) judge_drained(plan, open);
    return;
  }
  const AgainstFrost& against = plan.job.against_frost;
  if (!against.handles()) {
    open.not_yet(Topic::whole_job, fact(against.insulated ? "insulation_stops_no_frost" : "water_can_freeze", coldest),
                 Against{coldest, kFreezing}, fact("say_what_is_done_against_frost"), "common practice");
    return;
  }
  judge_drained(plan, open);
  const double share = plan.job.liquid.glycol > 0.0 ? plan.job.liquid.glycol : kShareOfAntifreeze;
  if (against.antifreeze && !against.drained && !against.heated && coldest < freezes_with(share))
    open.not_yet(Topic::whole_job, fact("antifreeze_too_weak", coldest), Against{coldest, freezes_with(share)},
                 fact("drain_or_heat_too"), "ASHRAE Handbook, Fundamentals, from memory");
}

void judge_scalding(const Plan& plan, Temperature hottest, Open& open) {
  const AgainstHeat& against = plan.job.against_heat;
  if (hottest < kScalding || against.handles()) return;
  open.not_yet(Topic::whole_job, fact(against.protection_worn ? "gloves_alone" : "water_scalds", hottest),
               no_hotter(hottest, kScalding) ? std::nullopt : std::optional(Against{hottest, kScalding}),
               fact("say_what_is_done_against_heat"), "Moritz and Henriques 1947");
}

}  // namespace

void judge_heat(const Plan& plan, const Settled& settled, Open& open) {
  judge_cooling(plan, open);
  const Job& job = plan.job;
  const Temperature hottest = std::max(settled.temperature, job.hottest.value_or(settled.temperature));
  const Temperature coldest = std::min(settled.temperature, job.coldest.value_or(settled.temperature));
  judge_scalding(plan, hottest, open);
  judge_frost(plan, coldest, open);
  judge_hot_parts(plan, {hottest, heat_is_the_waters(job, settled, hottest)}, open);
}

}  // namespace riserun::plan
