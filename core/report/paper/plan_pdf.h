// A plan as a document to print: the card on its first page, then all that stands behind it.
#pragma once

#include "plan/plan.h"
#include "report/text/text_layout.h"

#include <string>

namespace riserun::report {

/// A PDF document, byte for byte: US letter pages in inch units, A4 in metric.
/// @param job_file as the card names it
std::string plan_pdf(const plan::Plan& plan, const std::string& job_file, const Style& style);

}  // namespace riserun::report
