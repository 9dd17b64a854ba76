// Any bytes as a bin file: it loads, or an InputError says where it is wrong.
#include "unit/catalog/small_catalog.h"

#include <cstdint>
#include <cstdlib>

using namespace riserun;
using namespace riserun::catalog;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Catalog kCatalog = catalog::testing::small_catalog();
  CatalogBuilder builder(kCatalog);
  try {
    const Bin bin = load_bin(builder, SourceText{"bin.yaml", {reinterpret_cast<const char*>(data), size}});
    for (const BinItem& item : bin.items)
      if (item.count < 0 || item.part.row >= builder.so_far().parts().size()) std::abort();
  } catch (const quantity::InputError& error) {
    if (error.problems().empty()) std::abort();
    for (const quantity::Problem& problem : error.problems())
      if (problem.line < 1 || problem.column < 1) std::abort();
  }
  return 0;
}
