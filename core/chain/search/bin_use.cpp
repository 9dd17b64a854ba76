#include "chain/search/bin_use.h"

#include <algorithm>

namespace riserun::chain {

std::vector<int> uses_of_bin(const ChainRequest& request, const std::vector<Move>& moves) {
  const std::vector<catalog::BinItem>& items = request.bin.items;
  std::vector<int> uses(items.size(), 0);
  const auto use = [&](PartId part, int pieces) {
    const auto item = std::find_if(items.begin(), items.end(), [&](const auto& i) { return i.part == part; });
    if (item != items.end()) uses[static_cast<std::size_t>(item - items.begin())] += pieces;
  };
  for (const Move& move : moves) {
    if (!move.cut || move.own.buy == 0) use(move.part, move.pieces);
    for (const PartId plug : move.plugs) use(plug, 1);
  }
  return uses;
}

bool count_overdrawn(const ChainRequest& request, const std::vector<Move>& moves, std::vector<bool>& counted) {
  const std::vector<int> uses = uses_of_bin(request, moves);
  bool overdrawn = false;
  for (std::size_t item = 0; item < uses.size(); ++item) {
    if (counted[item] || uses[item] <= request.bin.items[item].count) continue;
    counted[item] = overdrawn = true;
  }
  return overdrawn;
}

}  // namespace riserun::chain
