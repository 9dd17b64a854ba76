// The catalog that comes with the program, and whether all of it is there.
#include "catalog/load/load.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <string_view>

namespace riserun::catalog {

namespace {

namespace fs = std::filesystem;

struct ShippedFile {
  std::string_view name;
  std::ptrdiff_t lines;
};

/// Made of the source tree's folder when the program is built.
constexpr ShippedFile kShippedFiles[] = {
#include "catalog/load/shipped_files.inc"
};

std::ptrdiff_t lines_of(std::ifstream& file) {
  return std::count(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>(), '\n');
}

}  // namespace

void check_whole(const fs::path& folder) {
  Problems problems;
  for (const ShippedFile& shipped : kShippedFiles) {
    const fs::path path = folder / shipped.name;
    std::ifstream file(path, std::ios::binary);
    if (!file) {
      problems.add({path.string(),
                    0,
                    0,
                    "this file of the shipped catalog is missing or cannot be read, and answers would change without "
                    "it: put it back",
                    {},
                    std::string(quantity::mistake::kNotWhole)});
      continue;
    }
    if (const std::ptrdiff_t lines = lines_of(file); lines < shipped.lines)
      problems.add({path.string(),
                    0,
                    0,
                    "this file of the shipped catalog has " + std::to_string(lines) + " lines and came with " +
                        std::to_string(shipped.lines) +
                        ": it is cut off, and answers would change; put it back, or build the program again if the "
                        "change is meant",
                    {},
                    std::string(quantity::mistake::kNotWhole)});
  }
  std::move(problems).throw_if_any();
}

Catalog load_shipped_catalog(std::span<const fs::path> extra_files) {
  const fs::path folder = find_catalog_folder();
  check_whole(folder);
  return load_catalog(folder, extra_files);
}

}  // namespace riserun::catalog
