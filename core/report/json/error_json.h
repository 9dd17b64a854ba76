// Bad input for a program: every mistake with its place.
#pragma once

#include "quantity/input_error.h"

#include <string>

namespace riserun::report {

/// `{"errors": [{"file", "line", "column", "message", "source_line"}]}`, a line break behind it; file empty and line 0
/// for a word of the command line, column 0 where none is known.
std::string error_json(const quantity::InputError& error);

}  // namespace riserun::report
