#include "report/text/figure_rows.h"
#include "report/text/plan_text.h"
#include "report/text/step_rows.h"
#include "report/words/say.h"

#include <fmt/format.h>

namespace riserun::report {

namespace {

using plan::Plan;

/// @param when  "" while testing, "_in_use"
std::string standoff_sentence(const FigureRows& rows, const reservoir::StoredEnergy& energy, const std::string& when,
                              UnitSystem units) {
  return fmt::format(", {} of TNT; keep people {} away (ASME PCC-2: 30 m or {}, the greater)", rows.value("tnt" + when),
                     rows.value("standoff" + when), write_long_length(energy.formula_distance, units));
}

void test_ports(const Plan& plan, FigureRows& rows) {
  const plan::LeakTestPlan& test = plan.leak_test;
  if (!test.air_port.empty()) rows.line(test.possible ? "the rig goes on" : "left open", test.air_port);
  for (const plan::TestPlug& plug : test.plugs) {
    const std::string part = plug.part ? plan.catalog->part(*plug.part).name + (plug.from_bin ? " (bin)" : "")
                                       : "nothing in the catalog closes it";
    rows.line("plug " + plug.port, part);
  }
}

}  // namespace

std::string leak_test_text(const Plan& plan, const Style& style) {
  const plan::LeakTestPlan& test = plan.leak_test;
  const UnitSystem units = style.units;
  FigureRows rows(leak_test_figures(plan), style);
  if (!test.possible) {
    rows.line(rows.label("pressure"), "none: " + say(test.basis, units));
  } else {
    rows.figure("pressure", "", ": " + say(test.basis, units));
    rows.figure("gauge_full_scale", "0 to ",
                fmt::format(", {}; right to within {} there", test.gauge_of_job ? "the job's own" : "to be bought",
                            rows.value("gauge_error")));
    rows.figure("relief", "set at ", ", no higher than " + write_pressure_alone(test.relief, units));
  }
  test_ports(plan, rows);
  rows.figure("air_volume");
  if (test.possible) rows.figure("lid_force");
  if (test.possible) rows.figure("energy", "", standoff_sentence(rows, test.energy, "", units));
  rows.figure("energy_in_use", "", standoff_sentence(rows, test.energy_in_use, "_in_use", units));
  std::string text = heading("Leak test", style) + rows.text();
  for (const StepList& list : leak_test_steps(plan, units)) {
    std::size_t next = 1;
    text += step_rows(list, style, next);
  }
  return text + remarks_text(plan, plan::Topic::leak_test, style);
}

}  // namespace riserun::report
