#include "report/drawing/walls_drawing.h"

#include "report/drawing/plot_series.h"
#include "report/figures/pressure_bars.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::report {

namespace {

double in_unit(GaugePressure pressure, UnitSystem units) {
  return units == UnitSystem::inch ? in_psi(pressure) : in_bar(pressure);
}

}  // namespace

Drawing pressure_drawing(const plan::Plan& plan, UnitSystem units, double wide, double high) {
  const std::vector<PressureBar> bars = pressure_bars(plan);
  const double limit = in_unit(plan.walls.limit, units);
  double most = limit;
  for (const PressureBar& bar : bars)
    for (const auto& at : {bar.at, bar.on})
      if (at) most = std::max(most, in_unit(*at, units));
  most = std::max(most * 1.15, 1e-6);
  const double tall = high * static_cast<double>(bars.size());
  const auto x = [&](double value) { return value / most * wide; };
  Drawing drawing;
  drawing.high = {wide, tall};
  for (std::size_t row = 0; row < bars.size(); ++row) {
    const PressureBar& bar = bars[row];
    const double top = tall - high * static_cast<double>(row);
    const double middle = top - high / 2.0;
    drawing.shapes.push_back(Label{"bar", {-0.01 * wide, middle}, std::string(bar.label), Ink::text, Align::high});
    if (!bar.at) {
      drawing.shapes.push_back(Label{"none", {0.01 * wide, middle}, "none", Ink::text, Align::low});
      continue;
    }
    const double end = x(in_unit(*bar.at, units));
    const double full = bar.on ? std::max(end, x(in_unit(*bar.on, units))) : end;
    const Ink ink = *bar.at > plan.walls.limit ? Ink::refused_ground : Ink::air;
    drawing.shapes.push_back(
        Area{std::string(bar.label), box_outline(0.0, top - 0.75 * high, end, top - 0.25 * high), ink});
    if (full > end)
      drawing.shapes.push_back(
          Area{"full flow", box_outline(end, top - 0.75 * high, full, top - 0.25 * high), ink, 0.4F});
    drawing.shapes.push_back(Label{"value",
                                   {full + 0.012 * wide, middle},
                                   write_pressure_alone(*bar.at, units),
                                   Ink::text,
                                   Align::low,
                                   Align::middle,
                                   Ink::card});
  }
  const double at = x(limit);
  drawing.shapes.push_back(Stroke{"limit", {{at, 0.0}, {at, tall}}, Ink::refused, 2.0F});
  drawing.shapes.push_back(Label{"limit",
                                 {at, tall},
                                 "walls hold " + write_pressure_alone(plan.walls.limit, units),
                                 Ink::refused,
                                 at > 0.7 * wide ? Align::high : Align::middle,
                                 Align::low});
  drawing.shapes.push_back(Stroke{"axis", {{0.0, 0.0}, {0.0, tall}}, Ink::text, 1.0F});
  return drawing;
}

Drawing panels_drawing(const plan::Plan& plan) {
  Drawing drawing;
  double right = 0.0;
  double tallest = 0.0;
  for (const reservoir::PanelResult& result : plan.walls.at_set.panels)
    tallest = std::max(tallest, in_metres(result.panel.width));
  const double gap = 0.2 * tallest;
  const auto& panels = plan.walls.at_set.panels;
  for (std::size_t row = 0; row < panels.size(); ++row) {
    const double wide = in_metres(panels[row].panel.length);
    const double high = in_metres(panels[row].panel.width);
    const bool weakest = row == plan.walls.at_set.weakest;
    const double left = right + (row == 0 ? 0.0 : gap);
    right = left + wide;
    drawing.shapes.push_back(Area{panels[row].panel.name, box_outline(left, 0.0, right, high), Ink::part_body, 1.0F,
                                  weakest ? Ink::refused : Ink::part_edge});
    drawing.shapes.push_back(Label{fmt::format("item {}", row + 1),
                                   {(left + right) / 2.0, high / 2.0},
                                   fmt::format("{}", row + 1),
                                   Ink::accent_text,
                                   Align::middle,
                                   Align::middle,
                                   Ink::accent_ground});
  }
  drawing.high = {right, tallest};
  return drawing;
}

}  // namespace riserun::report
