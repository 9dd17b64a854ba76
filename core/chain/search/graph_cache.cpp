#include "chain/search/graph_cache.h"

#include "chain/search/potentials.h"

#include <algorithm>

namespace riserun::chain {

namespace {

// More than a person's session asks for; a program that walks through thousands of flows starts over.
constexpr std::size_t kMostGraphs = 32;
constexpr std::size_t kMostGoals = 1024;

}  // namespace

std::shared_ptr<const std::vector<Cost>> CachedGraph::distances_to(const Rules& rules, const PortEnd& goal) const {
  const std::pair key(goal.type, goal.material.value_or(MaterialId{}));
  const std::lock_guard lock(mutex_);
  if (distances_.size() >= kMostGoals && !distances_.contains(key)) distances_.clear();
  std::shared_ptr<const std::vector<Cost>>& known = distances_[key];
  if (!known) known = std::make_shared<const std::vector<Cost>>(distances_to_goal(graph_, rules, goal));
  return known;
}

bool GraphCache::is_plain(const ChainRequest& request) {
  return request.needs.empty() && request.bin.items.empty() && request.not_sold.empty() &&
         std::find(request.banned.begin(), request.banned.end(), true) == request.banned.end();
}

GraphCache::Key GraphCache::key_of(const Rules& rules, const GraphExtras& extras) {
  const ChainRequest& request = rules.request();
  return {request.order,
          request.service,
          request.rating ? in_pascals(*request.rating) : -1.0,
          request.galvanic,
          request.special_order,
          request.smallest_bore ? in_metres(*request.smallest_bore) : -1.0,
          extras.all_measures || request.order == Order::loss ? in_cubic_metres_per_second(request.flow) : 0.0,
          rules.closing(),
          extras.all_measures,
          request.room ? in_metres(*request.room) : -1.0,
          extras.counts_bushings,
          request.hottest ? in_kelvins(*request.hottest) : -1.0,
          request.vacuum};
}

std::shared_ptr<const CachedGraph> GraphCache::graph_for(const FoldedCatalog& folded, const Rules& rules,
                                                         const GraphExtras& extras) const {
  const Key key = key_of(rules, extras);
  const std::lock_guard lock(mutex_);
  if (graphs_.size() >= kMostGraphs && !graphs_.contains(key)) graphs_.clear();
  std::shared_ptr<const CachedGraph>& known = graphs_[key];
  if (!known) known = std::make_shared<const CachedGraph>(PortGraph(folded, rules, extras));
  return known;
}

}  // namespace riserun::chain
