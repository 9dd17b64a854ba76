#include "plan/remarks.h"

#include <utility>

namespace riserun::plan {

void Remarks::assume(Fact fact, std::string key) { assumptions.push_back({std::move(fact), std::move(key)}); }

void Remarks::caution(Topic where, Fact fact, std::string source) {
  cautions.push_back({where, std::move(fact), std::move(source), false});
}

void Remarks::standing_caution(Topic where, Fact fact, std::string source) {
  cautions.push_back({where, std::move(fact), std::move(source), true});
}

void Remarks::note(Topic where, Fact fact) { notes.push_back({where, std::move(fact)}); }

Finding& Remarks::refuse(Finding finding) {
  finding.severity = Severity::refused;
  return findings.emplace_back(std::move(finding));
}

}  // namespace riserun::plan
