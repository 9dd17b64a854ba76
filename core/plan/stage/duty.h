// What a run must stand besides pressure, as the job says or its water lets one conclude.
#pragma once

#include "plan/plan.h"
#include "plan/stage/inputs.h"

namespace riserun::plan {

/// The hottest that the run gets inside; nullopt: room temperature.
std::optional<Temperature> settle_hottest(const Inputs& inputs, const JobConnection& connection, Service service,
                                          Remarks& remarks);
bool settle_vacuum(const Inputs& inputs, const JobConnection& connection, Service service, Remarks& remarks);

/// The devices that are proved for the plan's request; where none is, all of them, and a caution in the plan.
/// @pre there is a device
std::vector<PartId> proved_devices(const Catalog& catalog, const std::vector<PartId>& devices, ConnectionPlan& plan);

}  // namespace riserun::plan
