#include "report/text/figure_rows.h"
#include "report/text/plan_text.h"
#include "report/text/step_rows.h"
#include "report/words/say.h"

#include <fmt/format.h>

namespace riserun::report {

namespace {

using plan::Plan;

std::string tnt_of(const FigureRows& rows, const std::string& when) {
  return fmt::format(", {} of TNT", rows.value("tnt" + when));
}

/// The distance is one for tests: who works at the bench stands beside it.
std::string standoff_sentence(const FigureRows& rows, const reservoir::StoredEnergy& energy, UnitSystem units) {
  return fmt::format("{}; while it rises and at the most nobody nearer than {} (ASME PCC-2: 30 m or {}, the greater)",
                     tnt_of(rows, ""), rows.value("standoff"), write_long_length(energy.formula_distance, units));
}

void test_ports(const Plan& plan, FigureRows& rows) {
  const plan::LeakTestPlan& test = plan.leak_test;
  if (!test.air_port.empty()) rows.line(test.possible ? "the rig goes on" : "left open", test.air_port);
  for (const plan::TestPlug& plug : test.plugs) {
    const std::string part = plug.part ? plan.catalog->part(*plug.part).name + (plug.from_bin ? " (bin)" : "") +
                                             (plug.of_job ? ", which stays" : "")
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
    if (test.gauge_full_scale > psig(0.0))
      rows.figure("gauge_full_scale", "0 to ",
                  fmt::format(", {}; right to within {} there", test.gauge_of_job ? "the job's own" : "to be bought",
                              rows.value("gauge_error")));
    else
      rows.figure("water_column_leg", "", " each leg of a U of clear hose: no dial that is sold shows so little");
    rows.figure("brushed_at", "", " when the solution goes on");
    const bool is_sold = test.relief_opens || test.air_port.empty();
    rows.figure("relief", is_sold ? "set at " : "", ", no higher than " + write_pressure_alone(test.relief, units));
  }
  test_ports(plan, rows);
  rows.figure("air_volume");
  if (test.possible) rows.figure("lid_force");
  if (test.possible) rows.figure("energy", "", standoff_sentence(rows, test.energy, units));
  rows.figure("energy_in_use", "", tnt_of(rows, "_in_use"));
  std::string text = heading("Leak test", style) + rows.text();
  if (plan.verdict != plan::Verdict::refused)
    for (const StepList& list : leak_test_steps(plan, units)) {
      std::size_t next = 1;
      text += step_rows(list, style, next);
    }
  return text + remarks_text(plan, plan::Topic::leak_test, style);
}

}  // namespace riserun::report
