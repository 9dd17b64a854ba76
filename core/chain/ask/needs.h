// Needs as they are asked for, and as a search takes them.
#pragma once

#include "chain/ask/request.h"

#include <vector>

namespace riserun::chain {

/// Needs that name two parts are met by two: of `valve` and `ball valve` the second is no other word for the first. A
/// search lets one part meet every need that it matches, but of needs for the same parts one only; so a need is asked
/// for once more for each of the others that is narrower, which takes one of its parts. Needs of which neither is the
/// narrower (`brass`, `ball valve`) may still be met by one part. Exact where any two needs that share a part are one
/// within the other, as Hall's theorem has it; in order, for those that follow one another.
std::vector<Need> told_apart(std::vector<Need> needs, bool in_order);

}  // namespace riserun::chain
