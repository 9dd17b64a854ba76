// Sheet gauge numbers. The same number means another thickness in another metal, so a gauge is never read without one.
#pragma once

#include "quantity/quantities.h"
#include "quantity/read.h"

#include <optional>
#include <string_view>

namespace riserun::quantity {

enum class SheetMetal { steel, galvanized, stainless, aluminium };

/// Nominal thickness of a gauge number; nullopt: the metal's table has no such number (see gauge_numbers).
///
/// Sources, all from memory: steel, the Manufacturers' Standard Gauge (41.82 lb/ft2 for each inch of thickness);
/// galvanized, the Galvanized Sheet Gauge (coating included); stainless, the United States Standard Gauge of 1893 in
/// its usual thickness form; aluminium, the Brown & Sharpe (American Wire) Gauge, t = 0.005 in * 92^((36 - n)/39)
/// (the formula of ASTM B258), rounded to 0.0001 in as tables print it.
std::optional<Length> gauge_thickness(SheetMetal metal, int gauge);

/// The least that the mill may deliver under that number: what is counted on where nobody measured; nullopt as above.
///
/// Sources: steel and galvanized, the ranges that steel-service charts print after ASTM A568 and A924 (hot-rolled to
/// 18, cold-rolled from 19 gauge on, the thinner of the two where both are sold; zinc included); stainless, the decimal
/// that is usually ordered less the tolerance of ASTM A480, and aluminium, the nominal thickness less 5 %, about the
/// tolerance of ANSI H35.2, and steel from 21 gauge on, less 0.003 in after ASTM A568, all three from memory.
std::optional<Length> least_gauge_thickness(SheetMetal metal, int gauge);

/// The same of a sheet as read_sheet (read.h) reads it; nullopt: it is not written as a gauge with its metal.
std::optional<Length> least_of_gauge(std::string_view written);

/// The gauge numbers that the metal's table holds.
Range<int> gauge_numbers(SheetMetal metal);

}  // namespace riserun::quantity
