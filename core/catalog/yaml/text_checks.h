// What the texts of a file may be made of. For core/catalog/yaml's own files only.
#pragma once

#include "catalog/yaml/document_data.h"
#include "catalog/yaml/problems.h"

#include <cstddef>
#include <string_view>

namespace riserun::catalog::detail {

/// Whether the file is text that may be printed, with tabs and line breaks; if not, a problem at the first that is not.
bool check_bytes(const DocumentData& data, Problems& problems);

/// Byte of a text in double quotes, as it stands in the file, at which the first escape begins that may not be printed
/// (`\e`, `\n`, `\x1b`, `\u202e`); 0 where there is none.
std::size_t place_of_escape(std::string_view quoted);

}  // namespace riserun::catalog::detail
