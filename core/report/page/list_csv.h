// What is bought, taken from the bin and cut, as a table for a spreadsheet.
#pragma once

#include "plan/plan.h"
#include "quantity/write.h"

#include <string>

namespace riserun::report {

/// RFC 4180, with a head: `what` (buy, bin, cut), quantity and its unit, name, material, price of one and of all
/// (empty where none is known; $), shelf, special order (yes or no), what for, what else does, id, and of a cut its
/// length and width as numbers in the unit of their column. Numbers have a decimal point and no unit.
std::string list_csv(const plan::Plan& plan, UnitSystem units);

}  // namespace riserun::report
