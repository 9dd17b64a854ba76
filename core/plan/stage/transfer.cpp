// The transfer: the setting, filling and draining, and why the air supply or the walls do not allow it.
#include "plan/stage/transfer.h"

#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace riserun::plan {

namespace {

using transfer::Stop;

const double kUsualOverFinish = 1.5;  // setting over the pressure to finish, where nothing is wished for
const Time kUsualFillTime = minutes(5.0);
const double kSlowWater = 5.0;  // ft/s: water in small pipe, copper tube handbooks ask 5 to 8 at most

/// The finest step that a regulator's dial is set to.
GaugePressure dial_step(UnitSystem units) { return units == UnitSystem::inch ? psig(0.05) : bar_gauge(0.005); }

GaugePressure rounded_up(GaugePressure value, UnitSystem units) {
  const double step = in_pascals(dial_step(units));
  return gauge_pascals(std::ceil(in_pascals(value) / step - 1e-9) * step);
}

GaugePressure rounded_down(GaugePressure value, UnitSystem units) {
  const double step = in_pascals(dial_step(units));
  return gauge_pascals(std::floor(in_pascals(value) / step + 1e-9) * step);
}

transfer::System system_for(const Inputs& inputs, const RiserPlan& riser, const hydraulics::Line& line,
                            const Levels& levels, Length feed_bore) {
  transfer::System system;
  system.reservoir = inputs.settled.box;
  system.table = inputs.settled.table;
  system.riser_end_height = riser.riser.end_height;
  system.inlet_height = levels.inlet_height;
  system.line = line;
  system.water = inputs.settled.water;
  system.temperature = inputs.settled.temperature;
  system.atmosphere = inputs.settled.atmosphere;
  system.air = inputs.settled.air;
  system.air.feed_bore = feed_bore;
  system.vent = inputs.settled.vent;
  return system;
}

/// What the weakest of walls and regulator allows.
GaugePressure highest_setting(const Settled& settled, const WallLimit& walls) {
  return std::min(walls.limit, settled.regulator_range);
}

const char* weakest_name(const Settled& settled, const WallLimit& walls) {
  return walls.limit <= settled.regulator_range ? "what the walls may see" : "what the regulator can be set to";
}

/// A first guess for the search: what holds the full table, with room for losses.
GaugePressure first_guess(const Settled& settled, const Levels& levels) {
  const PressureDifference hold = pressure_of(metres_of_head(in_metres(levels.lift_full)), settled.water.density);
  return gauge_pascals(std::max(in_pascals(hold) * kUsualOverFinish, in_pascals(psig(0.25))));
}

void choose_for_wish(const Inputs& inputs, const Levels& levels, const WallLimit& walls, GaugePressure usual,
                     TransferPlan& plan, Remarks& remarks) {
  const UnitSystem units = inputs.job.units;
  const Time wished = *inputs.job.wishes.fill_time;
  const GaugePressure highest = rounded_down(plan.highest_setting, units);
  plan.setting_for_wish = transfer::setting_for_time(plan.system, plan.start, levels.table_depth, wished, highest);
  if (plan.setting_for_wish) {
    plan.setting = std::min(rounded_up(*plan.setting_for_wish, units), highest);
    plan.setting_basis = fmt::format("fills in the {} wished for", write_time(wished, units));
    return;
  }
  plan.setting = usual;
  plan.setting_basis =
      fmt::format("no setting up to {}, {}, fills in the {} wished for", write_pressure(highest, units),
                  weakest_name(inputs.settled, walls), write_time(wished, units));
  remarks.caution(
      Topic::transfer,
      fmt::format("The wish for a fill in {} cannot be met: {}.", write_time(wished, units), plan.setting_basis),
      "worked out");
}

/// The pressure to finish and half as much again, but not above what walls and regulator allow.
GaugePressure usual_setting(const TransferPlan& plan, GaugePressure to_finish, UnitSystem units) {
  const GaugePressure wanted = rounded_up(gauge_pascals(in_pascals(to_finish) * kUsualOverFinish), units);
  const GaugePressure highest = rounded_down(plan.highest_setting, units);
  return wanted <= highest ? wanted : std::max(highest, to_finish);
}

void choose_setting(const Inputs& inputs, const Levels& levels, const WallLimit& walls, TransferPlan& plan,
                    Remarks& remarks) {
  const Job& job = inputs.job;
  const UnitSystem units = inputs.job.units;
  plan.highest_setting = highest_setting(inputs.settled, walls);
  plan.system.air.set_pressure = job.air.set_pressure.value_or(first_guess(inputs.settled, levels));
  plan.fill = transfer::fill(plan.system, plan.start, levels.table_depth);
  const GaugePressure usual = usual_setting(plan, plan.fill.pressure_to_finish, units);
  if (job.air.set_pressure) {
    plan.setting = *job.air.set_pressure;
    plan.setting_given = true;
    plan.setting_basis = "as the job says";
    return;
  }
  if (job.wishes.fill_time && plan.fill.pressure_to_finish < plan.highest_setting) {
    choose_for_wish(inputs, levels, walls, usual, plan, remarks);
  } else if (plan.fill.pressure_to_finish > plan.highest_setting) {
    plan.setting = plan.fill.pressure_to_finish;
    plan.setting_basis =
        fmt::format("what just finishes the fill; it is more than {}", weakest_name(inputs.settled, walls));
  } else {
    plan.setting = usual;
    plan.setting_basis = in_pascals(usual) >= in_pascals(plan.fill.pressure_to_finish) * kUsualOverFinish
                             ? "half as much again as the pressure that just finishes the fill"
                             : fmt::format("as high as {}", weakest_name(inputs.settled, walls));
  }
  remarks.assume("regulator setting", write_pressure(plan.setting, units), plan.setting_basis, "air.set pressure");
}

/// The two numbers side by side: what the fill asks for and what the walls may see.
void refuse_by_walls(const TransferPlan& plan, const WallLimit& walls, UnitSystem units, Remarks& remarks) {
  const GaugePressure limit = walls.limit;
  const GaugePressure finish = plan.fill.pressure_to_finish;
  const auto& stay = walls.next_stay;
  std::string mend;
  if (stay && stay->limit_after > finish) {
    mend = fmt::format("{}: the limit rises to {}", stay->what, write_pressure(stay->limit_after, units));
  } else if (stay) {
    mend = fmt::format("{} lifts the limit only to {}: more rows of stays, thicker sheet, or a lower table", stay->what,
                       write_pressure(stay->limit_after, units));
  } else {
    mend = "thicker sheet, or a lower table";
  }
  if (finish > limit) {
    remarks.refuse({Topic::walls, "the fill needs more air pressure than the walls may see",
                    write_pressure(finish, units), write_pressure(limit, units), mend});
  } else if (plan.setting > limit) {
    remarks.refuse({Topic::walls, "the set pressure is more than the walls may see",
                    write_pressure(plan.setting, units), write_pressure(limit, units),
                    fmt::format("set the regulator to {} or less; {} finishes the fill",
                                write_pressure(rounded_down(limit, units), units), write_pressure(finish, units))});
  }
}

/// Air that the fill takes out of the supply, as pressure times volume at one temperature:
///
///     p_finish V_finish - p_atmosphere V_start,   V the air space over the water
double air_to_bring(const Settled& settled, const Levels& levels, const TransferPlan& plan) {  // J
  const reservoir::Box& box = settled.box;
  const double atmosphere = in_pascals(settled.atmosphere);
  const double finish = in_pascals(plan.fill.pressure_to_finish) + atmosphere;
  const double room = in_cubic_metres(box.capacity());
  const double start = room - in_cubic_metres(levels.charge);
  const double end = room - in_cubic_metres(box.volume_at(levels.reservoir_depth_up));
  return finish * end - atmosphere * start;
}

/// The receiver that holds enough by itself, and the compressor that brings it in time. A receiver gives what it holds
/// above the pressure to finish: V (p_receiver - p_finish), by Boyle's law.
std::string more_air(const Inputs& inputs, const Levels& levels, const TransferPlan& plan) {
  const UnitSystem units = inputs.job.units;
  const double air = air_to_bring(inputs.settled, levels, plan);
  const double margin = in_pascals(plan.system.air.receiver_pressure) - in_pascals(plan.fill.pressure_to_finish);
  const Time in_time = inputs.job.wishes.fill_time.value_or(kUsualFillTime);
  const VolumeFlow delivery =
      cubic_metres_per_second(air / in_pascals(inputs.settled.atmosphere) / in_seconds(in_time));
  const std::string compressor =
      fmt::format("a compressor that delivers {}, for {}", write_air_flow(delivery, units), write_time(in_time, units));
  if (margin <= 0.0) return compressor;
  return fmt::format("a receiver of {} or more at {}, or {}", write_volume(cubic_metres(air / margin), units),
                     write_pressure(plan.system.air.receiver_pressure, units), compressor);
}

void refuse_by_setting(const Inputs& inputs, const TransferPlan& plan, Remarks& remarks) {
  const UnitSystem units = inputs.job.units;
  const GaugePressure finish = plan.fill.pressure_to_finish;
  if (finish > inputs.settled.regulator_range) {
    remarks.refuse({Topic::transfer, "the fill needs more than the regulator can be set to",
                    write_pressure(finish, units), write_pressure(inputs.settled.regulator_range, units),
                    "a regulator with a higher range"});
  } else if (plan.setting < finish) {
    remarks.refuse({Topic::transfer, "the set pressure does not lift the water to the wanted depth",
                    write_pressure(finish, units), write_pressure(plan.setting, units),
                    fmt::format("set the regulator to {} or more", write_pressure(rounded_up(finish, units), units))});
  }
}

void refuse_by_air(const Inputs& inputs, const Levels& levels, const TransferPlan& plan, Remarks& remarks) {
  const UnitSystem units = inputs.job.units;
  const transfer::Fill& fill = plan.fill;
  const std::string depth = write_length(levels.table_depth, units);
  const std::string reached = write_length(fill.table_depth, units);
  switch (fill.stop) {
    case Stop::goal_reached:
      return;
    case Stop::riser_uncovered:
      if (levels.enough)
        remarks.refuse({Topic::transfer, "the riser uncovers before the table is at its depth, and air blows through",
                        depth, reached, "charge the reservoir deeper"});
      return;
    case Stop::table_overflows:
      remarks.refuse(
          {Topic::transfer, "the table overflows before it is at its depth", depth, reached, "a higher rim"});
      return;
    case Stop::pressures_balance:
    case Stop::time_limit:
    case Stop::reservoir_full:
      break;
  }
  // A setting that is too low has been refused with its own numbers.
  if (plan.setting < fill.pressure_to_finish) return;
  remarks.refuse({Topic::transfer, "the air supply gives out before the table is at its depth", depth, reached,
                  more_air(inputs, levels, plan)});
}

void caution_transfer(const TransferPlan& plan, UnitSystem units, Remarks& remarks) {
  const transfer::Fill& fill = plan.fill;
  if (fill.walk_away == transfer::WalkAway::table_overflows)
    remarks.caution(
        Topic::transfer,
        fmt::format("If nobody shuts the air off, {} go over the rim.{}", write_volume(fill.walk_away_spill, units),
                    fill.self_limiting_pressure ? fmt::format(" Set to {}, the water stops by itself below the rim.",
                                                              write_pressure(*fill.self_limiting_pressure, units))
                                                : std::string()),
        "worked out");
  if (fill.walk_away == transfer::WalkAway::air_blows_through)
    remarks.caution(Topic::transfer,
                    "If nobody shuts the air off, the riser uncovers and air blows up through the table with a slug of "
                    "water: put a splash plate over the inlet.",
                    "worked out");
  for (const hydraulics::ElementLoss& loss : fill.losses_at_peak) {
    if (in_feet_per_second(loss.velocity) <= kSlowWater) continue;
    remarks.caution(Topic::transfer,
                    fmt::format("The water runs faster than {} in '{}' at the peak: open valves slowly.",
                                write_velocity(metres_per_second(kSlowWater * kMetresPerFoot), units), loss.element),
                    "copper tube handbooks: 5 to 8 ft/s in small tube");
    break;
  }
}

}  // namespace

