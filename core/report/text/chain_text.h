// A chain, or why there is none, as a fitter reads it.
#pragma once

#include "chain/ask/answer.h"
#include "report/text/text_layout.h"

#include <string>

namespace riserun::report {

/// Parts in order, sums, build order and cautions of the answer; for no chain the reason and what mends it.
std::string chain_text(const catalog::Catalog& catalog, const chain::ChainRequest& request, const chain::Answer& answer,
                       const Style& style);

/// The alternatives side by side, then the best in full with what to take for each bought part that is not on the
/// shelf.
/// @param rows         not empty; the best first
/// @param substitutes  of the best
std::string alternatives_text(const catalog::Catalog& catalog, const chain::ChainRequest& request,
                              const std::vector<chain::Alternative>& rows,
                              const std::vector<chain::Substitute>& substitutes, const Style& style);

/// What each need's words were taken for where they say it otherwise, as `vlv` or `shutoff`; empty: all say it.
std::string taken_for_text(const catalog::Catalog& catalog, const chain::ChainRequest& request, const Style& style);

/// "2 parts: hex bushing 1 x 3/4 (black iron), ...": a chain in one line.
std::string chain_in_one_line(const catalog::Catalog& catalog, const chain::Chain& chain);

}  // namespace riserun::report
