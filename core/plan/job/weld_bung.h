// The body of a weld bung: which part of the catalog it is, and how long.
#pragma once

#include "plan/job/job.h"

#include <optional>

namespace riserun::plan {

/// What the job names as the bung's part, if that is a weld bung; else the catalog's of that kind with this port.
/// nullptr: none, and for bungs that are no couplings.
const catalog::Part* weld_bung(const Catalog& catalog, const JobPort& port, reservoir::BungKind kind);

/// End to end: given, or of that part; nullopt: not known.
/// @param kind  of the riser's bung, where the job does not say: a full coupling
std::optional<Length> bung_length(const Catalog& catalog, const JobPort& bung, std::optional<reservoir::BungKind> kind);

}  // namespace riserun::plan
