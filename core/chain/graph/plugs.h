// What plugs a spare port of a part: the ports beyond those that a chain or a branch runs through.
#pragma once

#include "chain/rules/rules.h"

#include <vector>

namespace riserun::chain {

/// The part is made to close a spare port, and the rules admit it.
bool is_plug(const Rules& rules, PartId part);

/// The plug goes into a port of that type; its metal may meet the host's.
/// @pre is_plug()
bool plugs(const Rules& rules, PartId plug, PortTypeId port, MaterialId host);

/// All that plug such a port, whether they are to be had or not. O(uses of the types that mate with it).
std::vector<PartId> plugs_of(const Rules& rules, PortTypeId port, MaterialId host);

}  // namespace riserun::chain
