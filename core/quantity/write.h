// Writes quantities the way they are read in a shop, in inch or metric units from the same value. Values are rounded
// here and nowhere else: sums are done unrounded and written once. Whatever is written, read.h reads back to the
// printed precision. Window and command line print through these functions, so that both show the same numbers.
#pragma once

#include "quantity/quantities.h"
#include "quantity/unit_system.h"

#include <string>

namespace riserun::quantity {

/// The smallest mark of the tape measure: fractions are rounded to it and reduced.
enum class TapeMark { sixteenth = 16, thirty_second = 32 };

/// How many digits count, unless a caller knows better. Whole digits before the point are never rounded away.
inline constexpr int kUsualDigits = 3;

/// `13-11/16 in` or `348 mm`: for what is measured with a tape.
std::string write_length(Length value, UnitSystem system, TapeMark mark = TapeMark::sixteenth);
/// `6 ft 2-1/2 in` (24 in and more; below that as write_length) or `1.892 m` (1 m and more).
std::string write_long_length(Length value, UnitSystem system, TapeMark mark = TapeMark::sixteenth);
/// `0.1345 in` or `3.42 mm`: decimals, for thickness, bores and bulges, which a tape does not measure.
std::string write_thickness(Length value, UnitSystem system, int digits = 4);

/// `3/64 in` where it is a whole number of 64ths, as drills and holes are sold, else as write_thickness.
std::string write_bore(Length value, UnitSystem system, int digits = kUsualDigits);

std::string write_area(Area value, UnitSystem system, int digits = kUsualDigits);      // in2, ft2 | mm2, cm2, m2
std::string write_volume(Volume value, UnitSystem system, int digits = kUsualDigits);  // gal | L
/// `1.29 psi (36 in water)` or `0.081 bar (826 mm water)`; from 15 psi or 1 bar on the column says nothing: `125
/// psi`.
std::string write_pressure(GaugePressure value, UnitSystem system, int digits = kUsualDigits);
std::string write_pressure(PressureDifference value, UnitSystem system, int digits = kUsualDigits);
std::string write_pressure_alone(GaugePressure value, UnitSystem system, int digits = kUsualDigits);  // psi | bar
std::string write_pressure_alone(PressureDifference value, UnitSystem system, int digits = kUsualDigits);
std::string write_absolute_pressure(AbsolutePressure value, UnitSystem system,
                                    int digits = kUsualDigits);                                  // psia | bar abs
std::string write_head(Head value, UnitSystem system, int digits = kUsualDigits);                // in, ft | mm, m
std::string write_volume_flow(VolumeFlow value, UnitSystem system, int digits = kUsualDigits);   // gpm | L/min
std::string write_air_flow(VolumeFlow value, UnitSystem system, int digits = kUsualDigits);      // scfm | L/min
std::string write_free_air(Volume value, UnitSystem system, int digits = kUsualDigits);          // ft3 | L
std::string write_time(Time value, UnitSystem system = UnitSystem::inch, int digits = 2);        // s, min, h in both
std::string write_velocity(Velocity value, UnitSystem system, int digits = kUsualDigits);        // ft/s | m/s
std::string write_mass(Mass value, UnitSystem system, int digits = kUsualDigits);                // lb | kg
std::string write_force(Force value, UnitSystem system, int digits = kUsualDigits);              // lbf | N
std::string write_density(Density value, UnitSystem system, int digits = kUsualDigits);          // lb/ft3 | kg/m3
std::string write_temperature(Temperature value, UnitSystem system, int digits = kUsualDigits);  // degF | degC
std::string write_temperature_difference(TemperatureDifference value, UnitSystem system, int digits = kUsualDigits);
std::string write_power(Power value, UnitSystem system, int digits = kUsualDigits);    // W, kW in both
std::string write_energy(Energy value, UnitSystem system, int digits = kUsualDigits);  // ft-lb | J, kJ
std::string write_stress(Stress value, UnitSystem system, int digits = kUsualDigits);  // psi, ksi from 10000 psi | MPa
/// `$2.10`; `$2.10 and 3 without price`; where nothing has one `3 without price`, of one thing `no price`.
std::string write_price(Price value);
/// `about $2.10`, with a word before what is known.
std::string write_about(Price value);
std::string write_number(double value, int digits = kUsualDigits);  // 0.62

/// `1.2 to 1.7 min` from two written quantities: the unit once if both have the same, else both (`50 s to 1.7 min`).
std::string write_range(const std::string& low, const std::string& high);
/// `1.4 min (1.2 to 1.7 min)` from three written quantities; only the value when all three are written alike.
std::string write_with_range(const std::string& value, const std::string& low, const std::string& high);

}  // namespace riserun::quantity
