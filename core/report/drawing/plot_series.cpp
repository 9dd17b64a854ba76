#include "report/drawing/plot_series.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

namespace riserun::report {

namespace {

using transfer::Instant;
using transfer::Transfer;
using Reader = std::function<double(const Instant&)>;

struct Reading {
  std::string name;
  Reader read;
};

double length_in(Length value, UnitSystem units) {
  return units == UnitSystem::inch ? in_inches(value) : in_millimetres(value);
}

std::vector<Reading> readings(Quantity quantity, UnitSystem units) {
  switch (quantity) {
    case Quantity::flow:
      return {{"into the table", [units](const Instant& i) {
                 return units == UnitSystem::inch ? in_us_gallons_per_minute(i.flow) : in_litres_per_minute(i.flow);
               }}};
    case Quantity::levels:
      return {{"reservoir", [units](const Instant& i) { return length_in(i.reservoir_depth, units); }},
              {"table", [units](const Instant& i) { return length_in(i.table_depth, units); }}};
    case Quantity::air_pressure:
      return {{"in the reservoir", [units](const Instant& i) {
                 return units == UnitSystem::inch ? in_psi(i.ullage_pressure) : in_bar(i.ullage_pressure);
               }}};
  }
  return {};
}

/// The curve's own instants, and those of its limiting courses, so that no corner of the band is cut off; and right
/// after the end of each, where its flow stops at once.
std::vector<Time> times_of(const Transfer& transfer) {
  const Time at_once = seconds(1.0e-3);
  std::vector<Time> times;
  for (const auto* history : {&transfer.history, &transfer.history_fast, &transfer.history_slow}) {
    for (const Instant& instant : *history) times.push_back(instant.time);
    if (!history->empty()) times.push_back(history->back().time + at_once);
  }
  std::sort(times.begin(), times.end());
  times.erase(std::unique(times.begin(), times.end()), times.end());
  return times;
}

void add(const Transfer& transfer, Time from, Time shown, const Reader& read, PlotSeries& series) {
  if (transfer.history.empty()) return;
  for (const Time& time : times_of(transfer)) {
    if (time > shown) break;
    PlotPoint point;
    point.time = in_seconds(from + time);
    point.value = point.low = point.high = read(instant_on(transfer.history, time));
    for (const auto* history : {&transfer.history_fast, &transfer.history_slow}) {
      if (history->empty()) continue;
      const double value = read(instant_on(*history, time));
      point.low = std::min(point.low, value);
      point.high = std::max(point.high, value);
    }
    series.points.push_back(point);
  }
}

std::string plot_title(Quantity quantity) {
  switch (quantity) {
    case Quantity::flow:
      return "Flow";
    case Quantity::levels:
      return "Levels";
    case Quantity::air_pressure:
      return "Air pressure";
  }
  return "";
}

std::string plot_unit(Quantity quantity, UnitSystem units) {
  const bool inch = units == UnitSystem::inch;
  switch (quantity) {
    case Quantity::flow:
      return inch ? "gpm" : "L/min";
    case Quantity::levels:
      return inch ? "in" : "mm";
    case Quantity::air_pressure:
      return inch ? "psi" : "bar";
  }
  return "";
}

/// What the air's pressure is read against: the regulator's setting and the walls' limit.
std::vector<PlotLevel> pressure_levels(const plan::Plan& plan, UnitSystem units) {
  std::vector<PlotLevel> levels;
  const auto add_level = [&](const char* name, GaugePressure value, bool warning) {
    if (value > GaugePressure{})
      levels.push_back({fmt::format("{} {}", name, write_pressure_alone(value, units)),
                        units == UnitSystem::inch ? in_psi(value) : in_bar(value), warning});
  };
  add_level("setting", plan.transfer.system.air.set_pressure, false);
  add_level("walls' limit", plan.walls.limit, true);
  return levels;
}

}  // namespace

Plot plot_of(const plan::Plan& plan, const Timeline& timeline, Quantity quantity, UnitSystem units) {
  Plot plot{quantity, plot_title(quantity), plot_unit(quantity, units), {}, {}, 0.0, 0.0};
  for (const Reading& reading : readings(quantity, units)) {
    PlotSeries series{reading.name, {}};
    add(plan.transfer.fill, Time{}, timeline.fill_shown, reading.read, series);
    add(plan.transfer.drain, timeline.fill_shown, timeline.drain_shown, reading.read, series);
    for (const PlotPoint& point : series.points) {
      plot.least = std::min(plot.least, point.low);
      plot.most = std::max(plot.most, point.high);
    }
    plot.series.push_back(std::move(series));
  }
  if (quantity == Quantity::air_pressure) {
    plot.levels = pressure_levels(plan, units);
    for (const PlotLevel& level : plot.levels) plot.most = std::max(plot.most, level.value);
  }
  return plot;
}

double round_step(double span, int wanted) {
  if (!(span > 0.0) || wanted < 1) return 1.0;
  const double rough = span / wanted;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  for (const double step : {1.0, 2.0, 5.0})
    if (step * power >= rough * (1.0 - 1e-9)) return step * power;
  return 10.0 * power;
}

}  // namespace riserun::report
