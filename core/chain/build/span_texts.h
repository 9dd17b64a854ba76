// How a refusal writes a distance.
#pragma once

#include "quantity/quantities.h"

#include <string>

namespace riserun::chain {

/// "13-7/16 in (341 mm)".
std::string tape_length(Length length);

}  // namespace riserun::chain
