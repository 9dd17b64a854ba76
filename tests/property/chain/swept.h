// The room that a body takes while it is screwed up, worked out by walking round it.
#pragma once

#include "catalog/catalog.h"

namespace riserun::chain::testing {

/// What a body sweeps when it is turned about one of its ports, in metres; 0: it is not turned by that port.
double swept(const catalog::Catalog& catalog, const catalog::Part& part, std::size_t about);

}  // namespace riserun::chain::testing
