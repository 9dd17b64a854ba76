// Levels and volumes: the charge, what the table needs, what the riser leaves behind, what the rim holds.
#include "plan/stage/levels.h"

#include "hydraulics/mouth.h"
#include "plan/judge/limits.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::plan {

namespace {

const Velocity kUsualVelocity = metres_per_second(1.0);  // in a riser at the end of a fill: common practice
// Where the job gives no charge, on what the table and the line take: the greater of a tenth and two days' losses.
const double kChargeReserve = 1.1;
const double kChargeForDays = 2.0;

Volume lost_in_a_day(const reservoir::Table& table) {
  return table.length * table.width * (kEvaporationADay + kSplashADay);
}

/// Water over the riser's end below which the surface dips into it. What the fill itself comes to is worked out later.
Length usual_dip(Length bore) { return hydraulics::dip_depth(0.25 * std::numbers::pi * bore * bore * kUsualVelocity); }

/// Of a pipe over the rim: its highest point, to which all the water must be lifted, and where it ends.
void settle_pipe_over_rim(const Inputs& inputs, const JobPort& port, Length bore, Levels& levels, Remarks& remarks) {
  const Length usual = inputs.settled.table.rim + bore;
  levels.inlet_height = std::max(port.crest.value_or(usual), port.opens_at.value_or(metres(0.0)));
  levels.mouth_height = std::min(port.opens_at.value_or(levels.inlet_height), levels.inlet_height);
  if (!port.crest) remarks.assume(fact("crest_over_rim", levels.inlet_height));
  if (!port.opens_at) remarks.assume(fact("mouth_at_crest"));
}

/// Where the water comes into the table, above the table's floor.
void settle_inlet(const Inputs& inputs, const ConnectionPlan* water, Length bore, Levels& levels, Remarks& remarks) {
  const Job& job = inputs.job;
  if (water == nullptr) {
    remarks.assume(fact("water_comes_in_at_floor_unconnected"));
    return;
  }
  const JobPort* port = port_named(job.table.ports, water->to);
  if (port == nullptr) port = port_named(job.table.ports, water->from);
  if (port->place == Place::over_rim) {
    settle_pipe_over_rim(inputs, *port, bore, levels, remarks);
  } else if (port->opens_at) {
    levels.inlet_height = *port->opens_at;
  } else {
    remarks.assume(fact("water_comes_in_at_floor"));
  }
}

void settle_charge(const Inputs& inputs, const reservoir::Riser& riser, Levels& levels, Remarks& remarks) {
  const Job& job = inputs.job;
  const reservoir::Box& box = inputs.settled.box;
  const Length highest = box.height * (1.0 - kLeastAirSpace);
  if (job.reservoir.charge) {
    levels.charge_depth = *job.reservoir.charge;
    return;
  }
  const Length dead = riser.end_height + levels.uncover_margin;
  const Volume fill = levels.need + levels.line_volume;
  const Volume reserve = std::max(fill * (kChargeReserve - 1.0), lost_in_a_day(inputs.settled.table) * kChargeForDays);
  const Length wanted = dead + box.depth_at(fill + reserve);
  levels.charge_depth = std::min(wanted, highest);
  remarks.assume(fact(wanted <= highest ? "charge_for_the_table" : "charge_as_full_as_may_be", levels.charge_depth),
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
  levels.usable = usable_water(box, levels, riser.end_height);
  levels.heel = riser.heel;
  levels.enough = levels.usable >= water_of_a_fill(levels);
  levels.can_overflow = levels.usable > levels.rim_capacity + levels.line_volume;
  // Air blows up the riser before the water falls below its end.
  levels.reservoir_depth_up =
      std::max(riser.end_height, levels.charge_depth - box.depth_at(levels.need + levels.line_volume));
  levels.spare = levels.enough ? box.depth_at(levels.usable - levels.need - levels.line_volume) : metres(0.0);
  levels.days_loss = box.depth_at(lost_in_a_day(settled.table));
  levels.top_up_mark = dead + box.depth_at(levels.need + levels.line_volume);
  const Length just_below_rim = std::max(levels.rim - inches(0.5), levels.table_depth);
  const Volume most = settled.table.volume_at(just_below_rim) + levels.line_volume;
  levels.self_limiting_charge = riser.end_height + box.depth_at(most);
  levels.least_charge = on_the_rule(levels.top_up_mark + levels.days_loss);
  const Volume lifted = box.volume_at(levels.least_charge - riser.end_height) - levels.line_volume;
  levels.least_overflows = lifted > levels.rim_capacity;
  levels.rim_for_least = on_the_rule(settled.table.depth_at(std::max(lifted, levels.need)) + inches(0.5));
}

/// The least charge, and what else must change where the rim does not hold all of it.
Fact so_deep(const Levels& levels) {
  return levels.least_overflows ? fact("charge_so_deep_with_rim", levels.least_charge, levels.rim_for_least)
                                : fact("charge_so_deep", levels.least_charge);
}

void refuse_short_water(const Inputs& inputs, const reservoir::Riser& riser, const Levels& levels, Remarks& remarks) {
  const reservoir::Box& box = inputs.settled.box;
  if (levels.enough) return;
  const Volume asked = levels.need + levels.line_volume;
  const Length dead = riser.end_height + levels.uncover_margin;
  // With a day's evaporation and splash, which it would else be short of the day after.
  const Length charge = levels.least_charge;
  const Length highest = box.height * (1.0 - kLeastAirSpace);
  std::optional<Fact> mend;
  Changes change;
  if (charge <= highest) {
    mend = so_deep(levels);
    change = {{"reservoir.charge", charge}};
  } else {
    const Volume most = box.volume_at(std::max(highest - dead - levels.days_loss, metres(0.0))) - levels.line_volume;
    const Length depth = kRuleMark * std::floor(std::max(metres(0.0), inputs.settled.table.depth_at(most)) / kRuleMark);
    mend = fact("want_no_deeper_table", depth);
    change = {{"reservoir.charge", highest}, {"table.depth", depth}};
  }
  remarks.refuse({Topic::levels, fact("reservoir_too_small"), Against{asked, levels.usable}, mend}).ways_to_mend = {
      change};
}

void caution_levels(const Levels& levels, Remarks& remarks) {
  if (!levels.can_overflow) return;
  const bool none_does_both = quantity::more_than(levels.least_charge, levels.self_limiting_charge);
  remarks.caution(Topic::levels,
                  none_does_both ? fact("no_charge_does_both", levels.self_limiting_charge, levels.least_charge,
                                        levels.rim_for_least)
                                 : fact("charge_can_overflow", levels.self_limiting_charge, levels.least_charge),
                  "by volume");
}

}  // namespace

Volume usable_water(const reservoir::Box& box, const Levels& levels, Length riser_end) {
  return std::max(box.volume_at(levels.charge_depth - riser_end - levels.uncover_margin), cubic_metres(0.0));
}

Volume water_of_a_fill(const Levels& levels) { return levels.need + levels.line_volume; }

Levels plan_levels(const Inputs& inputs, const RiserPlan& riser, const hydraulics::Line& line,
                   const ConnectionPlan* water, Remarks& remarks) {
  const reservoir::Table& table = inputs.settled.table;
  Levels levels;
  levels.table_depth = inputs.job.table.depth;
  levels.rim = table.rim;
  levels.rim_capacity = table.volume_at(table.rim);
  levels.need = table.volume_at(levels.table_depth);
  levels.line_volume = line.volume();
  levels.uncover_margin = usual_dip(riser.request.pipe.bore);
  settle_charge(inputs, riser.riser, levels, remarks);
  fill_in_volumes(inputs.settled, riser.riser, levels);
  settle_inlet(inputs, water, riser.request.pipe.bore, levels, remarks);
  levels.lift_start = table.floor_height + levels.inlet_height - levels.charge_depth;
  levels.lift_full = table.floor_height + std::max(levels.table_depth, levels.inlet_height) - levels.reservoir_depth_up;
  refuse_short_water(inputs, riser.riser, levels, remarks);
  caution_levels(levels, remarks);
  return levels;
}

}  // namespace riserun::plan
