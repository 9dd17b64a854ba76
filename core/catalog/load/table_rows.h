// The rows of a family's table: list cells multiplied, numbers read. For core/catalog's own files only.
#pragma once

#include "catalog/load/family_rule.h"
#include "catalog/load/row_reading.h"

#include <string_view>
#include <vector>

namespace riserun::catalog {

// Columns that hold lists of materials; their lists do not multiply.
inline constexpr std::string_view kStocked = "stocked";
inline constexpr std::string_view kMadeIn = "made in";

inline constexpr double kLargestPriceUsd = 100000.0;

/// One Row for each row and each choice of its list cells, in the order of the file.
std::vector<Row> read_rows(Loading& loading, const FamilyTable& table);

/// Reports a pressure that no part has. @param what  it is called in the message: "rating"
void check_pressure(Loading& loading, const Value& where, GaugePressure pressure, std::string_view what);

}  // namespace riserun::catalog
