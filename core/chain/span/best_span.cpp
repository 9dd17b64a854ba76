#include "chain/span/best_span.h"

#include "chain/search/best_chain.h"
#include "chain/search/bin_use.h"
#include "chain/search/tie_key.h"
#include "chain/span/cut_pieces.h"
#include "chain/span/taken_span.h"

#include <algorithm>
#include <array>
#include <tuple>
#include <utility>

namespace riserun::chain {

namespace {

constexpr int kMostParts = 40;
const Length kLookAround = feet(2.0);
// That a store stocks (common practice); beyond it pipe is sold by the foot.
const Length kLongestNipple = inches(12.0);
constexpr std::size_t kMostLabels = 200'000;  // beginnings of runs, each way

/// The kinds of run in the order in which they are tried. Under the orders line and bin those of a lower place come
/// first whatever their cost.
struct Attempt {
  SpanMake make;
  SpanTask::Kind kind;
  int cuts;
  int quarters_of_band;
  int place;
  /// Parts that it weighs as beside its own: each pair of threads to cut, and joints that must fall the same way.
  int trouble;
};
constexpr int kLast = 1000;
constexpr Attempt kAttempts[] = {
    {SpanMake::cut_pipe, SpanTask::Kind::cut_tube, 1, 4, 0, 0},
    {SpanMake::cut_pipe, SpanTask::Kind::cut_tube, 2, 4, 0, 0},
    {SpanMake::stock_near, SpanTask::Kind::stock, 0, 3, 0, 0},
    {SpanMake::stock, SpanTask::Kind::stock, 0, 4, 1, 2},
    {SpanMake::cut_pipe, SpanTask::Kind::cut_pipe, 1, 4, 2, 1},
    {SpanMake::cut_pipe, SpanTask::Kind::cut_pipe, 2, 4, 2, 2},
    {SpanMake::hose, SpanTask::Kind::made_up_hose, 1, 4, 3, kLast},
    {SpanMake::hose, SpanTask::Kind::hose, 1, 4, 3, kLast},
    {SpanMake::hose, SpanTask::Kind::own_hose, 1, 4, 0, 0},
};
constexpr int kPlaceOfCutPipe = 2;
/// The most parts that a run of each kind may take.
using PartLimits = std::array<int, std::size(kAttempts)>;

std::int64_t most_room(const FoldedCatalog& folded, const ChainRequest& request, const SpanTask& task) {
  std::int64_t deepest = 0;
  for (std::uint32_t row = 0; row < folded.catalog().port_types().size(); ++row)
    deepest = std::max(deepest, folded.insertion_micrometres({row}));
  const std::int64_t ends =
      folded.insertion_micrometres(request.from.type) + folded.insertion_micrometres(request.to.type);
  return std::max(task.along, 10 * task.aside) + ends + 2 * deepest;
}

SpanTask task_of(SpanTask task, const Attempt& attempt) {
  task.kind = attempt.kind;
  task.cuts = attempt.cuts;
  task.quarters_of_band = attempt.quarters_of_band;
  return task;
}

/// What decides before the kind of run: narrowing, foreign threads and, under the order line, what is of other kinds.
using OffTheLine = std::array<std::int64_t, 3>;

OffTheLine off_the_line(Order order, const Cost& cost) {
  if (order == Order::line) return {cost.tuple[1], cost.tuple[2], cost.tuple[3] >> 32};
  // Of the bin's order narrowing and threads alone: what is to buy comes behind them.
  if (order == Order::bin) return {cost.tuple[1], cost.tuple[2] >> 32, 0};
  return {};
}

/// Under the order line, size changes, then parts with the trouble of that kind of run.
std::array<std::int64_t, 2> weighed_parts(Order order, const SpanChoice& choice) {
  if (order != Order::line) return {};
  const Cost& cost = choice.route.cost;
  return {cost.tuple[3] & 0xFFFFFFFF, cost.tuple[4] + kAttempts[choice.kind].trouble};
}

/// Ports of other kinds and size changes.
std::int64_t strays(const Cost& cost) { return cost.tuple[3]; }

/// Everything that ids do not decide. A second thread is cut only where one piece strays more.
auto rank(Order order, const SpanChoice& choice) {
  const SpanRoute& route = choice.route;
  const bool cuts_threads = choice.before_cost == kPlaceOfCutPipe;
  return std::tuple(off_the_line(order, route.cost), choice.leaves_its_line, weighed_parts(order, choice),
                    choice.before_cost, cuts_threads ? strays(route.cost) : 0, cuts_threads ? choice.kind : 0,
                    route.cost, route.rest, choice.kind, route.off);
}

int before_cost(Order order, const Attempt& attempt) { return keeps_the_line(order) ? attempt.place : 0; }

/// What the run's ends are of, where a fitter does not leave it for pipe over such a distance.
struct LineOfEnds {
  bool tube = false;  // rigid
  bool hose = false;  // or what else comes off a reel

