// Puts the plan's papers into a folder, and the list on a printer.
#pragma once

#include "gui/model/session/job_state.h"
#include "plan/plan.h"

#include <filesystem>
#include <future>
#include <memory>

namespace riserun::views {

/// list.pdf, list.txt, list.json, plan.txt and plan.json: what the command prints. Says what was done or why not.
gui::Notice export_plan(const plan::Plan& plan, UnitSystem units, const std::filesystem::path& folder);

/// The list as PDF to the default printer by `lp`; where there is no printer, into `beside` as list.pdf. Waits for
/// `lp`.
gui::Notice print_list(const plan::Plan& plan, UnitSystem units, const std::filesystem::path& beside);

/// The same without waiting. Leaving does not wait for it either: a printer that hangs holds up no window.
std::future<gui::Notice> start_print(std::shared_ptr<const plan::Plan> plan, UnitSystem units,
                                     std::filesystem::path beside);

}  // namespace riserun::views
