// The double-tapped bushing that holds a riser in a wider coupling, which the riser passes from above.
#pragma once

#include "plan/plan.h"
#include "plan/remarks.h"
#include "plan/stage/inputs.h"

#include <optional>

namespace riserun::plan {

/// The one that the port names as its 'bung part', else the smallest in the catalog whose coupling the pipe passes.
/// nullopt: there is none.
///
/// @param inner   the female thread that the riser and the run above are screwed into
/// @param outside of the riser's pipe
/// @param metal   that the coupling is to weld to, in the words of catalog/materials.yaml; where the catalog has none
/// of
///                it, any coupling of the size
std::optional<RiserBushing> riser_bushing(const Catalog& catalog, PortTypeId inner, Length outside,
                                          std::optional<PartId> named, std::string_view metal);

/// The least bore that the pipe would pass with the bushing taken out.
Length opening_of(const Catalog& catalog, const RiserBushing& bushing);

/// Hangs the riser in its bushing. Made up in the coupling's upper end, the bushing's lower end stands
///
///     coupling length - projection - the bushing's make-up in it
///
/// over the lid's inside, and the riser's own thread goes into that. Does nothing where no bushing of the catalog holds
/// the riser.
/// @pre the request has the riser's pipe
void hang_in_bushing(const Inputs& inputs, const JobPort& bung, RiserPlan& plan, Remarks& remarks);

}  // namespace riserun::plan
