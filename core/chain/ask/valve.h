// On which side of the shut-off valve a run opens: what is asked and what is answered.
#pragma once

#include "chain/ask/request.h"
#include "quantity/fact.h"

namespace riserun::chain {

/// The end of a run that is at the reservoir.
enum class ReservoirEnd { first, last };

/// The valve that would come off with the run, and where the run opens between it and the reservoir: a union, or a
/// joint that opens without turning.
struct ValveAndOpening {
  PartId valve;
  quantity::Fact opening;  // "1 union", "joint of the 3/4 barb x 3/4 MNPT with the 3/4 hose"
};

}  // namespace riserun::chain
