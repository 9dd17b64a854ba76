// The clamps of a hose end, and where they stand on it.
#pragma once

#include "quantity/quantities.h"

#include <vector>

namespace riserun::plan {

/// Width of a clamp's band: common practice.
inline const Length kHoseBand = inches(0.5);
/// From the hose's end to the first band, and between two bands: common practice.
inline const Length kHoseBandGap = inches(0.25);

/// Where the bands of a hose end begin, from its mouth: two where its barb is long enough for them, else one.
/// @param pushed_on  how far the hose goes onto its barb
std::vector<Length> bands_on(Length pushed_on);

}  // namespace riserun::plan