TransferPlan plan_transfer(const Inputs& inputs, const RiserPlan& riser, const hydraulics::Line& line,
                           const Levels& levels, const WallLimit& walls, Length feed_bore, Remarks& remarks) {
  TransferPlan plan;
  plan.system = system_for(inputs, riser, line, levels, feed_bore);
  plan.start = {levels.charge_depth, metres(0.0), psig(0.0)};
  choose_setting(inputs, levels, walls, plan, remarks);
  plan.system.air.set_pressure = plan.setting;
  plan.fill = transfer::fill(plan.system, plan.start, levels.table_depth);
  // Draining starts from the full table, held there by the air.
  const transfer::Start up{levels.reservoir_depth_up, levels.table_depth, plan.fill.hold_pressure};
  plan.drain = transfer::drain(plan.system, up);
  // What is left of an emptied table after rounding is nothing.
  const bool dry = plan.drain.left_in_table < levels.need * 1e-9;
  plan.left_in_table = dry ? cubic_metres(0.0) : plan.drain.left_in_table;
  refuse_by_walls(plan, walls, inputs.job.units, remarks);
  refuse_by_setting(inputs, plan, remarks);
  refuse_by_air(inputs, levels, plan, remarks);
  caution_transfer(plan, inputs.job.units, remarks);
  return plan;
}

}  // namespace riserun::plan
