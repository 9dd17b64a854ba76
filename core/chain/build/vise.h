// What of a run a fitter makes up in the vise before it goes onto what is held.
#pragma once

#include "chain/build/body_tree.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace riserun::chain {

/// A bond that is made up in the vise.
struct ViseBond {
  std::size_t bond = 0;  // row of BodyTree::bonds
  std::size_t near = 0;  // its body on the side of what is held, which the vise holds while the other is turned
};

/// What is made up in the vise, in the order in which it is made: parts that follow each other in line, all threaded,
/// none looking to the side (it would sweep past its neighbours while the whole is screwed on). The first part of such
/// a group has room for the wrench that then screws it on: no close nipple, and no bushing, which goes into its port by
/// itself, its flats may be inside (common practice). What does not hang on something held is not looked at: all of
/// that is bench work.
/// @param tree its last bonds and the bodies that it is made up from chosen
/// @param kept_out a bond that is none of these, though it might be one
std::vector<ViseBond> bonds_made_in_the_vise(const catalog::Catalog& catalog, const BodyTree& tree,
                                             std::optional<std::size_t> kept_out);

}  // namespace riserun::chain
