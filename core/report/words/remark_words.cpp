#include "report/words/remark_words.h"

#include <algorithm>
#include <cassert>
#include <tuple>
#include <utility>

namespace riserun::report {

namespace {

/// The two as they are told apart: with more digits where the usual ones make them alike.
std::pair<std::string, std::string> side_by_side(const quantity::Value& asked, const quantity::Value& allowed,
                                                 UnitSystem units) {
  const std::pair<std::string, std::string> usual{fill("{0}", {asked}, units), fill("{0}", {allowed}, units)};
  std::pair<std::string, std::string> said = usual;
  if (std::holds_alternative<std::int64_t>(asked)) return said;  // a count has all its digits
  const bool in_marks = std::holds_alternative<Length>(asked);   // of a tape
  constexpr int kMostDigits = 6;
  for (int digits = quantity::kUsualDigits + 1; said.first == said.second && digits <= kMostDigits; ++digits) {
    const std::string form = "{0:" + std::string(in_marks ? "decimal" : "") + std::to_string(digits) + "}";
    said = {fill(form, {asked}, units), fill(form, {allowed}, units)};
  }
  return said.first == said.second ? usual : said;  // digits tell no two apart that are one
}

}  // namespace

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
    if (finding.numbers->allowed)
      std::tie(said.asked, said.allowed) = side_by_side(finding.numbers->asked, *finding.numbers->allowed, units);
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
