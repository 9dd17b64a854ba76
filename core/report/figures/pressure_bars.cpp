#include "report/figures/pressure_bars.h"

#include <algorithm>

namespace riserun::report {

std::vector<PressureBar> pressure_bars(const plan::Plan& plan) {
  PressureBar relief{"relief", {}};
  for (const plan::ReliefValve& valve : plan.relief.valves) {
    if (relief.at && *relief.at <= valve.opens) continue;
    relief.at = valve.opens;  // the first to open
    relief.on = valve.full_flow;
  }
  PressureBar test{"test", {}};
  if (plan.leak_test.possible) test.at = plan.leak_test.pressure;
  return {{"set", plan.transfer.setting}, {"reached", plan.transfer.fill.highest_ullage_pressure}, relief, test};
}

}  // namespace riserun::report
