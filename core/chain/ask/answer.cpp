#include "chain/ask/answer.h"

#include <utility>

namespace riserun::chain {

using quantity::fact;

Fact cannot_be_kept(Facts rules) {
  const std::size_t count = rules.size();
  return count == 2 ? fact("cannot_both_be_kept", std::move(rules))
                    : fact("cannot_all_be_kept", count, std::move(rules));
}

std::vector<TakenPart> taken_parts(const Chain& chain) {
  std::vector<TakenPart> taken;
  for (const RunPart& link : chain.parts) {
    taken.push_back({link.part, TakenPart::Through{link.enter, link.leave()}});
    for (const Follower& plug : link.plugs()) taken.push_back({plug.plug});
  }
  return taken;
}

}  // namespace riserun::chain
