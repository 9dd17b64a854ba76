// Relief, the failed regulator, and the leak test.
#include "plan/stage/drafting.h"
#include "quantity/write.h"
#include "reservoir/relief.h"
#include "reservoir/test_pressure.h"
#include "transfer/failed_regulator.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <tuple>

namespace riserun::plan {

namespace {

reservoir::AirFeed feed_of(const Draft& draft) {
  const transfer::AirSupply& air = draft.settled.air;
  return {draft.settled.full_supply, air.feed_bore, air.feed_discharge_coefficient, draft.settled.temperature};
}

/// Every part of a shop's plumbing that stands on the reservoir while it is tested.
std::vector<const JobPort*> ports_to_close(const Job& job) {
  std::vector<const JobPort*> ports;
  for (const JobPort& port : job.reservoir.ports) ports.push_back(&port);
  return ports;
}

/// The port that the test air goes in by: the air connection's, or else the smallest one.
const JobPort* test_air_port(const Draft& draft) {
  const Job& job = draft.plan.job;
  for (const ConnectionPlan& connection : draft.plan.connections) {
    if (connection.service != Service::air || connection.to.empty() || connection.ends_in) continue;
    for (const std::string& name : {connection.to, connection.from})
      if (const JobPort* port = port_named(job.reservoir.ports, name)) return port;
  }
  for (const ManifoldPlan& manifold : draft.plan.manifolds)
    for (std::size_t row = 0; row < manifold.to.size(); ++row)
      if (manifold.service == Service::air && manifold.request.branch(row).flow == chain::BranchFlow::to_base)
        if (const JobPort* port = port_named(job.reservoir.ports, manifold.from)) return port;
  return job.reservoir.ports.empty() ? nullptr : &job.reservoir.ports.back();
}

void plug_ports(Draft& draft, LeakTestPlan& test) {
  const JobPort* air = test_air_port(draft);
  if (air != nullptr) test.air_port = air->name;
  for (const TestPlug& plug : draft.test_plugs) {
    if (plug.part) {
      draft.extras.push_back({*plug.part, plug.from_bin, "leak test"});
    } else {
      draft.caution(Topic::leak_test,
                    fmt::format("The catalog has nothing that closes '{}' ({}) for the leak test.", plug.port,
                                draft.catalog().written(find_port(draft.plan.job, plug.port)->type)),
                    "catalog");
    }
    test.plugs.push_back(plug);
  }
}

/// A distance to keep, to the foot or the metre.
std::string whole_length(Length length, UnitSystem units) {
  return units == UnitSystem::inch ? fmt::format("{:.0f} ft", std::ceil(in_feet(length) - 1e-9))
                                   : fmt::format("{:.0f} m", std::ceil(in_metres(length) - 1e-9));
}

void caution_leak_test(Draft& draft, const LeakTestPlan& test) {
  if (!test.possible) return;
  draft.standing_caution(
      Topic::leak_test,
      fmt::format("Air under pressure in a flat-sided tank can kill. Test with a relief valve in the line, raise "
                  "the pressure in steps, keep {} clear of the plate faces while it rises, never stand before a "
                  "lid or end, never leave, lift or weld the tank under pressure.",
                  whole_length(test.energy.standoff, draft.units())),
      "ASME PCC-2 Article 501; ASME BPVC Section VIII UG-100 (from memory)");
  draft.standing_caution(
      Topic::leak_test,
      "Use leak-test solution, not household soap, without froth; wash it off afterwards. Wait for welds to cool: "
      "a cooling tank reads like a leak.",
      "ASME BPVC Section V Article 10");
  draft.standing_caution(
      Topic::leak_test,
      "Filled with water to near the lid, the tank stores a small part of that energy: test so if you can.",
      "common practice");
  const Job& job = draft.plan.job;
  if (test.given && test.possible && test.pressure < draft.plan.transfer.setting)
    draft.caution(
        Topic::leak_test,
        fmt::format("The test at {} is below the set pressure of {}.", write_pressure(test.pressure, job.units),
                    write_pressure(draft.plan.transfer.setting, job.units)),
        "worked out");
}

void refuse_test(Draft& draft, const reservoir::TestPressure& chosen, GaugePressure limit) {
  const auto& asked = draft.plan.job.test_pressure;
  if (chosen.pressure) return;
  if (asked) {
    draft.refuse({Topic::leak_test, chosen.basis, write_pressure(*asked, draft.units()),
                  write_pressure(limit, draft.units()), "leave 'test pressure' out and one is chosen under the limit"});
  } else {
    draft.caution(Topic::leak_test, chosen.basis, "worked out");
  }
}

/// A relief valve or gauge as it stands in the job: what is screwed on, where, and how narrow its way is.
struct FittedDevice {
  PartId part;
  std::string where;  // "'air manifold'"
  std::optional<Length> way;
};

std::vector<FittedDevice> fitted_devices(const Draft& draft) {
  const Catalog& catalog = draft.catalog();
  std::vector<FittedDevice> devices;
  for (const ConnectionPlan& connection : draft.plan.connections) {
    if (!connection.ends_in || connection.chain() == nullptr) continue;
    FittedDevice& device = devices.emplace_back();
    device = {*connection.ends_in, fmt::format("'{}'", connection.name), {}};
    for (const chain::ChainPart& link : connection.chain()->parts)
      for (const std::uint8_t port : {link.enter, link.leave})
        if (const Length bore = catalog.part(link.part).ports[port].bore; bore > metres(0.0))
          device.way = std::min(bore, device.way.value_or(bore));
  }
  for (const ManifoldPlan& manifold : draft.plan.manifolds) {
    if (manifold.assembly() == nullptr) continue;
    for (std::size_t row = 0; row < manifold.to.size(); ++row)
      if (const auto& part = manifold.assembly()->ends[row].device)
        devices.push_back(
            {*part, fmt::format("'{}'", manifold.name), chain::bore_of_branch(catalog, *manifold.assembly(), row)});
  }
  return devices;
}

/// It passes what the narrowest place lets through, whether that is its own bore or its way's.
void judge_relief_bore(Draft& draft, const FittedDevice& device) {
  const UnitSystem units = draft.units();
  const ReliefPlan& relief = draft.plan.relief;
  const Length own = draft.catalog().part(device.part).ports[0].bore;
  const Length bore = std::min(own, device.way.value_or(own));
  if (!relief.valve_bore || bore >= *relief.valve_bore) return;
  draft.caution(
      Topic::relief,
      fmt::format("The relief valve of {} has a bore of {}{}; passing all that the supply gives with the regulator "
                  "failed open takes {}. {}",
                  device.where, write_thickness(own, units, 2),
                  bore < own ? " and is fed through " + write_thickness(bore, units, 2) : "",
                  write_thickness(*relief.valve_bore, units, 2),
                  relief.restrictor_bore ? fmt::format("Put a restrictor of {} in the feed.",
                                                       write_thickness(*relief.restrictor_bore, units, 2))
                                         : "Use a larger one."),
      "worked out");
}

void judge_relief_valve(Draft& draft, const FittedDevice& device, GaugePressure opens) {
  const UnitSystem units = draft.units();
  const GaugePressure limit = draft.plan.walls.limit;
  const GaugePressure set = draft.plan.transfer.setting;
  const ReliefPlan& relief = draft.plan.relief;
  if (opens > limit) {
    draft.refuse({Topic::relief, fmt::format("the relief valve of {} opens above what the walls may see", device.where),
                  write_pressure(opens, units), write_pressure(limit, units),
                  fmt::format("one that opens at {}", write_pressure(relief.set_pressure, units))});
  } else if (opens < set) {
    draft.caution(Topic::relief,
                  fmt::format("The relief valve of {} opens at {}, below the set pressure of {}: it will blow in use.",
                              device.where, write_pressure(opens, units), write_pressure(set, units)),
                  "worked out");
  }
  judge_relief_bore(draft, device);
}

/// The job's own relief valves and gauges against what they must do.
void judge_devices(Draft& draft) {
  const UnitSystem units = draft.units();
  const GaugePressure set = draft.plan.transfer.setting;
  for (const FittedDevice& device : fitted_devices(draft)) {
    if (const auto opens = opens_at(draft.catalog(), device.part)) {
      draft.plan.relief.given = true;
      judge_relief_valve(draft, device, *opens);
    }
    const auto scale = full_scale(draft.catalog(), device.part);
    if (scale && in_pascals(*scale) > 4.0 * in_pascals(set))
      draft.caution(Topic::relief,
                    fmt::format("The gauge of {} reads to {}: too coarse for {}. Take one that reads to {} to {}.",
                                device.where, write_pressure_alone(*scale, units), write_pressure_alone(set, units),
                                write_pressure_alone(gauge_pascals(1.5 * in_pascals(set)), units),
                                write_pressure_alone(gauge_pascals(4.0 * in_pascals(set)), units)),
                    "ASME BPVC Section VIII UG-102: 1.5 to 4 times");
  }
  if (!draft.plan.relief.given)
    draft.caution(Topic::relief,
                  "No connection gives the reservoir a relief valve: it needs one, on a port of its own.",
                  "California Code of Regulations, Title 8, section 465 (from memory)");
}

}  // namespace

void draft_relief(Draft& draft) {
  ReliefPlan& relief = draft.plan.relief;
  const GaugePressure limit = draft.plan.walls.limit;
  const GaugePressure set = draft.plan.transfer.setting;
  // Where the setting is refused already there is no room for a valve above it: it is shown at the limit.
  relief.set_pressure = reservoir::relief_setting(set, limit).value_or(limit);
  if (relief.set_pressure > psig(0.0)) {
    const reservoir::Relief valve =
        reservoir::relief_for(relief.set_pressure, limit, feed_of(draft), draft.settled.atmosphere);
    relief.must_pass = valve.must_pass;
    relief.valve_bore = valve.valve_bore;
  }
  const transfer::FailedRegulator failed =
      transfer::failed_regulator_pressure(draft.plan.transfer.system, draft.settled.full_supply);
  relief.failed_regulator_pressure = failed.highest;
  if (limit > psig(0.0))
    relief.restrictor_bore = transfer::restrictor_bore(draft.plan.transfer.system, draft.settled.full_supply, limit);
  judge_devices(draft);
  draft.standing_caution(
      Topic::relief,
      "Put the relief valve on the reservoir itself with no valve between: a shut valve or a stopped riser puts "
      "all of the regulator's pressure on the walls.",
      "California Code of Regulations, Title 8, section 465 (from memory)");
  if (failed.highest > limit)
    draft.caution(
        Topic::relief,
        fmt::format("If the regulator fails open, the feed can hold {} with the riser open; the walls may see {}. "
                    "The riser is not relief enough.",
                    write_pressure(failed.highest, draft.units()), write_pressure(limit, draft.units())),
        "worked out");
}

void draft_leak_test(Draft& draft) {
  LeakTestPlan& test = draft.plan.leak_test;
  const Job& job = draft.plan.job;
  const GaugePressure limit = draft.plan.walls.limit;
  const AbsolutePressure atmosphere = draft.settled.atmosphere;
  test.air_volume = draft.settled.box.capacity();
  test.given = job.test_pressure.has_value();
  const GaugePressure in_use = draft.plan.transfer.setting;
  const reservoir::TestPressure chosen =
      test.given ? reservoir::check_test_pressure(*job.test_pressure, limit, test.air_volume, atmosphere, job.units)
                 : reservoir::choose_test_pressure(in_use, limit, test.air_volume, atmosphere, job.units);
  test.possible = chosen.pressure.has_value();
  test.pressure = chosen.pressure.value_or(psig(0.0));
  test.basis = chosen.basis;
  test.gauge_full_scale = chosen.gauge.full_scale.value_or(psig(0.0));
  test.gauge_mark = chosen.gauge.mark;
  test.water_column_leg = reservoir::water_column_for(test.pressure, draft.settled.water.density).leg;
  test.relief = chosen.relief;
  test.energy = chosen.energy;
  const Volume ullage_up = test.air_volume - draft.settled.box.volume_at(draft.plan.levels.reservoir_depth_up);
  test.energy_in_use = reservoir::stored_energy(in_use, ullage_up, atmosphere);
  const double absolute_pascal = in_pascals(absolute(test.pressure, atmosphere));
  test.drift_per_kelvin = pascals(absolute_pascal / in_kelvins(draft.settled.temperature));
  plug_ports(draft, test);
  refuse_test(draft, chosen, limit);
  caution_leak_test(draft, test);
}

std::vector<const JobPort*> ports_to_plug(const Draft& draft) {
  std::vector<const JobPort*> ports = ports_to_close(draft.plan.job);
  std::erase(ports, test_air_port(draft));
  return ports;
}

std::vector<chain::EndPart> closing_parts(const Draft& draft, PortTypeId port) {
  const Catalog& catalog = draft.catalog();
  std::vector<PartId> closing;
  for (const catalog::Mate& mate : catalog.mates(port)) {
    for (const catalog::PortUse& use : catalog.uses(mate.other)) {
      const catalog::Part& part = catalog.part(use.part);
      if (part.ports.size() == 1 && part.air && catalog.material(part.material).compressed_air &&
          catalog.family(part.family).role == catalog::Role::connector && !catalog.family(part.family).weld_bung)
        closing.push_back(use.part);
    }
  }
  const auto rank = [&](PartId id) { return std::tuple(catalog.part(id).price.cents(), catalog.part(id).id); };
  std::sort(closing.begin(), closing.end(), [&](PartId a, PartId b) { return rank(a) < rank(b); });
  std::vector<chain::EndPart> ends;
  for (bool have_one = false; const PartId part : closing) {
    const bool buy = catalog.part(part).stocked && !have_one;
    have_one = have_one || buy;
    if (buy || draft.bin.count_of(part) > 0) ends.push_back({part, {}, buy});
  }
  return ends;
}

}  // namespace riserun::plan
