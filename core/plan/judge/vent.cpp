#include "catalog/words/words.h"
#include "plan/judge/limits.h"
#include "plan/judge/open.h"
#include "plan/sold.h"
#include "quantity/nearly.h"

#include <algorithm>

namespace riserun::plan {

namespace {

const catalog::Family& family_of(const Plan& plan, PartId part) {
  return plan.catalog->family(plan.catalog->part(part).family);
}

/// The part of a feed that keeps the air in: a check valve.
const WayPart* check_of(const Plan& plan, const Way& way) {
  const auto check = std::find_if(way.parts.begin(), way.parts.end(), [&](const WayPart& part) {
    return plan.catalog->part(part.part).one_way && family_of(plan, part.part).role != catalog::Role::regulator;
  });
  return check != way.parts.end() ? &*check : nullptr;
}

Fact why_it_is_needed(const Plan& plan) {
  // An end that would be one, of a run that is said to carry water.
  for (const Way& way : plan.ways)
    for (const ConnectionPlan& connection : plan.connections) {
      const JobPort* port = port_named(plan.job.reservoir.ports, connection.from);
      if (connection.name == way.connection && way.use == WayUse::water && way.device && port != nullptr &&
          port->place == Place::lid)
        return fact("vent_said_to_carry_water", connection.name);
    }
  for (const Way& way : plan.ways)
    if (const WayPart* check = way.use == WayUse::feed ? check_of(plan, way) : nullptr)
      return fact("no_vent_behind_check_valve", way.connection, plan.catalog->part(check->part).name);
  return fact("no_vent");
}

/// Along a hose to the valve, which is the one way in which a hand lets the pressure off.
void judge_distance(const Plan& plan, const Way& way, Open& open) {
  Length away{};
  bool by_hose = false;
  for (const WayPart& part : way.parts) {
    if (family_of(plan, part.part).can_shut) break;  // behind it the hose is open
    away += part.length;
    by_hose = by_hose || plan.catalog->part(part.part).flexible;
  }
  if (!by_hose || quantity::at_most(away, kFarthestVent)) return;
  open.not_yet(Topic::connections, fact("vent_valve_far_away", way.branched ? way.end : way.connection, away), {},
               fact("vent_valve_on_its_bung"), "common practice");
}

/// A plug on a port of the lid that is meant for the vent, by its name or its connection's; nullptr: there is none.
const ConnectionPlan* plugged_vent(const Plan& plan) {
  const auto tells = [](const std::string& name) {
    return catalog::lower_case(name).find("vent") != std::string::npos;
  };
  for (const ConnectionPlan& connection : plan.connections) {
    const JobPort* port = port_named(plan.job.reservoir.ports, connection.from);
    const bool in_lid = port != nullptr && port->type.valid() && port->place.value_or(Place::lid) == Place::lid;
    if (in_lid && !connection.branched && connection.ends_in &&
        family_of(plan, *connection.ends_in).role == catalog::Role::plug &&
        (tells(port->name) || tells(connection.name)))
      return &connection;
  }
  return nullptr;
}

/// Of the port's own size, so that the bung stays; else of the usual one.
std::optional<PartId> valve_for(const Plan& plan, const std::string& port) {
  const Catalog& catalog = *plan.catalog;
  const JobPort* bung = port_named(plan.job.reservoir.ports, port);
  if (bung == nullptr || !bung->type.valid()) return vent_valve(catalog);
  const auto size = catalog.port_type(bung->type).size;
  for (const PartId valve : vent_valves(catalog))
    if (catalog.port_type(catalog.part(valve).ports[0].type).size == size) return valve;
  return vent_valve(catalog);
}

/// What lets the air out at all times never holds it; what no hand opens lets none out.
/// @return it is a vent: it can be opened and shut
bool judge_one(const Plan& plan, const Way& way, Open& open) {
  const std::string& name = way.branched ? way.end : way.connection;
  if (const WayPart* check = check_of(plan, way)) {
    const catalog::Part& part = plan.catalog->part(check->part);
    open.not_yet(Topic::connections,
                 fact("vent_behind_check_valve", name, part.name, part.opens_at.value_or(psig(0.0))), {},
                 fact("take_check_valve_out"), "common practice");
    return true;
  }
  // Backed off, it is shut: what comes to it from behind stays (common practice).
  if (const auto regulator = last_regulator(*plan.catalog, way); regulator != way.parts.end()) {
    const std::string& part = plan.catalog->part(regulator->part).name;
    Finding& finding = open.not_yet(Topic::connections, fact("vent_behind_regulator", name, part), {},
                                    fact("leave_the_part_out", part), "common practice");
    if (!way.branched) finding.ways_to_try = {{{kNeedLeftOut, way.connection, regulator->part}}};
    return true;
  }
  if (way_is_opened_by_hand(*plan.catalog, way)) {
    judge_distance(plan, way, open);
    return true;
  }
  const catalog::Part& device = plan.catalog->part(*way.device);
  if (family_of(plan, *way.device).role == catalog::Role::plug) return false;
  if (device.one_way || shuts_itself(*plan.catalog, *way.device)) {
    const ConnectionPlan* from = connection_named(plan.connections, way.connection);
    const auto valve = valve_for(plan, from->from);
    Finding& finding = open.not_yet(Topic::connections, fact("vent_that_no_hand_opens", name, device.name), {},
                                    fact("put_a_valve_there"), "common practice",
                                    Purchase{"vent-valve", "ball valve", fact("for_the_vent"), valve});
    if (valve && !way.branched) finding.ways_to_try = {{{kDeviceOf, way.connection, valve}}};
    return true;  // with that it is one
  }
  open.not_yet(Topic::connections, fact("open_to_the_air", name, device.name), {}, fact("put_a_valve_there"),
               "common practice");
  return false;
}

/// A vent that does not go together is asked for with a check valve all the same.
void judge_asked_checks(const Plan& plan, Open& open) {
  const Catalog& catalog = *plan.catalog;
  for (const ConnectionPlan& connection : plan.connections) {
    if (connection.run() != nullptr || !is_asked_as_vent(catalog, plan.job, connection)) continue;
    if (const chain::Need* check = asked_check(catalog, connection))
      open.not_yet(Topic::connections,
                   fact("vent_behind_check_valve", connection.name, check->words,
                        catalog.part(check->parts.front()).opens_at.value_or(psig(0.0))),
                   {}, fact("take_check_valve_out"), "common practice");
  }
}

/// Through a throttle the table drains, and the pressure goes, when nobody waits for it any more.
void judge_throttle(const Plan& plan, Open& open) {
  const auto& vent = plan.transfer.vent;
  const Time takes = plan.transfer.drain.time;
  if (!vent || takes <= kSlowestVent * vent->unthrottled) return;
  const Way* first = nullptr;
  for (const Way& way : plan.ways)
    if (way.use == WayUse::vent && first == nullptr) first = &way;
  if (first == nullptr) return;  // there is none, which has its own finding
  const std::string& name = first->branched ? first->end : first->connection;
  const auto hole = std::find_if(first->parts.begin(), first->parts.end(), [&](const WayPart& part) {
    return family_of(plan, part.part).role == catalog::Role::restrictor;
  });
  if (hole != first->parts.end()) {
    open.not_yet(Topic::transfer, fact("vent_is_a_throttle", name, takes, vent->unthrottled), {},
                 fact("take_out_of_the_vent", name, plan.catalog->part(hole->part).name), "common practice");
    return;
  }
  const std::optional<Fact> mend =
      vent->enough
          ? std::optional(fact("vent_as_wide_as", name, plan.catalog->part(*vent->enough).name, vent->with_enough))
          : std::optional(fact("wider_vents"));
  Finding& finding = open.not_yet(Topic::transfer, fact("vent_is_a_throttle", name, takes, vent->unthrottled), {}, mend,
                                  "common practice");
  if (vent->enough && !first->branched) finding.ways_to_try = {{{kDeviceOf, name, vent->enough}}};
}

}  // namespace

void judge_vent(const Plan& plan, const Settled& /*settled*/, Open& open) {
  judge_asked_checks(plan, open);
  bool any = false;
  for (const Way& way : plan.ways) any = (way.use == WayUse::vent && judge_one(plan, way, open)) || any;
  if (any) judge_throttle(plan, open);
  if (any || devices_are_missing(plan)) return;
  const ConnectionPlan* plugged = plugged_vent(plan);
  const JobPort* free = plugged == nullptr ? free_port_for(plan, "vent") : nullptr;
  const auto valve = plugged != nullptr ? valve_for(plan, plugged->from)
                     : free != nullptr  ? valve_for(plan, free->name)
                                        : vent_valve(*plan.catalog);
  Finding& finding = open.not_yet(Topic::transfer, why_it_is_needed(plan), {}, fact("add_a_vent"), "common practice",
                                  Purchase{"vent-valve", "ball valve", fact("for_the_vent"), valve});
  if (plugged != nullptr && valve) {
    finding.mend =
        fact("valve_in_place_of_plug", plugged->from, plugged->name,
             plan.catalog->part(*valve).name + " " + plan.catalog->material(plan.catalog->part(*valve).material).name);
    finding.ways_to_try = {{{kDeviceOf, plugged->name, valve}}};
    return;
  }
  if (valve) put_on_lid(plan, *valve, free, finding);
}

}  // namespace riserun::plan
