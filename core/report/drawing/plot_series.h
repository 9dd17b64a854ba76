// What the plots show: curves of the plan over its timeline, with the range between the fast and the slow course as a
// band.
#pragma once

#include "plan/plan.h"
#include "report/drawing/timeline.h"

#include <string>
#include <vector>

namespace riserun::report {

/// A time on the timeline and the values there. Seconds and the unit of the series.
struct PlotPoint {
  double time = 0.0;
  double value = 0.0;
  double low = 0.0;  // of the range; at most value
  double high = 0.0;
};

struct PlotSeries {
  std::string name;  // "in the table"
  std::vector<PlotPoint> points;
};

/// A value that the curves are read against, all along the time.
struct PlotLevel {
  std::string name;  // "walls' limit 7.14 psi"
  double value = 0.0;
  bool warning = false;  // it must not be reached
};

enum class Quantity : std::uint8_t { flow, levels, air_pressure };

struct Plot {
  Quantity quantity = Quantity::flow;
  std::string title;  // "flow"
  std::string unit;   // "gpm"
  std::vector<PlotSeries> series;
  std::vector<PlotLevel> levels;
  double least = 0.0;  // of all that is drawn, range included
  double most = 0.0;
};

Plot plot_of(const plan::Plan& plan, const Timeline& timeline, Quantity quantity, UnitSystem units);

/// Round steps for an axis: 1, 2 or 5 times a power of ten, so that about `wanted` of them span the range.
double round_step(double span, int wanted);

}  // namespace riserun::report
