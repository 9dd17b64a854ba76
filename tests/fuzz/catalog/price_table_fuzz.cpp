// Any bytes as a table of prices: it loads, or an InputError says where it is wrong.
#include "catalog/yaml/document.h"
#include "unit/catalog/small_catalog.h"

#include <cstdint>
#include <cstdlib>

using namespace riserun;
using namespace riserun::catalog;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Catalog kCatalog = catalog::testing::small_catalog();
  Problems problems;
  const Document table = Document::parse({reinterpret_cast<const char*>(data), size}, "prices.csv", problems);
  CatalogBuilder builder(kCatalog);
  try {
    if (problems.empty()) read_price_table(table.root(), builder, problems);
    std::move(problems).throw_if_any();
    for (const Part& part : builder.so_far().parts())
      if (!part.priced_by.empty() && part.price.cents() < 1) std::abort();
  } catch (const quantity::InputError& error) {
    if (error.problems().empty()) std::abort();
    for (const quantity::Problem& problem : error.problems())
      if (problem.line < 1 || problem.column < 1) std::abort();
  }
  return 0;
}
