// What of a run is made before anything is screwed up: it is soldered, as heat beside a taped joint chars the tape, and
// in a valve it spoils the seats (common practice), or flared at the bench.
#pragma once

#include "chain/build/body_tree.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace riserun::chain {

/// The bonds that heat makes and that can all come first, in the order in which they are made.
struct SolderedFirst {
  std::vector<std::size_t> bonds;  // rows of BodyTree::bonds
  /// In a chain whose loose end is soldered on with them: the bond by which all of that is then screwed up, which is
  /// the last of the chain.
  std::optional<std::size_t> finish{};
};

/// The joint is made with heat.
bool is_hot(const catalog::Catalog& catalog, const BodyTree& tree, const Bond& bond);

/// Bodies that hot bonds hold together are one piece from then on. They come first where the piece stands on a body
/// that the run is made up from, or is straight, so that it can be screwed on as one; what would sweep past its
/// neighbours is soldered where it stands. O(bodies^2).
/// @param tree its last bonds and the bodies that it is made up from chosen
SolderedFirst soldered_first(const catalog::Catalog& catalog, const BodyTree& tree);

/// Bonds that are made on loose pieces before all else, as their tool goes between no two fittings: a flaring bar
/// clamps the tube (Seal::at_bench, common practice).
std::vector<std::size_t> bonds_made_at_the_bench(const catalog::Catalog& catalog, const BodyTree& tree);

}  // namespace riserun::chain
