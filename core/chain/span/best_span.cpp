#include "chain/span/best_span.h"

#include "chain/search/best_chain.h"
#include "chain/search/bin_use.h"
#include "chain/span/cut_pieces.h"
#include "chain/span/taken_span.h"

#include <algorithm>
#include <deque>
#include <utility>

namespace riserun::chain {

namespace {

constexpr int kMostParts = 40;
const Length kLookAround = feet(2.0);
constexpr int kMostTries = 24;

/// The kinds of run in the order in which they are tried.
struct Attempt {
  SpanMake make;
  SpanTask::Kind kind;
  int cuts;
  int share_of_band;
};
constexpr Attempt kAttempts[] = {
    {SpanMake::stock_near, SpanTask::Kind::stock, 0, 2},  {SpanMake::stock, SpanTask::Kind::stock, 0, 1},
    {SpanMake::cut_pipe, SpanTask::Kind::cut_pipe, 1, 1}, {SpanMake::cut_pipe, SpanTask::Kind::cut_pipe, 2, 1},
    {SpanMake::hose, SpanTask::Kind::hose, 1, 1},
};

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
  task.share_of_band = attempt.share_of_band;
  return task;
}

/// What goes before the kind of run: narrowing and foreign threads, under the orders that look at them.
std::pair<std::int64_t, std::int64_t> off_the_line(Order order, const Cost& cost) {
  if (!keeps_the_line(order)) return {};
  return {cost.tuple[1], order == Order::bin ? cost.tuple[2] >> 32 : cost.tuple[2]};
}

std::optional<SpanChoice> best_attempt(const FoldedCatalog& folded, const Rules& rules, const PortGraph& graph,
                                       const SpanTask& task) {
  const Order order = rules.request().order;
  std::optional<SpanChoice> best;
  for (const Attempt& attempt : kAttempts) {
    if (attempt.cuts == 2 && task.aside == 0) continue;
    auto route = search_span(folded, rules, graph, task_of(task, attempt));
    if (!route || (best && off_the_line(order, best->route.cost) <= off_the_line(order, route->cost))) continue;
    best = SpanChoice{std::move(*route), attempt.make};
    if (off_the_line(order, best->route.cost) == std::pair<std::int64_t, std::int64_t>{}) break;
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

std::optional<SpanChoice> best_of_taken(const FoldedCatalog& folded, const ChainRequest& request, const Span& span) {
  const std::optional<ChainRequest> pinned = pinned_to_taken(folded, request);
  std::optional<SpanChoice> choice = pinned ? best_span(folded, *pinned, span) : std::nullopt;
  if (choice && !is_taken(choice->route.moves, *request.taken)) choice.reset();
  return choice;
}

}  // namespace

std::optional<SpanChoice> best_span(const FoldedCatalog& folded, const ChainRequest& asked, const Span& span) {
  if (asked.taken) return best_of_taken(folded, asked, span);
  const ChainRequest request = settled(asked);
  const Rules rules(folded.catalog(), request);
  SpanTask task = task_for(request, span);
  GraphExtras extras;
  extras.every_length = true;
  extras.counted.assign(request.bin.items.size(), false);
  while (true) {
    extras.wished = cut_moves(folded, rules, extras.counted, task.aside, most_room(folded, request, task));
    const PortGraph graph(folded, rules, extras);
    auto choice = best_attempt(folded, rules, graph, task);
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

NearestSpans nearest_spans(const FoldedCatalog& folded, const ChainRequest& asked, const Span& span) {
  const ChainRequest request = settled(asked);
  const Rules rules(folded.catalog(), request);
  Span widest = span;
  widest.along += kLookAround;
  SpanTask task = task_for(request, span);
  SpanTask widest_task = task_for(request, widest);
  task.most_bushings = widest_task.most_bushings = request.most_bushings;
  GraphExtras extras;
  extras.every_length = true;
  extras.counts_bushings = request.most_bushings.has_value();
  extras.counted.assign(request.bin.items.size(), false);
  std::deque<PortGraph> graphs;  // the last one counts all that was found to be scarce; the first bounds them all
  const auto make_graph = [&] {
    extras.wished = cut_moves(folded, rules, extras.counted, task.aside, most_room(folded, request, widest_task));
    graphs.emplace_back(folded, rules, extras);
  };
  make_graph();
  const auto lands = [&](const SpanTask& there) {
    while (true) {
      const auto choice = best_attempt(folded, rules, graphs.back(), there);
      if (!choice || !count_overdrawn(request, choice->route.moves, extras.counted)) return choice.has_value();
      make_graph();
    }
  };
  std::vector<SpanReach> kinds;
  for (const Attempt& attempt : kAttempts)
    if (attempt.share_of_band == 1 && (attempt.cuts < 2 || task.aside > 0))
      kinds.emplace_back(folded, rules, graphs.front(), task_of(widest_task, attempt));
  const auto toward = [&](std::int64_t step) -> std::optional<Length> {
    int tries = 0;
    for (std::int64_t along = task.along + step; std::abs(along - task.along) <= in_micrometres(kLookAround);
         along += step) {
      if (along <= 0) return std::nullopt;
      const auto may = [&](const SpanReach& kind) { return kind.may_land(along, std::abs(step)); };
      if (std::none_of(kinds.begin(), kinds.end(), may)) continue;
      SpanTask there = task;
      there.along = along;
      if (lands(there)) return as_length(along);
      if (++tries == kMostTries) return std::nullopt;
    }
    return std::nullopt;
  };
  const std::int64_t step = in_micrometres(inches(1.0 / 64.0));
  return {toward(-step), toward(step)};
}

}  // namespace riserun::chain
