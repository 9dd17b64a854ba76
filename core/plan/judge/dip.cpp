#include "plan/judge/dip.h"

#include "plan/judge/open.h"
#include "plan/sold.h"

#include <algorithm>

namespace riserun::plan {

namespace {

bool is_in_lid(const Plan& plan, const JobPort& port) {
  return port.name != plan.riser.bung && &port != riser_bung(plan.job) && port.place.value_or(Place::lid) == Place::lid;
}

enum class Opens { at_once, with_its_valve, not_by_itself };

/// A straight rod goes through: straight on, open all the way when a valve's lever lies along it, and as wide as a thin
/// rod (common practice: 1/4 in).
bool passes_a_rod(const Catalog& catalog, PartId id, std::size_t enter, std::size_t leave) {
  const Length rod = inches(0.25);
  const catalog::Part& part = catalog.part(id);
  const catalog::Family& family = catalog.family(part.family);
  const bool is_open = family.shape == catalog::BodyShape::usual || family.shape == catalog::BodyShape::ball_valve ||
                       family.shape == catalog::BodyShape::gate_valve || family.shape == catalog::BodyShape::pipe;
  const bool holds_nothing = family.role == catalog::Role::connector || family.role == catalog::Role::device;
  if (!is_open || !holds_nothing || part.one_way || part.flexible || family.flexible) return false;
  if (turn_between(part, enter, leave) > 1.0) return false;
  return std::min(part.ports[enter].bore, part.ports[leave].bore) >= rod;
}

/// From the bung through the run and the valve at its end.
bool passes_a_rod(const Catalog& catalog, const ConnectionPlan& connection) {
  if (connection.chain() == nullptr) return true;  // which has its own finding
  const std::vector<chain::RunPart>& parts = connection.chain()->parts;
  const std::size_t at = connection.run()->ends.front().device_port;
  const std::size_t ports = catalog.part(*connection.ends_in).ports.size();
  return std::all_of(
             parts.begin(), parts.end(),
             [&](const chain::RunPart& link) { return passes_a_rod(catalog, link.part, link.enter, link.leave()); }) &&
         ports == 2 && passes_a_rod(catalog, *connection.ends_in, at, 1 - at);
}

/// Several things on one bung come off with it, and so does a line to another port.
Opens how_it_opens(const Plan& plan, const JobPort& port) {
  Opens opens = Opens::at_once;
  for (const ConnectionPlan& connection : plan.connections) {
    const bool at_end = std::find(connection.ends.begin(), connection.ends.end(), port.name) != connection.ends.end();
    if (connection.from != port.name && !at_end) continue;
    if (at_end || connection.branched || !connection.ends_in) return Opens::not_by_itself;
    const catalog::Part& device = plan.catalog->part(*connection.ends_in);
    const catalog::Family& family = plan.catalog->family(device.family);
    if (family.role == catalog::Role::plug) continue;
    if (!family.can_shut || device.one_way) return Opens::not_by_itself;
    if (!passes_a_rod(*plan.catalog, connection)) return Opens::not_by_itself;
    opens = Opens::with_its_valve;
  }
  return opens;
}

}  // namespace

const JobPort* dip_port(const Plan& plan) {
  const JobPort* by_valve = nullptr;
  for (const JobPort& port : plan.job.reservoir.ports) {
    if (!is_in_lid(plan, port)) continue;
    const Opens opens = how_it_opens(plan, port);
    if (opens == Opens::at_once) return &port;
    if (opens == Opens::with_its_valve && by_valve == nullptr) by_valve = &port;
  }
  return by_valve;
}

void judge_dip_port(const Plan& plan, const Settled& /*settled*/, Open& open) {
  if (dip_port(plan) != nullptr) return;
  const std::vector<JobPort>& ports = plan.job.reservoir.ports;
  const auto under =
      std::find_if(ports.begin(), ports.end(), [&](const JobPort& port) { return is_in_lid(plan, port); });
  // A vent that is still to come is opened for it.
  const bool vented = std::any_of(plan.ways.begin(), plan.ways.end(), [&](const Way& way) {
    return way.use == WayUse::vent && way_is_opened_by_hand(*plan.catalog, way);
  });
  if (under != ports.end() && !vented) return;
  const auto plug = fill_plug(*plan.catalog);
  Finding& finding = open.not_yet(
      Topic::levels, under == ports.end() ? fact("nothing_to_dip_by") : fact("dips_under_what_is_made_up", under->name),
      {}, plug ? std::optional(fact("plug_in_the_lid", plan.catalog->part(*plug).name)) : std::nullopt,
      "common practice", Purchase{"fill-plug", "plug", fact("to_fill_and_dip_by"), plug});
  if (!plug) return;
  const Fact mend = *finding.mend;  // which names the bung already
  put_on_lid(plan, *plug, nullptr, finding);
  finding.mend = mend;
}

}  // namespace riserun::plan
