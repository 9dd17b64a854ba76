// What thread is this: the candidates, why, what looks alike, and what to measure next.
#pragma once

#include "catalog/identify/identify.h"
#include "report/text/text_layout.h"

#include <string>

namespace riserun::report {

std::string identify_text(const catalog::Catalog& catalog, const catalog::Identification& found, const Style& style);

}  // namespace riserun::report
