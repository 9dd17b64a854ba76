// The connections: what is asked of the chain search for each, and what comes of the answer.
#pragma once

#include "plan/plan.h"
#include "plan/stage/bin.h"
#include "plan/stage/inputs.h"
#include "plan/stage/run_search.h"

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

AskedConnections ask_connections(const Inputs& inputs, RunSearch& search, const RiserPlan& riser, Remarks& remarks);

struct Connections {
  std::vector<ConnectionPlan> plans;
  std::optional<std::size_t> water;  // the row that leads from the riser to the table
  BinLeft left;
};

/// The answers, with what each got of the bin.
/// @param asked what `shares` were worked out from
Connections plan_connections(const Inputs& inputs, RunSearch& search, const RiserPlan& riser, AskedConnections asked,
                             const BinShares& shares, Remarks& remarks);

}  // namespace riserun::plan
