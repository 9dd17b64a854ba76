// Whether a part stands what a request asks for, worked out anew from the catalog's duties.
#pragma once

#include "chain/ask/request.h"

namespace riserun::chain::testing {

/// Rating, heat, vacuum and compressed air.
bool stands(const Catalog& catalog, const ChainRequest& request, PartId part);

}  // namespace riserun::chain::testing
