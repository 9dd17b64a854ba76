// What could stand in a part's place in a chain.
#pragma once

#include "plan/plan.h"

#include <cstddef>
#include <vector>

namespace riserun::gui {

struct Choice {
  catalog::PartId part;
  int in_bin = 0;  // how many the bin holds
};

/// Every part that goes onto both neighbours of the part at that place, the part itself left out: from the bin first,
/// then stocked, then by price. What the job forbids is not among them.
/// @param connection  row of Plan::connections; it has a chain
/// @param place       row of Chain::parts
std::vector<Choice> choices_at(const plan::Plan& plan, std::size_t connection, std::size_t place);

}  // namespace riserun::gui
