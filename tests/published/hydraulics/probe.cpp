// Answers requests for single formulas, one a line, so that an outside judge can compare them over wide grids. A
// request is a word and numbers in SI units; the answer is numbers with all their digits.
#include "hydraulics/air.h"
#include "hydraulics/air_line.h"
#include "hydraulics/fluid.h"
#include "hydraulics/friction.h"
#include "hydraulics/line.h"
#include "hydraulics/minor_losses.h"

#include <fmt/core.h>

#include <functional>
#include <iostream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace riserun::hydraulics {
namespace {

using Numbers = std::vector<double>;
using Formula = std::function<std::string(const Numbers&)>;

std::string text(double value) { return fmt::format("{:.17g}", value); }

std::string water_text(double kelvin) {
  const auto water = water_at(kelvins(kelvin));
  if (!water) return "none";
  return fmt::format("{:.17g} {:.17g} {:.17g}", in_kilograms_per_cubic_metre(water->density),
                     in_pascal_seconds(water->viscosity), in_pascals(water->vapour_pressure));
}

/// bore, length, roughness, K of entry, of fittings, of exit, density, viscosity, head -> flow.
std::string flow_text(const Numbers& n) {
  LineElement pipe;
  pipe.name = "pipe";
  pipe.bore = metres(n[0]);
  pipe.length = metres(n[1]);
  pipe.roughness = metres(n[2]);
  pipe.fixed_k = n[4];
  LineEnd first;
  first.entry_k = n[3];
  LineEnd last;
  last.exit_k = n[5];
  const Water water{kilograms_per_cubic_metre(n[6]), pascal_seconds(n[7]), AbsolutePressure()};
  const Line line({pipe}, first, last);
  return text(in_cubic_metres_per_second(line.flow_at(metres_of_head(n[8]), Direction::forward, water)));
}

/// from, to, R T, then for each opening its area and the difference that opens it -> flow.
std::string air_line_text(const Numbers& n) {
  std::vector<AirElement> row;
  for (std::size_t i = 3; i + 1 < n.size(); i += 2)
    row.push_back({"", {}, square_metres(n[i]), pascals(n[i + 1]), false, {}});
  return text(AirLine(row).flow(n[0], n[1], n[2]));
}

/// n, bore, flow -> K of the fitting in a line, K of its entry and of its exit with the default ends.
std::string fitting_text(const Numbers& n) {
  LineElement fitting;
  fitting.name = "fitting";
  fitting.crane_n = n[0];
  fitting.bore = metres(n[1]);
  const Line line({fitting}, LineEnd{}, LineEnd{});
  const Water water = *water_at(degrees_celsius(20.0));
  const auto losses = line.losses(cubic_metres_per_second(n[2]), Direction::forward, water);
  return fmt::format("{:.17g} {:.17g} {:.17g}", losses[1].k, losses[0].k, losses[2].k);
}

const std::map<std::string, Formula>& formulas() {
  static const std::map<std::string, Formula> table{
      {"colebrook", [](const Numbers& n) { return text(colebrook_friction_factor(n[0], n[1])); }},
      {"friction", [](const Numbers& n) { return text(darcy_friction_factor(n[0], n[1])); }},
      {"crane", [](const Numbers& n) { return text(crane_turbulent_friction_factor(metres(n[0]))); }},
      {"widening", [](const Numbers& n) { return text(widening_coefficient(metres(n[0]), metres(n[1]))); }},
      {"narrowing", [](const Numbers& n) { return text(narrowing_coefficient(metres(n[0]), metres(n[1]))); }},
      {"hooper", [](const Numbers& n) { return text(hooper_coefficient(n[0], n[1], metres(n[2]), n[3])); }},
      {"darby", [](const Numbers& n) { return text(darby_coefficient(n[0], n[1], n[2], n[3], n[4])); }},
      {"valve", [](const Numbers& n) { return text(cv_of_coefficient(n[0], metres(n[1]))); }},
      {"water", [](const Numbers& n) { return water_text(n[0]); }},
      {"air", [](const Numbers& n) { return text(orifice_air_flow(n[0], n[1], n[2], n[3], n[3])); }},
      {"airline", air_line_text},
      {"flow", flow_text},
      {"fitting", fitting_text},
  };
  return table;
}

int answer_all() {
  std::string line;
  while (std::getline(std::cin, line)) {
    std::istringstream words(line);
    std::string formula;
    words >> formula;
    Numbers numbers;
    for (std::string word; words >> word;) numbers.push_back(std::stod(word));
    fmt::print("{}\n", formulas().at(formula)(numbers));
  }
  return 0;
}

}  // namespace
}  // namespace riserun::hydraulics

int main() { return riserun::hydraulics::answer_all(); }
