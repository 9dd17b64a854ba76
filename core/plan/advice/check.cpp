#include "plan/advice/check.h"

#include "plan/advice/change.h"

#include <algorithm>

namespace riserun::plan {

namespace {

/// The same thing is open: numbers may have moved, what it is said of has not.
bool same(const Finding& a, const Finding& b) {
  const auto said_of = [](const Finding& finding) {
    const auto& values = finding.reason.values;
    return !values.empty() && std::holds_alternative<std::string>(values.front())
               ? std::get<std::string>(values.front())
               : std::string();
  };
  return a.where == b.where && a.reason.code == b.reason.code && said_of(a) == said_of(b);
}

bool has(const std::vector<Finding>& findings, const Finding& wanted) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& finding) { return same(finding, wanted); });
}

bool mends(const Plan& plan, const Finding& finding, const Changes& way, const PlanAgain& plan_again) {
  const Plan after = plan_again(changed(*plan.catalog, plan.job, way));
  if (has(after.findings, finding)) return false;
  return std::all_of(after.findings.begin(), after.findings.end(), [&](const Finding& left) {
    return left.severity != Severity::refused || has(plan.findings, left);
  });
}

}  // namespace

void keep_what_mends(Plan& plan, const PlanAgain& plan_again) {
  const std::vector<Finding> before = plan.findings;
  for (std::size_t i = 0; i < before.size(); ++i) {
    const auto all_mend = [&](const std::vector<Changes>& ways) {
      return std::all_of(ways.begin(), ways.end(),
                         [&](const Changes& way) { return mends(plan, before[i], way, plan_again); });
    };
    if (all_mend(before[i].ways_to_mend) && all_mend(before[i].ways_to_try)) continue;
    plan.findings[i].mend.reset();
    plan.findings[i].buy.reset();
    plan.findings[i].ways_to_mend.clear();
    plan.findings[i].ways_to_try.clear();
  }
}

}  // namespace riserun::plan
