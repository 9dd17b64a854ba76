// The connections: what is asked of the chain search for each, and what comes of the answer.
#pragma once

#include "chain/finder.h"
#include "plan/plan.h"
#include "plan/stage/bin.h"
#include "plan/stage/inputs.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace riserun::plan {

/// What the connections want, before the bin is shared: those with one far end, then those with several.
struct AskedConnections {
  std::vector<ConnectionPlan> plans;  // without an answer
  std::vector<const JobConnection*> of;
  std::vector<chain::Demand> demands;
};

AskedConnections ask_connections(const Inputs& inputs, const chain::Finder& finder, const RiserPlan& riser,
                                 Remarks& remarks);

struct Connections {
  std::vector<ConnectionPlan> plans;
  std::optional<std::size_t> water;  // the row that leads from the riser to the table
  BinLeft left;
};

/// The answers, with what each got of the bin.
/// @param asked what `shares` were worked out from
Connections plan_connections(const Inputs& inputs, const chain::Finder& finder, const RiserPlan& riser,
                             AskedConnections asked, const BinShares& shares, Remarks& remarks);

/// What a connection carries, and how one of its ports is held: given, or assumed.
Service settle_service(const Job& job, const JobConnection& connection, Remarks& remarks);
chain::Freedom settle_freedom(const Job& job, const JobConnection& connection, const std::string& port,
                              const std::optional<chain::Freedom>& given, Remarks& remarks);
/// What the job asks of a connection, its far ends aside.
chain::ChainRequest request_for(const Inputs& inputs, const JobConnection& connection, Service service,
                                Remarks& remarks);

}  // namespace riserun::plan
