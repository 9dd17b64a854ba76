// The schemas of what people write, by which editors complete and check it while it is written.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace riserun::report {

/// JSON Schema, draft 2020-12, made from the table of that file's keys. It knows names, what kind of value stands where
/// and the words to choose from; units and ranges are the program's own to check (`riserun check`).
/// @param file  one of schema_files(); of another it is empty
std::string schema_json(std::string_view file);

/// "job", "bin", "catalog" (families, own parts, prices, duties), and the four files that a catalog begins with by
/// their names.
std::vector<std::string> schema_files();

}  // namespace riserun::report
