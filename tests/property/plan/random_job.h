// Whole jobs as a shop might have them, made up at random: any size of box, any set of ports, some of them connected, a
// bin with this and that.
#pragma once

#include <cstdint>
#include <string>

namespace riserun::plan {

/// The text of a job file; the same seed gives the same job.
std::string random_job(std::uint32_t seed);

/// How many to try: that many, or what RISERUN_RANDOM_JOBS asks for.
std::uint32_t count_of_jobs(std::uint32_t usual);

/// How many jobs to leave out before the first: 0, or what RISERUN_RANDOM_SKIP asks for, so that several can share a
/// long run.
std::uint32_t jobs_left_out();

}  // namespace riserun::plan
