// The schema of what `riserun plan --json` says, for whoever reads plans by a program.
#pragma once

#include <string>

namespace riserun::report {

/// JSON Schema, draft 2020-12, of plan_json(). Whatever is measured is a number whose unit ends its key, or null where
/// there is none. What is found of runs, and what another program would say anew in its own words (facts), is open.
std::string plan_schema_json();

}  // namespace riserun::report
