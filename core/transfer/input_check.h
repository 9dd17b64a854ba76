// What is no system and no start, said all at once.
#pragma once

#include "transfer/system.h"

namespace riserun::transfer {

/// Throws InputError with every measure that is negative, missing or not a number, and for a line that takes no head.
void check_input(const System& system, const Start& start);

/// Throws InputError for a wanted depth that is negative or not a number.
void check_wanted(Length wanted_depth);

}  // namespace riserun::transfer
