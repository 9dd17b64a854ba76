// Whole jobs as a shop might have them, made up at random: any size of box, any set of ports, some of them connected, a
// bin with this and that.
#pragma once

#include <cstdint>
#include <string>

namespace riserun::plan {

/// The text of a job file; the same seed gives the same job.
std::string random_job(std::uint32_t seed);

}  // namespace riserun::plan
