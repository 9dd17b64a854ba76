#include "report/drawing/plot_drawing.h"

#include <algorithm>
#include <cmath>

namespace riserun::report {

namespace {

class PlotSketch {
 public:
  PlotSketch(const Plot& plot, const Timeline& timeline, double wide, double high)
      : plot_(plot),
        timeline_(timeline),
        wide_(wide),
        high_(high),
        whole_(std::max(in_seconds(timeline.whole()), 1e-9)),
        most_(plot.most > plot.least ? plot.most : plot.least + 1.0) {}

  Drawing draw() {
    drawing_.low = {0.0, 0.0};
    drawing_.high = {wide_, high_};
    values();
    times();
    for (const PlotLevel& level : plot_.levels) against(level);
    for (std::size_t row = 0; row < plot_.series.size(); ++row) curve(plot_.series[row], ink_of(plot_, row));
    names();
    return std::move(drawing_);
  }

 private:
  double x(double time) const { return time / whole_ * wide_; }
  double y(double value) const { return (value - plot_.least) / (most_ - plot_.least) * high_; }
  void line(std::string name, std::vector<Spot> way, Ink ink, float width, Line kind = Line::full) {
    drawing_.shapes.push_back(Stroke{std::move(name), std::move(way), ink, width, kind});
  }
  void words(std::string name, Spot at, std::string text, Align across, Align up, Ink ink = Ink::text) {
    drawing_.shapes.push_back(Label{std::move(name), at, std::move(text), ink, across, up});
  }

  double grid_step() const { return round_step(most_ - plot_.least, 5); }

  void values() {
    const double step = grid_step();
    for (double value = std::ceil(plot_.least / step) * step; value <= most_ + 1e-9 * step; value += step) {
      line("grid", {{0.0, y(value)}, {wide_, y(value)}}, Ink::line, 0.8F);
      words("value", {-0.008 * wide_, y(value)}, write_number(std::abs(value) < 1e-9 * step ? 0.0 : value), Align::high,
            Align::middle);
    }
  }

  void times() {
    const double step = time_step(whole_, 7);
    for (double time = 0.0; time <= whole_ * (1.0 + 1e-9); time += step) {
      line("tick", {{x(time), 0.0}, {x(time), -0.02 * high_}}, Ink::text, 1.0F);
      words("time", {x(time), -0.02 * high_}, write_time(seconds(time)), Align::middle, Align::high);
    }
    line("axis", {{0.0, 0.0}, {wide_, 0.0}}, Ink::text, 1.0F);
    line("axis", {{0.0, 0.0}, {0.0, high_}}, Ink::text, 1.0F);
    const double turn = x(in_seconds(timeline_.fill_shown));
    if (turn > 0.0 && turn < wide_) line("drain begins", {{turn, 0.0}, {turn, high_}}, Ink::text, 0.8F, Line::hidden);
  }

  void curve(const PlotSeries& series, Ink ink) {
    Stroke way{series.name, {}, ink, 2.0F};
    for (std::size_t i = 0; i < series.points.size(); ++i) {
      const PlotPoint& b = series.points[i];
      way.points.push_back({x(b.time), y(b.value)});
    }
    band(series, ink);
    drawing_.shapes.push_back(std::move(way));
  }

  /// Whether a line of the grid goes through words that stand over a level, or under it.
  bool grid_crosses(double level, bool over) const {
    constexpr double kLetters = 0.1;  // of the plot's height
    const double step = grid_step();
    const double line = over ? (std::floor(level / step) + 1.0) * step : (std::ceil(level / step) - 1.0) * step;
    return line <= most_ && line >= plot_.least && std::abs(y(line) - y(level)) < kLetters * high_;
  }

  /// A level with its words at its right end: a limit's under it, another's over it, the other way round where the grid
  /// would go through them.
  void against(const PlotLevel& level) {
    const Ink ink = level.warning ? Ink::refused : Ink::text;
    line("level", {{0.0, y(level.value)}, {wide_, y(level.value)}}, ink, 1.0F, Line::hidden);
    const bool over = grid_crosses(level.value, !level.warning) && !grid_crosses(level.value, level.warning)
                          ? level.warning
                          : !level.warning;
    words("level", {wide_, y(level.value)}, level.name, Align::high, over ? Align::low : Align::high, ink);
  }

  /// Of the range between the fast and the slow course; in strips wide enough that a page need not hold thousands.
  void band(const PlotSeries& series, Ink ink) {
    constexpr std::size_t kStrips = 120;
    const std::size_t step = std::max<std::size_t>(1, series.points.size() / kStrips);
    for (std::size_t i = 0; i + 1 < series.points.size(); i += step) {
      const PlotPoint& a = series.points[i];
      const PlotPoint& b = series.points[std::min(i + step, series.points.size() - 1)];
      if (b.time <= a.time) continue;
      drawing_.shapes.push_back(
          Area{"range",
               {{x(a.time), y(a.low)}, {x(b.time), y(b.low)}, {x(b.time), y(b.high)}, {x(a.time), y(a.high)}},
               ink,
               0.22F,
               {}});
    }
  }

  /// Which curve is which, over the plot from the right.
  void names() {
    double right = wide_;
    for (std::size_t row = plot_.series.size(); row-- > 0;) {
      words("name", {right, 1.02 * high_}, plot_.series[row].name, Align::high, Align::low);
      const double level = 1.02 * high_ + 0.045 * high_;
      // A little more than the letters of seven points are wide on the average.
      const double from = right - 4.2 * static_cast<double>(plot_.series[row].name.size()) - 26.0;
      line("name", {{from, level}, {from + 20.0, level}}, ink_of(plot_, row), 3.0F);
      right = from - 12.0;
    }
  }

  const Plot& plot_;
  const Timeline& timeline_;
  double wide_, high_, whole_, most_;
  Drawing drawing_;
};

}  // namespace

Ink ink_of(const Plot& plot, std::size_t row) {
  if (plot.quantity == Quantity::air_pressure) return Ink::air;
  return row == 0 ? Ink::water : Ink::accent;
}

double time_step(double whole, int wanted) {
  constexpr double kMinute = 60.0;
  return whole > 2.0 * kMinute ? kMinute * round_step(whole / kMinute, wanted) : round_step(whole, wanted);
}

Drawing plot_drawing(const Plot& plot, const Timeline& timeline, double wide, double high) {
  return PlotSketch(plot, timeline, wide, high).draw();
}

}  // namespace riserun::report
