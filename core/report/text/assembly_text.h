// A branched assembly, or why there is none, as a fitter reads it.
#pragma once

#include "chain/ask/assembly.h"
#include "report/text/text_layout.h"

#include <string>

namespace riserun::report {

/// The parts as a tree from the base outwards, sums, build order and cautions; for no assembly the reason and what
/// mends it.
std::string assembly_text(const catalog::Catalog& catalog, const chain::AssemblyRequest& request,
                          const chain::AssemblyAnswer& answer, const Style& style);

}  // namespace riserun::report
