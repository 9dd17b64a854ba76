// Levels and volumes: the charge, what the table needs, what the riser leaves behind, what the rim holds.
#include "plan/stage/drafting.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::plan {

namespace {

const double kLeastUllage = 0.05;   // of the reservoir when charged: common practice
const double kChargeReserve = 1.1;  // on what the table and the line take, where the job gives no charge

/// Where the water comes into the table, above the table's floor.
Length inlet_height(Draft& draft) {
  const Job& job = draft.plan.job;
  if (!draft.plan.water_connection) {
    draft.assume("where the water comes into the table", "at its floor", "no connection reaches a port of the table");
    return metres(0.0);
  }
  const ConnectionPlan& connection = draft.plan.connections[*draft.plan.water_connection];
  const JobPort* port = port_named(job.table.ports, connection.to);
  if (port == nullptr) port = port_named(job.table.ports, connection.from);
  if (port->opens_at) return *port->opens_at;
  const bool over = port->place == Place::over_rim;
  const Length height = over ? draft.settled.table.rim : metres(0.0);
  draft.assume("where the water comes into the table", over ? "over its rim" : "at its floor",
               over ? "the port is said to be over the rim" : "'opens at' was not given for the table's port");
  return height;
}

void settle_charge(Draft& draft, Levels& levels) {
  const Job& job = draft.plan.job;
  const reservoir::Box& box = draft.settled.box;
  const Length highest = box.height * (1.0 - kLeastUllage);
  if (job.reservoir.charge) {
    levels.charge_depth = *job.reservoir.charge;
    return;
  }
  const Length dead = draft.plan.riser.riser.end_height + levels.uncover_margin;
  const Length wanted = dead + box.depth_at((levels.need + levels.line_volume) * kChargeReserve);
  levels.charge_depth = std::min(wanted, highest);
  draft.assume("charge", write_length(levels.charge_depth, draft.units()) + " deep",
               wanted <= highest ? "what the table takes and a tenth more, over what the riser leaves behind"
                                 : "all but 5 % of the reservoir: the table takes more",
               "reservoir.charge");
}

void fill_in_volumes(const Draft& draft, Levels& levels) {
  const reservoir::Box& box = draft.settled.box;
  levels.charge = box.volume_at(levels.charge_depth);
  levels.charge_mark_below_lid = box.height - levels.charge_depth;
  levels.capacity = box.capacity();
  levels.ullage_at_charge = levels.capacity - levels.charge;
  levels.ullage_fraction = levels.ullage_at_charge / levels.capacity;
  const Length dead = draft.plan.riser.riser.end_height + levels.uncover_margin;
  levels.usable = std::max(box.volume_at(levels.charge_depth - dead), cubic_metres(0.0));
  levels.heel = draft.plan.riser.riser.heel;
  levels.enough = levels.usable >= levels.need + levels.line_volume;
  levels.can_overflow = levels.usable > levels.rim_capacity + levels.line_volume;
  levels.reservoir_depth_up =
      std::max(metres(0.0), levels.charge_depth - box.depth_at(levels.need + levels.line_volume));
  const Length just_below_rim = std::max(levels.rim - inches(0.5), levels.table_depth);
  const Volume most = draft.settled.table.volume_at(just_below_rim) + levels.line_volume;
  levels.self_limiting_charge = draft.plan.riser.riser.end_height + box.depth_at(most);
}

void refuse_short_water(Draft& draft, const Levels& levels) {
  const UnitSystem units = draft.units();
  const reservoir::Box& box = draft.settled.box;
  if (levels.enough) return;
  const Volume asked = levels.need + levels.line_volume;
  const Length dead = draft.plan.riser.riser.end_height + levels.uncover_margin;
  const Length charge = dead + box.depth_at(asked);
  const Length highest = box.height * (1.0 - kLeastUllage);
  std::string mend;
  if (charge <= highest) {
    mend = fmt::format("charge the reservoir {} deep", write_length(charge, units));
  } else {
    const Volume most = box.volume_at(std::max(highest - dead, metres(0.0))) - levels.line_volume;
    const Length depth = std::max(metres(0.0), draft.settled.table.depth_at(most));
    mend =
        fmt::format("even filled to 95 % it gives the table {}: want no more than that, or make the reservoir larger",
                    write_length(depth, units));
  }
  draft.refuse({Topic::levels, "the reservoir does not hold what the table needs", write_volume(asked, units),
                write_volume(levels.usable, units), mend});
}

void caution_levels(Draft& draft, const Levels& levels) {
  if (levels.ullage_fraction < kLeastUllage - 1e-9)
    draft.caution(Topic::levels, "Leave at least 5 % of the reservoir as air space over the charge.",
                  "common practice");
  if (levels.can_overflow)
    draft.caution(
        Topic::levels,
        fmt::format("The charge is more than the table holds to its rim: left alone, it overflows. Charged no "
                    "deeper than {}, the riser uncovers first.",
                    write_length(levels.self_limiting_charge, draft.units())),
        "by volume");
}

}  // namespace

void draft_levels(Draft& draft) {
  const reservoir::Table& table = draft.settled.table;
  Levels& levels = draft.plan.levels;
  levels.table_depth = draft.plan.job.table.depth;
  levels.rim = table.rim;
  levels.rim_capacity = table.volume_at(table.rim);
  levels.need = table.volume_at(levels.table_depth);
  levels.line_volume = draft.plan.line.volume();
  levels.uncover_margin = draft.plan.riser.request.pipe.bore;  // one bore of water over the end: common practice
  settle_charge(draft, levels);
  fill_in_volumes(draft, levels);
  levels.inlet_height = inlet_height(draft);
  levels.lift_start = table.floor_height + levels.inlet_height - levels.charge_depth;
  levels.lift_full = table.floor_height + std::max(levels.table_depth, levels.inlet_height) - levels.reservoir_depth_up;
  refuse_short_water(draft, levels);
  caution_levels(draft, levels);
}

}  // namespace riserun::plan
