#include "reservoir/test_pressure.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace riserun::reservoir {
namespace {

GaugePressure highest_test(GaugePressure wall_limit) {
  return gauge_pascals(in_pascals(wall_limit) / kLimitOverTestPressure);
}

TestPressure no_test(std::string reason) {
  TestPressure none;
  none.basis = std::move(reason);
  return none;
}

TestPressure test_at(GaugePressure pressure, std::string basis, GaugePressure wall_limit, Volume air,
                     AbsolutePressure atmosphere, UnitSystem units) {
  return {pressure, std::move(basis), relief_setting(pressure, wall_limit).value_or(wall_limit),
          choose_gauge(pressure, units), stored_energy(pressure, air, atmosphere)};
}

}  // namespace

TestPressure choose_test_pressure(GaugePressure in_use, GaugePressure wall_limit, Volume air,
                                  AbsolutePressure atmosphere, UnitSystem units) {
  const GaugePressure highest = highest_test(wall_limit);
  if (highest < kLeastTestPressure) {
    return no_test(fmt::format(
        "The walls stand {} at most, and a test with air needs {} and a relief valve below the walls' limit: add "
        "stays until the limit is {}, or fill with water and look for drips.",
        write_pressure(wall_limit, units), write_pressure(kLeastTestPressure, units),
        write_pressure(gauge_pascals(in_pascals(kLeastTestPressure) * kLimitOverTestPressure), units)));
  }
  const GaugePressure wanted = std::clamp(in_use, kUsualTestPressure, kMostTestPressure);
  if (wanted <= highest) {
    const char* const why = in_use > kMostTestPressure    ? "the most for flat-sided tanks (UL 142, 42.2.1)"
                            : in_use > kUsualTestPressure ? "the pressure in use, within 1.5 to 3 psi (UL 142, 42.2.1)"
                                                          : "the least for flat-sided tanks (UL 142, 42.2.1)";
    return test_at(wanted, fmt::format("{} is {}.", write_pressure(wanted, units), why), wall_limit, air, atmosphere,
                   units);
  }
  const GaugePressure pressure = highest >= kUsualTestPressure ? kUsualTestPressure : kLeastTestPressure;
  return test_at(pressure,
                 fmt::format("{} because the walls stand {} at most; start lower and stop at the first visible bow "
                             "(common practice).",
                             write_pressure(pressure, units), write_pressure(wall_limit, units)),
                 wall_limit, air, atmosphere, units);
}

TestPressure check_test_pressure(GaugePressure asked, GaugePressure wall_limit, Volume air, AbsolutePressure atmosphere,
                                 UnitSystem units) {
  const GaugePressure highest = highest_test(wall_limit);
  if (asked > highest) {
    return no_test(fmt::format(
        "A test at {} is refused: the walls stand {} at most, and the relief valve must stand between the two, so "
        "test at {} or less, or add stays.",
        write_pressure(asked, units), write_pressure(wall_limit, units), write_pressure(highest, units)));
  }
  return test_at(asked, "As asked for; the walls stand it.", wall_limit, air, atmosphere, units);
}

}  // namespace riserun::reservoir
