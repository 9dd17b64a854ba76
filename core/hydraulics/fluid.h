// Water and air by temperature.
#pragma once

#include <optional>

#include "quantity/quantities.h"

namespace riserun::hydraulics {

struct Water {
  Density density;
  DynamicViscosity viscosity;
  AbsolutePressure vapour_pressure;
};

/// Liquid water at atmospheric pressure, 0 to 80 degC; nullopt outside.
std::optional<Water> water_at(Temperature temperature);

inline constexpr double kAirGasConstant = 287.05287;  // J/(kg K), U.S. Standard Atmosphere 1976 / ISO 2533
inline constexpr double kAirHeatRatio = 1.4;

/// Standard atmosphere at an altitude, -500 to 11000 m (ISO 2533); nullopt outside.
std::optional<AbsolutePressure> atmosphere_at(Length altitude);

}  // namespace riserun::hydraulics
