// The order of work of a whole job: what is welded, made up and put on, first to last.
#pragma once

#include "plan/remarks.h"

#include <cstdint>
#include <string>
#include <vector>

namespace riserun::plan {

enum class WorkPhase : std::uint8_t {
  before_lid,   // while the reservoir stands open
  lid,          // it is closed
  leak_test,    // before anything is built on
  in_the_vise,  // made up at the bench
  on_the_tank,
  first_fill,
};

struct WorkStep {
  WorkPhase phase = WorkPhase::before_lid;
  Fact what;
  std::string of;  // name of the connection, or "riser", that it belongs to; empty: the job
  int number = 0;  // of its step in that one's build order, which its steps refer to; 0: it is none of it
};

struct WorkPlan {
  std::vector<WorkStep> steps;
};

}  // namespace riserun::plan
