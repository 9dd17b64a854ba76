#include "chain/search/best_chain.h"

#include "chain/search/bin_use.h"
#include "chain/search/potentials.h"
#include "chain/search/taken_chain.h"

#include <algorithm>

namespace riserun::chain {

namespace {

// Tells apart one more thing that the route breaks; false: it breaks nothing.
bool tighten(const ChainRequest& request, const Route& route, GraphExtras& extras, SearchLimits& limits) {
  if (request.most_parts && !limits.most_parts && part_count(route.moves) > *request.most_parts) {
    limits.most_parts = request.most_parts;
    return true;
  }
  if (request.most_bushings && !limits.most_bushings && bushing_count(route.moves) > *request.most_bushings) {
    limits.most_bushings = request.most_bushings;
    return extras.counts_bushings = true;
  }
  const std::vector<int> uses = uses_of_bin(request, route.moves);
  for (std::size_t item = 0; item < uses.size(); ++item) {
    if (extras.counted[item] || uses[item] <= request.bin.items[item].count) continue;
    extras.counted[item] = true;
    return true;
  }
  return false;
}

std::optional<Route> the_taken(const FoldedCatalog& folded, const ChainRequest& request) {
  auto taken = taken_chain(folded, request);
  return std::holds_alternative<Route>(taken) ? std::optional(std::get<Route>(std::move(taken))) : std::nullopt;
}

}  // namespace

std::int64_t part_count(const std::vector<Move>& moves) {
  std::int64_t count = 0;
  for (const Move& move : moves) count += move.own.parts;
  return count;
}

std::int64_t bushing_count(const std::vector<Move>& moves) {
  return std::count_if(moves.begin(), moves.end(), [](const Move& move) { return move.bushing; });
}

std::optional<Route> best_chain(const FoldedCatalog& folded, const ChainRequest& request, GraphExtras extras) {
  if (request.taken) return the_taken(folded, request);
  const Rules rules(folded.catalog(), request);
  SearchLimits limits;
  extras.counted.assign(request.bin.items.size(), false);
  while (true) {
    const PortGraph graph(folded, rules, extras);
    const auto route = search(folded, rules, graph, distances_to_goal(graph, rules, request.to), limits);
    if (!route || !tighten(request, *route, extras, limits)) return route;
  }
}

std::optional<Route> best_chain(const PreparedCatalog& prepared, const ChainRequest& request) {
  const FoldedCatalog& folded = prepared.folded();
  if (request.taken) return the_taken(folded, request);
  if (!GraphCache::is_plain(request)) return best_chain(folded, request);
  const Rules rules(folded.catalog(), request);
  SearchLimits limits;
  GraphExtras extras;
  while (true) {
    const auto kept = prepared.graphs().graph_for(folded, rules, extras);
    const auto distances = kept->distances_to(rules, request.to);
    const auto route = search(folded, rules, kept->graph(), *distances, limits);
    if (!route || !tighten(request, *route, extras, limits)) return route;
  }
}

}  // namespace riserun::chain
