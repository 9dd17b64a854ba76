// What compressed air in the reservoir would let loose, and how far to stand off.
#pragma once

#include "quantity/quantities.h"

namespace riserun::reservoir {

struct StoredEnergy {
  Energy energy{};
  Mass tnt{};               // equivalent
  Length formula_distance{};  // R = 20 (2 TNT)^(1/3), metres and kilograms
  Length standoff{};        // the greater of that and 30 m
};

/// ASME PCC-2 Article 501, Mandatory Appendices 501-II and 501-III.
/// @param gas_volume of the air; the empty reservoir is the worst case
StoredEnergy stored_energy(GaugePressure pressure, Volume gas_volume, AbsolutePressure atmosphere);

}  // namespace riserun::reservoir
