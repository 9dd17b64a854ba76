// The spares worth buying, as a fitter reads them.
#pragma once

#include "chain/ask/spares.h"
#include "report/text/text_layout.h"

#include <string>
#include <vector>

namespace riserun::report {

/// What to buy beside the list, what each spare covers, and what is built when a part is missing.
/// @param names  of the connections, by StockOut::chosen; empty: there is one chain and it has no name
std::string spares_text(const catalog::Catalog& catalog, const chain::Spares& spares,
                        const std::vector<std::string>& names, const Style& style);

}  // namespace riserun::report
