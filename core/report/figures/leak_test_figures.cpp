#include "report/figures/figures.h"

namespace riserun::report {

FigureGroup leak_test_figures(const plan::Plan& plan) {
  const plan::LeakTestPlan& test = plan.leak_test;
  static constexpr const char* kEnergy = "ASME PCC-2 Article 501, the reservoir empty at the test pressure.";
  static constexpr const char* kInUse = "ASME PCC-2 Article 501, the ullage with the water up at the set pressure.";
  static constexpr const char* kStandoff = "ASME PCC-2 Article 501: R = 20 (2 TNT)^(1/3), never less than 30 m.";
  const bool is_none_sold = !test.relief_opens && !test.air_port.empty();
  FigureGroup group{"leak_test", "Leak test", plan::Topic::leak_test, {}};
  group.figures = {
      {.key = "pressure",
       .label = "pressure",
       .value = test.pressure,
       .form = "dial",
       .limit = plan.walls.limit,
       .source = {"{0}", {quantity::Facts{test.basis}}}},
      {.key = "brushed_at",
       .label = "let down to",
       .value = test.brushed_at,
       .form = "mark",
       .beside = {"before anybody goes near with the solution", {}},
       .source = {"What it works at, from half of the test pressure up to 1/1.1 of it (ASME B31.3, 345.5.5; ASME BPVC "
                  "Section VIII UG-100(d); from memory).",
                  {}}},
      {.key = "gauge_full_scale",
       .label = "gauge to use",
       .value = test.gauge_full_scale,
       .form = "mark",
       .beside = {"full scale", {}},
       .source = {"A dial of 1.5 to 4 times the test pressure (ASME BPVC Section VIII Div. 1, UG-102, as reported).",
                  {}}},
      {.key = "gauge_error",
       .label = "the gauge is right to",
       .value = test.gauge_error,
       .form = "mark2",
       .source = {"Grade B of ASME B40.100 (from memory): 2 % of the span in its middle half, 3 % beyond.", {}}},
      {.key = "drift",
       .label = "reading, for each degC",
       .value = test.drift_per_kelvin,
       .form = "alone2",
       .source = {"Gas law at fixed volume: p / T, both absolute.", {}}},
      {.key = "least_hole",
       .label = "least hole that it sees",
       .value = test.least_hole,
       .form = "thickness2",
       .beside = {"one mark of {0:mark} in {1}", {test.gauge_mark, test.hold}},
       .source = {"Q = V dp / (p t), through a round hole in thin sheet with Cd 0.6 (common practice).", {}}},
      {.key = "water_column_leg",
       .label = "water column",
       .value = test.water_column_leg,
       .beside = {"each leg of a U of clear hose", {}},
       .source = {"The height of water that the test pressure holds.", {}}},
      {.key = "relief",
       .label = "relief in the test line",
       .value = is_none_sold ? quantity::Value(std::string("none that is sold"))
                             : quantity::Value(test.relief_opens.value_or(test.relief)),
       .form = is_none_sold ? "" : "mark",
       .beside = {"set no higher than {0:mark}", {test.relief}},
       .source = {"A quarter over the test pressure, at least 0.25 psi, and no higher than the walls' limit (common "
                  "practice).",
                  {}}},
      {.key = "air_volume",
       .label = "air in the empty tank",
       .value = test.air_volume,
       .source = {"Inside volume of the reservoir, supports taken off.", {}}},
      {.key = "lid_force",
       .label = "force on lid, testing",
       .value = test.lid_force,
       .source = {"Test pressure times the lid's area.", {}}},
      {.key = "energy", .label = "stored energy, testing", .value = test.energy.energy, .source = {kEnergy, {}}},
      {.key = "tnt", .label = "as TNT, testing", .value = test.energy.tnt, .form = "2", .source = {kEnergy, {}}},
      {.key = "standoff",
       .label = "keep people away, testing",
       .value = test.energy.standoff,
       .form = "distance",
       .source = {kStandoff, {}}},
      {.key = "energy_in_use",
       .label = "stored energy, in use",
       .value = test.energy_in_use.energy,
       .source = {kInUse, {}}},
      {.key = "tnt_in_use",
       .label = "as TNT, in use",
       .value = test.energy_in_use.tnt,
       .form = "2",
       .source = {kInUse, {}}}};
  return group;
}

}  // namespace riserun::report
