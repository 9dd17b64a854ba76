#include "catalog/words/not_here.h"

#include "catalog/words/words.h"

#include <algorithm>
#include <vector>

namespace riserun::catalog {

namespace {

struct Missing {
  std::string_view name;
  std::string_view instead;
};
constexpr Missing kMissing[] = {
    {"globe valve",
     "a globe valve throttles and is not in the catalog; a 'gate valve' or 'ball valve' shuts, a "
     "'needle valve' throttles a little"},
    {"floor flange",
     "a floor flange makes a leg of a pipe and seals nothing, so it is not in the catalog; a "
     "'threaded flange' is bolted to its like and tight"},
    {"pipe wye", "a wye for pressure pipe is not in the catalog; a 'tee' branches pipe, a 'hose wye' garden hose"},
    {"float valve",
     "a float valve fills a tank by itself and is not in the catalog; a 'ball valve' is shut by hand, a 'check valve' "
     "by the flow"},
    {"sight glass",
     "a sight glass is not in the catalog; 'vinyl hose', which is clear, upright between two tees shows the level"},
    {"pipe dope", "pipe dope is no part: each answer's build order says what its joints are sealed with"},
    {"teflon tape", "tape is no part: each answer's build order says what its joints are sealed with"},
    {"thread tape", "tape is no part: each answer's build order says what its joints are sealed with"},
    {"ptfe tape", "tape is no part: each answer's build order says what its joints are sealed with"},
    {"cpvc",
     "CPVC is not in the catalog, and PVC does not stand its heat or go together with it; hot water has 'copper' and "
     "'PEX'"},
    {"orb",
     "an O-ring boss (ORB) has a straight unified thread, which no part of the catalog has; it looks like a flare's "
     "and does not seal with one"},
};

}  // namespace

std::optional<NotHere> not_here(std::string_view words) {
  const std::vector<Token> said = split_words(words);
  for (const Missing& thing : kMissing) {
    const std::vector<Token> name = split_words(thing.name);
    const auto same = [](const Token& a, const Token& b) { return without_plural(a.text) == b.text; };
    const auto found = std::search(said.begin(), said.end(), name.begin(), name.end(), same);
    if (found != said.end()) return NotHere{thing.instead, found->offset};
  }
  return std::nullopt;
}

}  // namespace riserun::catalog
