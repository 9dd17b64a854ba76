#include "chain/build/span_run.h"

#include "chain/build/assemble.h"
#include "chain/build/line_kept.h"
#include "chain/search/best_chain.h"
#include "chain/span/best_span.h"
#include "chain/span/bow.h"
#include "chain/span/cut_pieces.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::chain {

namespace {

void add_piece(const Catalog& catalog, const RunPart& link, std::size_t row, SpanFit& fit) {
  const catalog::Part& part = catalog.part(link.part);
  SpanPiece piece;
  piece.part = row;
  piece.cut = link.cut_length.has_value();
  piece.length = link.cut_length.value_or(body_length(catalog, part, link.enter, link.leave()));
  piece.threads = piece.cut && part.threaded_when_cut ? 2 : 0;
  fit.pieces.push_back(piece);
}

// Centre to centre of the two bends.
Length travel_of(const std::vector<Move>& moves, const RunLengths& run) {
  const bool bends = std::any_of(moves.begin(), moves.end(), [](const Move& move) { return move.bend != 0; });
  return bends ? from_micrometres(run.travel) : Length{};
}

SpanFit fit_of(const Catalog& catalog, const ChainRequest& request, const Span& span, const SpanChoice& choice,
               const Chain& chain) {
  const std::vector<Move>& moves = choice.route.moves;
  const RunLengths run = measure_run(catalog, request, moves);
  SpanFit fit;
  fit.wanted = span;
  fit.make = choice.make;
  fit.joints = static_cast<int>(chain.joints.size());
  fit.lands = from_micrometres(run.lands());
  fit.lands_aside = from_micrometres(run.lands_aside());
  fit.band = from_micrometres(run.band());
  fit.band_aside = from_micrometres(run.band_aside());
  const double across = std::cos(run.bend) * std::cos(run.bend);
  fit.likely_band = metres(std::sqrt(run.along_square + run.travel_square * across) * 1e-6);
  const bool is_stock = choice.make == SpanMake::stock_near || choice.make == SpanMake::stock;
  const auto is_near = [](Length miss, Length band) { return 2.0 * std::abs(in_metres(miss)) <= in_metres(band); };
  if (is_stock)
    fit.make = is_near(fit.miss(), fit.band) && is_near(fit.miss_aside(), fit.band_aside) ? SpanMake::stock_near
                                                                                          : SpanMake::stock;
  fit.bend_degrees = run.bend * 180.0 / std::numbers::pi;
  fit.travel = travel_of(moves, run);
  for (std::size_t row = 0; row < chain.parts.size(); ++row) add_piece(catalog, chain.parts[row], row, fit);
  if (choice.make != SpanMake::hose) return fit;
  fit.lands_aside = span.aside();
  for (const Move& move : moves) {
    if (!move.cut || move.stub) continue;
    const catalog::Part& hose = catalog.part(move.part);
    const double radius = is_made_up_hose(catalog, hose)
                              ? least_radius(catalog, hose)
                              : hose_run(catalog, hose, in_micrometres(span.aside())).radius(move.own.micrometres);
    fit.hose_radius = metres(radius * 1e-6);
  }
  return fit;
}

// The end that moves takes up the rest: nothing has to fit.
SpanFit fit_of_guide(const Catalog& catalog, const Span& span, const Chain& chain) {
  SpanFit fit;
  fit.wanted = span;
  fit.make = SpanMake::moving_end;
  fit.joints = static_cast<int>(chain.joints.size());
  fit.lands = chain.length;
  fit.lands_aside = span.aside();
  fit.band = chain.length_tolerance;
  double square = 0.0;
  for (const RunJoint& joint : chain.joints)
    square += in_metres(joint.make_up_tolerance) * in_metres(joint.make_up_tolerance);
  fit.likely_band = metres(std::sqrt(square));
  for (std::size_t row = 0; row < chain.parts.size(); ++row) add_piece(catalog, chain.parts[row], row, fit);
  return fit;
}

/// It holds hose or tube, which is cut or bought to its length whichever that is.
bool is_cut_anyway(const Catalog& catalog, const std::vector<Move>& moves) {
  return std::any_of(moves.begin(), moves.end(),
                     [&](const Move& move) { return has_no_one_length(catalog, catalog.part(move.part)); });
}

/// By all that counts along a run. The price of what is cut goes with its length.
bool no_dearer(Order order, const SpanChoice& fitting, const Route& route) {
  return keeps_the_line(order) && fitting.route.cost <= route.cost;
}

}  // namespace

std::optional<Chain> span_run(const FoldedCatalog& folded, const ChainRequest& request, const Span& span) {
  const Catalog& catalog = folded.catalog();
  if (moves_along(request.from.freedom) || moves_along(request.to.freedom)) {
    const std::optional<Route> route = best_chain(folded, request);
    if (!route) return std::nullopt;
    if (is_cut_anyway(catalog, route->moves)) {
      std::optional<SpanChoice> fitting = best_span(folded, request, span);
      if (fitting && no_dearer(request.order, *fitting, *route)) return span_run(folded, request, span, *fitting);
    }
    Chain chain = assemble(catalog, request, route->moves);
    chain.span = fit_of_guide(catalog, span, chain);
    return chain;
  }
  const std::optional<SpanChoice> choice = best_span(folded, request, span);
  return choice ? std::optional(span_run(folded, request, span, *choice)) : std::nullopt;
}

Chain span_run(const FoldedCatalog& folded, const ChainRequest& request, const Span& span, const SpanChoice& choice) {
  const Catalog& catalog = folded.catalog();
  Chain chain = assemble(catalog, request, choice.route.moves);
  chain.span = fit_of(catalog, request, span, choice, chain);
  // That nothing of the ends' own kinds makes the distance is not proved: a run of so many parts more was not looked
  // at.
  if (keeps_the_line(request.order)) chain.kept = line_kept(catalog, request, chain, false);
  return chain;
}

}  // namespace riserun::chain
