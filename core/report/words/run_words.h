// What is said of a run beside its own facts.
#pragma once

namespace riserun::report {

/// Why a run that is not buildable is not.
inline constexpr const char* kNotBuildable =
    "neither end turns, and no joint of the chain can be made up without turning one of its sides";

}  // namespace riserun::report
