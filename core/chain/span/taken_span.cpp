#include "chain/span/taken_span.h"

#include "chain/search/taken_chain.h"

#include <algorithm>

namespace riserun::chain {

namespace {

constexpr std::size_t kMostPinned = 8;  // of a request

/// The same question with nothing but the moves' parts, which are asked for one after the other. What the rules ask of
/// the run as a whole has been looked at already.
ChainRequest pinned(const Catalog& catalog, ChainRequest request, const std::vector<Move>& moves) {
  request.taken.reset();
  request.banned.assign(catalog.parts().size(), true);
  request.needs.clear();
  request.needs_in_order = true;
  int parts = 0;
  for (const Move& move : moves) {
    request.banned[move.part.row] = false;
    for (const PartId plug : move.plugs) request.banned[plug.row] = false;
    parts += 1 + static_cast<int>(move.plugs.size());
  }
  request.most_parts = parts;
  // Where there are more parts than needs, what comes only where it is asked for goes first.
  std::size_t left = moves.size() > kMostPinned ? kMostPinned : moves.size();
  std::size_t unasked = left;
  for (const Move& move : moves) unasked -= move.only_for_need && unasked > 0 ? 1 : 0;
  for (const Move& move : moves) {
    if (left == 0 || (!move.only_for_need && unasked == 0)) continue;
    unasked -= move.only_for_need ? 0 : 1;
    --left;
    request.needs.push_back({catalog.part(move.part).name, {move.part}});
  }
  return request;
}

}  // namespace

std::optional<ChainRequest> pinned_to_taken(const FoldedCatalog& folded, const ChainRequest& request) {
  const auto walked = taken_chain(folded, request);
  if (!std::holds_alternative<Route>(walked)) return std::nullopt;
  return pinned(folded.catalog(), request, std::get<Route>(walked).moves);
}

bool is_taken(const std::vector<Move>& moves, const std::vector<TakenPart>& taken) {
  std::vector<TakenPart> parts;
  for (const Move& move : moves) {
    parts.push_back({move.part, TakenPart::Through{move.enter, move.leave}});
    for (const PartId plug : move.plugs) parts.push_back({plug});
  }
  return std::equal(parts.begin(), parts.end(), taken.begin(), taken.end(), [](const TakenPart& a, const TakenPart& b) {
    return a.part == b.part && (!b.through || a.through == b.through);
  });
}

}  // namespace riserun::chain
