#include "report/json/transfer_json.h"

#include "plan/judge/drain.h"
#include "report/json/plain_json.h"

#include <nlohmann/json.hpp>

namespace riserun::report {

namespace {

using json = nlohmann::ordered_json;
using plan::Plan;

std::string stop_name(transfer::Stop stop) {
  switch (stop) {
    case transfer::Stop::goal_reached:
      return "goal_reached";
    case transfer::Stop::riser_uncovered:
      return "riser_uncovered";
    case transfer::Stop::pressures_balance:
      return "pressures_balance";
    case transfer::Stop::table_overflows:
      return "table_overflows";
    case transfer::Stop::time_limit:
      return "time_limit";
    case transfer::Stop::reservoir_full:
      return "reservoir_full";
  }
  return "";
}

std::string walk_away_name(transfer::WalkAway verdict) {
  switch (verdict) {
    case transfer::WalkAway::water_stops_below_rim:
      return "water_stops_below_rim";
    case transfer::WalkAway::table_overflows:
      return "table_overflows";
    case transfer::WalkAway::air_blows_through:
      return "air_blows_through";
  }
  return "";
}

json losses_json(const std::vector<hydraulics::ElementLoss>& losses) {
  json list = json::array();
  for (const hydraulics::ElementLoss& loss : losses)
    list.push_back({{"element", loss.element},
                    {"k", finite(loss.k)},
                    {"velocity_m_s", in_metres_per_second(loss.velocity)},
                    {"head_m", in_metres(loss.head)},
                    {"source", loss.source}});
  return list;
}

json history_json(const std::vector<transfer::Instant>& history) {
  json list = json::array();
  for (const transfer::Instant& instant : history)
    list.push_back({{"time_s", in_seconds(instant.time)},
                    {"reservoir_depth_m", in_metres(instant.reservoir_depth)},
                    {"table_depth_m", in_metres(instant.table_depth)},
                    {"ullage_pressure_pa", in_pascals(instant.ullage_pressure)},
                    {"flow_m3_s", in_cubic_metres_per_second(instant.flow)}});
  return list;
}

json common_json(const transfer::Transfer& transfer) {
  return {{"stop", stop_name(transfer.stop)},
          {"time_s", finite(in_seconds(transfer.time))},
          {"time_low_s", finite(in_seconds(transfer.time_low))},
          {"time_high_s", finite(in_seconds(transfer.time_high))},
          {"volume_m3", in_cubic_metres(transfer.volume)},
          {"mean_flow_m3_s", in_cubic_metres_per_second(transfer.mean_flow)},
          {"peak_flow_m3_s", in_cubic_metres_per_second(transfer.peak_flow)},
          {"free_air_m3", in_cubic_metres(transfer.free_air)},
          {"table_depth_m", in_metres(transfer.table_depth)},
          {"reservoir_depth_m", in_metres(transfer.reservoir_depth)},
          {"highest_ullage_pressure_pa", in_pascals(transfer.highest_ullage_pressure)},
          {"limited_by", transfer.limited_by},
          {"losses_at_peak", losses_json(transfer.losses_at_peak)},
          {"history", history_json(transfer.history)}};
}

}  // namespace

json transfer_object(const Plan& plan) {
  const transfer::Fill& fill = plan.transfer.fill;
  const transfer::Drain& drain = plan.transfer.drain;
  json filling = common_json(fill);
  filling.update({{"pressure_to_start_pa", in_pascals(fill.pressure_to_start)},
                  {"hold_pressure_pa", in_pascals(fill.hold_pressure)},
                  {"pressure_to_finish_pa", in_pascals(fill.pressure_to_finish)},
                  {"refill_time_s", plan.transfer.refill_time ? json(in_seconds(*plan.transfer.refill_time)) : json()},
                  {"set_pressure_pa", in_pascals(plan.transfer.setting)},
                  {"walls_limit_pa", in_pascals(plan.walls.limit)},
                  {"coast_up_m", in_metres(fill.coast_up)},
                  {"shut_off_depth_m", in_metres(fill.shut_off_depth)},
                  {"margin_over_riser_end_m", in_metres(fill.margin_over_riser_end)},
                  {"walk_away", walk_away_name(fill.walk_away)},
                  {"walk_away_spill_m3", in_cubic_metres(fill.walk_away_spill)},
                  {"self_limiting_pressure_pa", optional_pressure(fill.self_limiting_pressure)}});
  json draining = common_json(drain);
  draining["drains"] = plan::drains_by_line(plan);
  if (!plan::drains_by_line(plan))
    for (const char* time : {"time_s", "time_low_s", "time_high_s"}) draining[time] = nullptr;
  draining["left_in_table_m3"] = in_cubic_metres(drain.left_in_table);
  json drains = json::array();
  for (const plan::DrainPlan& way : plan.drains)
    drains.push_back({{"connection", plan.ways[way.way].connection},
                      {"of", way.of_table ? "table" : "reservoir"},
                      {"time_s", way.time ? json(in_seconds(*way.time)) : json()},
                      {"left_m", in_metres(way.stays_at)},
                      {"left_m3", in_cubic_metres(way.left)}});
  json transfer = {{"fill", filling},
                   {"drain", draining},
                   {"drains", std::move(drains)},
                   {"losses", losses_json(fill.losses_at_mean)}};
  // All of it as if plain pipe stood for the run that does not go together.
  if (!plan.transfer.missing_run.empty()) transfer["missing_run"] = plan.transfer.missing_run;
  return transfer;
}

}  // namespace riserun::report
