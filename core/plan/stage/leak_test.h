// The leak test: its pressure, where the air goes in, and what plugs the other ports.
#pragma once

#include "chain/finder.h"
#include "plan/plan.h"
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
};

LeakTestPlan plan_leak_test(const Inputs& inputs, const std::vector<ConnectionPlan>& connections,
                            std::vector<TestPlug> plugs, const Tested& tested, Remarks& remarks);

}  // namespace riserun::plan
