#include "catalog/words/piece_words.h"

#include "quantity/write.h"

namespace riserun::catalog {

std::string piece_words(Length length, int sawn_ends, quantity::UnitSystem units) {
  const std::string piece = "a piece of " + quantity::write_length(length, units);
  if (sawn_ends == 0) return piece;
  return piece + (sawn_ends == 1 ? ", one thread left" : ", plain at both ends");
}

}  // namespace riserun::catalog
