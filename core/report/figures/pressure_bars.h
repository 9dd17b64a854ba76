// The pressures of a plan side by side, to be drawn against what the walls stand.
#pragma once

#include "plan/plan.h"

#include <optional>
#include <string_view>
#include <vector>

namespace riserun::report {

struct PressureBar {
  std::string_view label;             // "set"
  std::optional<GaugePressure> at;    // none: the job has none
  std::optional<GaugePressure> on{};  // up to here: of a relief valve, where it is fully open
};

/// Set, reached in the fill, opened by the relief valve, tested with: in this order.
std::vector<PressureBar> pressure_bars(const plan::Plan& plan);

}  // namespace riserun::report
