#include "plan/plan.h"

#include <algorithm>

namespace riserun::plan {

const ConnectionPlan* connection_named(const std::vector<ConnectionPlan>& connections, const std::string& name) {
  const auto found = std::find_if(connections.begin(), connections.end(),
                                  [&](const ConnectionPlan& each) { return each.name == name; });
  return found == connections.end() ? nullptr : &*found;
}

}  // namespace riserun::plan
