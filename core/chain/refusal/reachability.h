// What can be got to from each of the two ends, and what is easily mistaken on the way. Breadth-first visits of the
// graph, O(arcs).
#pragma once

#include "chain/graph/port_graph.h"
#include "quantity/fact.h"

#include <vector>

namespace riserun::chain {

/// Open port types that admitted parts lead to from the first port, nearest first, then in catalog order.
std::vector<PortTypeId> reachable_from(const Rules& rules, const PortGraph& graph);
/// Open port types from which admitted parts lead to the last port, nearest first, then in catalog order.
std::vector<PortTypeId> reachable_to(const Rules& rules, const PortGraph& graph);

/// Look-alikes between the two ends, and between each end and what the other side leads to.
quantity::Facts look_alike_traps(const Catalog& catalog, const ChainRequest& request,
                                 const std::vector<PortTypeId>& from_side, const std::vector<PortTypeId>& to_side);

}  // namespace riserun::chain
