// Compiled once for each value of MIX. With 0 it is right; with every other value the marked line must not compile.
#include "quantity/quantities.h"

using namespace riserun;

#ifndef MIX
#define MIX 0
#endif

[[maybe_unused]] void right() {
  const Length length = inches(2) + feet(1) + millimetres(3);
  const Volume volume = us_gallons_per_minute(12) * minutes(2);
  const GaugePressure gauge_pressure = psig(5) + psi(2);
  const PressureDifference difference = psig(5) - psig(2);
  const AbsolutePressure absolute_pressure = absolute(gauge_pressure, absolute_pascals(101325));
  const PressureDifference column = pressure_of(metres_of_head(1), kilograms_per_cubic_metre(998));
  const TemperatureDifference warming = degrees_celsius(30) - degrees_celsius(20);
  (void)length, (void)volume, (void)difference, (void)absolute_pressure, (void)column, (void)warming;
}

[[maybe_unused]] void wrong() {
#if MIX == 1
  (void)(inches(1) + psi(1));  // a length and a pressure
#elif MIX == 2
  AbsolutePressure p = psig(1);  // gauge taken for absolute
#elif MIX == 3
  (void)(metres_of_head(1) + pascals(1));  // a head and a pressure
#elif MIX == 4
  (void)(psig(1) + psig(1));  // two points have no sum
#elif MIX == 5
  (void)(metres_of_head(1) + metres(1));  // a head and a length
#elif MIX == 6
  Stress s = psi(1);  // a pressure taken for a stress
#elif MIX == 7
  Length l = 1.0;  // a number without a unit
#elif MIX == 8
  (void)(psig(1) < absolute_pascals(1));  // gauge compared with absolute
#elif MIX == 9
  (void)(degrees_celsius(1) + degrees_celsius(1));  // two temperatures have no sum
#elif MIX == 10
  Volume v = us_gallons_per_minute(12);  // a flow taken for a volume
#elif MIX == 11
  (void)(cents(1) + 1);  // money and a number
#elif MIX == 12
  (void)absolute(absolute_pascals(1), absolute_pascals(1));  // the gauge pressure of what is absolute already
#endif
}
