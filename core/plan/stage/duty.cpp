// What the runs of a job must stand besides pressure: the heat of the water, and the vacuum of water that cools.
#include "plan/stage/duty.h"

#include "chain/finder.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::plan {

namespace {

// Shut in and cooling from there, water draws a vacuum that a soft hose feels: common practice.
Temperature warm_enough_for_vacuum() { return degrees_fahrenheit(100.0); }

bool on_reservoir(const Job& job, const JobConnection& connection) {
  return port_named(job.reservoir.ports, connection.from) != nullptr ||
         port_named(job.reservoir.ports, connection.to) != nullptr;
}

/// Something that is asked for may shut the run: with it open, the run's far end lets air in before a vacuum is felt.
bool may_be_shut(const Catalog& catalog, const JobConnection& connection) {
  const auto shuts = [&](PartId id) {
    const catalog::Part& part = catalog.part(id);
    return part.one_way || catalog.family(part.family).can_shut;
  };
  const auto any_shuts = [&](const std::vector<chain::Need>& needs) {
    return std::any_of(needs.begin(), needs.end(), [&](const chain::Need& need) {
      return std::any_of(need.parts.begin(), need.parts.end(), shuts);
    });
  };
  return any_shuts(connection.needs) ||
         (connection.ends_in &&
          std::any_of(connection.ends_in->parts.begin(), connection.ends_in->parts.end(), shuts)) ||
         std::any_of(connection.branches.begin(), connection.branches.end(),
                     [&](const JobBranch& branch) { return any_shuts(branch.needs); });
}

/// In their order from the reservoir what shuts comes before all that bends, and the far end opens to the air at the
/// table: with the valve shut no vacuum comes to the hose.
bool hoses_lie_beyond_the_valve(const Inputs& inputs, const JobConnection& connection) {
  const Catalog& catalog = inputs.catalog;
  const std::vector<JobPort>& tank = inputs.job.reservoir.ports;
  const std::vector<JobPort>& table = inputs.job.table.ports;
  const bool up = port_named(tank, connection.from) != nullptr && port_named(table, connection.to) != nullptr;
  const bool down = port_named(tank, connection.to) != nullptr && port_named(table, connection.from) != nullptr;
  if (!connection.needs_in_order || (!up && !down)) return false;
  const auto all = [&](const chain::Need& need, auto is) {
    return std::all_of(need.parts.begin(), need.parts.end(), is);
  };
  std::vector<const chain::Need*> from_tank;
  for (const chain::Need& need : connection.needs) from_tank.push_back(&need);
  if (down) std::reverse(from_tank.begin(), from_tank.end());
  for (const chain::Need* need : from_tank) {
    if (!all(*need, [&](PartId part) { return !catalog.part(part).flexible; })) return false;
    if (all(*need, [&](PartId part) { return catalog.family(catalog.part(part).family).can_shut; })) return true;
  }
  return false;
}

}  // namespace

std::optional<Temperature> settle_hottest(const Inputs& inputs, const JobConnection& connection, Service service,
                                          Remarks& remarks) {
  if (connection.hottest) return connection.hottest;
  const Temperature water = inputs.settled.temperature;
  if (service != Service::water || !(chain::rated_up_to() < water)) return std::nullopt;
  remarks.assume(fact("hottest_in_connection", connection.name, water), key_of(inputs.job, connection, "hottest"));
  return water;
}

bool settle_vacuum(const Inputs& inputs, const JobConnection& connection, Service service, Remarks& remarks) {
  if (connection.tells_of_vacuum) return connection.vacuum;
  const bool draws = service == Service::water && !inputs.job.vent.stays_open &&
                     !hoses_lie_beyond_the_valve(inputs, connection) && on_reservoir(inputs.job, connection) &&
                     warm_enough_for_vacuum() < inputs.settled.warmest && may_be_shut(inputs.catalog, connection);
  if (draws) remarks.assume(fact("vacuum_in_connection", connection.name), key_of(inputs.job, connection, "vacuum"));
  return draws;
}

std::vector<PartId> proved_devices(const Catalog& catalog, const std::vector<PartId>& devices, ConnectionPlan& plan) {
  std::vector<PartId> proved;
  for (const PartId device : devices)
    if (chain::stands_duty(catalog, device, plan.request)) proved.push_back(device);
  if (!proved.empty()) return proved;
  plan.cautions.push_back(quantity::fact("no_device_is_proved", catalog.part(devices.front()).name));
  return devices;
}

}  // namespace riserun::plan