  bool is_left_by(const Attempt& attempt) const {
    if (attempt.kind == SpanTask::Kind::cut_tube && tube) return false;
    if (attempt.kind == SpanTask::Kind::own_hose && hose) return false;
    return tube || hose;
  }
};

LineOfEnds line_of_ends(const Catalog& catalog, const ChainRequest& request, const SpanTask& task) {
  LineOfEnds line;
  if (request.order != Order::line || task.along <= in_micrometres(kLongestNipple)) return line;
  for (const catalog::Part& part : catalog.parts()) {
    line.tube = line.tube || is_tube_of_an_end(catalog, request, part);
    line.hose = line.hose || is_line_of_an_end(catalog, request, part);
  }
  return line;
}

/// The most parts that a run of that kind may have to be better than the best so far; 0: none can be.
/// @param leaves_its_line  as SpanChoice has it
int most_parts_to_beat(Order order, const Attempt& attempt, bool leaves_its_line, const SpanChoice& best) {
  if (!keeps_the_line(order) || off_the_line(order, best.route.cost) != OffTheLine{}) return kMostParts;
  if (leaves_its_line != best.leaves_its_line) return leaves_its_line ? 0 : kMostParts;
  const int place = before_cost(order, attempt);
  if (order == Order::line) {
    const auto [size_changes, weighed] = weighed_parts(order, best);
    if (size_changes > 0) return kMostParts;
    return std::max(0, static_cast<int>(weighed) - attempt.trouble - (place > best.before_cost ? 1 : 0));
  }
  if (place != best.before_cost) return place < best.before_cost ? kMostParts : 0;
  return place != kPlaceOfCutPipe || strays(best.route.cost) > 0 ? kMostParts : 0;
}

/// What narrows the line in the best chain of the request, which need not make the distance: a run that makes it
/// narrows it no more. A person who chose the run has it as it is.
std::optional<std::int64_t> most_narrowing(const FoldedCatalog& folded, const ChainRequest& request) {
  if (!keeps_the_line(request.order) || request.taken || request.may_narrow) return std::nullopt;
  const std::optional<Route> route = best_chain(folded, request);
  return route ? std::optional(narrowing_of(request.order, route->cost)) : std::nullopt;
}

std::optional<SpanChoice> best_attempt(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph,
                                       SpanTask task, const PartLimits& limits) {
  const Order order = rules.request().order;
  const int most_parts = task.most_parts;
  const LineOfEnds line = line_of_ends(folded.catalog(), rules.request(), task);
  std::optional<SpanChoice> best;
  for (std::size_t next = 0; next < limits.size(); ++next) {
    // Where no kind goes before another the hose is first: it is found at once, and what costs more need not be found.
    const std::size_t row = keeps_the_line(order) ? next : limits.size() - 1 - next;
    const Attempt& attempt = kAttempts[row];
    if (attempt.cuts == 2 && task.aside == 0) continue;
    task.most_parts = std::min(most_parts, limits[row]);
    const bool leaves_its_line = line.is_left_by(attempt);
    if (best) {
      const int most_to_beat = most_parts_to_beat(order, attempt, leaves_its_line, *best);
      if (most_to_beat <= 0) continue;
      task.most_parts = std::min(task.most_parts, most_to_beat);
    }
    std::optional<Cost> dearest;
    if (best && !keeps_the_line(order)) dearest = best->route.cost;
    auto route = search_span(folded, rules, graph, task_of(task, attempt), dearest);
    if (!route) continue;
    SpanChoice found{std::move(*route), attempt.make, static_cast<int>(row), before_cost(order, attempt),
                     leaves_its_line};
    if (!best || rank(order, found) < rank(order, *best)) best = std::move(found);
  }
  return best;
}

ChainRequest settled(ChainRequest request) {
  if (request.order == Order::length) request.order = Order::parts;
  return request;
}

SpanTask task_for(const ChainRequest& request, const Span& span) {
  SpanTask task;
  task.along = in_micrometres(span.along);
  task.aside = in_micrometres(span.aside());
  task.most_parts = std::min(request.most_parts.value_or(kMostParts), kMostParts);
  return task;
}

Length as_length(std::int64_t micrometres) { return metres(static_cast<double>(micrometres) * 1e-6); }

/// Whether runs land at a distance, whatever they cost.
class Landings {
 public:
  /// @param around  how much longer than the span a distance may be that will be asked about
  /// @param most_labels  how many beginnings of runs are looked at in all
  Landings(const FoldedCatalog& folded, ChainRequest request, const Span& span, Length around, std::size_t most_labels)
      : folded_(folded),
        request_(std::move(request)),
        rules_(folded.catalog(), request_),
        task_(task_for(request_, span)),
        labels_left_(most_labels) {
    task_.along += in_micrometres(around);
    task_.most_bushings = request_.most_bushings;
    task_.most_narrowing = most_narrowing(folded, request_);
    extras_.every_length = true;
    extras_.counts_bushings = request_.most_bushings.has_value();
    extras_.counted.assign(request_.bin.items.size(), false);
    look_again();
  }

