// The schemas of what people write, by which editors complete and check it while it is written.
#pragma once

#include <string>
#include <string_view>

namespace riserun::report {

/// JSON Schema, draft 2020-12, made from the table of that file's keys. It knows names, what kind of value stands where
/// and the words to choose from; units and ranges are the program's own to check (`riserun check`).
/// @param file  "job", "bin", or "catalog": own parts and prices
std::string schema_json(std::string_view file);

}  // namespace riserun::report
