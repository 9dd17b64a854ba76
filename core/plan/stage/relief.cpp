#include "plan/stage/relief.h"

#include "plan/stage/relief_valves.h"
#include "plan/stage/restrictors.h"
#include "quantity/nearly.h"
#include "reservoir/relief.h"
#include "transfer/failed_regulator.h"

#include <algorithm>

namespace riserun::plan {

namespace {

reservoir::AirFeed feed_of(const Settled& settled, const transfer::AirSupply& air) {
  return {settled.full_supply, transfer::line_with_failed_regulator(air), settled.temperature};
}

/// nullopt: what is there does it already, or no hole that is sold does it and still fills the table.
std::optional<RestrictorPlan> choose_restrictor(const Inputs& inputs, const AirWays& air, GaugePressure most,
                                                const transfer::FailedRegulator& failed, const TransferPlan& transfer) {
  const GaugePressure supply = inputs.settled.full_supply;
  if (quantity::at_most(air.relief.empty() ? failed.highest : failed.riser_stopped, most)) return std::nullopt;
  const auto widest = transfer::restrictor_bore(transfer.system, supply, most, air.relief);
  if (!widest) return std::nullopt;
  const auto part = restrictor_up_to(inputs, inlet_of_regulator(inputs, air.regulator), *widest);
  if (!part) return std::nullopt;
  const Length bore = inputs.catalog.part(*part).ports[0].bore;
  const transfer::System with = transfer::with_restrictor(transfer.system, bore);
  const transfer::FailedRegulator then = transfer::failed_regulator_pressure(with, supply, air.relief);
  const transfer::Fill fill = transfer::fill(with, transfer.start, transfer.wanted_depth, transfer::Detail::course);
  if (fill.stop != transfer.fill.stop) return std::nullopt;
  return RestrictorPlan{*widest, *part, bore, then.highest, then.riser_stopped, fill.time};
}

/// Below what keeps the factor at 4, where that leaves room above the setting. Where the setting is refused already
/// there is no room for a valve above it: it is shown at the limit.
GaugePressure setting_to_buy(GaugePressure set, const WallsPlan& walls) {
  return reservoir::relief_setting(set, std::min(walls.limit, walls.four_to_one))
      .value_or(reservoir::relief_setting(set, walls.limit).value_or(walls.limit));
}

GaugePressure first_to_open(const std::vector<ReliefValve>& valves) {
  return std::min_element(valves.begin(), valves.end(),
                          [](const ReliefValve& a, const ReliefValve& b) { return a.opens < b.opens; })
      ->opens;
}

/// A valve passes what it is sized for while it is fully open, and the walls stand no more than their limit.
GaugePressure held_by(const std::vector<ReliefValve>& valves, GaugePressure limit) {
  for (const ReliefValve& valve : valves) limit = std::min(limit, valve.full_flow);
  return limit;
}

/// The job connects the supply, and no run of that came out: what comes through it is not known.
bool feed_does_not_go_together(const Job& job, const std::vector<Way>& ways) {
  const bool connected = std::any_of(job.connections.begin(), job.connections.end(), [&](const JobConnection& each) {
    return port_named(job.air.ports, each.from) != nullptr || port_named(job.air.ports, each.to) != nullptr;
  });
  return connected && std::none_of(ways.begin(), ways.end(), [](const Way& way) { return way.use == WayUse::feed; });
}

}  // namespace

ReliefPlan plan_relief(const Inputs& inputs, const std::vector<Way>& ways, const AirWays& air, const WallsPlan& walls,
                       const TransferPlan& transfer, Remarks& remarks) {
  const GaugePressure limit = walls.limit;
  ReliefPlan relief;
  const GaugePressure set = transfer.setting;
  relief.valves = relief_valves(inputs, ways, transfer.system, air.relief, remarks);
  relief.given = !relief.valves.empty();
  relief.set_pressure = relief.given ? first_to_open(relief.valves) : setting_to_buy(set, walls);
  if (const GaugePressure open = std::min(relief.set_pressure, limit); open > psig(0.0)) {
    const reservoir::Relief valve =
        reservoir::relief_for(open, limit, feed_of(inputs.settled, transfer.system.air), inputs.settled.atmosphere);
    relief.must_pass = valve.must_pass;
    relief.valve_bore = valve.valve_bore;
  }
  const transfer::FailedRegulator failed =
      transfer::failed_regulator_pressure(transfer.system, inputs.settled.full_supply, air.relief);
  relief.failed_regulator_pressure = failed.highest;
  if (limit > psig(0.0))
    relief.restrictor = choose_restrictor(inputs, air, held_by(relief.valves, limit), failed, transfer);
  if (relief.restrictor) relief.restrictor_bore = relief.restrictor->bore;
  relief.held = greatest_pressure(failed.riser_stopped, inputs.settled.full_supply, relief.valves);
  relief.greatest = std::max(relief.held, set);
  relief.factor_at_greatest =
      reservoir::safety_factors(walls.panels, walls.metal, relief.greatest, walls.full_supply, walls.stayed)
          .at_set_on_yield;
  relief.lid_force_at_greatest = reservoir::support_loads(inputs.settled.box, {}, relief.greatest).lid;
  remarks.standing_caution(Topic::relief, fact("relief_valve_on_the_reservoir"),
                           "California Code of Regulations, Title 8, section 465 (from memory)");
  if (quantity::more_than(failed.highest, limit) && !feed_does_not_go_together(inputs.job, ways))
    remarks.caution(Topic::relief, fact("riser_is_not_relief_enough", failed.highest, limit), "worked out");
  return relief;
}

}  // namespace riserun::plan
