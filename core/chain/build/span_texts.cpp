#include "chain/build/span_texts.h"

#include "quantity/write.h"

#include <fmt/format.h>

namespace riserun::chain {

using quantity::UnitSystem;

std::string tape_length(Length length) {
  return fmt::format("{} ({})", quantity::write_length(length, UnitSystem::inch),
                     quantity::write_length(length, UnitSystem::metric));
}

}  // namespace riserun::chain
