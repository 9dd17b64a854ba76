#include "report/text/plan_text.h"
#include "report/text/step_rows.h"

namespace riserun::report {

std::string work_text(const plan::Plan& plan, const Style& style) {
  std::string text = heading("Order of work", style);
  std::size_t next = 1;
  for (const StepList& list : work_steps(plan, style.units)) text += step_rows(list, style, next);
  return text;
}

}  // namespace riserun::report
