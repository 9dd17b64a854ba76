// A port whose thread belongs where it stands because of the part that it is on.
#pragma once

#include "catalog/catalog.h"

#include <cstddef>

namespace riserun::chain {

/// The port's thread is at home on that part whatever a run's ends are (ForeignThread::beside): a plastic thread on a
/// hose barb. O(foreign threads * ports).
/// @pre port < part.ports.size()
bool is_at_home_on(const catalog::Catalog& catalog, const catalog::Part& part, std::size_t port);

}  // namespace riserun::chain
