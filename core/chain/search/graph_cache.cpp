#include "chain/search/graph_cache.h"

#include "chain/part/run_ends.h"
#include "chain/search/potentials.h"

#include <algorithm>

namespace riserun::chain {

namespace {

// More than a person's session asks for; a program that walks through thousands of flows starts over.
constexpr std::size_t kMostGraphs = 128;
constexpr std::size_t kMostFrames = 32;
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

GraphCache::Kind GraphCache::kind_of(const Rules& rules, const GraphExtras& extras) {
  const ChainRequest& request = rules.request();
  Kind kind;
  kind.order = request.order;
  if (keeps_the_line(request.order) && !extras.all_measures) {
    const RunEnds ends = run_ends(rules.catalog(), request);
    kind.line_inches = ends.line_inches;
    kind.parts_its_ends = ends.keeps_metals_apart;
    kind.parting = parting_cause(rules.catalog(), request);
    if (kind.parting == PartingCause::between_the_ends)
      kind.parted_ends = std::minmax(request.from.type, request.to.type);
    kind.kinds_of_ends = std::minmax(ends.kinds.front(), ends.kinds.back());
  }
  kind.service = request.service;
  kind.dry = request.dry;
  kind.galvanic = request.galvanic;
  kind.closing = rules.closing();
  kind.special_order = request.special_order;
  kind.vacuum = request.vacuum;
  if (request.rating) kind.rating_pa = in_pascals(*request.rating);
  if (request.hottest) kind.hottest_k = in_kelvins(*request.hottest);
  if (request.smallest_bore) kind.smallest_bore_m = in_metres(*request.smallest_bore);
  if (request.room) kind.room_m = in_metres(*request.room);
  if (extras.all_measures || request.order == Order::loss) kind.flow_m3_s = in_cubic_metres_per_second(request.flow);
  kind.all_measures = extras.all_measures;
  kind.counts_bushings = extras.counts_bushings;
  return kind;
}

std::shared_ptr<const CachedGraph> GraphCache::graph_for(const FoldedCatalog& folded, const Rules& rules,
                                                         const GraphExtras& extras) const {
  const Kind kind = kind_of(rules, extras);
  const std::lock_guard lock(mutex_);
  if (graphs_.size() >= kMostGraphs && !graphs_.contains(kind)) graphs_.clear();
  std::shared_ptr<const CachedGraph>& known = graphs_[kind];
  if (known) return known;
  Kind any_ends = kind;
  any_ends.line_inches = 0.0;
  any_ends.kinds_of_ends = {};
  if (frames_.size() >= kMostFrames && !frames_.contains(any_ends)) frames_.clear();
  std::shared_ptr<const GraphFrame>& frame = frames_[any_ends];
  if (!frame) frame = std::make_shared<const GraphFrame>(folded, rules, extras);
  return known = std::make_shared<const CachedGraph>(PortGraph(frame, rules));
}

}  // namespace riserun::chain
