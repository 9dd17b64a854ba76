// Which few spare parts keep one lost or broken part from stopping the work.
//
// How it works: parts that the rules cannot tell apart are one class (PartClasses). For each bought part that may be
// missing, all chains are listed by the classes that they are made of (part_multisets); what such a chain needs beyond
// the bin and the cart is one way to make up for it. The least set that holds a way for each is found by least_cover.
#pragma once

#include "chain/ask/spares.h"
#include "chain/graph/folded_catalog.h"

#include <vector>

namespace riserun::chain {

/// The least set of spares, bought beforehand, with which every chain can still be made under all its rules when any
/// one bought piece of it is missing, the other chains being left as they are: fewest parts, then the lowest price,
/// then the ids that sort first. One more of each bought part is always enough. Exact.
///
/// @param most_together  a missing part is made up for with that many of them at most, > 0
Spares least_spares(const FoldedCatalog& folded, const std::vector<Chosen>& chosen,
                    std::size_t most_together = kMostTogether);

}  // namespace riserun::chain
