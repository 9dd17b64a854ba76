// Why a person might take another chain than the best one, in one line.
#pragma once

#include "chain/ask/answer.h"
#include "quantity/write.h"

#include <string>

namespace riserun::report {

/// The best chain's own reason.
inline constexpr const char* kBestOfAll = "the best by the order asked for";

/// What speaks for the other chain, then what speaks against it, each beside the best one: "1 part fewer, $2.10
/// dearer". Differences too small to show are left out unless they are all there is: half a tape's mark of length
/// (1/32 in), and as much of head.
std::string reason(const chain::Chain& best, const chain::Chain& other, UnitSystem units);

}  // namespace riserun::report
