// The graph that one request is searched in: open ends as nodes, admitted moves as arcs, and the same arcs turned
// round. What does not depend on the request's two ends is its frame, which graphs between other ends share; they are
// then made in O(arcs).
#pragma once

#include "chain/graph/graph_frame.h"
#include "chain/graph/transposed_graph.h"
#include "chain/part/run_ends.h"

#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace riserun::chain {

/// The joint onto the last port.
struct LastJoint {
  bool closes = false;
  Cost cost;
};

/// A node that the goal is one joint away from.
struct GoalJoint {
  std::uint32_t node = 0;
  LastJoint joint;
};

class PortGraph {
 public:
  /// Keeps nothing of the rules; the folded must outlive the graph.
  PortGraph(const FoldedCatalog& folded, const Rules& rules, const GraphExtras& extras)
      : PortGraph(std::make_shared<const GraphFrame>(folded, rules, extras), rules) {}
  /// @param frame  made for a request that may differ from that of the rules in its ends' types alone
  PortGraph(std::shared_ptr<const GraphFrame> frame, const Rules& rules);

  const std::vector<Node>& nodes() const { return frame_->nodes(); }
  const std::vector<Move>& moves() const { return frame_->moves(); }
  /// The rows of the moves that share the arc of this one: from it up to, and without, that.
  /// @pre some arc is the move's
  std::uint32_t alike_end(std::uint32_t move) const { return frame_->alike_end(move); }
  std::span<const Arc> arcs(std::uint32_t node) const { return rows().out_of(node); }
  const RowGraph<Arc>& rows() const { return passing_.empty() ? frame_->arcs() : arcs_; }
  const TransposedGraph& transposed() const { return transposed_; }
  /// Some move is counted against the bin.
  bool counts_the_bin() const { return frame_->counts_the_bin(); }
  /// The node that the move leaves at.
  std::uint32_t target(std::size_t move) const { return frame_->target(move); }
  /// Arcs out of an open end that need not be a node; its bore counts as not known.
  std::vector<Arc> arcs_from(const Rules& rules, const PortEnd& open) const;
  /// The joint between an open end and the goal; nullopt: they do not go together.
  std::optional<LastJoint> last_joint(const Rules& rules, const Node& open, const PortEnd& goal) const;
  /// The request's first port as a node: nothing has been put onto it.
  static Node start_of(const ChainRequest& request) {
    return {request.from.type, request.from.material.value_or(MaterialId{}), 0, false};
  }
  /// All nodes that go onto the goal.
  std::vector<GoalJoint> last_joints(const Rules& rules, const PortEnd& goal) const;
  /// Costs are the measures side by side, and no order.
  bool all_measures() const { return frame_->all_measures(); }

 private:
  void weigh_ports(const Rules& rules);
  Arc weighed(Arc arc, const std::vector<Cost>& entering) const;

  std::shared_ptr<const GraphFrame> frame_;
  std::vector<Cost> passing_;         // by port type, what it costs to pass; empty: nothing
  std::vector<Cost> passing_inside_;  // the same where a part of the run goes before it
  RowGraph<Arc> arcs_;                // by node; empty where passing costs nothing
  TransposedGraph transposed_;
};

}  // namespace riserun::chain
