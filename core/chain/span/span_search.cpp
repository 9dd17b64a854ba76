#include "chain/span/span_search.h"

#include "chain/search/best_of_equal.h"
#include "chain/search/tight_arcs.h"
#include "chain/span/cut_pieces.h"

#include <algorithm>
#include <cmath>
#include <queue>

namespace riserun::chain {

namespace {

/// All that tells two beginnings of runs apart.
struct LabelKey {
  std::uint32_t stage = 0;
  std::int32_t parts = 0;
  std::int64_t along = 0, travel = 0;
  std::int64_t along_tolerance = 0, travel_tolerance = 0;
  std::uint32_t along_cut = kNoRow, travel_cut = kNoRow;  // moves
  std::uint64_t spent = 0;                                // of the bin
  std::int32_t bushings = 0;                              // told apart only under a limit
  bool operator==(const LabelKey&) const = default;
};

struct LabelHash {
  std::size_t operator()(const LabelKey& key) const {  // not noexcept: the map then keeps it
    std::uint64_t mix = 0;
    const auto add = [&mix](std::uint64_t value) {
      mix = (mix ^ value) * 0x9E3779B97F4A7C15u;
      mix ^= mix >> 32;
    };
    add(std::uint64_t{key.stage} << 16 ^ static_cast<std::uint64_t>(key.parts));
    add(static_cast<std::uint64_t>(key.along));
    add(static_cast<std::uint64_t>(key.travel));
    add(static_cast<std::uint64_t>(key.along_tolerance) << 32 ^ static_cast<std::uint64_t>(key.travel_tolerance));
    add(std::uint64_t{key.along_cut} << 32 ^ key.travel_cut);
    add(key.spent);
    add(static_cast<std::uint64_t>(key.bushings));
    return static_cast<std::size_t>(mix);
  }
};

struct Label {
  LabelKey key;
  Cost cost;
  std::int64_t off = 0;         // of the run that ends here
  std::int64_t off_weight = 0;  // the same in cents
  bool settled = false;
};

constexpr std::int64_t kMicrometresPerCent = 64;

// Rows of the labels: where all runs end, and where they start.
constexpr std::uint32_t kGoal = 0;
constexpr std::uint32_t kStart = 1;

/// An end of a run: how it lands, and what its cut pieces must grow by.
struct Landing {
  Cost cost;
  std::int64_t off = 0, off_weight = 0;
  std::int64_t along_growth = 0, travel_growth = 0;
};

// What a run is off weighs beside its price as a quarter of a dollar for each 1/16 in too long, and twice that too
// short: a taper joint can be tightened further and is never backed off (common practice; the figure is ours).
std::int64_t weight_of_miss(std::int64_t micrometres) {
  return std::max(micrometres, -2 * micrometres) / kMicrometresPerCent;
}

std::int64_t insertion_of_both_ends(const FoldedCatalog& folded, const ChainRequest& request) {
  return folded.insertion_micrometres(request.from.type) + folded.insertion_micrometres(request.to.type);
}

// Beyond that no length is asked about: the travel of the flattest bend is the longest.
std::int64_t longest(const SpanStates& steps, const SpanTask& task, std::int64_t both_ends) {
  double travel = 0.0;
  for (const double bend : steps.angles())
    travel = std::max(travel, static_cast<double>(task.aside) / std::max(0.01, std::sin(bend)));
  return std::max(task.along, static_cast<std::int64_t>(travel)) + both_ends +
         std::int64_t{2} * (steps.most_parts() + 1) * steps.greatest_tolerance();
}

class SpanRun {
 public:
  SpanRun(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph, const SpanTask& task,
          const SpanStates& steps, const SpanBounds& bounds)
      : folded_(folded),
        rules_(rules),
        graph_(graph),
        task_(task),
        digits_(rules.request().bin, graph.moves()),
        steps_(steps),
        both_ends_(insertion_of_both_ends(folded, rules.request())),
        bounds_(bounds) {}

  std::optional<SpanRoute> best(const std::optional<Cost>& dearest);
  /// Any run at all, whatever it costs.
  /// @param labels_left  how many labels may still be made; what is not found by then is not found
  std::optional<std::vector<Move>> any(std::size_t& labels_left);

