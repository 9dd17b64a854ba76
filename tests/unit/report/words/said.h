// Facts in words, for tests that read sentences. Inch, unless the other units are asked for.
#pragma once

#include "report/words/say.h"

#include <string>
#include <vector>

namespace riserun::report {

inline std::string said(const Fact& fact, UnitSystem units = UnitSystem::inch) { return say(fact, units); }
inline std::vector<std::string> said(const Facts& facts, UnitSystem units = UnitSystem::inch) {
  return say_all(facts, units);
}

/// Of the rows of a plan's cautions or notes.
template <class Remark>
std::vector<std::string> said(const std::vector<Remark>& remarks) {
  std::vector<std::string> texts;
  texts.reserve(remarks.size());
  for (const Remark& remark : remarks) texts.push_back(said(remark.fact));
  return texts;
}

}  // namespace riserun::report
