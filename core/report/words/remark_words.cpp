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

SaidRefusal say(const plan::Refusal& refusal, UnitSystem units) {
  SaidRefusal said{say(refusal.reason, units), "", "", ""};
  if (refusal.numbers) {
    said.asked = fill("{0}", {refusal.numbers->asked}, units);
    if (refusal.numbers->allowed) said.allowed = fill("{0}", {*refusal.numbers->allowed}, units);
  }
  if (refusal.mend) said.mend = say(*refusal.mend, units);
  return said;
}

}  // namespace riserun::report
