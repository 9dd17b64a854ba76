// The way from the base of a branched assembly to one of its targets.
#pragma once

#include "chain/ask/assembly.h"

namespace riserun::chain {

/// The way from the base to one target as a chain, with what is plugged beside it; ports that branch off are left out.
Chain branch_to(const Assembly& assembly, std::size_t target);
/// The smallest bore on that way, the device at its end left out; nullopt: there is no part, or no bore is known.
std::optional<Length> bore_of_branch(const Catalog& catalog, const Assembly& assembly, std::size_t target);

}  // namespace riserun::chain
