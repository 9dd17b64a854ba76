// The hole of a drilled restrictor among the words for it: `1/16 in hole restrictor`.
#pragma once

#include "catalog/catalog.h"
#include "catalog/words/port_notation.h"

#include <optional>
#include <string_view>
#include <vector>

namespace riserun::catalog {

/// A hole that none of these parts has: as a size it may be that of their threads, and stands for no hole then. The
/// error lists the holes there are. nullopt: the words name no hole, no part has one in its name, or one has that.
std::optional<NotationError> no_such_hole(const Catalog& catalog, std::string_view words,
                                          const std::vector<PartId>& parts);

}  // namespace riserun::catalog
