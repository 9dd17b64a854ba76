#include "plan/judge/judge.h"

#include "plan/judge/open.h"

#include <algorithm>

namespace riserun::plan {

std::vector<Finding> judge(const Plan& plan, const Settled& settled, std::vector<Finding> refused) {
  Open open(std::move(refused));
  for (const auto judge_topic : {&judge_use, &judge_walls, &judge_water, &judge_relief, &judge_gauge, &judge_air,
                                 &judge_vent, &judge_closed, &judge_heat})
    judge_topic(plan, settled, open);
  std::vector<Finding> findings = std::move(open).findings();
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
  return findings;
}

Verdict verdict_of(const std::vector<Finding>& findings) {
  if (findings.empty()) return Verdict::ready;
  const bool refused = std::any_of(findings.begin(), findings.end(),
                                   [](const Finding& finding) { return finding.severity == Severity::refused; });
  return refused ? Verdict::refused : Verdict::not_yet;
}

}  // namespace riserun::plan
