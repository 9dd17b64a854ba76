// What a plan says, in words: its assumptions in three cells, its findings with the two numbers side by side. Cautions
// and notes are plain facts, for say().
#pragma once

#include "plan/remarks.h"
#include "report/words/say.h"

#include <span>
#include <string>
#include <string_view>

namespace riserun::report {

/// The sentence of an assumption, in three parts. Its places are filled as those of Words.
struct AssumptionWords {
  std::string_view code;
  std::string_view what;   // "water temperature"
  std::string_view value;  // "68 degF"
  std::string_view why;    // "room temperature", with its source: "common practice", "ASME B36.10M" ...
};
std::span<const AssumptionWords> assumption_words();

struct SaidAssumption {
  std::string what;
  std::string value;
  std::string why;
};
/// @pre its code has words
SaidAssumption say(const plan::Assumption& assumption, UnitSystem units);

struct SaidFinding {
  std::string reason;
  std::string asked;  // empty: there is no number
  std::string allowed;
  std::string mend;  // empty: nothing is known that lifts it
};
SaidFinding say(const plan::Finding& finding, UnitSystem units);

/// All of it in sentences: "The fill needs more than the walls may see. Asked 2 psi, allowed 1 psi. Mend: one more
/// stay."
std::string sentences_of(const plan::Finding& finding, UnitSystem units);
/// "REFUSED", "NOT YET".
std::string_view title_of(plan::Severity severity);

}  // namespace riserun::report
