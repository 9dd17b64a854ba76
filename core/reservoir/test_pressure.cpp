#include "reservoir/test_pressure.h"

#include "quantity/nearly.h"

#include <algorithm>
#include <utility>

namespace riserun::reservoir {
namespace {

using quantity::Fact;
using quantity::fact;

TestPressure no_test(Fact reason) {
  TestPressure none;
  none.basis = std::move(reason);
  return none;
}

TestPressure test_at(GaugePressure pressure, Fact basis, GaugePressure wall_limit, Volume air,
                     AbsolutePressure atmosphere) {
  return {pressure, std::move(basis), relief_setting(pressure, wall_limit).value_or(wall_limit), choose_gauge(pressure),
          stored_energy(pressure, air, atmosphere)};
}

}  // namespace

GaugePressure most_test_pressure(GaugePressure wall_limit) {
  return gauge_pascals(in_pascals(wall_limit) / kLimitOverTestPressure);
}

TestPressure choose_test_pressure(GaugePressure in_use, GaugePressure wall_limit, GaugePressure keeps_factor,
                                  Volume air, AbsolutePressure atmosphere) {
  const GaugePressure highest = most_test_pressure(wall_limit);
  if (highest < kLeastTestPressure) {
    return no_test(fact("walls_too_weak_for_test", wall_limit, kLeastTestPressure,
                        gauge_pascals(in_pascals(kLeastTestPressure) * kLimitOverTestPressure)));
  }
  const bool is_weak = keeps_factor < kUsualTestPressure;
  const GaugePressure wanted = std::clamp(in_use, is_weak ? kLeastTestPressure : kUsualTestPressure, kMostTestPressure);
  if (wanted <= highest) {
    const Fact why = in_use > kMostTestPressure    ? fact("test_at_the_most", wanted)
                     : in_use > kUsualTestPressure ? fact("test_at_the_pressure_in_use", wanted)
                     : is_weak                     ? fact("test_that_keeps_the_factor", wanted, kUsualTestPressure)
                                                   : fact("test_at_the_least", wanted);
    return test_at(wanted, why, wall_limit, air, atmosphere);
  }
  const GaugePressure pressure = highest >= kUsualTestPressure ? kUsualTestPressure : kLeastTestPressure;
  return test_at(pressure, fact("test_as_weak_walls_allow", pressure, wall_limit), wall_limit, air, atmosphere);
}

TestPressure check_test_pressure(GaugePressure asked, GaugePressure wall_limit, Volume air,
                                 AbsolutePressure atmosphere) {
  const GaugePressure highest = most_test_pressure(wall_limit);
  constexpr double kAsPrinted = 0.995;  // what is typed as it was printed, with three digits, must be let in
  if (quantity::more_than(asked, highest))
    return no_test(
        fact("walls_do_not_stand_the_test", asked, wall_limit, gauge_pascals(in_pascals(highest) * kAsPrinted)));
  return test_at(asked, fact("test_as_asked"), wall_limit, air, atmosphere);
}

}  // namespace riserun::reservoir
