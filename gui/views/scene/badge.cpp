#include "gui/views/scene/badge.h"

#include "report/figures/figures.h"

#include <fmt/format.h>

namespace riserun::views {

namespace {

Ink ground_of(plan::Verdict verdict) {
  switch (verdict) {
    case plan::Verdict::ready:
      return Ink::good_ground;
    case plan::Verdict::not_yet:
      return Ink::caution_ground;
    case plan::Verdict::refused:
      return Ink::refused_ground;
  }
  return Ink::stale_ground;
}

}  // namespace

Badge badge_of(const gui::Model& model, const plan::Plan& plan) {
  Badge badge;
  badge.words = verdict_of(plan.verdict);
  const bool current = model.plan().current;
  const UnitSystem units = model.units();
  const std::size_t wrong = model.job().problems.size() + model.job().wrong_entries.size();
  if (!current && wrong > 0) {
    badge.stale = true;
    badge.words = fmt::format("not up to date: {} to fix", wrong == 1 ? "1 entry" : fmt::format("{} entries", wrong));
  }
  if (!current) return badge;
  badge.ground = ground_of(plan.verdict);
  if (report::is_under_four(plan) && plan.verdict != plan::Verdict::refused)
    badge.watch = fmt::format("WATCH: factor {} at {}",
                              report::written(report::relief_figures(plan)["factor_at_greatest"], units),
                              write_pressure_alone(plan.relief.greatest, units));
  return badge;
}

}  // namespace riserun::views
