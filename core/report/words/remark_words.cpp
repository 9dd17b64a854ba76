#include "report/words/remark_words.h"

#include <algorithm>
#include <cassert>

namespace riserun::report {

SaidAssumption say(const plan::Assumption& assumption, UnitSystem units) {
  const std::span<const AssumptionWords> all = assumption_words();
  const auto words =
      std::find_if(all.begin(), all.end(), [&](const auto& row) { return row.code == assumption.fact.code; });
  assert(words != all.end() && "an assumption without words");
  const auto filled = [&](std::string_view text) { return fill(text, assumption.fact.values, units); };
  return {filled(words->what), filled(words->value), filled(words->why)};
}

SaidFinding say(const plan::Finding& finding, UnitSystem units) {
  SaidFinding said{say(finding.reason, units), "", "", ""};
  if (finding.numbers) {
    said.asked = fill("{0}", {finding.numbers->asked}, units);
    if (finding.numbers->allowed) said.allowed = fill("{0}", {*finding.numbers->allowed}, units);
  }
  if (finding.mend) said.mend = say(*finding.mend, units);
  return said;
}

std::string sentences_of(const plan::Finding& finding, UnitSystem units) {
  const SaidFinding said = say(finding, units);
  std::string text = fill("{0:sentence}", {said.reason}, units);
  if (!said.asked.empty() && !said.allowed.empty()) text += " Asked " + said.asked + ", allowed " + said.allowed + ".";
  if (!said.mend.empty()) text += " Mend: " + said.mend + (said.mend.ends_with('.') ? "" : ".");
  return finding.source.empty() ? text : text + " [" + finding.source + "]";
}

std::string_view title_of(plan::Severity severity) {
  return severity == plan::Severity::refused ? "REFUSED" : "NOT YET";
}

}  // namespace riserun::report
