// Where the build of a run begins, and which of its bonds are made last.
#pragma once

#include "chain/build/body_tree.h"

namespace riserun::chain {

/// At what is held, or else at the base. Where something in a chain closes without turning, it is made up from both its
/// ports, loose or not, and closed there.
void choose_where_to_begin(BodyTree& tree);

/// A bond waits only where it would tie two bodies together that the run is made up from: as many as there are such
/// bodies beyond the first.
/// @param tree the bodies that it is made up from chosen
void choose_last_bonds(BodyTree& tree);

}  // namespace riserun::chain
