// The keys of the files of a shop's own, as tables: the bin, and parts and prices.
#pragma once

#include "catalog/yaml/file_keys.h"

#include <vector>

namespace riserun::catalog {

/// A bin file. Made once, as the next.
const std::vector<FileKey>& bin_keys();

/// A file of `--catalog`: own parts, own families of them, prices, and what stands what duty.
const std::vector<FileKey>& catalog_keys();

}  // namespace riserun::catalog
