// The restrictors that are sold: which goes before a regulator.
#pragma once

#include "plan/stage/inputs.h"

#include <optional>

namespace riserun::plan {

/// Threads that a restrictor may have: those of what stands behind it, the regulator's inlet; without a regulator those
/// of the supply's port.
std::optional<catalog::SizeId> inlet_of_regulator(const Inputs& inputs, std::optional<PartId> regulator);

/// The widest hole that is sold, up to that one; of the regulator's size where there is one.
std::optional<PartId> restrictor_up_to(const Inputs& inputs, std::optional<catalog::SizeId> size, Length widest);

}  // namespace riserun::plan
