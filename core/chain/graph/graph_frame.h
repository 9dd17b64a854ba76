// What the graph of a request is whatever its two ends are: the admitted moves, the open ends that they leave, and the
// arcs between them. Lengths are micrometres, bores and heads nanometres, prices cents. Made in O(parts + arcs *
// log(arcs)); on the shipped catalog some 200 nodes and 1,500 arcs, by bore twice the nodes and four times the arcs.
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
  Bow bow = Bow::none;    // of the piece that was left
  auto operator<=>(const Node&) const = default;
  OpenEnd open_end() const { return {type, material, no_grip, bow}; }
};

class GraphFrame {
 public:
  /// Keeps nothing of the rules; the folded must outlive it.
  GraphFrame(const FoldedCatalog& folded, const Rules& rules, const GraphExtras& extras);

  const FoldedCatalog& folded() const { return *folded_; }
  const std::vector<Node>& nodes() const { return nodes_; }
  const std::vector<Move>& moves() const { return moves_; }
  /// The rows of the moves that share the arc of this one: from it up to, and without, that.
  /// @pre some arc is the move's
  std::uint32_t alike_end(std::uint32_t move) const { return alike_end_.empty() ? move + 1 : alike_end_[move]; }
  /// By node, without what it costs to pass ports.
  const RowGraph<Arc>& arcs() const { return arcs_; }
  /// The same of one move, put onto an open end.
  std::optional<Arc> arc(const Rules& rules, const Node& open, const catalog::Mate& mate, std::uint32_t move,
                         std::int64_t change_of_bore_head) const;
  /// Some move is counted against the bin.
  bool counts_the_bin() const { return counts_the_bin_; }
  /// Costs are the measures side by side, and no order.
  bool all_measures() const { return all_measures_; }
  Cost cost(const Rules& rules, const Measures& measures) const {
    return all_measures_ ? side_by_side(measures) : cost_of(rules.request().order, measures);
  }
  /// The node that the move leaves at.
  std::uint32_t target(std::size_t move) const { return move_to_[move]; }
  /// Moves that are entered by a port of that type; of those alike the first.
  std::span<const std::uint32_t> moves_entering(PortTypeId type) const {
    return std::span(entering_).subspan(first_entering_[type.row],
                                        first_entering_[type.row + 1] - first_entering_[type.row]);
  }
  /// By node: nodes with the same number differ in their bore alone; empty where bores are not told apart for the sake
  /// of one measure of several.
  std::vector<std::uint32_t> alike_but_for_bore() const;

 private:
  void add_folded(const WayClasses& classes, const Rules& rules, const GraphExtras& extras);
  void add_each_length(std::span<const Way> ways, const Rules& rules, const GraphExtras& extras);
  void add_undominated(std::span<const Way> ways, const Rules& rules, const GraphExtras& extras);
  void find_alike(const Rules& rules, const GraphExtras& extras);
  void make_nodes(const Rules& rules);
  void make_arcs(const Rules& rules);

  const FoldedCatalog* folded_;
  bool all_measures_ = false;
  bool counts_the_bin_ = false;
  std::vector<Move> moves_;
  std::vector<std::uint32_t> alike_end_;       // by move, of the first of its like; empty: none are alike
  std::vector<std::uint32_t> move_to_;         // node that each move leaves at
  std::vector<std::uint32_t> first_entering_;  // by port type: first row in `entering_`, and the end
  std::vector<std::uint32_t> entering_;        // moves by the port type that they are entered by
  std::vector<Node> nodes_;
  RowGraph<Arc> arcs_;  // by node
};

}  // namespace riserun::chain
