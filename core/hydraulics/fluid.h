// Water and air by temperature.
#pragma once

#include "quantity/quantities.h"

#include <optional>

namespace riserun::hydraulics {

struct Water {
  Density density;
  DynamicViscosity viscosity;
  AbsolutePressure vapour_pressure;
};

/// Liquid water at one standard atmosphere, 0 to 80 degC; nullopt outside.
///
/// Density and viscosity: IAPWS SR6-08(2011), "Revised Supplementary Release on Properties of Liquid Water at
/// 0.1 MPa", density carried from 0.1 MPa to 0.101325 MPa with the release's own compressibility (its section 4).
/// Its stated uncertainty there: 1 ppm in density, 1 % in viscosity. Vapour pressure: IAPWS R7-97(2012), equation 30.
std::optional<Water> water_at(Temperature temperature);

/// The same water with propylene glycol in it, 0 to 0.1 by volume. 10 % are 0.8 % denser and 1.4 times as viscous,
/// and between there it goes evenly (ASHRAE Handbook, Fundamentals, tables of aqueous propylene glycol, from memory).
Water with_propylene_glycol(Water water, double share);

inline constexpr double kAirGasConstant = 287.05287;  // J/(kg K), U.S. Standard Atmosphere 1976 / ISO 2533
inline constexpr double kAirHeatRatio = 1.4;

/// Air as an ideal gas: p / (R T).
Density air_density(AbsolutePressure pressure, Temperature temperature);

/// Saturation pressure of water vapour, over ice below 0 degC. From there on IAPWS R7-97(2012), equation 30; over ice
/// 611.2 Pa exp(22.46 t / (272.62 + t)), t in degC, WMO-No. 8, annex 4.B, from memory.
/// @param temperature  -65 to 100 degC
AbsolutePressure vapour_pressure(Temperature temperature);

/// How far below the atmosphere a shut air space over water comes when it cools: its air shrinks and its vapour
/// condenses, p = (p_atm - ps1) T2/T1 + ps2, by the ideal gas law. The room that the water itself leaves or takes is
/// not counted.
/// @param warm, cold  -65 to 100 degC: shut at the atmosphere's pressure when warm; not warmer when cold
PressureDifference vacuum_of_cooling(Temperature warm, Temperature cold, AbsolutePressure atmosphere);

/// Viscosity of air by Sutherland's law, 1.458e-6 T^1.5 / (T + 110.4), U.S. Standard Atmosphere 1976, equation 51;
/// meant for 100 to 1900 K.
DynamicViscosity air_viscosity(Temperature temperature);

/// Standard atmosphere at an altitude, -500 to 11000 m (ISO 2533); nullopt outside.
///
///     p = 101325 Pa (1 - 0.0065 h / 288.15)^(g / (0.0065 R))
std::optional<AbsolutePressure> atmosphere_at(Length altitude);

}  // namespace riserun::hydraulics
