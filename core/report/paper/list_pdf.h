// The shopping list and the cut list as pages that fit a pocket clipboard, with boxes to tick.
#pragma once

#include "plan/plan.h"
#include "report/text/text_layout.h"

#include <string>

namespace riserun::report {

/// A PDF document, byte for byte: US letter pages in inch units, A4 (ISO 216) in metric. A page that is full goes on on
/// the next one; a row is never split between two. Cautions that belong to the list stand at its end.
std::string list_pdf(const plan::Plan& plan, const Style& style);

}  // namespace riserun::report
