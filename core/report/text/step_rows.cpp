#include "report/text/step_rows.h"

#include <fmt/format.h>

namespace riserun::report {

std::string step_rows(const StepList& list, const Style& style, std::size_t& next) {
  std::string text = "  " + list.title + "\n";
  std::string of;
  for (const SaidStep& step : list.steps) {
    if (step.of.empty()) {
      text += wrapped(fmt::format("    {:>2}. ", next++), step.text, style.width);
    } else {
      if (step.of != of) text += fmt::format("    {:>2}. {}\n", next++, step.of);
      const std::string mark = step.number == 0 ? " -" : fmt::format("{}.", step.number);
      text += wrapped(fmt::format("        {:>3} ", mark), step.text, style.width);
    }
    of = step.of;
  }
  return text;
}

}  // namespace riserun::report
