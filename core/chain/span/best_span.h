// Chains that make a given distance between two ports that stand still: with stock pieces, with a piece of pipe cut to
// measure, or with a hose.
//
// The two ports look at each other along parallel axes. A run in line is straight throughout. Between axes that are
// offset it turns once, travels, and turns back by the same angle (two 90s, two 45s ...), in the plane of both axes;
// a rolling offset is an offset in that plane. A hose takes the offset by bending and needs no elbows.
//
// The rule of choice, first to last. Under the orders line and bin what narrows the line least goes before all of it,
// then what has the fewest foreign threads: a hose of the line's size is no worse than a stock piece of garden hose. A
// run that narrows more than the best chain between the two ports at any distance is none (unless the request may
// narrow): a fitter moves a port before he necks a line down for an inch. Under the order line then what takes the
// least of other kinds: pipe is cut before a dielectric union makes a length; where neither end moves along, a union
// that no need asks for counts as one such port behind what closes the run already. Then, over more than the longest
// nipple that a store stocks, a line goes on in what it ends in: a hose in hose, tube in tube, whatever pipe would save
// (common practice). Then the fewest size changes, then the fewest parts, a piece to be cut and threaded counting as
// one more (a second as one again), and stock that only just lands as two: pipe is cut before two couplings make up a
// length, and before a turn is left out of every joint.
//   1. stock pieces that land within three quarters of the band that the joints' tolerances leave (where they fall
//   short within half of it: a taper joint can be tightened further and is never backed off), or rigid tube cut to
//   measure (one piece, with an offset also two): whichever the order finds better, and tube where it finds them equal,
//   as a saw is all that tube takes (common practice);
//   2. stock pieces that land within the whole band: nearly all joints must then fall the same way;
//   3. one piece of pipe or tube cut to measure, then, with an offset, two: at most one on the ports' axes and one
//      between the elbows (one alone makes any length up to the stick that it is cut from); stock that has to make a
//      length beside it lands within the band. Two pieces come before one where they take less of other kinds and fewer
//      size changes, if the order looks at these. Rigid tube, of which no stock lengths are sold, may stand anywhere
//      else as a stub, cut as short as its two joints let it be: so elbows and unions are joined in one material. So
//      may threaded pipe where the request lets in no nipple (a straight piece of stock between the same two ports);
//   4. a hose that comes with its ends on, longer than its gap, others beside it lying straight; or a hose cut to
//   measure. Hose or air tube of the kind of one of the two ends goes with the rigid tube in 1: there the line bends
//   already, and neither it nor PEX counts as something of another kind (common practice).
// Runs of one kind may take kMoreParts parts more than the fewest of that kind at any length, the bin taken to be
// without end for that count, and no more. Among them the request's order decides, fewest bushings and close nipples
// included, what a run is off weighing beside its price (span_search.cpp); then the run that lands nearest (what it is
// off along and aside, added up); then the usual rule: the part
// ids that sort first, then the ports used, then the piece to cut, no stub,
// nearest to the first port; last, the fewest to buy. Under the orders parts, price and loss no kind comes before
// another but where they tie: the fewest parts and the lowest price are what was asked for. The distance settles the
// length, so that the order `length` weighs as `parts` does.
//
// How it works: the kinds of run are tried in that order, each by search_span, as long as one that is still to come
// may be better than the best so far; under the orders parts, price and loss the other way round, each up to the cost
// of the best so far.
// The bin is taken to be without end and bushings without limit; where the answer breaks a count, that one is told
// apart and all is tried again, as best_chain does.
//
// Lengths are whole micrometres; a piece to cut makes the distance to the micrometre, the joints at their nominal
// make-up.
#pragma once

#include "chain/ask/answer.h"
#include "chain/graph/folded_catalog.h"
#include "chain/span/span_search.h"

#include <optional>

namespace riserun::chain {

/// The best run, and what makes its distance.
struct SpanChoice {
  SpanRoute route;
  SpanMake make = SpanMake::stock;
  int kind = 0;  // as they are tried
  /// What comes before the order's cost in the choice between kinds; less is better.
  int before_cost = 0;
  /// An end is tube or hose, the distance is long, and the run does not go on in that.
  bool leaves_its_line = false;
};

/// By the rule above `a` is the better run of two of one request, or of requests that differ in the order of needs
/// alone.
bool comes_before(const FoldedCatalog& folded, Order order, const SpanChoice& a, const SpanChoice& b);

/// Provably the best by the rule above; nullopt: none makes the distance. Takes both ends to stand still along their
/// axes, whatever else they can do. Where a person has chosen the run (ChainRequest::taken), the best that its parts
/// can do in their order, as a kind of run that may have so many parts where nothing is chosen, if they make one: so
/// the best run taken is the best run; one of more than eight parts counts as made only where the best of just these
/// parts comes out in that order.
std::optional<SpanChoice> best_span(const FoldedCatalog& folded, const ChainRequest& request, const Span& span);

/// Whether some run makes the distance, as best_span would find, whatever it costs. Not for runs that a person has
/// chosen.
/// @param labels_left  how many beginnings of runs may still be looked at, less those that were; a second is about
///     300,000
/// @return nullopt: not known when none was left
std::optional<bool> makes_span(const FoldedCatalog& folded, const ChainRequest& request, const Span& span,
                               std::size_t& labels_left);

/// The distances nearest to the one asked for at which some run lands nominally: the next shorter and the next longer,
/// to 1/64 in, looked for up to two feet away. Worst case: 200,000 beginnings of runs each way, about a second;
/// what was not found by then is left out.
struct NearestSpans {
  std::optional<Length> below;
  std::optional<Length> above;
};
NearestSpans nearest_spans(const FoldedCatalog& folded, const ChainRequest& request, const Span& span);

}  // namespace riserun::chain