  /// nullopt: not known when so many labels had been made.
  std::optional<bool> lands(std::int64_t along);
  std::size_t labels_left() const { return labels_left_; }
  void set_labels_left(std::size_t labels) { labels_left_ = labels; }

 private:
  void look_again();
  const SpanReach& kind(std::size_t row);

  const FoldedCatalog& folded_;
  const ChainRequest request_;
  const Rules rules_;
  SpanTask task_;  // with the longest distance
  GraphExtras extras_;
  std::optional<PortGraph> graph_;  // counts all that was found to be scarce
  std::array<std::optional<SpanReach>, std::size(kAttempts)> kinds_;
  std::size_t labels_left_;
};

void Landings::look_again() {
  extras_.wished =
      cut_moves(folded_, rules_, rules_, extras_.counted, task_.aside, most_room(folded_, request_, task_));
  for (std::optional<SpanReach>& kind : kinds_) kind.reset();
  graph_.emplace(folded_, rules_, extras_);
}

// Made when it is asked for: most runs that land are found before all kinds are looked at.
const SpanReach& Landings::kind(std::size_t row) {
  if (!kinds_[row]) kinds_[row].emplace(folded_, rules_, *graph_, task_of(task_, kAttempts[row]));
  return *kinds_[row];
}

std::optional<bool> Landings::lands(std::int64_t along) {
  for (std::size_t left = std::size(kAttempts); left > 0 && labels_left_ > 0;) {  // a hose is looked for quickest
    const Attempt& attempt = kAttempts[--left];
    if (attempt.quarters_of_band < 4 || (attempt.cuts == 2 && task_.aside == 0)) continue;
    const auto moves = kind(left).lands(along, labels_left_);
    if (!moves) continue;
    if (!count_overdrawn(request_, *moves, extras_.counted)) return true;
    look_again();
    left = std::size(kAttempts);
  }
  return labels_left_ > 0 ? std::optional(false) : std::nullopt;
}

std::optional<Length> nearest_toward(Landings& landings, const Span& span, Length step) {
  landings.set_labels_left(kMostLabels);
  const std::int64_t asked = in_micrometres(span.along);
  const std::int64_t by = in_micrometres(step);
  for (std::int64_t along = asked + by; along > 0 && std::abs(along - asked) <= in_micrometres(kLookAround);
       along += by) {
    const std::optional<bool> lands = landings.lands(along);
    if (!lands) return std::nullopt;
    if (*lands) return as_length(along);
  }
  return std::nullopt;
}

/// Of a request whose run nobody has chosen: so many parts that a kind of run may take.
PartLimits limits_of(const FoldedCatalog& folded, const ChainRequest& request, const Span& span) {
  const Rules rules(folded.catalog(), request);
  const SpanTask task = task_for(request, span);
  GraphExtras extras;
  extras.every_length = true;
  extras.counted.assign(request.bin.items.size(), false);
  extras.wished = cut_moves(folded, rules, rules, extras.counted, task.aside, most_room(folded, request, task));
  const PortGraph graph(folded, rules, extras);
  PartLimits limits{};
  for (std::size_t row = 0; row < limits.size(); ++row) {
    const SpanTask kind = task_of(task, kAttempts[row]);
    limits[row] = SpanStates(folded, rules, graph, kind).most_parts();
  }
  return limits;
}

std::optional<SpanChoice> best_within(const FoldedCatalog& folded, const ChainRequest& request,
                                      const ChainRequest& asked, const Span& span, const PartLimits& limits) {
  const Rules rules(folded.catalog(), request);
  const Rules rules_asked(folded.catalog(), asked);
  SpanTask task = task_for(request, span);
  task.most_narrowing = most_narrowing(folded, asked.taken ? asked : request);
  GraphExtras extras;
  extras.every_length = true;
  extras.counted.assign(request.bin.items.size(), false);
  while (true) {
    extras.wished = cut_moves(folded, rules, rules_asked, extras.counted, task.aside, most_room(folded, request, task));
    const PortGraph graph(folded, rules, extras);
    auto choice = best_attempt(folded, rules, graph, task, limits);
    if (!choice) return choice;
    const bool too_many_bushings =
        !task.most_bushings && request.most_bushings && bushing_count(choice->route.moves) > *request.most_bushings;
    if (too_many_bushings) {
      task.most_bushings = request.most_bushings;
      extras.counts_bushings = true;
    } else if (!count_overdrawn(request, choice->route.moves, extras.counted)) {
      return choice;
    }
  }
}

PartLimits no_limits() {
  PartLimits limits{};
  limits.fill(kMostParts);
  return limits;
}

// Among so few parts a kind of run may take more of them than where all others are let in, too: what the request itself
// would not have looked at comes only where nothing else does.
std::optional<SpanChoice> best_of_taken(const FoldedCatalog& folded, const ChainRequest& request, const Span& span) {
  const std::optional<ChainRequest> pinned = pinned_to_taken(folded, request);
  if (!pinned) return std::nullopt;
  std::optional<SpanChoice> choice = best_within(folded, *pinned, request, span, no_limits());
  if (choice && part_count(choice->route.moves) > kMoreParts) {
    ChainRequest free = request;
    free.taken.reset();
    auto usual = best_within(folded, *pinned, request, span, limits_of(folded, free, span));
    if (usual) choice = std::move(usual);
  }
  if (choice && !is_taken(choice->route.moves, *request.taken)) choice.reset();
  return choice;
}

}  // namespace

bool comes_before(const FoldedCatalog& folded, Order order, const SpanChoice& a, const SpanChoice& b) {
  const auto of_a = rank(order, a);
  const auto of_b = rank(order, b);
  if (of_a < of_b || of_b < of_a) return of_a < of_b;
  return tie_key(folded, a.route.moves) < tie_key(folded, b.route.moves);
}

std::optional<SpanChoice> best_span(const FoldedCatalog& folded, const ChainRequest& asked, const Span& span) {
  const ChainRequest request = settled(asked);
  return request.taken ? best_of_taken(folded, request, span)
                       : best_within(folded, request, request, span, no_limits());
}

NearestSpans nearest_spans(const FoldedCatalog& folded, const ChainRequest& asked, const Span& span) {
  Landings landings(folded, settled(asked), span, kLookAround, kMostLabels);
  const Length step = inches(1.0 / 64.0);
  NearestSpans nearest;
  nearest.below = nearest_toward(landings, span, -step);
  nearest.above = nearest_toward(landings, span, step);
  return nearest;
}

std::optional<bool> makes_span(const FoldedCatalog& folded, const ChainRequest& request, const Span& span,
                               std::size_t& labels_left) {
  Landings landings(folded, settled(request), span, Length{}, labels_left);
  const std::optional<bool> lands = landings.lands(in_micrometres(span.along));
  labels_left = landings.labels_left();
  return lands;
}

}  // namespace riserun::chain
