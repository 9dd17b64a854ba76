#include "report/drawing/timeline.h"

#include "plan/judge/limits.h"

#include <algorithm>
#include <cmath>

namespace riserun::report {

namespace {

using transfer::Instant;
using transfer::Stop;

Time shown(const transfer::Transfer& transfer) {
  Time longest = transfer.time;
  if (!transfer.history_slow.empty() && std::isfinite(in_seconds(transfer.time_high)))
    longest = std::max(longest, transfer.history_slow.back().time);
  return std::isfinite(in_seconds(longest)) ? longest : Time{};
}

std::string stop_words(Stop stop, bool filling) {
  switch (stop) {
    case Stop::goal_reached:
      return filling ? "table at its depth" : "table drained";
    case Stop::riser_uncovered:
      return "riser uncovers";
    case Stop::pressures_balance:
      return "pressures balance";
    case Stop::table_overflows:
      return "table overflows";
    case Stop::reservoir_full:
      return "reservoir full";
    case Stop::time_limit:
      return "time limit";
  }
  return "";
}

}  // namespace

Timeline timeline_of(const plan::Plan& plan) {
  Timeline timeline;
  if (!plan.transfer.missing_run.empty()) return timeline;  // no water moves where nothing leads
  const transfer::Fill& fill = plan.transfer.fill;
  const transfer::Drain& drain = plan.transfer.drain;
  timeline.fill_shown = shown(fill);
  timeline.drain_shown = shown(drain);
  if (!fill.history.empty())
    timeline.marks.push_back({fill.time, stop_words(fill.stop, true), fill.stop != Stop::goal_reached});
  const bool drains = plan.transfer.left_in_table <= fill.volume * plan::kMostLeftInTable;
  if (!drain.history.empty())
    timeline.marks.push_back({timeline.fill_shown + drain.time,
                              drains ? stop_words(drain.stop, false) : "no more runs back",
                              drain.stop != Stop::goal_reached || !drains});
  return timeline;
}

Instant instant_on(const std::vector<Instant>& history, Time at) {
  if (history.empty()) return {};
  if (at <= history.front().time) return history.front();
  if (at >= history.back().time) {
    Instant end = history.back();
    if (at > end.time) end.flow = end.free_air = VolumeFlow{};
    end.time = at;
    return end;
  }
  const auto after = std::upper_bound(history.begin(), history.end(), at,
                                      [](Time time, const Instant& instant) { return time < instant.time; });
  const Instant& b = *after;
  const Instant& a = *(after - 1);
  const double share = b.time > a.time ? static_cast<double>((at - a.time) / (b.time - a.time)) : 0.0;
  Instant between;
  between.time = at;
  between.reservoir_depth = a.reservoir_depth + (b.reservoir_depth - a.reservoir_depth) * share;
  between.table_depth = a.table_depth + (b.table_depth - a.table_depth) * share;
  between.ullage_pressure = a.ullage_pressure + (b.ullage_pressure - a.ullage_pressure) * share;
  between.flow = a.flow + (b.flow - a.flow) * share;
  between.free_air = a.free_air + (b.free_air - a.free_air) * share;
  return between;
}

Phase phase_at(const Timeline& timeline, Time at) {
  return at < timeline.fill_shown || timeline.drain_shown <= Time{} ? Phase::fill : Phase::drain;
}

Instant instant_at(const plan::Plan& plan, const Timeline& timeline, Time at) {
  const bool filling = phase_at(timeline, at) == Phase::fill;
  const auto& history = filling ? plan.transfer.fill.history : plan.transfer.drain.history;
  if (!history.empty()) return instant_on(history, filling ? at : at - timeline.fill_shown);
  Instant at_rest;
  at_rest.reservoir_depth = plan.levels.charge_depth;
  return at_rest;
}

}  // namespace riserun::report
