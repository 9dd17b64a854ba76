#include "plan/judge/judge.h"

#include "plan/judge/open.h"

#include <algorithm>
#include <utility>

namespace riserun::plan {

namespace {

/// What can hurt comes before what does not go together.
bool is_graver(const Finding& a, const Finding& b) {
  const auto only_stops_work = [](const Finding& finding) {
    return finding.severity == Severity::refused && finding.where != Topic::whole_job &&
           finding.where != Topic::walls && finding.where != Topic::relief && finding.where != Topic::leak_test;
  };
  return std::pair(a.severity, only_stops_work(a)) < std::pair(b.severity, only_stops_work(b));
}

}  // namespace

std::vector<Finding> judge(const Plan& plan, const Settled& settled, std::vector<Finding> refused) {
  Open open(std::move(refused));
  for (const auto judge_topic : {&judge_use, &judge_walls, &judge_bays, &judge_lid, &judge_lid_stacks, &judge_relief,
                                 &judge_air, &judge_given_figures, &judge_gauge, &judge_heights, &judge_vent,
                                 &judge_closed, &judge_plugged_drain, &judge_heat, &judge_water})
    judge_topic(plan, settled, open);
  std::vector<Finding> findings = std::move(open).findings();
  std::stable_sort(findings.begin(), findings.end(), is_graver);
  return findings;
}

Verdict verdict_of(const std::vector<Finding>& findings) {
  if (findings.empty()) return Verdict::ready;
  const bool refused = std::any_of(findings.begin(), findings.end(),
                                   [](const Finding& finding) { return finding.severity == Severity::refused; });
  return refused ? Verdict::refused : Verdict::not_yet;
}

}  // namespace riserun::plan
