// How a page looks, and the few lines of script that keep its ticks.
#pragma once

#include <string_view>

namespace riserun::report {

/// The style sheet.
extern const std::string_view kPageStyle;
/// Puts the ticks back and keeps them. A browser that keeps nothing loses them with the page.
extern const std::string_view kPageScript;

}  // namespace riserun::report
