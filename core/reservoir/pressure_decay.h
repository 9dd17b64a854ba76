// What a fall of pressure in a closed reservoir tells: how much of it temperature alone explains, what leak it is, and
// the least that a gauge can see.
#pragma once

#include "quantity/quantities.h"

#include <span>
#include <string_view>

namespace riserun::reservoir {

/// Change of the reading for each kelvin that the shut-in air warms: p_abs / T (ideal gas, fixed volume; the air dry).
PressureDifference drift_per_kelvin(GaugePressure pressure, AbsolutePressure atmosphere, Temperature temperature);

/// A later reading as it would be at the first reading's temperature: p2 T1 / T2, absolute (ideal gas, fixed volume).
GaugePressure at_first_temperature(GaugePressure later, Temperature then, Temperature first,
                                   AbsolutePressure atmosphere);

/// Free air that leaves: Q = V dp / (p_atm t) (ideal gas).
/// @param drop after correction for temperature, >= 0
/// @pre hold above zero
VolumeFlow leak_rate(Volume air, PressureDifference drop, Time hold, AbsolutePressure atmosphere);

/// The round hole in thin sheet that leaks so; a long pore of that bore passes less.
/// Source: orifice_air_flow with Cd 0.6 (common practice).
Length hole_that_leaks(VolumeFlow leak, GaugePressure pressure, AbsolutePressure atmosphere, Temperature temperature);

/// What a dial may be off, in percent of its span: in the lowest quarter, the middle half and the highest quarter.
struct GaugeGrade {
  std::string_view name;
  double lower = 0.0;
  double middle = 0.0;
  double upper = 0.0;
};

/// ASME B40.100: the forms 1 and 2/1/2 published, the others from memory.
std::span<const GaugeGrade> gauge_grades();
/// Ordinary shop dials are of grade B: 3/2/3 (common practice).
const GaugeGrade& shop_gauge_grade();

/// Plus or minus.
/// @pre full_scale above zero, pressure from zero to full_scale
PressureDifference gauge_error(const GaugeGrade& grade, GaugePressure full_scale, GaugePressure pressure);

}  // namespace riserun::reservoir
