// The stages of a run that makes a distance: what a search must remember of its beginning besides how long it is, and
// the steps between them. A run along offset axes goes straight, turns once by some angle, travels, and turns back.
// Lengths are micrometres. At worst nodes x sets of needs x 2 x (2 * angles + 1) x 4 stages, of which those that lie on
// some run of few enough parts are looked at.
#pragma once

#include "chain/graph/port_graph.h"
#include "chain/search/potentials.h"

#include <cstdint>
#include <numbers>
#include <optional>
#include <span>
#include <unordered_map>
#include <vector>

namespace riserun::chain {

inline constexpr double kRadiansOfThousandth = std::numbers::pi / 180000.0;  // of a thousandth of a degree

/// What is looked for in one search.
struct SpanTask {
  enum class Kind : std::uint8_t { stock, cut_tube, cut_pipe, made_up_hose, hose, own_hose };
  Kind kind = Kind::stock;
  int cuts =
      0;  // pieces to cut, stubs not counted: 0 for stock, 1 for a hose; of pipe and tube at most one on each axis
  int quarters_of_band = 4;  // what stock must land within
  std::int64_t along = 0;    // micrometres between the faces
  std::int64_t aside = 0;    // micrometres between the axes; 0: in line
  std::optional<int> most_bushings{};
  int most_parts = 0;  // plugs included; and no more than kMoreParts beyond the fewest, at any length

  /// No run narrows more (narrowing_of); none: that is not looked at.
  std::optional<std::int64_t> most_narrowing{};

  bool bends() const { return aside > 0 && kind != Kind::hose && kind != Kind::made_up_hose && kind != Kind::own_hose; }
};

/// A run may take that many parts more than the fewest that make one of its kind at any length: another piece, and the
/// coupling that it takes.
inline constexpr int kMoreParts = 2;

struct Stage {
  std::uint32_t node = 0;  // of the graph; then the start
  Progress progress;
  std::uint8_t leg = 0;   // 0 before the first bend; 2a + 1 between bends of angle a; 2a + 2 after the second
  std::uint8_t cuts = 0;  // bit 0: a piece is cut along the axes, bit 1: one between the bends
  bool operator==(const Stage&) const = default;
};

/// Lengths are shifted by what goes in at open ends, as those of the graph are, so that none is negative.
struct SpanStep {
  std::uint32_t to = 0;                                    // row of stages
  std::uint32_t move = 0;                                  // row of the graph's moves
  std::int64_t along = 0, travel = 0;                      // micrometres
  std::int64_t along_tolerance = 0, travel_tolerance = 0;  // plus or minus
  int parts = 0;
  Cost cost;
};

/// The joint onto the last port.
struct SpanEnd {
  std::int64_t along = 0, along_tolerance = 0;
  Cost cost;
};

class SpanStates {
 public:
  SpanStates(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph, const SpanTask& task);

  /// Stages that runs of up to most_parts() lead through; row 0 is the start. Those that lead to no end have no steps.
  std::size_t size() const { return stages_.size(); }
  const Stage& stage(std::size_t row) const { return stages_[row]; }
  const std::vector<SpanStep>& steps(std::size_t row) const { return steps_[row]; }
  const std::optional<SpanEnd>& end(std::size_t row) const { return ends_[row]; }
  /// Fewest parts from the start to there, and from there to an end.
  int parts_from_start(std::size_t row) const { return from_start_[row]; }
  int parts_to_end(std::size_t row) const { return to_end_[row]; }
  /// Radians by which the bends of that leg turn.
  double bend(std::uint8_t leg) const { return angles_[static_cast<std::size_t>(leg - 1) / 2]; }
  const std::vector<double>& angles() const { return angles_; }
  std::int64_t greatest_tolerance() const { return greatest_tolerance_; }
  /// As asked, and no more than kMoreParts beyond the fewest. The bin counts as without end here.
  int most_parts() const { return most_parts_; }

 private:
  void explore();
  void link(std::uint32_t row);
  void make_steps(std::uint32_t row);
  const std::vector<Arc>& unlike_arcs(std::uint32_t node);
  std::span<const Arc> all_arcs(std::uint32_t node) const;
  bool lets_in(const Move& cut) const;
  bool is_spare_union(const Stage& from, const Stage& next, const Move& move) const;
  std::optional<Stage> after(const Stage& stage, const Arc& arc) const;
  std::optional<std::uint8_t> leg_after(const Stage& stage, const Move& move) const;
  void set_lengths(const Stage& from, PortTypeId open, const Move& move, SpanStep& step) const;
  std::uint32_t row_of(const Stage& stage, int parts);
  std::optional<SpanEnd> end_of(const Stage& stage) const;
  void measure_to_end();
  std::pair<std::int64_t, std::int64_t> joint(PortTypeId open, PortTypeId other) const;
  PortTypeId open_type(const Stage& stage) const;

  const FoldedCatalog& folded_;
  const Rules& rules_;
  const PortGraph& graph_;
  const SpanTask& task_;
  int most_parts_ = 0;
  std::vector<Arc> first_arcs_;
  std::vector<std::optional<std::vector<Arc>>> unlike_arcs_;    // by node and for the start
  std::vector<std::pair<std::uint32_t, StepEdge>> back_links_;  // steps without their length, turned round
  std::vector<std::int32_t> bends_;                             // thousandths of a degree
  std::vector<double> angles_;
  std::unordered_map<std::uint64_t, std::uint32_t> known_;
  std::vector<Stage> stages_;
  std::vector<std::vector<SpanStep>> steps_;
  std::vector<std::optional<SpanEnd>> ends_;
  std::vector<int> from_start_, to_end_;
  mutable std::int64_t greatest_tolerance_ = 0;
};

}  // namespace riserun::chain
