// Which way the ports of reservoir and table look, as far as a job says it.
#pragma once

#include "plan/job/job.h"

#include <cstdint>
#include <optional>
#include <string>

namespace riserun::plan {

enum class Facing : std::int8_t { down = -1, aside = 0, up = 1 };

/// Where the port's axis leads, seen from its vessel. nullopt: its place is not said, or is over the rim.
std::optional<Facing> axis_of(const JobPort& port);

/// What comes in over the rim counts as coming from the side: the way to it goes round the table's edge. Of a port of
/// the reservoir or the table; where its place is not said, the riser's bung is in the lid and a port of the table in
/// its floor. nullopt: another port, or not known.
std::optional<Facing> facing_of(const Job& job, const std::string& port);

/// One of the two looks up and the other down: a straight run goes between them. nullopt: of one it is not known.
std::optional<bool> look_at_each_other(const Job& job, const std::string& from, const std::string& to);

}  // namespace riserun::plan
