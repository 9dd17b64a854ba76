// Puts the plan's papers into a folder, and the list on a printer.
#pragma once

#include "gui/model/session/job_state.h"
#include "plan/plan.h"
#include "report/paper/pictures.h"

#include <filesystem>
#include <future>
#include <memory>
#include <string_view>

namespace riserun::views {

inline constexpr std::string_view kPapers[] = {
    "list.pdf",     "list.txt",    "list.json",   "plan.txt",    "plan.json", "plumbing.svg", "plumbing.png",
    "plumbing.pdf", "section.svg", "section.png", "section.pdf", "plots.svg", "plots.png",    "plots.pdf"};

/// The papers and drawings, with what the command prints, each written whole or not at all, over one that is there.
/// Says what was done or why not.
/// @param plumbing  what the canvas shows
gui::Notice export_plan(const plan::Plan& plan, UnitSystem units, const report::Picture& plumbing,
                        const std::filesystem::path& folder);

/// The list as PDF to the default printer by `lp`; where there is no printer, into `beside` as list.pdf, or, where that
/// is there, under the next free name. Waits for `lp`.
gui::Notice print_list(const plan::Plan& plan, UnitSystem units, const std::filesystem::path& beside);

/// The same without waiting. Leaving does not wait for it either: a printer that hangs holds up no window.
std::future<gui::Notice> start_print(std::shared_ptr<const plan::Plan> plan, UnitSystem units,
                                     std::filesystem::path beside);

}  // namespace riserun::views
