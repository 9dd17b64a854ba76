// Ties between equally good chains are broken by ids, in the same way everywhere: chains that are at hand as a whole
// are compared by this key, and a search that walks all of them at once (FirstByIds) ends at the one with the least.
#pragma once

#include "chain/graph/folded_catalog.h"

#include <compare>
#include <cstdint>
#include <utility>
#include <vector>

namespace riserun::chain {

/// The chain with the lesser key is taken: ids in chain order that sort first, plugs behind the part that they are in;
/// then the ports used. Two different chains of one request never have the same key.
struct TieKey {
  std::vector<std::uint32_t> ids;                            // ranks among all ids
  std::vector<std::pair<std::uint8_t, std::uint8_t>> ports;  // entered and left
  auto operator<=>(const TieKey&) const = default;

  void add(const FoldedCatalog& folded, const Move& move) {
    ids.push_back(folded.rank(move.part));
    for (const PartId plug : move.plugs) ids.push_back(folded.rank(plug));
    ports.emplace_back(move.enter, move.leave);
  }
};

inline TieKey tie_key(const FoldedCatalog& folded, const std::vector<Move>& moves) {
  TieKey key;
  for (const Move& move : moves) key.add(folded, move);
  return key;
}

}  // namespace riserun::chain
