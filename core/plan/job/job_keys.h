// The keys of a job file: what each is called, where it stands, what it holds. Help and the schema that editors check
// with are written from this table; a test holds it against what the reader takes.
#pragma once

#include "catalog/yaml/file_keys.h"

#include <string_view>
#include <vector>

namespace riserun::plan {

using JobForm = catalog::KeyForm;
using JobKey = catalog::FileKey;

/// In the order in which a job is written; a key stands behind the one that it belongs to. Made once.
const std::vector<JobKey>& job_keys();

/// The rows of what stands right under that path; "" is the file.
std::vector<const JobKey*> keys_under(std::string_view path);

}  // namespace riserun::plan
