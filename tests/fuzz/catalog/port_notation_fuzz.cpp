// Any bytes as a port and as the words of a part: an answer or a reason, and a port that was read is read again from
// what is written for it.
#include "catalog/words/part_search.h"
#include "unit/catalog/small_catalog.h"

#include <cstdint>
#include <cstdlib>

using namespace riserun;
using namespace riserun::catalog;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Catalog kCatalog = catalog::testing::small_catalog();
  static const PortNotation kNotation(kCatalog);
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto port = kNotation.read(text);
  if (const PortTypeId* id = std::get_if<PortTypeId>(&port)) {
    const auto again = kNotation.read(kCatalog.written(*id));
    if (!std::holds_alternative<PortTypeId>(again) || std::get<PortTypeId>(again) != *id) std::abort();
  } else {
    const NotationError& error = std::get<NotationError>(port);
    if (error.message.empty() || error.offset > size) std::abort();
  }
  if (find_parts(kCatalog, text).empty()) {
    const NotationError error = why_no_parts(kCatalog, text);
    if (error.message.empty() || error.offset > size) std::abort();
  }
  return 0;
}
