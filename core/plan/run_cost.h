// What a connection costs, as the list buys it: hose by its length and clamps with the parts of its run.
#pragma once

#include "plan/plan.h"

#include <string_view>

namespace riserun::plan {

/// Of all that the list buys for one connection or use. A row without price counts once, as it does in the list's sum.
Price cost_of(const ShoppingList& list, std::string_view use);

/// Of the clamps among that.
struct ClampsBought {
  int count = 0;
  Price price;
};
ClampsBought clamps_bought(const Plan& plan, std::string_view connection);

/// How many pieces of the part those rows have for one connection: what is bought, or what the bin gives.
int pieces_for(const std::vector<ListItem>& rows, PartId part, std::string_view connection);

}  // namespace riserun::plan
