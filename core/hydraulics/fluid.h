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

inline constexpr double kAirGasConstant = 287.05287;  // J/(kg K), U.S. Standard Atmosphere 1976 / ISO 2533
inline constexpr double kAirHeatRatio = 1.4;

/// Air as an ideal gas: p / (R T).
Density air_density(AbsolutePressure pressure, Temperature temperature);

/// Viscosity of air by Sutherland's law, 1.458e-6 T^1.5 / (T + 110.4), U.S. Standard Atmosphere 1976, equation 51;
/// meant for 100 to 1900 K.
DynamicViscosity air_viscosity(Temperature temperature);

/// Standard atmosphere at an altitude, -500 to 11000 m (ISO 2533); nullopt outside.
///
///     p = 101325 Pa (1 - 0.0065 h / 288.15)^(g / (0.0065 R))
std::optional<AbsolutePressure> atmosphere_at(Length altitude);

}  // namespace riserun::hydraulics
