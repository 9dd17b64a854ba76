// Files as they are read: with a bound, and with why not.
#pragma once

#include "catalog/yaml/problems.h"

#include <filesystem>
#include <optional>
#include <string>

namespace riserun::catalog {

/// What is said of a file beyond the bound of limits.h.
std::string too_large();

/// The name of the file that stands for the standard input.
inline constexpr const char* kStandardInput = "-";

/// The bytes of the file, or of the standard input, whatever they are; nullopt, with the reason among the problems,
/// where it cannot be read or is larger than that. The standard input is kept: read again, it is the same.
std::optional<std::string> read_file(const std::filesystem::path& path, Problems& problems);

}  // namespace riserun::catalog
