// Any bytes as each of the files of a catalog and as a user's own file: they load, or an InputError says where they are
// wrong. The first byte says which file.
#include "unit/catalog/small_catalog.h"

#include <cstdint>
#include <cstdlib>

using namespace riserun;
using namespace riserun::catalog;

namespace {

void check(const quantity::InputError& error) {
  if (error.problems().empty()) std::abort();
  for (const quantity::Problem& problem : error.problems())
    if (problem.message.empty() || problem.file.empty() || problem.line < 0 || (problem.line > 0 && problem.column < 1))
      std::abort();
}

void check(const Catalog& loaded) {
  for (const Part& part : loaded.parts()) {
    if (part.ports.empty() || !(in_pascals(part.rating) > 0.0)) std::abort();
    for (const Port& port : part.ports)
      if (!(in_metres(port.bore) > 0.0) || !(in_metres(port.reach) >= 0.0)) std::abort();
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const std::string text(reinterpret_cast<const char*>(data) + 1, size - 1);
  static const std::vector<SourceText> kWhole = catalog::testing::small_catalog_texts();
  std::vector<SourceText> texts = kWhole;
  std::vector<SourceText> own;
  const std::size_t which = data[0] % 6U;
  if (which < texts.size()) {
    texts[which].text = text;
  } else {
    own.push_back({"own.yaml", text});
  }
  try {
    check(load_catalog(texts, own));
  } catch (const quantity::InputError& error) {
    check(error);
  }
  return 0;
}
