// The bin: one allocation over the connections, the riser and the plugs of the leak test.
#pragma once

#include "plan/plan.h"
#include "plan/stage/bin_left.h"
#include "plan/stage/inputs.h"
#include "plan/stage/riser.h"
#include "plan/stage/run_search.h"

#include <optional>
#include <vector>

namespace riserun::plan {

struct BinShares {
  std::vector<chain::Allotment> connections;  // one for each demand
  std::optional<PartId> riser;                // the nipple of the bin that it is cut from
  std::vector<TestPlug> plugs;
  std::vector<PartId> contested;  // of which more is wanted than the bin has
  bool several_orders = false;    // connections that do not go by the job's order came last
  BinLeft left;
};

/// @param connections what each connection asks for
/// @param to_plug ports of the reservoir that the leak test closes
BinShares share_bin(const Inputs& inputs, RunSearch& search, const std::vector<chain::Demand>& connections,
                    const MeasuredRiser& riser, const std::vector<const JobPort*>& to_plug);

/// Says how the bin was shared.
void note_sharing(const Inputs& inputs, const BinShares& shares, Remarks& remarks);

}  // namespace riserun::plan
