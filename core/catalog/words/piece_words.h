// What a piece of hose, tube or pipe in the bin is called.
#pragma once

#include "quantity/quantities.h"
#include "quantity/unit_system.h"

#include <string>

namespace riserun::catalog {

/// `a piece of 21-7/8 in, one thread left`, behind the name of what it is a piece of.
/// @param sawn_ends  of pipe, as in Part; 0 says nothing of ends
std::string piece_words(Length length, int sawn_ends, quantity::UnitSystem units);

}  // namespace riserun::catalog
