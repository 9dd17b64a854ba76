// What a run must stand besides pressure, as the job says or its water lets one conclude.
#pragma once

#include "plan/stage/drafting.h"

namespace riserun::plan {

/// The hottest that the run gets inside; nullopt: room temperature.
std::optional<Temperature> settle_hottest(Draft& draft, const JobConnection& connection, Service service);
bool settle_vacuum(Draft& draft, const JobConnection& connection, Service service);

/// The devices that are proved for the plan's request; where none is, all of them, and a caution in the plan.
/// @pre there is a device
std::vector<PartId> proved_devices(const Draft& draft, const std::vector<PartId>& devices, ConnectionPlan& plan);

}  // namespace riserun::plan
