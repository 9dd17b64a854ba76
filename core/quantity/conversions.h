// Conversion factors, each once, exact and by definition.
#pragma once

namespace riserun::quantity {

inline constexpr double kMetresPerInch = 0.0254;               // international inch, exact (1959)
inline constexpr double kMetresPerFoot = 12 * kMetresPerInch;  // exact
inline constexpr double kCubicMetresPerUsGallon =
    231 * kMetresPerInch * kMetresPerInch * kMetresPerInch;  // 231 in^3, exact
inline constexpr double kKilogramsPerPound = 0.45359237;     // avoirdupois pound, exact (1959)
inline constexpr double kStandardGravity = 9.80665;          // m/s^2, CGPM 1901, exact
inline constexpr double kPascalsPerPsi =
    kKilogramsPerPound * kStandardGravity / (kMetresPerInch * kMetresPerInch);  // 6894.757..., NIST SP 811
inline constexpr double kPascalsPerInchOfWater = 1000.0 * kStandardGravity * kMetresPerInch;  // conventional, 249.08891
inline constexpr double kKelvinsAtZeroCelsius = 273.15;                                       // exact
inline constexpr double kStandardAtmosphere = 101325.0;                                       // Pa, ISO 2533

static_assert(kCubicMetresPerUsGallon > 0.003785411783 && kCubicMetresPerUsGallon < 0.003785411785);  // NIST SP 811
static_assert(kPascalsPerPsi > 6894.757293 && kPascalsPerPsi < 6894.757294);                          // NIST SP 811

}  // namespace riserun::quantity
