// The figures of a plan as JSON.
#pragma once

#include "report/figures/figure.h"

#include <nlohmann/json_fwd.hpp>

#include <vector>

namespace riserun::report {

/// [{"key", "title", "figures": [{"key", "label", "value", "unit", "low", "high", "limit", "also", "source"}]}].
/// Numbers are in SI units, which "unit" names for value, low and high (null for a bare number or a name); "also" is
/// the same as another quantity with a unit of its own; "limit", in Pa gauge, is that of the walls. What a figure has
/// not is null.
nlohmann::ordered_json figures_json(const std::vector<FigureGroup>& groups, UnitSystem units);

}  // namespace riserun::report
