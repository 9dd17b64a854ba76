// What a part of one's own, or one that was measured by hand, can measure at all: a number outside is a slip.
#pragma once

#include "catalog/catalog.h"
#include "quantity/read.h"

#include <optional>

namespace riserun::catalog {

/// End to end, ports added up. At least what goes into its joints when they are made up (of ends that stand one inside
/// the other, as in a bushing, the longer), at most four times what the catalog has (common practice: beyond that it is
/// another part); what is sold by length up to 100 ft.
quantity::Range<Length> lengths_of(const Catalog& catalog, const Part& part);

/// The outside of the thread, tube or barb, which no bore of that port can reach; nullopt: the kind does not say.
std::optional<Length> bore_below(const Catalog& catalog, PortTypeId type);
/// The least of the part's ports.
std::optional<Length> bore_below(const Catalog& catalog, const Part& part);

}  // namespace riserun::catalog
