// A job in which nothing is open, that the tests of the verdict change in one place at a time.
#pragma once

#include "report/words/remark_words.h"
#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::plan {

inline constexpr const char* kReady = R"(name: Ready bench
units: inch
reservoir:
  inside: {length: 40 in, width: 20 in, height: 14 in}
  sheet: 10 ga steel
  supports: {baffles across: 2, baffles along: 1}
  charge: 9 in
  ports:
    riser bung: {port: 1 FNPT, bung: full coupling, where: lid}
    air bung: {port: 1/2 FNPT, where: lid}
    gauge bung: 1/4 FNPT
    relief bung: 3/4 FNPT
    vent bung: 1/2 FNPT
table:
  inside: {length: 44 in, width: 22 in}
  rim: 5 in
  floor height: 30 in
  depth: 4 in
  ports:
    inlet: {port: 1 FNPT, where: floor}
    outlet: {port: 1 FNPT, where: floor, opens at: 5 in}
riser: {bung: riser bung}
air:
  delivery: 3 scfm
  receiver: 8 gal
  receiver pressure: 110 psi
  regulator range: 15 psi
  regulator repeatability: 0.05 psi
  set pressure: 1.6 psi
  ports: {shop air: 1/4 FNPT}
relief valve: {tolerance: 0.1 psi, rise: 0.2 psi}
vent: {bore: 1/2 in}
connections:
  - {name: water up, gap: 14-3/8 in, from: riser bung, to: inlet, carries: water, need: [union], held: {from: fixed, to: fixed}}
  - {name: air in, from: shop air, to: air bung, carries: air, in order: yes, special order: yes,
     need: [1/16 in hole restrictor, 0 to 15 psi air regulator, light spring check valve]}
  - {name: gauge, from: gauge bung, ends in: 5 psi gauge, special order: yes, carries: air}
  - {name: relief, from: relief bung, ends in: 3/4 relief valve set 2 psi, special order: yes, carries: air}
  - {name: vent, from: vent bung, ends in: 1/2 brass ball valve, carries: air}
water temperature: 60 degF
altitude: 600 ft
)";

/// Made once.
inline const Plan& ready() {
  static const Plan plan = plan_of_text(kReady);
  return plan;
}

inline std::vector<std::string_view> open_in(const Plan& plan) {
  std::vector<std::string_view> codes;
  for (const Finding& finding : plan.findings) codes.push_back(finding.reason.code);
  return codes;
}

inline bool has(const Plan& plan, std::string_view code, Severity severity = Severity::not_yet) {
  return std::any_of(plan.findings.begin(), plan.findings.end(), [&](const Finding& finding) {
    return finding.reason.code == code && finding.severity == severity;
  });
}

inline bool warns_of(const Plan& plan, std::string_view code) {
  return std::any_of(plan.cautions.begin(), plan.cautions.end(),
                     [&](const Caution& caution) { return caution.fact.code == code; });
}

/// The first finding with that code, in words; empty: there is none.
inline std::string said_of(const Plan& plan, std::string_view code) {
  for (const Finding& finding : plan.findings)
    if (finding.reason.code == code) return report::sentences_of(finding, UnitSystem::inch);
  return "";
}

/// The same of plate.
inline const std::string kStiff = with(kReady, "10 ga steel", "3/16 in steel");

/// One line of the ready job changed.
inline Plan ready_with(const std::string& from, const std::string& to) { return plan_of_text(with(kReady, from, to)); }

/// A key of the job's own at its end.
inline Plan ready_and(const std::string& line) { return plan_of_text(kReady + line + "\n"); }

}  // namespace riserun::plan
