// Graphs of requests without needs, bin or bans of their own, kept with their distances: a catalog is asked the same
// kind of question over and over between other ends. One graph a kind of request, and of each the distances to every
// goal that was asked for: never given up, as a shop asks few kinds of question.
#pragma once

#include "chain/graph/port_graph.h"
#include "chain/part/move.h"

#include <map>
#include <memory>
#include <mutex>

namespace riserun::chain {

/// A graph and the distances to the goals that have been asked for. Safe to share between threads.
class CachedGraph {
 public:
  explicit CachedGraph(PortGraph graph) : graph_(std::move(graph)) {}
  const PortGraph& graph() const { return graph_; }
  std::shared_ptr<const std::vector<Cost>> distances_to(const Rules& rules, const PortEnd& goal) const;

 private:
  PortGraph graph_;
  mutable std::mutex mutex_;
  mutable std::map<std::pair<PortTypeId, MaterialId>, std::shared_ptr<const std::vector<Cost>>> distances_;
};

class GraphCache {
 public:
  /// The request differs from others of its kind in its two ends only.
  static bool is_plain(const ChainRequest& request);
  /// @param extras  of which all_measures and counts_bushings count
  /// @pre is_plain of the rules' request
  std::shared_ptr<const CachedGraph> graph_for(const FoldedCatalog& folded, const Rules& rules,
                                               const GraphExtras& extras) const;

 private:
  /// All that a graph of a plain request depends on beside the catalog. A new rule of ChainRequest belongs here.
  struct Kind {
    Order order = Order::line;
    double line_inches = 0.0;  // of the ends, where the order looks at them
    std::pair<catalog::KindId, catalog::KindId> kinds_of_ends{};
    Service service = Service::water;
    bool dry = false;
    Galvanic galvanic = Galvanic::warn;
    bool parts_its_ends = false;
    PartingCause parting = PartingCause::none;        // by which a dielectric part is weighed
    std::pair<PortTypeId, PortTypeId> parted_ends{};  // where that looks at their types
    Closing closing = Closing::none;
    bool special_order = false;
    bool vacuum = false;
    std::optional<double> rating_pa;
    std::optional<double> hottest_k;
    std::optional<double> smallest_bore_m;
    std::optional<double> room_m;
    std::optional<double> flow_m3_s;  // where the head lost is weighed
    bool all_measures = false;
    bool counts_bushings = false;
    auto operator<=>(const Kind&) const = default;
  };
  static Kind kind_of(const Rules& rules, const GraphExtras& extras);
  mutable std::mutex mutex_;
  mutable std::map<Kind, std::shared_ptr<const CachedGraph>> graphs_;
  mutable std::map<Kind, std::shared_ptr<const GraphFrame>> frames_;  // ends left out of their kinds
};

/// A catalog made ready to be searched: folded, with the graphs that plain requests share. Safe to share between
/// threads.
class PreparedCatalog {
 public:
  /// Keeps a reference: the catalog must outlive this.
  explicit PreparedCatalog(const Catalog& catalog) : folded_(catalog) {}

  const Catalog& catalog() const { return folded_.catalog(); }
  const FoldedCatalog& folded() const { return folded_; }
  const GraphCache& graphs() const { return graphs_; }

 private:
  FoldedCatalog folded_;
  GraphCache graphs_;
};

}  // namespace riserun::chain
