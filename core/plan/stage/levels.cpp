// Levels and volumes: the charge, what the table needs, what the riser leaves behind, what the rim holds.
#include "plan/stage/levels.h"

#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::plan {

namespace {

const double kLeastUllage = 0.05;   // of the reservoir when charged: common practice
const double kChargeReserve = 1.1;  // on what the table and the line take, where the job gives no charge

/// Where the water comes into the table, above the table's floor.
Length inlet_height(const Inputs& inputs, const ConnectionPlan* water, Remarks& remarks) {
  const Job& job = inputs.job;
  if (water == nullptr) {
    remarks.assume("where the water comes into the table", "at its floor", "no connection reaches a port of the table");
    return metres(0.0);
  }
  const JobPort* port = port_named(job.table.ports, water->to);
  if (port == nullptr) port = port_named(job.table.ports, water->from);
  if (port->opens_at) return *port->opens_at;
  const bool over = port->place == Place::over_rim;
  const Length height = over ? inputs.settled.table.rim : metres(0.0);
  remarks.assume("where the water comes into the table", over ? "over its rim" : "at its floor",
                 over ? "the port is said to be over the rim" : "'opens at' was not given for the table's port");
  return height;
}

void settle_charge(const Inputs& inputs, const reservoir::Riser& riser, Levels& levels, Remarks& remarks) {
  const Job& job = inputs.job;
  const reservoir::Box& box = inputs.settled.box;
  const Length highest = box.height * (1.0 - kLeastUllage);
  if (job.reservoir.charge) {
    levels.charge_depth = *job.reservoir.charge;
    return;
  }
  const Length dead = riser.end_height + levels.uncover_margin;
  const Length wanted = dead + box.depth_at((levels.need + levels.line_volume) * kChargeReserve);
  levels.charge_depth = std::min(wanted, highest);
  remarks.assume("charge", write_length(levels.charge_depth, inputs.job.units) + " deep",
                 wanted <= highest ? "what the table takes and a tenth more, over what the riser leaves behind"
                                   : "all but 5 % of the reservoir: the table takes more",
                 "reservoir.charge");
}

void fill_in_volumes(const Settled& settled, const reservoir::Riser& riser, Levels& levels) {
  const reservoir::Box& box = settled.box;
  levels.charge = box.volume_at(levels.charge_depth);
  levels.charge_mark_below_lid = box.height - levels.charge_depth;
  levels.capacity = box.capacity();
  levels.ullage_at_charge = levels.capacity - levels.charge;
  levels.ullage_fraction = levels.ullage_at_charge / levels.capacity;
  const Length dead = riser.end_height + levels.uncover_margin;
  levels.usable = std::max(box.volume_at(levels.charge_depth - dead), cubic_metres(0.0));
  levels.heel = riser.heel;
  levels.enough = levels.usable >= levels.need + levels.line_volume;
  levels.can_overflow = levels.usable > levels.rim_capacity + levels.line_volume;
  levels.reservoir_depth_up =
      std::max(metres(0.0), levels.charge_depth - box.depth_at(levels.need + levels.line_volume));
  const Length just_below_rim = std::max(levels.rim - inches(0.5), levels.table_depth);
  const Volume most = settled.table.volume_at(just_below_rim) + levels.line_volume;
  levels.self_limiting_charge = riser.end_height + box.depth_at(most);
}

void refuse_short_water(const Inputs& inputs, const reservoir::Riser& riser, const Levels& levels, Remarks& remarks) {
  const UnitSystem units = inputs.job.units;
  const reservoir::Box& box = inputs.settled.box;
  if (levels.enough) return;
  const Volume asked = levels.need + levels.line_volume;
  const Length dead = riser.end_height + levels.uncover_margin;
  const Length charge = dead + box.depth_at(asked);
  const Length highest = box.height * (1.0 - kLeastUllage);
  std::string mend;
  if (charge <= highest) {
    mend = fmt::format("charge the reservoir {} deep", write_length(charge, units));
  } else {
    const Volume most = box.volume_at(std::max(highest - dead, metres(0.0))) - levels.line_volume;
    const Length depth = std::max(metres(0.0), inputs.settled.table.depth_at(most));
    mend =
        fmt::format("even filled to 95 % it gives the table {}: want no more than that, or make the reservoir larger",
                    write_length(depth, units));
  }
  remarks.refuse({Topic::levels, "the reservoir does not hold what the table needs", write_volume(asked, units),
                  write_volume(levels.usable, units), mend});
}

void caution_levels(const Inputs& inputs, const Levels& levels, Remarks& remarks) {
  if (levels.ullage_fraction < kLeastUllage - 1e-9)
    remarks.caution(Topic::levels, "Leave at least 5 % of the reservoir as air space over the charge.",
                    "common practice");
  if (levels.can_overflow)
    remarks.caution(
        Topic::levels,
        fmt::format("The charge is more than the table holds to its rim: left alone, it overflows. Charged no "
                    "deeper than {}, the riser uncovers first.",
                    write_length(levels.self_limiting_charge, inputs.job.units)),
        "by volume");
}

}  // namespace

Levels plan_levels(const Inputs& inputs, const RiserPlan& riser, const hydraulics::Line& line,
                   const ConnectionPlan* water, Remarks& remarks) {
  const reservoir::Table& table = inputs.settled.table;
  Levels levels;
  levels.table_depth = inputs.job.table.depth;
  levels.rim = table.rim;
  levels.rim_capacity = table.volume_at(table.rim);
  levels.need = table.volume_at(levels.table_depth);
  levels.line_volume = line.volume();
  levels.uncover_margin = riser.request.pipe.bore;  // one bore of water over the end: common practice
  settle_charge(inputs, riser.riser, levels, remarks);
  fill_in_volumes(inputs.settled, riser.riser, levels);
  levels.inlet_height = inlet_height(inputs, water, remarks);
  levels.lift_start = table.floor_height + levels.inlet_height - levels.charge_depth;
  levels.lift_full = table.floor_height + std::max(levels.table_depth, levels.inlet_height) - levels.reservoir_depth_up;
  refuse_short_water(inputs, riser.riser, levels, remarks);
  caution_levels(inputs, levels, remarks);
  return levels;
}

}  // namespace riserun::plan
