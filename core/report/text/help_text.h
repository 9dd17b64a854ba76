// The keys of a job file as help prints them.
#pragma once

#include "plan/job/job_keys.h"

#include <string>
#include <vector>

namespace riserun::report {

/// `a text with its unit`, `lid, side or floor`.
std::string form_words(const plan::JobKey& key);
/// One after the other: the path, what it holds, what it is.
std::string keys_text(const std::vector<const plan::JobKey*>& keys);

}  // namespace riserun::report
