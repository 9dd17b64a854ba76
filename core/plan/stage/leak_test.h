// The leak test: its pressure, the rig where the air goes in, what plugs the other ports, and how it goes.
#pragma once

#include "chain/finder.h"
#include "plan/plan.h"
#include "plan/stage/bin_left.h"
#include "plan/stage/inputs.h"

#include <vector>

namespace riserun::plan {

/// @param connections as asked or as answered
std::vector<const JobPort*> ports_to_plug(const Job& job, const std::vector<ConnectionPlan>& connections);

/// What closes such a port: all of the bin that does and the cheapest on sale.
std::vector<chain::EndPart> closing_parts(const Inputs& inputs, PortTypeId port);

/// What the test must answer for.
struct Tested {
  const Levels& levels;
  const WallsPlan& walls;
  const ReliefPlan& relief;
  GaugePressure setting;
  const transfer::System& system;
  const std::vector<Way>& ways;
};

/// @param left what the job left of the bin; the rig takes of it
LeakTestPlan plan_leak_test(const Inputs& inputs, const chain::Finder& finder,
                            const std::vector<ConnectionPlan>& connections, std::vector<TestPlug> plugs,
                            const Tested& tested, BinLeft& left, Remarks& remarks);

}  // namespace riserun::plan
