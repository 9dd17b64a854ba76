// A figure of a request that is not given up but moved as far as it takes: the room that is enough, the bore that can
// be kept.
//
// How it works: only the catalog's own radii and bores make a difference, and what can be made with little room can be
// made with more, so the least figure is found among them by halving. At most a dozen searches.
#pragma once

#include "chain/graph/folded_catalog.h"
#include "chain/refusal/request_rules.h"

#include <functional>
#include <optional>

namespace riserun::chain {

/// Whether the chain that is found for it is as good as it must be; what one figure does, more room or less bore does.
using AsGood = std::function<bool(const ChainRequest&)>;

/// Such figures are in steps of 1/20 in, which both 0.01 in and 0.01 mm measure, so that they do as they are printed.
inline Length step_of_figures() { return inches(0.05); }

/// Moves the figure of that rule, which was asked for and has been given up in `lifted`, back to the nearest with which
/// the chain is as good, and tells it: facts for the rule's relief. Empty, and nothing is changed, where the rule is
/// neither on room nor on bore, or no figure that is worth saying does.
/// @pre as_good(lifted)
Facts move_to_enough(const Catalog& catalog, const ChainRequest& asked, std::string_view rule, const AsGood& as_good,
                     ChainRequest& lifted);

}  // namespace riserun::chain
