// Graphs of requests without needs, bin or bans of their own, kept with their distances: a catalog is asked the same
// kind of question over and over between other ends.
#pragma once

#include "chain/graph.h"

#include <map>
#include <memory>
#include <mutex>

namespace riserun::chain {

/// A graph and the distances to the goals that have been asked for. Safe to share between threads.
class KeptGraph {
 public:
  explicit KeptGraph(RequestGraph graph) : graph_(std::move(graph)) {}
  const RequestGraph& graph() const { return graph_; }
  std::shared_ptr<const std::vector<Cost>> distances_to(const Rules& rules, const PortEnd& goal) const;

 private:
  RequestGraph graph_;
  mutable std::mutex mutex_;
  mutable std::map<std::pair<PortTypeId, MaterialId>, std::shared_ptr<const std::vector<Cost>>> distances_;
};

class GraphStore {
 public:
  /// The request differs from others of its kind in its two ends only.
  static bool is_plain(const ChainRequest& request);
  /// @param extras  of which all_measures and counts_bushings count
  /// @pre is_plain of the rules' request
  std::shared_ptr<const KeptGraph> graph_for(const Network& network, const Rules& rules,
                                             const GraphExtras& extras) const;

 private:
  using Key =
      std::tuple<Order, Service, double, Galvanic, bool, double, double, Closing, bool, double, bool, double, bool>;
  static Key key_of(const Rules& rules, const GraphExtras& extras);
  mutable std::mutex mutex_;
  mutable std::map<Key, std::shared_ptr<const KeptGraph>> graphs_;
};

}  // namespace riserun::chain
