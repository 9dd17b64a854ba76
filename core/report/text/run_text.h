// A run, a chain or a branched assembly, as a fitter reads it.
#pragma once

#include "chain/ask/answer.h"
#include "report/text/text_layout.h"

#include <string>
#include <vector>

namespace riserun::report {

/// Its parts from the base outwards (as a tree where it branches), sums, build order (where it has steps) and cautions.
/// @param request      that it answers: of a run with one end the head is told at its flow, where it carries water
/// @param substitutes  what to take for a bought part that is not on the shelf; printed under that part
std::string run_text(const catalog::Catalog& catalog, const chain::ChainRequest& request, const chain::Run& run,
                     const Style& style, const std::vector<chain::Substitute>& substitutes = {});

/// A part's name and material; what it costs or that it is in the bin; sentences under a title, none for no sentences.
std::string part_label(const catalog::Catalog& catalog, const catalog::Part& part);
std::string source_of(const catalog::Part& part, bool from_bin, int pieces = 1);
std::string bullet_list(const std::string& title, const std::vector<std::string>& sentences, const Style& style);

}  // namespace riserun::report
