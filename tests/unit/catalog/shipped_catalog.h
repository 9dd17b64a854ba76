// The catalog that is shipped, loaded once for all tests of a program.
#pragma once

#include "catalog/load/load.h"

namespace riserun::catalog::testing {

inline const Catalog& shipped_catalog() {
  static const Catalog kCatalog = load_catalog(std::filesystem::path(RISERUN_SOURCE_DIR) / "catalog");
  return kCatalog;
}

}  // namespace riserun::catalog::testing
