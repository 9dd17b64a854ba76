#include "plan/judge/open.h"

#include <algorithm>

namespace riserun::plan {

bool devices_are_missing(const Plan& plan) {
  return std::any_of(plan.connections.begin(), plan.connections.end(), [](const ConnectionPlan& connection) {
    return connection.run() == nullptr && (connection.branched || connection.ends_in);
  });
}

}  // namespace riserun::plan
