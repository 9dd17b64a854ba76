// How far two ends go into each other, worked out again beside the solver.
#pragma once

#include "catalog/catalog.h"

#include <cstdint>
#include <utility>

namespace riserun::chain::testing {

/// Micrometres that an end puts into its like; 0 for a female one.
std::int64_t own_depth(const catalog::Catalog& catalog, catalog::PortTypeId type);
/// Of the joint between two ends: of one kind what the deeper puts in. Between two kinds what the first of the rule
/// says; where that is more than the ends have of themselves, no more than any fitting with such an end has of body.
std::int64_t depth_of_joint(const catalog::Catalog& catalog, catalog::PortTypeId a, catalog::PortTypeId b);
/// The most that an end puts into any mate; 0 for a female one.
std::int64_t deepest_of(const catalog::Catalog& catalog, catalog::PortTypeId type);
/// Micrometres that a joint takes in, and its tolerance.
std::pair<std::int64_t, std::int64_t> depth_and_band(const catalog::Catalog& catalog, catalog::PortTypeId a,
                                                     catalog::PortTypeId b);
/// Degrees by which the way through a part turns, 0 to 180.
double turn_of(const catalog::Part& part, std::size_t enter, std::size_t leave);

}  // namespace riserun::chain::testing
