// What a run is proved for, as a sentence.
#pragma once

#include "chain/ask/answer.h"
#include "quantity/write.h"

#include <optional>
#include <string>

namespace riserun::report {

/// Parts and plugs of a chain.
std::vector<chain::PartId> all_parts(const chain::Chain& chain);

/// "Proved for compressed air to 150 psi and for 158 degF inside; collapses under vacuum."
/// @param parts  at least one
/// @param heat  of what is inside, where it is told; the pressures are then those at that heat
std::string duty_sentence(const chain::Catalog& catalog, const std::vector<chain::PartId>& parts,
                          const std::optional<Temperature>& heat, UnitSystem units);

}  // namespace riserun::report
