// What else could be bought in the place of a part on the list.
#pragma once

#include "plan/plan.h"

#include <vector>

namespace riserun::plan {

/// Parts with the same ports that could stand in for one that is bought, in another material; at most two. Each is one
/// that the runs let in where the bought one stands.
void suggest_instead(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, ListItem& item);

}  // namespace riserun::plan
