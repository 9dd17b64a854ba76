// The arcs of a port graph, as they are followed and turned round.
#pragma once

#include "chain/part/measures.h"

#include <cstdint>

namespace riserun::chain {

/// What a part does for the chain that it is put into.
struct Gain {
  std::uint8_t groups = 0;     // the need groups that it meets
  bool only_for_need = false;  // it may stand only where it meets a need that is still open
  bool closes = false;         // its joint or its part can be made last between ends that are held
};

/// A part put onto an open end.
struct Arc : Gain {
  std::uint32_t to = 0;    // the node that the part leaves at
  std::uint32_t move = 0;  // row of the graph's moves
  Cost cost;
};

/// An edge of the transposed graph: an arc seen from the node that it leads to.
struct InEdge : Gain {
  std::uint32_t to = 0;  // the node that the arc comes from
  Cost cost;
};

}  // namespace riserun::chain