 private:
  std::int64_t room_to_grow(std::uint32_t cut) const { return cut == kNoRow ? 0 : graph_.moves()[cut].stretch; }
  bool may_land(const LabelKey& key) const;
  bool may_land_at(const LabelKey& key, double bend) const;
  bool narrows_too_much(const Cost& cost) const;
  Cost narrowing_alone(const Cost& cost) const;
  void expand(std::uint32_t label);
  void reach(const LabelKey& key, const Cost& cost, std::uint32_t from, std::uint32_t move);
  void end(std::uint32_t label);
  std::optional<Landing> landing(const Label& label, const SpanEnd& end) const;
  bool is_within(std::int64_t miss, std::int64_t band) const;
  std::int64_t head_of_growth(std::uint32_t cut, std::int64_t growth) const;
  SpanRoute best_of_tied() const;
  void settle(std::vector<Move>& moves) const;

  const FoldedCatalog& folded_;
  const Rules& rules_;
  const PortGraph& graph_;
  const SpanTask& task_;
  const BinDigits digits_;
  const SpanStates& steps_;
  const std::int64_t both_ends_;  // by how much shifted lengths are more than real ones
  const SpanBounds& bounds_;
  bool costs_count_ = true;
  std::vector<Label> labels_;
  TightArcs tight_;
  std::unordered_map<LabelKey, std::uint32_t, LabelHash> known_;
  using Entry = std::pair<Cost, std::uint32_t>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open_;
  std::optional<std::pair<Cost, std::int64_t>> best_;
  std::optional<Cost> dearest_;  // that a run may be; the best so far once there is one
};

std::optional<SpanRoute> SpanRun::best(const std::optional<Cost>& dearest) {
  if (steps_.parts_to_end(0) > steps_.most_parts()) return std::nullopt;
  dearest_ = dearest;
  labels_.assign(kStart, {});
  reach({}, {}, kNoRow, kNoRow);
  while (!open_.empty()) {
    const auto [estimate, label] = open_.top();
    if (best_ && estimate > best_->first) break;
    open_.pop();
    if (labels_[label].settled) continue;
    labels_[label].settled = true;
    expand(label);
  }
  if (!best_) return std::nullopt;
  return best_of_tied();
}

std::optional<std::vector<Move>> SpanRun::any(std::size_t& labels_left) {
  if (steps_.parts_to_end(0) > steps_.most_parts()) return std::nullopt;
  costs_count_ = false;
  labels_.assign(kStart, {});
  reach({}, {}, kNoRow, kNoRow);
  while (!open_.empty() && !best_ && labels_.size() <= labels_left) {
    const std::uint32_t label = open_.top().second;
    open_.pop();
    expand(label);
  }
  labels_left -= std::min(labels_left, labels_.size());
  if (!best_) return std::nullopt;
  return tight_.first_by_ids(folded_, graph_.moves(), kStart, kGoal);
}

bool SpanRun::may_land(const LabelKey& key) const {
  if (steps_.parts_to_end(key.stage) + key.parts > steps_.most_parts()) return false;
  const std::uint8_t leg = steps_.stage(key.stage).leg;
  if (!task_.bends()) return may_land_at(key, 0.0);
  if (leg > 0) return may_land_at(key, steps_.bend(leg));
  return std::any_of(steps_.angles().begin(), steps_.angles().end(),
                     [&](double bend) { return may_land_at(key, bend); });
}

bool SpanRun::may_land_at(const LabelKey& key, double bend) const {
  const int parts = steps_.most_parts() - key.parts;
  std::int64_t aside_along = 0;  // what the travel makes along the axes
  std::int64_t rounding = 2;
  if (bend > 0.0) {
    const double sine = std::sin(bend);
    const double travel = static_cast<double>(task_.aside) / sine;
    rounding += static_cast<std::int64_t>(1.0 / sine);
    const std::int64_t room = bounds_.room_of_travel(key.travel_tolerance) + rounding;
    const std::int64_t rest = static_cast<std::int64_t>(travel) - key.travel;
    if (!bounds_.may_add_travel(key.stage, parts, rest - room - room_to_grow(key.travel_cut), rest + room))
      return false;
    aside_along = static_cast<std::int64_t>(travel * std::cos(bend));
  }
  const std::int64_t room = bounds_.room_along(key.along_tolerance, key.travel_tolerance) + 2 * rounding;
  const std::int64_t rest = task_.along + both_ends_ - aside_along - key.along;
  return bounds_.may_add_along(key.stage, parts, rest - room - room_to_grow(key.along_cut), rest + room);
}

// More than the best chain does that need not make the distance.
bool SpanRun::narrows_too_much(const Cost& cost) const {
  return task_.most_narrowing && narrowing_of(rules_.request().order, cost) > *task_.most_narrowing;
}

// Of a cost what the task limits; of what shares its place with it, nothing.
Cost SpanRun::narrowing_alone(const Cost& cost) const {
  if (!task_.most_narrowing) return {};
  Measures measures;
  measures.narrowing = narrowing_of(rules_.request().order, cost);
  return cost_of(rules_.request().order, measures);
}

void SpanRun::expand(std::uint32_t label) {
  end(label);
  const LabelKey from = labels_[label].key;
  const Cost cost = labels_[label].cost;
  for (const SpanStep& step : steps_.steps(from.stage)) {
    const Move& move = graph_.moves()[step.move];
    LabelKey key = from;
    key.parts += step.parts;
    if (key.parts + steps_.parts_to_end(step.to) > steps_.most_parts()) continue;
    if (!digits_.spend(key.spent, move)) continue;
    if (task_.most_bushings && move.bushing && ++key.bushings > *task_.most_bushings) continue;
    key.stage = step.to;
    key.along += step.along;
    key.travel += step.travel;
    key.along_tolerance += step.along_tolerance;
    key.travel_tolerance += step.travel_tolerance;
    if (move.cut && !move.stub) (steps_.stage(from.stage).leg % 2 == 1 ? key.travel_cut : key.along_cut) = step.move;
    reach(key, costs_count_ ? cost + step.cost : narrowing_alone(cost + step.cost), label, step.move);
  }
}

void SpanRun::reach(const LabelKey& key, const Cost& cost, std::uint32_t from, std::uint32_t move) {
  const Cost least = cost + bounds_.cost(key.stage);
  if ((dearest_ && least > *dearest_) || narrows_too_much(least)) return;
  // Most cannot land, and are met once: that is told before they are looked for.
  if (!may_land(key)) return;
  const auto [known, is_new] = known_.try_emplace(key, static_cast<std::uint32_t>(labels_.size()));
  const std::uint32_t row = known->second;
  if (is_new) {
    labels_.push_back({key, cost, 0, 0, false});
    open_.push({cost + bounds_.cost(key.stage), row});
  }
  Label& label = labels_[row];
  if (cost < label.cost) {
    label.cost = cost;
    tight_.forget(row);
    open_.push({cost + bounds_.cost(key.stage), row});
  }
  if (cost == label.cost && from != kNoRow) tight_.add(from, move, row);
}

std::int64_t SpanRun::head_of_growth(std::uint32_t cut, std::int64_t growth) const {
  if (cut == kNoRow || rules_.request().order != Order::loss) return 0;
  const Move& move = graph_.moves()[cut];
  if (is_made_up_hose(folded_.catalog(), folded_.catalog().part(move.part))) return 0;
  const std::int64_t length = piece_length(folded_.catalog(), move, task_.aside, move.own.micrometres + growth);
  return head_when_cut(folded_.catalog(), move, length, rules_.request().flow) - move.own.nanometres;
}

// Stock that is to land near may fall short by less: what has to be backed off is tried again, what is too long is
// tightened further.
bool SpanRun::is_within(std::int64_t miss, std::int64_t band) const {
  const bool is_short = miss < 0 && task_.quarters_of_band < 4;
  return 4 * std::abs(miss) <= (is_short ? task_.quarters_of_band - 1 : task_.quarters_of_band) * band;
}

std::optional<Landing> SpanRun::landing(const Label& label, const SpanEnd& end) const {
  const LabelKey& key = label.key;
  const std::uint8_t leg = steps_.stage(key.stage).leg;
  RunLengths run{key.along + end.along - both_ends_,
                 key.travel,
                 key.along_tolerance + end.along_tolerance,
                 key.travel_tolerance,
                 0.0,
                 0.0,
                 leg > 0 ? steps_.bend(leg) : 0.0};
  const std::int64_t aside = task_.bends() ? task_.aside : 0;
  Landing landing;
  if (key.travel_cut != kNoRow) {
    landing.travel_growth = std::llround(static_cast<double>(aside) / std::sin(run.bend)) - run.travel;
    if (landing.travel_growth < 0 || landing.travel_growth > room_to_grow(key.travel_cut)) return std::nullopt;
    run.travel += landing.travel_growth;
  } else if (!is_within(run.lands_aside() - aside, run.band_aside())) {
    return std::nullopt;
  }
  if (key.along_cut != kNoRow) {
    landing.along_growth = task_.along - run.lands();
    if (landing.along_growth < 0 || landing.along_growth > room_to_grow(key.along_cut)) return std::nullopt;
    run.along += landing.along_growth;
  } else if (!is_within(run.lands() - task_.along, run.band())) {
    return std::nullopt;
  }
  const std::int64_t off_along = run.lands() - task_.along;
  const std::int64_t off_aside = run.lands_aside() - aside;
  landing.off = std::abs(off_along) + std::abs(off_aside);
  landing.off_weight = weight_of_miss(off_along) + weight_of_miss(off_aside);
  Measures growth;
  growth.nanometres =
      head_of_growth(key.along_cut, landing.along_growth) + head_of_growth(key.travel_cut, landing.travel_growth);
  landing.cost = label.cost + end.cost + cost_of(rules_.request().order, growth);
  return landing;
}

void SpanRun::end(std::uint32_t row) {
  Label& label = labels_[row];
  const std::optional<SpanEnd>& end = steps_.end(label.key.stage);
  if (!end) return;
  const std::optional<Landing> landed = landing(label, *end);
  if (!landed || narrows_too_much(landed->cost)) return;
  label.off = landed->off;
  label.off_weight = landed->off_weight;
  // Where material counts, how near a run lands is looked at among those that tie.
  const std::pair found(landed->cost, keeps_the_line(rules_.request().order) ? 0 : landed->off);
  if ((dearest_ && landed->cost > *dearest_) || (best_ && found > *best_)) return;
  if (!best_ || found < *best_) tight_.forget(kGoal);
  best_ = found;
  dearest_ = landed->cost;
  tight_.add(row, kNoRow, kGoal);
}

SpanRoute SpanRun::best_of_tied() const {
  SpanRoute route;
  route.cost = best_->first;
  if (keeps_the_line(rules_.request().order)) {
    const auto onward = tight_.turned_round(kGoal);
    EqualChains equal(folded_, graph_.moves(), end_metals(folded_.catalog(), rules_.request()));
    equal.gather(kStart, [&](std::uint32_t label, auto arc, auto end) {
      for (const TightArcs::Onward& next : onward[label]) {
        if (next.move == kNoRow) end(Rest{{0, labels_[label].off_weight, 0, 0, labels_[label].off}});
        if (next.move == kNoRow) continue;
        for (std::uint32_t move = next.move; move < graph_.alike_end(next.move); ++move) arc(move, next.to);
      }
    });
    BestOfEqual best = equal.best();
    route.moves = std::move(best.moves);
    route.rest = best.rest;
    route.off = std::exchange(route.rest.tuple[kOffPlace], 0);
  } else {
    route.moves = tight_.first_by_ids(folded_, graph_.moves(), kStart, kGoal);
    route.off = best_->second;
  }
  settle(route.moves);
  return route;
}

// Gives the pieces to cut, and the hose, the room that is left over: the one between the bends first.
void SpanRun::settle(std::vector<Move>& moves) const {
  RunLengths run = measure_run(folded_.catalog(), rules_.request(), moves);
  const auto grow = [&](bool between_bends, std::int64_t growth) {
    int bends = 0;
    for (Move& move : moves) {
      bends += move.bend != 0 ? 1 : 0;
      if (!move.cut || move.stub || (bends % 2 == 1) != between_bends) continue;
      move.own.micrometres += growth;
      (between_bends ? run.travel : run.along) += growth;
    }
  };
  if (task_.bends()) grow(true, std::llround(static_cast<double>(task_.aside) / std::sin(run.bend)) - run.travel);
  grow(false, task_.along - run.lands());
  for (Move& move : moves) {
    if (!move.cut) continue;
    move.stretch = 0;
    if (!is_made_up_hose(folded_.catalog(), folded_.catalog().part(move.part)))
      move.cut_micrometres = piece_length(folded_.catalog(), move, task_.aside, move.own.micrometres);
  }
}

}  // namespace

SpanReach::SpanReach(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph, const SpanTask& task)
    : folded_(folded),
      rules_(rules),
      graph_(graph),
      task_(task),
      both_ends_(insertion_of_both_ends(folded, rules.request())),
      steps_(folded, rules, graph, task_),
      bounds_(steps_, graph, task_, longest(steps_, task_, both_ends_)) {}

std::optional<std::vector<Move>> SpanReach::lands(std::int64_t along, std::size_t& labels_left) const {
  SpanTask there = task_;
  there.along = along;
  return SpanRun(folded_, rules_, graph_, there, steps_, bounds_).any(labels_left);
}

std::optional<SpanRoute> search_span(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph,
                                     const SpanTask& task, const std::optional<Cost>& dearest) {
  const SpanStates steps(folded, rules, graph, task);
  const SpanBounds bounds(steps, graph, task, longest(steps, task, insertion_of_both_ends(folded, rules.request())));
  return SpanRun(folded, rules, graph, task, steps, bounds).best(dearest);
}

}  // namespace riserun::chain
