// What compressed air in the reservoir would let loose, and how far to stand off.
#pragma once

#include "quantity/quantities.h"

namespace riserun::reservoir {

struct StoredEnergy {
  Energy energy{};
  Mass tnt{};                 // equivalent
  Length formula_distance{};  // R = 20 (2 TNT)^(1/3), metres and kilograms
  Length standoff{};          // the greater of that and 30 m; zero where there is no pressure
};

/// The atmosphere that ASME PCC-2 Article 501 counts with.
inline constexpr AbsolutePressure kPcc2Atmosphere = AbsolutePressure::from_si(101000.0);

/// ASME PCC-2, Appendix 501-III.
inline const Length kLeastStandoff = metres(30.0);

/// ASME PCC-2 Article 501, Mandatory Appendices 501-II (equations II-2, II-3) and 501-III (III-1), for air:
///
///     E = 2.5 Pt V (1 - (Pa/Pt)^0.286),   TNT = E / 4 266 920 J/kg,   R = 20 (2 TNT)^(1/3),   at least 30 m
///
/// Pt the absolute pressure of the air, Pa the atmosphere. The 30 m hold up to E = 135.5 MJ, which a flat-sided
/// reservoir does not come near.
/// @param gas_volume of the air, >= 0; the empty reservoir is the worst case
/// @param pressure at or below the atmosphere lets nothing loose: all zero
StoredEnergy stored_energy(GaugePressure pressure, Volume gas_volume, AbsolutePressure atmosphere);

}  // namespace riserun::reservoir
