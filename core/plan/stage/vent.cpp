#include "plan/stage/vent.h"

#include "plan/judge/limits.h"
#include "plan/sold.h"

namespace riserun::plan {

namespace {

constexpr double kWideOpen = 2.0;  // bores of the riser: air passes that without a pressure that counts

/// The time in which the table drains with one opening of that bore; nullopt: it does not.
std::optional<Time> drains_through(const TransferPlan& transfer, Length bore) {
  transfer::System system = transfer.system;
  system.vent.ways.clear();
  system.vent.count = 1;
  system.vent.bore = bore;
  const transfer::Drain drain = transfer::drain(system, transfer.when_up, transfer::Detail::course);
  return drain.stop == transfer::Stop::goal_reached ? std::optional(drain.time) : std::nullopt;
}

}  // namespace

std::optional<VentPlan> plan_vent(const Inputs& inputs, const RiserPlan& riser, const TransferPlan& transfer) {
  if (transfer.siphon || transfer.drain.stop != transfer::Stop::goal_reached) return std::nullopt;
  const auto unthrottled = drains_through(transfer, riser.request.pipe.bore * kWideOpen);
  if (!unthrottled) return std::nullopt;
  VentPlan vent{*unthrottled, {}, {}};
  if (transfer.drain.time <= kSlowestVent * *unthrottled) return vent;
  for (const PartId valve : vent_valves(inputs.catalog)) {
    const auto time = drains_through(transfer, inputs.catalog.part(valve).ports[0].bore);
    if (!time || *time > kSlowestVent * *unthrottled) continue;
    vent.enough = valve;
    vent.with_enough = *time;
    break;
  }
  return vent;
}

}  // namespace riserun::plan
