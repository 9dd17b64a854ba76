#include "plan/advice/check.h"

#include "plan/advice/change.h"

#include <algorithm>
#include <deque>
#include <utility>

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

/// What is open after each way that was followed: several findings may be mended alike.
class Followed {
 public:
  Followed(const Plan& plan, const PlanAgain& plan_again) : plan_(plan), plan_again_(plan_again) {}

  const std::vector<Finding>& after(const Changes& way) {
    const auto known = std::find_if(ways_.begin(), ways_.end(), [&](const auto& one) { return one.first == way; });
    if (known != ways_.end()) return known->second;
    return ways_.emplace_back(way, plan_again_(changed(*plan_.catalog, plan_.job, way))).second;
  }

 private:
  const Plan& plan_;
  const PlanAgain& plan_again_;
  std::deque<std::pair<Changes, std::vector<Finding>>> ways_;
};

bool mends(const std::vector<Finding>& before, const Finding& finding, const std::vector<Finding>& after) {
  if (has(after, finding)) return false;
  return std::all_of(after.begin(), after.end(),
                     [&](const Finding& left) { return left.severity != Severity::refused || has(before, left); });
}

}  // namespace

void keep_what_mends(Plan& plan, const PlanAgain& plan_again) {
  const std::vector<Finding> before = plan.findings;
  Followed followed(plan, plan_again);
  for (std::size_t i = 0; i < before.size(); ++i) {
    const auto all_mend = [&](const std::vector<Changes>& ways) {
      return std::all_of(ways.begin(), ways.end(),
                         [&](const Changes& way) { return mends(before, before[i], followed.after(way)); });
    };
    if (all_mend(before[i].ways_to_mend) && all_mend(before[i].ways_to_try)) continue;
    plan.findings[i].mend.reset();
    plan.findings[i].buy.reset();
    plan.findings[i].ways_to_mend.clear();
    plan.findings[i].ways_to_try.clear();
  }
}

}  // namespace riserun::plan
