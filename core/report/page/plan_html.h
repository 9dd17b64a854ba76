// A plan as one page for a phone or a printer.
#pragma once

#include "plan/plan.h"
#include "quantity/write.h"

#include <string>

namespace riserun::report {

/// An HTML document that needs nothing else, no network either: the card, the list with boxes whose ticks stay between
/// openings (in the browser's own store, under the row's words), the order of work step by step, the leak test. Light
/// or dark as the device is; in print each part begins a page.
std::string plan_html(const plan::Plan& plan, UnitSystem units);

}  // namespace riserun::report
