// The schema of a job file, by which editors complete and check it while it is written.
#pragma once

#include <string>

namespace riserun::report {

/// JSON Schema, draft 2020-12, made from the table of a job's keys. It knows names, what kind of value stands where and
/// the words to choose from; units and ranges are the program's own to check (`riserun check`).
std::string job_schema_json();

}  // namespace riserun::report
