// A plan in the form that a file's name asks for.
#pragma once

#include "plan/plan.h"
#include "report/text/text_layout.h"

#include <span>
#include <string>
#include <string_view>

namespace riserun::report {

/// A way to write a plan, and the ending of the files that are written so.
struct PlanForm {
  std::string_view ending;  // ".html"
  std::string_view what;    // "card, list and steps for a phone"
  /// The bytes of the file; the card names the job's file.
  std::string (*write)(const plan::Plan& plan, const std::string& job_file, const Style& style);
};

std::span<const PlanForm> plan_forms();

/// The form of a file by the ending of its name, in whatever letters.
/// @throws InputError that names the endings there are
const PlanForm& plan_form_of(const std::string& file);

}  // namespace riserun::report
