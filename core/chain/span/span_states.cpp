#include "chain/span/span_states.h"

#include "chain/span/cut_pieces.h"

#include <algorithm>
#include <bit>
#include <tuple>

namespace riserun::chain {

namespace {

constexpr std::int32_t kRightAngle = 90000;
constexpr std::size_t kMostAngles = 100;

std::uint64_t packed(const Stage& stage) {
  return std::uint64_t{stage.node} << 32 | std::uint64_t{stage.progress.met} << 16 | std::uint64_t{stage.leg} << 8 |
         std::uint64_t{stage.cuts} << 1 | (stage.progress.closed ? 1u : 0u);
}

bool between_bends(const Stage& stage) { return stage.leg % 2 == 1; }

}  // namespace

SpanStates::SpanStates(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph, const SpanTask& task)
    : folded_(folded), rules_(rules), graph_(graph), task_(task), most_parts_(task.most_parts) {
  first_arcs_ = graph.arcs_from(rules, rules.request().from);
  unlike_arcs_.resize(graph.nodes().size() + 1);
  if (task.bends()) {
    for (const Move& move : graph.moves())
      if (move.bend > 0 && move.bend <= kRightAngle) bends_.push_back(move.bend);
    std::sort(bends_.begin(), bends_.end());
    bends_.erase(std::unique(bends_.begin(), bends_.end()), bends_.end());
    if (bends_.size() > kMostAngles) bends_.resize(kMostAngles);
  }
  for (const std::int32_t bend : bends_) angles_.push_back(bend * kRadiansOfThousandth);
  explore();
  measure_to_end();
  for (std::uint32_t row = 0; row < stages_.size(); ++row)
    if (from_start_[row] + to_end_[row] <= most_parts_) make_steps(row);
}

PortTypeId SpanStates::open_type(const Stage& stage) const {
  return stage.node < graph_.nodes().size() ? graph_.nodes()[stage.node].type : rules_.request().from.type;
}

// Make-up of the joint and what it may fall long or short.
std::pair<std::int64_t, std::int64_t> SpanStates::joint(PortTypeId open, PortTypeId other) const {
  const Catalog& catalog = folded_.catalog();
  for (const catalog::Mate& mate : catalog.mates(open)) {
    if (mate.other != other) continue;
    const catalog::MatingRule& rule = catalog.mating_rules()[mate.rule];
    return {folded_.make_up_micrometres(open, mate), in_micrometres(make_up_tolerance(catalog, open, other, rule))};
  }
  return {0, 0};
}

std::uint32_t SpanStates::row_of(const Stage& stage, int parts) {
  const auto [found, is_new] = known_.try_emplace(packed(stage), static_cast<std::uint32_t>(stages_.size()));
  if (is_new) {
    stages_.push_back(stage);
    steps_.emplace_back();
    ends_.push_back(end_of(stage));
    from_start_.push_back(parts);
  }
  from_start_[found->second] = std::min(from_start_[found->second], parts);
  return found->second;
}

// Level by level of parts, so that a stage's fewest parts are known when it is looked at.
void SpanStates::explore() {
  row_of({static_cast<std::uint32_t>(graph_.nodes().size()), at_the_start(rules_), 0, 0}, 0);
  bool ended = false;
  for (int parts = 0; parts <= most_parts_; ++parts) {
    for (std::uint32_t row = 0; row < stages_.size(); ++row) {
      if (from_start_[row] != parts) continue;
      if (ends_[row] && !ended) {
        ended = true;
        most_parts_ = std::min(most_parts_, parts + kMoreParts);
      }
      if (parts < most_parts_) link(row);
    }
  }
}

std::span<const Arc> SpanStates::all_arcs(std::uint32_t node) const {
  return node == graph_.nodes().size() ? std::span<const Arc>(first_arcs_) : graph_.arcs(node);
}

// Of arcs that lead to the same stage whatever the one before, one.
const std::vector<Arc>& SpanStates::unlike_arcs(std::uint32_t node) {
  std::optional<std::vector<Arc>>& known = unlike_arcs_[node];
  if (known) return *known;
  const auto key = [&](const Arc& arc) {
    const Move& move = graph_.moves()[arc.move];
    return std::tuple(arc.to, arc.closes, move.groups, move.only_for_need, move.cut, move.stub,
                      move.cut && !lets_in(move), move.bend, move.own.parts);
  };
  const std::span<const Arc> all = all_arcs(node);
  known.emplace(all.begin(), all.end());
  std::sort(known->begin(), known->end(), [&](const Arc& a, const Arc& b) { return key(a) < key(b); });
  known->erase(std::unique(known->begin(), known->end(), [&](const Arc& a, const Arc& b) { return key(a) == key(b); }),
               known->end());
  return *known;
}

void SpanStates::link(std::uint32_t row) {
  const Stage from = stages_[row];
  const int parts = from_start_[row];
  for (const Arc& arc : unlike_arcs(from.node)) {
    const int more = static_cast<int>(graph_.moves()[arc.move].own.parts);
    if (parts + more > most_parts_) continue;
    const std::optional<Stage> next = after(from, arc);
    if (!next) continue;
    const std::uint32_t to = row_of(*next, parts + more);
    back_links_.emplace_back(to, StepEdge{row, more});
  }
}

void SpanStates::make_steps(std::uint32_t row) {
  const Stage& from = stages_[row];
  const PortTypeId open = open_type(from);
  Measures of_spare;
  of_spare.other_kinds = 1;
  const Cost spare = cost_of(rules_.request().order, of_spare);
  for (const Arc& arc : all_arcs(from.node)) {
    const std::optional<Stage> next = after(from, arc);
    if (!next) continue;
    const auto to = known_.find(packed(*next));
    const Move& move = graph_.moves()[arc.move];
    SpanStep step;
    step.parts = static_cast<int>(move.own.parts);
    if (to == known_.end() || from_start_[row] + step.parts + to_end_[to->second] > most_parts_) continue;
    step.to = to->second;
    step.move = arc.move;
    step.cost = arc.cost;
    if (is_spare_union(from, *next, move)) step.cost = step.cost + spare;
    set_lengths(from, open, move, step);
    steps_[row].push_back(step);
  }
}

// The run closes without it, and no need asks for it: it is there for its length alone.
bool SpanStates::is_spare_union(const Stage& from, const Stage& next, const Move& move) const {
  return rules_.closing() == Closing::stays_still && from.progress.closed && next.progress.met == from.progress.met &&
         folded_.catalog().part(move.part).closing;
}

/// A piece to cut, or a stub, of what this kind of run cuts.
bool SpanStates::lets_in(const Move& cut) const {
  const catalog::Part& part = folded_.catalog().part(cut.part);
  switch (task_.kind) {
    case SpanTask::Kind::stock:
      return false;
    case SpanTask::Kind::cut_tube:
      return !fills_by_bending(folded_.catalog(), part) && part.cut_to_length;
    case SpanTask::Kind::cut_pipe:
      return !fills_by_bending(folded_.catalog(), part);
    case SpanTask::Kind::made_up_hose:
      return is_made_up_hose(folded_.catalog(), part);
    case SpanTask::Kind::hose:
      return part.flexible && part.cut_to_length && !is_line_of_an_end(folded_.catalog(), rules_.request(), part);
    case SpanTask::Kind::own_hose:
      return part.flexible && is_line_of_an_end(folded_.catalog(), rules_.request(), part);
  }
  return false;
}

std::optional<Stage> SpanStates::after(const Stage& stage, const Arc& arc) const {
  const Move& move = graph_.moves()[arc.move];
  Stage next = stage;
  next.node = arc.to;
  const std::optional<Progress> progress = chain::after(rules_, stage.progress, arc);
  if (!progress) return std::nullopt;
  next.progress = *progress;
  if (move.cut && !lets_in(move)) return std::nullopt;
  if (move.cut && !move.stub) {
    const std::uint8_t here = between_bends(stage) ? 2 : 1;
    if (stage.cuts & here || std::popcount(stage.cuts) >= task_.cuts) return std::nullopt;
    next.cuts = stage.cuts | here;
  }
  const std::optional<std::uint8_t> leg = leg_after(stage, move);
  if (!leg) return std::nullopt;
  next.leg = *leg;
  return next;
}

std::optional<std::uint8_t> SpanStates::leg_after(const Stage& stage, const Move& move) const {
  if (move.bend == 0) return stage.leg;
  const auto bend = std::lower_bound(bends_.begin(), bends_.end(), move.bend);
  if (bend == bends_.end() || *bend != move.bend) return std::nullopt;
  const auto first = static_cast<std::uint8_t>(2 * (bend - bends_.begin()) + 1);
  if (stage.leg == 0) return first;
  if (stage.leg == first) return static_cast<std::uint8_t>(first + 1);
  return std::nullopt;
}

void SpanStates::set_lengths(const Stage& from, PortTypeId open, const Move& move, SpanStep& step) const {
  const auto [make_up, tolerance] = joint(open, move.enter_type);
  greatest_tolerance_ = std::max(greatest_tolerance_, tolerance);
  const std::int64_t to_part = folded_.insertion_micrometres(open) - make_up;
  const std::int64_t shift = folded_.insertion_micrometres(move.leave_type);
  const bool travels = between_bends(from);
  std::int64_t& here = travels ? step.travel : step.along;
  (travels ? step.travel_tolerance : step.along_tolerance) = tolerance;
  if (move.bend == 0) {
    here = to_part + move.own.micrometres - shift;
    return;
  }
  here = to_part + move.before_bend;
  (travels ? step.along : step.travel) = move.after_bend - shift;
}

std::optional<SpanEnd> SpanStates::end_of(const Stage& stage) const {
  if (!rules_.satisfied(stage.progress.met) || std::popcount(stage.cuts) != task_.cuts) return std::nullopt;
  if (task_.bends() ? stage.leg == 0 || between_bends(stage) : stage.leg != 0) return std::nullopt;
  const PortEnd& goal = rules_.request().to;
  const bool at_start = stage.node == graph_.nodes().size();
  const PortTypeId open = open_type(stage);
  const auto last =
      graph_.last_joint(rules_, at_start ? PortGraph::start_of(rules_.request()) : graph_.nodes()[stage.node], goal);
  if (!last || !(stage.progress.closed || last->closes)) return std::nullopt;
  const auto [make_up, tolerance] = joint(open, goal.type);
  greatest_tolerance_ = std::max(greatest_tolerance_, tolerance);
  const std::int64_t length = folded_.insertion_micrometres(open) + folded_.insertion_micrometres(goal.type) - make_up;
  return SpanEnd{length, tolerance, last->cost};
}

void SpanStates::measure_to_end() {
  const RowGraph<StepEdge> back(static_cast<std::uint32_t>(stages_.size()), [&](auto emit) {
    for (const auto& [to, link] : back_links_) emit(to, link);
  });
  std::vector<std::uint32_t> ends;
  for (std::uint32_t row = 0; row < stages_.size(); ++row)
    if (ends_[row]) ends.push_back(row);
  to_end_ = fewest_steps(back, ends);
}

}  // namespace riserun::chain
