// What thread is this, as JSON.
#pragma once

#include "catalog/identify/identify.h"

#include <string>

namespace riserun::report {

std::string identify_json(const catalog::Catalog& catalog, const catalog::Identification& found);

}  // namespace riserun::report
