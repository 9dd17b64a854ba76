// The order in which a fitter makes a run up, joint by joint: from each held end inwards, each body that is added still
// free to turn, and the closing joint last.
//
// How it works: the run is a tree of bodies (a union is two) and bonds. Bodies grow together along the bonds, those
// that serve worst as a last joint first (as in J. B. Kruskal's algorithm, Proceedings of the AMS 7, 1956); a bond
// between two groups that are both built from comes last. The rest is made from the held ends inwards, depth first,
// what swings before what would be in its way. O(bodies^2).
#pragma once

#include "chain/ask/run.h"

namespace riserun::chain {

/// Fills steps and buildable of a run whose parts, joints and ends are known, and says in its
/// cautions where the last joint needs play that neither end has.
void add_build_order(const Catalog& catalog, Run& run);

}  // namespace riserun::chain
