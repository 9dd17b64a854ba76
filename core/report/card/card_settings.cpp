// What is set, what is marked on the tank, and how the table is run.
#include "plan/judge/drain.h"
#include "report/card/card_parts.h"
#include "report/figures/figures.h"
#include "report/words/say.h"
#include "reservoir/relief.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace riserun::report {

namespace {

using plan::Plan;
using plan::Way;
using plan::WayUse;

constexpr double kLongRefill = 2.0;  // over the time of a fill: what a person wonders about

/// The greatest pressure that can occur is told where nothing is open or a relief valve stands: without one, what is
/// missing is what would hold it there.
bool is_held(const Plan& plan) { return plan.verdict == plan::Verdict::ready || !plan.relief.valves.empty(); }

std::string factor_words(const Plan& plan, UnitSystem units) {
  const double factor = is_held(plan) ? plan.relief.factor_at_greatest : plan.walls.factor_at_set;
  const std::string set = write_pressure_alone(plan.transfer.setting, units);
  const std::string worst =
      is_held(plan) ? fmt::format(", {} at worst", write_pressure_alone(plan.relief.greatest, units)) : "";
  const Force lid = is_held(plan) ? plan.relief.lid_force_at_greatest : plan.walls.lid_force;
  const std::string words =
      fmt::format("{} set{} ({} to 1, lid {}), walls' limit {}.", set, worst, write_factor(factor),
                  fill("{0}", {lid}, units), write_pressure_alone(plan.walls.limit, units));
  if (factor >= reservoir::kAirLiftFactor) return words;
  return words + fmt::format(" UNDER 4 to 1, which California Title 8 section 3301 asks and which holds up to {}.",
                             write_pressure_alone(plan.walls.four_to_one, units));
}

std::string relief_words(const Plan& plan, UnitSystem units) {
  if (plan.relief.valves.empty()) return "";
  const auto first = std::min_element(plan.relief.valves.begin(), plan.relief.valves.end(),
                                      [](const auto& a, const auto& b) { return a.opens < b.opens; });
  const bool upright =
      std::all_of(plan.ways.begin(), plan.ways.end(), [](const plan::Way& way) { return way.upright; });
  std::string words = fill("{0:mark}", {first->opens}, units);
  // What it is ordered to pass, as its bore alone promises nothing.
  if (first->supply > VolumeFlow()) words += fill(", {0:air}", {first->supply}, units);
  return words + (upright ? ", upright" : ", NOT upright yet");
}

/// The air is opened and shut by a valve in the job's run, else by the one of the shop.
std::string air_valve(const Plan& plan) {
  for (const Way& way : plan.ways)
    if (way.use == WayUse::feed && plan::way_is_shut_by_hand(*plan.catalog, way)) return "air, shut air";
  return "air at the shop's valve, shut it";
}

/// The lines back to the reservoir, whose valves are shut before air goes in.
std::string ways_back(const Plan& plan) {
  std::string names;
  for (std::size_t row = 0; row < plan.connections.size(); ++row)
    if (row != plan.water_connection && plan::leads_back(*plan.catalog, plan.job, plan.ways, plan.connections[row]))
      names += " and '" + plan.connections[row].name + "'";
  return names;
}

/// What stands at the end of the first way of that use.
std::string device_of(const Plan& plan, WayUse use) {
  for (const Way& way : plan.ways)
    if (way.use == use && way.device) return plan.catalog->part(*way.device).name;
  return "";
}

std::string time_words(const Figure& time, UnitSystem units) {
  if (time.high && !std::isfinite(in_seconds(std::get<Time>(*time.high)))) return written(time, units) + " or never";
  return written_with_range(time, units);
}

/// What stays runs down to that long after the table counts as drained.
std::string left_words(const Plan& plan, const FigureGroup& draining, UnitSystem units) {
  const std::string left = written(draining["left_in_table"], units);
  if (!plan.transfer.to_thinnest_film || plan.transfer.left_in_table >= plan.transfer.left_if_oily)
    return left + " in the table";
  return fmt::format("{} after {}", left, written(draining["time_to_thinnest_film"], units));
}

/// The table's own drain, where that takes the place of the line.
void add_own_drain(const Plan& plan, const plan::ConnectionPlan& connection, UnitSystem units, Card& card) {
  const plan::DrainPlan* drain = plan::drain_of(plan, connection);
  const std::string time = drain != nullptr && drain->time ? ": " + write_time(*drain->time) : "";
  card.running.push_back({"down", fmt::format("shut air, open vent, then the drain '{}'{}", connection.name, time)});
  if (drain != nullptr)
    card.running.push_back({"left", fill("{0} in the table, {1} deep", {drain->left, drain->left_at}, units)});
}

/// How long the reservoir runs that is drained against frost.
void add_emptying(const Plan& plan, UnitSystem units, Card& card) {
  for (const plan::DrainPlan& drain : plan.drains)
    if (!drain.of_table && drain.time && plan.job.against_frost.drained)
      card.running.push_back({"tank", fill("vent and '{0}' open: {1}, to {2} over its floor",
                                           {plan.ways[drain.way].connection, *drain.time, drain.left_at}, units)});
}

void add_running(const Plan& plan, UnitSystem units, Card& card) {
  const plan::TransferPlan& transfer = plan.transfer;
  const FigureGroup filling = filling_figures(plan);
  if (!transfer.missing_run.empty()) {
    card.running.push_back({"", fmt::format("Not while '{}' has no chain.", transfer.missing_run)});
    return;
  }
  if (transfer.fill.stop != transfer::Stop::goal_reached) {
    card.running.push_back({"", "The table does not come to its depth."});
    return;
  }
  const FigureGroup draining = draining_figures(plan);
  const plan::ConnectionPlan* drain = plan::drain_in_place_of_line(plan);
  const auto& refill = plan.transfer.refill_time;
  card.running = {{"up", fmt::format("shut vent{}, open {} at {}: {}", ways_back(plan), air_valve(plan),
                                     written(filling["shut_off_depth"], units), time_words(filling["time"], units))}};
  if (drain != nullptr) {
    add_own_drain(plan, *drain, units, card);
  } else {
    const std::string time = plan::drains_by_line(plan) ? time_words(draining["time"], units) : "never drains";
    card.running.push_back({"down", fmt::format("shut air, open vent: {}", time)});
    card.running.push_back({"left", left_words(plan, draining, units)});
  }
  add_emptying(plan, units, card);
  // Where the receiver gives more than the compressor brings meanwhile, the next fill waits.
  if (refill && *refill > kLongRefill * transfer.fill.time)
    card.running.push_back(
        {"next", fmt::format("the compressor needs {} for the air of a fill", written(filling["refill_time"], units))});
}

}  // namespace

void add_card_settings(const Plan& plan, UnitSystem units, Card& card) {
  const FigureGroup levels = levels_figures(plan);
  card.pressures = factor_words(plan, units);
  add_row(card.settings, "regulator", written(filling_figures(plan)["set_pressure"], units));
  if (const auto& stage = plan.transfer.system.air.first_stage)
    add_row(card.settings, "1st stage", fill("{0:mark}, the regulator before it", {stage->setting}, units));
  add_row(card.settings, "relief", relief_words(plan, units));
  add_row(card.settings, "gauge", device_of(plan, WayUse::gauge));
  add_row(card.settings, "charge", written(levels["charge_depth"], units) + " deep, water down");
  add_row(card.settings, "mark", written(levels["charge_mark_below_lid"], units) + " below the lid");
  add_row(card.settings, "top up", fmt::format("at {} on the dip rod", written(levels["top_up_mark"], units)));
  add_running(plan, units, card);
}

}  // namespace riserun::report
