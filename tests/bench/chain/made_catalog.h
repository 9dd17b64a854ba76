// Invented catalogs of any size that look like real ones: families over tables of sizes, each row in several makes, so
// that the number of parts grows while the ends that they have stay those of the trade.
#pragma once

#include "catalog/catalog.h"
#include "catalog/load/load.h"

#include <cstddef>
#include <string>

namespace riserun::bench {

struct MadeSizes {
  std::size_t parts = 10'000;
  int kinds = 12;
  int sizes = 20;
};

/// Couplings, nipples, elbows, street elbows, unions, reducing couplings, bushings, adapters to the two next kinds,
/// tees and plugs. The same sizes give the same catalog.
/// @pre parts is at least the number of rows of all tables: about 17 for each size of each kind
catalog::Catalog made_catalog(const MadeSizes& sizes);

/// A file of families over the shipped kinds of joint, of about that many parts.
catalog::SourceText made_family_file(std::size_t parts);

}  // namespace riserun::bench
