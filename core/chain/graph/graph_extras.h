// What the graph of a request holds beside what the request itself lets in.
#pragma once

#include "chain/part/move.h"

#include <vector>

namespace riserun::chain {

/// What a search adds to the request itself.
struct GraphExtras {
  std::vector<bool> counted;           // by row of the request's bin: used no more often than it is there
  bool special_order_is_wish = false;  // special-order parts are admitted at a wish each
  std::vector<Move> wished;            // parts that do not exist
  bool counts_bushings = false;        // a bushing does not stand for what is none, which a limit on them may ask for
  bool all_measures = false;           // keeps what is best at anything; costs are the measures side by side
  bool purchase_is_wish = false;       // each part to buy weighs as a wish: fewest purchases come before the order
  bool every_length = false;           // keeps the best part of each length and bend, not only the best of all
};

}  // namespace riserun::chain
