// What the list is made of.
#pragma once

#include "plan/plan.h"

#include <vector>

namespace riserun::plan {

/// The sections whose parts are listed.
struct ListedSections {
  const std::vector<ConnectionPlan>& connections;
  const RiserPlan& riser;
  const WallsPlan& walls;
  const LeakTestPlan& leak_test;
  const std::vector<Finding>& findings;
  const Levels& levels;
};

}  // namespace riserun::plan
