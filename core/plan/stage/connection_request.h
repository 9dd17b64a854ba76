// What the job asks of a connection, whether it has one far end or several.
#pragma once

#include "chain/ask/request.h"
#include "plan/plan.h"
#include "plan/stage/inputs.h"

#include <optional>
#include <string>

namespace riserun::plan {

/// It is a port of the air supply.
bool is_air_port(const Job& job, const std::string& name);

/// What a connection carries, and how one of its ports is held: given, or assumed.
Service settle_service(const Inputs& inputs, const JobConnection& connection, Remarks& remarks);
chain::Freedom settle_freedom(const Job& job, const JobConnection& connection, const std::string& port,
                              const std::optional<chain::Freedom>& given, Remarks& remarks);
/// The port as an end of the connection.
/// @pre the job has a port of that name
chain::PortEnd end_at(const Job& job, const JobConnection& connection, const std::string& name,
                      const std::optional<chain::Freedom>& freedom, Remarks& remarks);
/// Of these devices those with a port that is at home beside that one (Catalog::foreign_threads): in a shop of one
/// pipe thread nobody orders the other, unless nothing else is called so.
std::vector<PartId> at_home_beside(const Catalog& catalog, const JobPort& port, std::vector<PartId> devices);
/// What the job asks of a connection, its far ends aside.
chain::ChainRequest request_for(const Inputs& inputs, const JobConnection& connection, Service service,
                                Remarks& remarks);

}  // namespace riserun::plan
