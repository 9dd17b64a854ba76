// A pressure among the words for a part: `0-100 psi regulator`, `gauge 0 to 1 bar`, `relief valve set 55 in w.c.`.
#pragma once

#include "quantity/quantities.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace riserun::catalog {

struct PressureWords {
  quantity::GaugePressure upto;  // of a range its end
  std::string rest;              // the words without it
  std::size_t offset = 0;        // where it stands
};

/// The first number with a unit of pressure behind it, in any spelling that quantity::read_pressure reads, with what
/// makes it a range from nought ("0-", "0 to ") before it; nullopt: there is none.
std::optional<PressureWords> pressure_in(std::string_view words);

}  // namespace riserun::catalog
