// A bench for the tests of filling and draining.
#pragma once

#include "transfer/transfer.h"

namespace riserun::transfer {

/// An invented bench: 1 m2 of reservoir under 1.5 m2 of table, 25 mm line.
inline System bench() {
  System s;
  s.reservoir = {metres(1.0), metres(1.0), metres(0.4), 0.0};
  s.table = {metres(1.5), metres(1.0), metres(0.8), metres(0.15), 0.0};
  s.riser_end_height = metres(0.015);
  hydraulics::LineElement riser, hose;
  riser.name = "riser";
  riser.bore = hose.bore = metres(0.0266);
  riser.length = metres(0.4);
  riser.roughness = millimetres(0.046);
  hose.name = "hose";
  hose.length = metres(0.6);
  hose.fixed_k = 1.0;
  s.line = hydraulics::Line({riser, hose}, {0.78, 1.0, 0.1, ""}, {0.5, 1.0, 0.1, ""});
  s.water = {kilograms_per_cubic_metre(998.2), pascal_seconds(1.0e-3), absolute_pascals(2339.0)};
  s.temperature = degrees_celsius(20.0);
  s.atmosphere = absolute_pascals(101325.0);
  s.air.set_pressure = gauge_pascals(15000.0);
  s.air.droop = 0.1;
  s.air.regulator_rated_flow = litres_per_minute(600.0);
  s.air.free_air_delivery = litres_per_minute(100.0);
  s.air.receiver = litres(30.0);
  s.air.receiver_pressure = bar_gauge(7.0);
  s.air.feed_bore = millimetres(6.0);
  s.vent = {millimetres(12.0), 0.6, 1};
  return s;
}

inline const Start kCharged{metres(0.35), metres(0.0), gauge_pascals(0.0)};
inline const Length kWanted = metres(0.1);

inline double rho_g(const System& s) {
  return in_kilograms_per_cubic_metre(s.water.density) * quantity::kStandardGravity;
}

}  // namespace riserun::transfer
