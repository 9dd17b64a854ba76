// Whether a part stands what a request asks for, worked out anew from the catalog's duties.
#pragma once

#include "chain/ask/request.h"

namespace riserun::chain::testing {

/// A connector: what is made for vacuum joins unasked only where that may come about.
bool joins_unasked(const Catalog& catalog, const ChainRequest& request, const catalog::Part& part);

/// Rating, heat, vacuum and compressed air.
bool stands(const Catalog& catalog, const ChainRequest& request, PartId part);

}  // namespace riserun::chain::testing
