#include "chain/span.h"

#include "chain/assemble.h"
#include "chain/best_route.h"
#include "chain/span_moves.h"
#include "chain/span_why.h"
#include "chain/why_none.h"

#include <algorithm>
#include <cmath>
#include <numbers>

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

std::int64_t most_room(const Network& network, const ChainRequest& request, const SpanTask& task) {
  std::int64_t deepest = 0;
  for (std::uint32_t row = 0; row < network.catalog().port_types().size(); ++row)
    deepest = std::max(deepest, network.insertion_micrometres({row}));
  const std::int64_t ends =
      network.insertion_micrometres(request.from.type) + network.insertion_micrometres(request.to.type);
  return std::max(task.along, 10 * task.aside) + ends + 2 * deepest;
}

}  // namespace

std::vector<int> span_uses_of_bin(const ChainRequest& request, const std::vector<Move>& moves) {
  std::vector<int> uses(request.bin.items.size(), 0);
  const auto use = [&](PartId part, int pieces) {
    for (std::size_t item = 0; item < uses.size(); ++item)
      if (request.bin.items[item].part == part) uses[item] += pieces;
  };
  for (const Move& move : moves) {
    if (!move.cut || move.own.buy == 0) use(move.part, move.pieces);
    for (const PartId plug : move.plugs) use(plug, 1);
  }
  return uses;
}

