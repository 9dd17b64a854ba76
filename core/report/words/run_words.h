// What is said of a run beside its own facts.
#pragma once

#include "catalog/part.h"

#include <cmath>
#include <cstddef>

namespace riserun::report {

/// Why a run that is not buildable is not.
inline constexpr const char* kNotBuildable =
    "neither end turns, and no joint of the chain can be made up without turning one of its sides";

/// Through the part from one port to the other the way does not turn.
inline bool leads_straight_on(const catalog::Part& part, std::size_t enter, std::size_t leave) {
  const double angle = std::abs(part.ports[leave].heading_degrees - part.ports[enter].heading_degrees);
  return std::abs(std::fmod(angle, 360.0) - 180.0) < 1.0;
}

}  // namespace riserun::report
