// The room that a body takes while it is turned onto the run.
#pragma once

#include "catalog/catalog.h"

namespace riserun::chain {

/// Radius about the axis of that port that must be free while the part is screwed up by it: as far as another port of a
/// bent body sweeps, and as far as the head of the wrench reaches that grips the body.
///
/// Outside of a female end: 1.4 times the pipe's outside diameter, the widest band of a class 150 malleable fitting
/// (ASME B16.3, sizes 1/2 to 2, from memory). Head of a wrench: 1.1 times the width across flats from the axis (common
/// practice). Zero: no end of the part is screwed up by turning it.
Length swing_radius(const catalog::Catalog& catalog, const catalog::Part& part, std::size_t port);

}  // namespace riserun::chain
