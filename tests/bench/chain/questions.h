// The question that all searches are asked: the chain of fewest parts, and of those the cheapest, between two ports.
#pragma once

#include "bench/chain/part_graph.h"
#include "chain/search/best_chain.h"

namespace riserun::bench {

inline chain::ChainRequest request_for(catalog::PortTypeId from, catalog::PortTypeId to) {
  chain::ChainRequest request;
  request.from.type = from;
  request.to.type = to;
  request.order = chain::Order::parts;
  return request;
}

/// The route's cost as the part graph weighs it.
inline Distance distance_of(const std::optional<chain::Route>& route) {
  if (!route) return std::nullopt;
  return route->cost.tuple[1] * kOnePart + route->cost.tuple[2];
}

}  // namespace riserun::bench
