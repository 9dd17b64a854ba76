#include "plan/remarks.h"

#include <utility>

namespace riserun::plan {

void Remarks::assume(std::string what, std::string value, std::string why, std::string key) {
  assumptions.push_back({std::move(what), std::move(value), std::move(why), std::move(key)});
}

void Remarks::caution(Topic where, std::string text, std::string source) {
  cautions.push_back({where, std::move(text), std::move(source), false});
}

void Remarks::standing_caution(Topic where, std::string text, std::string source) {
  cautions.push_back({where, std::move(text), std::move(source), true});
}

void Remarks::note(Topic where, std::string text) { notes.push_back({where, std::move(text)}); }

void Remarks::refuse(Refusal refusal) { refusals.push_back(std::move(refusal)); }

}  // namespace riserun::plan
