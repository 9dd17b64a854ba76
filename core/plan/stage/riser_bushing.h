// The double-tapped bushing that holds a riser in a wider coupling, which the riser passes from above.
#pragma once

#include "plan/job/job.h"

#include <optional>
#include <string>

namespace riserun::plan {

struct RiserBushing {
  PartId part;
  std::string large;  // nominal size of its outer thread, and of the coupling that it is screwed into
  std::string small;  // of its inner threads, the riser's
  Length opening{};   // of that coupling
};

/// The one that the port names as its 'bung part', else the smallest in the catalog whose coupling the pipe passes.
/// nullopt: there is none.
///
/// @param inner   the female thread that the riser and the run above are screwed into
/// @param outside of the riser's pipe
std::optional<RiserBushing> riser_bushing(const Catalog& catalog, PortTypeId inner, Length outside,
                                          std::optional<PartId> named);

}  // namespace riserun::plan
