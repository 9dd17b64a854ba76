#include "plan/judge/judge.h"

#include "plan/judge/open.h"

#include <algorithm>
#include <map>
#include <string>
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

/// The port that the finding's mend puts a device on, or the first of its other mends that does; nullptr: none.
const Change* claim_of(const Finding& finding) {
  if (finding.ways_to_try.size() == 1 && finding.ways_to_try.front().size() == 1 &&
      finding.ways_to_try.front().front().key == kDeviceOn)
    return &finding.ways_to_try.front().front();
  for (const Mend& mend : finding.or_else)
    for (const Changes& way : mend.ways_to_try)
      for (const Change& change : way)
        if (change.key == kDeviceOn) return &change;
  return nullptr;
}

/// No two mends put something on one port: the later device gets a bung of its own, and a port that a device is to go
/// on is not to be plugged.
void share_out_ports(const Plan& plan, std::vector<Finding>& findings) {
  std::map<std::string, Change> claims;
  for (Finding& finding : findings) {
    const Change* claim = claim_of(finding);
    if (claim == nullptr || claims.emplace(std::get<std::string>(claim->value), *claim).second) continue;
    if (finding.mend->code != "on_the_free_port" && finding.mend->code != "on_the_free_port_from_stock") continue;
    const PartId part = *claim->part;
    finding.mend = Fact(std::get<quantity::Facts>(finding.mend->values.front()).front());
    finding.ways_to_try.clear();
    put_on_lid(plan, part, nullptr, finding);
  }
  for (Finding& finding : findings) {
    if (finding.reason.code != "port_closed_by_nothing") continue;
    const auto claim = claims.find(std::get<std::string>(finding.reason.values.front()));
    if (claim == claims.end()) continue;
    const PartId device = *claim->second.part;
    finding.mend = fact("device_goes_there", plan.catalog->family(plan.catalog->part(device).family).name);
  }
}

}  // namespace

std::vector<Finding> judge(const Plan& plan, const Settled& settled, std::vector<Finding> refused) {
  Open open(std::move(refused));
  for (const auto judge_topic : {&judge_use,           &judge_walls,    &judge_bays,          &judge_lid,
                                 &judge_lid_stacks,    &judge_relief,   &judge_air,           &judge_knob,
                                 &judge_given_figures, &judge_gauge,    &judge_heights,       &judge_vent,
                                 &judge_closed,        &judge_dip_port, &judge_plugged_drain, &judge_drains_by_weight,
                                 &judge_heat,          &judge_turns,    &judge_water,         &judge_knobs_mark})
    judge_topic(plan, settled, open);
  std::vector<Finding> findings = std::move(open).findings();
  share_out_ports(plan, findings);
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