namespace {

// Marks as counted what of the bin the route takes too often; false: nothing.
bool count_overdrawn(const ChainRequest& request, const std::vector<Move>& moves, std::vector<bool>& counted) {
  const std::vector<int> uses = span_uses_of_bin(request, moves);
  bool overdrawn = false;
  for (std::size_t item = 0; item < uses.size(); ++item) {
    if (counted[item] || uses[item] <= request.bin.items[item].count) continue;
    counted[item] = true;
    overdrawn = true;
  }
  return overdrawn;
}

SpanTask task_of(SpanTask task, const Attempt& attempt) {
  task.kind = attempt.kind;
  task.cuts = attempt.cuts;
  task.share_of_band = attempt.share_of_band;
  return task;
}

std::optional<SpanChoice> best_attempt(const Network& network, const Rules& rules, const RequestGraph& graph,
                                       const SpanTask& task) {
  for (const Attempt& attempt : kAttempts) {
    if (attempt.cuts == 2 && task.aside == 0) continue;
    if (auto route = search_span(network, rules, graph, task_of(task, attempt)))
      return SpanChoice{std::move(*route), attempt.make};
  }
  return std::nullopt;
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

void add_piece(const Catalog& catalog, const ChainPart& link, std::size_t row, SpanFit& fit) {
  const catalog::Part& part = catalog.part(link.part);
  SpanPiece piece;
  piece.part = row;
  piece.cut = link.cut_length.has_value();
  piece.length = link.cut_length.value_or(body_length(catalog, part, link.enter, link.leave));
  piece.threads = piece.cut && part.threaded_when_cut ? 2 : 0;
  fit.pieces.push_back(piece);
}

// Centre to centre of the two bends.
Length travel_of(const std::vector<Move>& moves, const RunLengths& run) {
  const bool bends = std::any_of(moves.begin(), moves.end(), [](const Move& move) { return move.bend != 0; });
  return bends ? as_length(run.travel) : Length{};
}

SpanFit fit_of(const Catalog& catalog, const ChainRequest& request, const Span& span, const SpanChoice& choice,
               const Chain& chain) {
  const std::vector<Move>& moves = choice.route.moves;
  const RunLengths run = measure_run(catalog, request, moves);
  SpanFit fit;
  fit.wanted = span;
  fit.make = choice.make;
  fit.joints = static_cast<int>(chain.joints.size());
  fit.lands = as_length(run.lands());
  fit.lands_aside = as_length(run.lands_aside());
  fit.band = as_length(run.band());
  fit.band_aside = as_length(run.band_aside());
  const double across = std::cos(run.bend) * std::cos(run.bend);
  fit.likely_band = metres(std::sqrt(run.along_square + run.travel_square * across) * 1e-6);
  fit.bend_degrees = run.bend * 180.0 / std::numbers::pi;
  fit.travel = travel_of(moves, run);
  for (std::size_t row = 0; row < chain.parts.size(); ++row) add_piece(catalog, chain.parts[row], row, fit);
  if (choice.make != SpanMake::hose) return fit;
  fit.lands_aside = span.aside();
  for (const Move& move : moves)
    if (move.cut)
      fit.hose_radius = metres(
          hose_run(catalog, catalog.part(move.part), in_micrometres(span.aside())).radius(move.own.micrometres) * 1e-6);
  return fit;
}

// The end that moves takes up the rest: nothing has to fit.
Answer guided(const Network& network, const ChainRequest& request, const Span& span) {
  const std::optional<Route> route = best_route(network, request);
  if (!route) return why_none(network, request);
  Chain chain = assemble(network.catalog(), request, route->moves);
  SpanFit fit;
  fit.wanted = span;
  fit.make = SpanMake::moving_end;
  fit.joints = static_cast<int>(chain.joints.size());
  fit.lands = chain.length;
  fit.lands_aside = span.aside();
  fit.band = chain.length_tolerance;
  double square = 0.0;
  for (const ChainJoint& joint : chain.joints)
    square += in_metres(joint.make_up_tolerance) * in_metres(joint.make_up_tolerance);
  fit.likely_band = metres(std::sqrt(square));
  for (std::size_t row = 0; row < chain.parts.size(); ++row) add_piece(network.catalog(), chain.parts[row], row, fit);
  chain.span = std::move(fit);
  return chain;
}

}  // namespace

std::optional<SpanChoice> best_span(const Network& network, const ChainRequest& asked, const Span& span) {
  const ChainRequest request = settled(asked);
  const Rules rules(network.catalog(), request);
  SpanTask task = task_for(request, span);
  GraphExtras extras;
  extras.every_length = true;
  extras.counted.assign(request.bin.items.size(), false);
  while (true) {
    extras.wished = cut_moves(network, rules, extras.counted, task.aside, most_room(network, request, task));
    const RequestGraph graph(network, rules, extras);
    auto choice = best_attempt(network, rules, graph, task);
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

NearestSpans nearest_spans(const Network& network, const ChainRequest& asked, const Span& span) {
  const ChainRequest request = settled(asked);
  const Rules rules(network.catalog(), request);
  Span widest = span;
  widest.along += kLookAround;
  SpanTask task = task_for(request, span);
  SpanTask widest_task = task_for(request, widest);
  task.most_bushings = widest_task.most_bushings = request.most_bushings;
  GraphExtras extras;
  extras.every_length = true;
  extras.counts_bushings = request.most_bushings.has_value();
  extras.counted.assign(request.bin.items.size(), true);
  extras.wished = cut_moves(network, rules, extras.counted, task.aside, most_room(network, request, widest_task));
  const RequestGraph graph(network, rules, extras);
  std::vector<SpanReach> kinds;
  for (const Attempt& attempt : kAttempts)
    if (attempt.share_of_band == 1 && (attempt.cuts < 2 || task.aside > 0))
      kinds.emplace_back(network, rules, graph, task_of(widest_task, attempt));
  const auto toward = [&](std::int64_t step) -> std::optional<Length> {
    int tries = 0;
    for (std::int64_t along = task.along + step; std::abs(along - task.along) <= in_micrometres(kLookAround);
         along += step) {
      if (along <= 0) return std::nullopt;
      const auto may = [&](const SpanReach& kind) { return kind.may_land(along, std::abs(step)); };
      if (std::none_of(kinds.begin(), kinds.end(), may)) continue;
      SpanTask there = task;
      there.along = along;
      const auto choice = best_attempt(network, rules, graph, there);
      if (choice) return as_length(along);
      if (++tries == kMostTries) return std::nullopt;
    }
    return std::nullopt;
  };
  const std::int64_t step = in_micrometres(inches(1.0 / 64.0));
  return {toward(-step), toward(step)};
}

Answer find_span(const Network& network, const ChainRequest& request, const Span& span) {
  if (moves_along(request.from.freedom) || moves_along(request.to.freedom)) return guided(network, request, span);
  const std::optional<SpanChoice> choice = best_span(network, request, span);
  if (!choice) return why_no_span(network, request, span);
  Chain chain = assemble(network.catalog(), request, choice->route.moves);
  chain.span = fit_of(network.catalog(), request, span, *choice, chain);
  return chain;
}

}  // namespace riserun::chain
