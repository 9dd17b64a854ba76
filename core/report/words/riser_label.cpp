#include "report/words/riser_label.h"

namespace riserun::report {

std::string riser_label(const plan::Plan& plan, quantity::UnitSystem units) {
  if (plan.verdict == plan::Verdict::refused) return "riser, not cut while it is refused";
  return "riser, cut " + quantity::write_length(plan.riser.riser.cut_length, units);
}

}  // namespace riserun::report
