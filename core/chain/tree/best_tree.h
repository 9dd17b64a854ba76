// The best branched assembly of a request, as a tree: the search, repeated with more of the bin counted only where it
// has to be.
//
// How it works: the bin is first taken to be without end; where the answer then takes a part more often than it is
// there, that part is counted and the search repeated; bushings are counted in the same way. Each search is of a wider
// set than the real one, so that an answer which breaks no count is the best of the real set too. What a relief valve
// asks of its way depends on its inlet: where it can be one of several, each is tried.
//
// At worst one search (steiner_search) for each part of the bin and one more, and as many for each choice of inlets.
#pragma once

#include "chain/ask/assembly.h"
#include "chain/tree/steiner_search.h"

namespace riserun::chain {

/// A tree with what it is compared by.
struct BestTree {
  BranchTree tree;
  Cost cost;
  Rest rest;
};

/// Provably best under the request's order, ties as AssemblyRequest states. Targets of the tree are kinds: see
/// kinds_of_targets. Where no assembly has all targets beyond the parts of the needs that ask for it
/// (Need::before_all), the best of those that need not. nullopt: there is none.
/// @param wish_plugs  spare ports that no plug goes into are closed by one that does not exist (an invalid id)
std::optional<BestTree> best_tree(const FoldedCatalog& folded, const AssemblyRequest& request, bool wish_plugs = false);

/// Rows of the targets that nothing tells apart, kind by kind, in the order asked for.
std::vector<std::vector<std::size_t>> kinds_of_targets(const Catalog& catalog, const AssemblyRequest& request);

}  // namespace riserun::chain
