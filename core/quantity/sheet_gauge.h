// Sheet gauge numbers. The same number means another thickness in another metal, so a gauge is never read without one.
#pragma once

#include "quantity/quantities.h"
#include "quantity/read.h"

#include <optional>

namespace riserun::quantity {

enum class SheetMetal { steel, galvanized, stainless, aluminium };

/// Nominal thickness of a gauge number; nullopt: the metal's table has no such number (see gauge_numbers).
///
/// Sources, all from memory: steel, the Manufacturers' Standard Gauge (41.82 lb/ft2 for each inch of thickness);
/// galvanized, the Galvanized Sheet Gauge (coating included); stainless, the United States Standard Gauge of 1893 in
/// its usual thickness form; aluminium, the Brown & Sharpe (American Wire) Gauge, t = 0.005 in * 92^((36 - n)/39)
/// (the formula of ASTM B258), rounded to 0.0001 in as tables print it.
std::optional<Length> gauge_thickness(SheetMetal metal, int gauge);

/// The gauge numbers that the metal's table holds.
Range<int> gauge_numbers(SheetMetal metal);

}  // namespace riserun::quantity
