// The graph that one request is searched in: open ends as nodes, admitted moves as arcs, and the same arcs turned
// round. Lengths are micrometres, bores and heads nanometres, prices cents. Made in O(parts + arcs * log(arcs)); on the
// shipped catalog some 200 nodes and 1,500 arcs, by bore twice the nodes and four times the arcs.
//
// Under the orders line and bin the keys after the number of parts are no sums along a chain: of each kind of move
// there is the best in every material, and those that differ in nothing before these keys stand side by side and share
// one arc, that of the first.
#pragma once

#include "chain/graph/arc.h"
#include "chain/graph/folded_catalog.h"
#include "chain/graph/graph_extras.h"
#include "chain/graph/joint.h"
#include "chain/graph/row_graph.h"
#include "chain/graph/transposed_graph.h"
#include "chain/part/run_ends.h"
#include "chain/rules/rules.h"

#include <optional>
#include <span>
#include <vector>

namespace riserun::chain {

/// An open end that a chain can be left at. Material and bore are told apart only where a rule or the order looks.
struct Node {
  PortTypeId type;
  MaterialId material;
  std::int64_t bore = 0;  // nanometres; 0: not told apart, or not known
  bool no_grip = false;   // the body cannot be held, so that only what is turned goes onto it
  auto operator<=>(const Node&) const = default;
  OpenEnd open_end() const { return {type, material, no_grip}; }
};

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
  PortGraph(const FoldedCatalog& folded, const Rules& rules, const GraphExtras& extras);

  const std::vector<Node>& nodes() const { return nodes_; }
  const std::vector<Move>& moves() const { return moves_; }
  /// The rows of the moves that share the arc of this one: from it up to, and without, that.
  /// @pre some arc is the move's
  std::uint32_t alike_end(std::uint32_t move) const {
    return alike_end_.empty() ? move + 1 : alike_end_[move];
  }
  std::span<const Arc> arcs(std::uint32_t node) const { return arcs_.out_of(node); }
  const RowGraph<Arc>& rows() const { return arcs_; }
  const TransposedGraph& transposed() const { return transposed_; }
  /// Some move is counted against the bin.
  bool counts_the_bin() const { return counts_the_bin_; }
  /// The node that the move leaves at.
  std::uint32_t target(std::size_t move) const { return move_to_[move]; }
  /// Moves that are entered by a port of that type.
  std::span<const std::uint32_t> moves_entering(PortTypeId type) const {
    return std::span(entering_).subspan(first_entering_[type.row],
                                        first_entering_[type.row + 1] - first_entering_[type.row]);
  }
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
  bool all_measures() const { return all_measures_; }

 private:
  void add_folded(const WayClasses& classes, const Rules& rules, const GraphExtras& extras);
  void add_each_length(std::span<const Way> ways, const Rules& rules, const GraphExtras& extras);
  void add_undominated(std::span<const Way> ways, const Rules& rules, const GraphExtras& extras);
  Cost cost(const Rules& rules, const Measures& measures) const {
    return all_measures_ ? side_by_side(measures) : cost_of(rules.request().order, measures);
  }
  void find_alike(const Rules& rules, const GraphExtras& extras);
  void weigh_ports(const Rules& rules);
  void make_nodes(const Rules& rules);
  void make_arcs(const Rules& rules);
  std::vector<std::uint32_t> alike_but_for_bore() const;
  std::optional<Arc> arc(const Rules& rules, const Node& open, const catalog::Mate& mate, std::uint32_t move,
                         std::int64_t change_of_bore_head) const;

  const FoldedCatalog* folded_;
  bool all_measures_ = false;
  bool counts_the_bin_ = false;
  std::vector<Move> moves_;
  std::vector<std::uint32_t> alike_end_;       // by move, of the first of its like; empty: none are alike
  std::vector<Cost> passing_;                  // by port type, what it costs to pass; empty: nothing
  std::vector<std::uint32_t> move_to_;         // node that each move leaves at
  std::vector<std::uint32_t> first_entering_;  // by port type: first row in `entering_`, and the end
  std::vector<std::uint32_t> entering_;        // moves by the port type that they are entered by
  std::vector<Node> nodes_;
  RowGraph<Arc> arcs_;  // by node
  TransposedGraph transposed_;
};

}  // namespace riserun::chain
