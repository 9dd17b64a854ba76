#include "reservoir/stored_energy.h"

#include <algorithm>
#include <cmath>

namespace riserun::reservoir {

StoredEnergy stored_energy(GaugePressure pressure, Volume gas_volume, AbsolutePressure atmosphere) {
  if (in_pascals(pressure) <= 0.0 || in_cubic_metres(gas_volume) <= 0.0) return {};
  constexpr double kJoulesPerKilogramOfTnt = 4266920.0;  // ASME PCC-2, equation II-3
  const double test = in_pascals(absolute(pressure, atmosphere));
  const double energy =
      2.5 * test * in_cubic_metres(gas_volume) * (1.0 - std::pow(in_pascals(atmosphere) / test, 0.286));
  const double tnt = energy / kJoulesPerKilogramOfTnt;
  const double distance = 20.0 * std::cbrt(2.0 * tnt);
  return {joules(energy), kilograms(tnt), metres(distance), std::max(metres(distance), kLeastStandoff)};
}

}  // namespace riserun::reservoir
