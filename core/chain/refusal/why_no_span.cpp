#include "chain/refusal/why_no_span.h"

#include "chain/refusal/least_conflict.h"
#include "chain/refusal/why_no_chain.h"
#include "chain/search/best_chain.h"
#include "chain/span/best_span.h"
#include "chain/span/cut_pieces.h"

#include <cmath>

namespace riserun::chain {

namespace {

using quantity::fact;

class WhyNoSpan {
 public:
  WhyNoSpan(const FoldedCatalog& folded, const ChainRequest& request, const Span& span)
      : folded_(folded), request_(request), span_(span) {}

  NoChain explain();

 private:
  void add_distances();
  void add_sliding_end();
  void add_ports_in_line();
  void add_rules();
  void add_narrowing();
  Facts without_room_to_bow() const;
  Fact reason() const;

  const FoldedCatalog& folded_;
  const ChainRequest& request_;
  const Span& span_;
  NoChain answer_;
};

void WhyNoSpan::add_distances() {
  const NearestSpans nearest = nearest_spans(folded_, request_, span_);
  answer_.nearest_below = nearest.below;
  answer_.nearest_above = nearest.above;
  // What is the least is not less as it is printed, in sixteenths or in whole millimetres; where only that one distance
  // can be made it stands as it is.
  if (nearest.above) {
    const Length mark = inches(1.0 / 16.0);
    const Length printed = mark * std::ceil(((*nearest.above + millimetres(0.5)) / mark).value());
    Span wider = span_;
    wider.along = printed;
    if (best_span(folded_, request_, wider)) answer_.nearest_above = printed;
  }
  if (nearest.above)
    answer_.mends.push_back(
        fact("move_ports_apart", Length(*answer_.nearest_above - span_.along), *answer_.nearest_above));
  if (nearest.below)
    answer_.mends.push_back(fact("move_ports_together", Length(span_.along - *nearest.below), *nearest.below));
}

void WhyNoSpan::add_sliding_end() {
  if (span_.aside() > Length{}) return;
  ChainRequest sliding = request_;
  sliding.to.freedom = request_.to.freedom == Freedom::spinning ? Freedom::loose : Freedom::sliding;
  if (best_chain(folded_, sliding)) answer_.mends.push_back(fact("let_end_slide", name_of_last(request_.to)));
}

void WhyNoSpan::add_ports_in_line() {
  if (span_.aside() > Length{} && best_span(folded_, request_, {span_.along, {}, {}}))
    answer_.mends.push_back(relief_of(askable("offset"), {}));
}

// The rules that the distance cannot be kept with, and each that, given up alone, lets it be made.
void WhyNoSpan::add_rules() {
  Conflict conflict(folded_, request_, span_);
  // What mends comes first: it is quick to find, and worth more than the least conflict where not all becomes known.
  std::vector<bool> mends;
  for (std::size_t row = 0; row < conflict.rules().size(); ++row)
    mends.push_back(!conflict.rules()[row].reliefs.empty() && conflict.mends(row));
  const std::vector<std::size_t> at_odds = rows_of(conflict.least_conflict().value_or(0));
  for (const std::size_t row : at_odds) {
    const RequestRule& rule = conflict.rules()[row];
    answer_.conflict.push_back(rule.rule);
    if (!mends[row]) continue;
    answer_.mends.insert(answer_.mends.end(), rule.reliefs.begin(), rule.reliefs.end());
  }
}

// Necked down it could be made: that is for a person to say.
void WhyNoSpan::add_narrowing() {
  if (!keeps_the_line(request_.order)) return;
  ChainRequest any = request_;
  any.order = Order::parts;
  if (best_span(folded_, any, span_)) answer_.mends.push_back(fact("let_it_narrow"));
}

// With an end that slides a hose or tube would do that is too short to be bowed in between two that stand still.
Facts WhyNoSpan::without_room_to_bow() const {
  if (moves_along(request_.from.freedom) || moves_along(request_.to.freedom)) return {};
  const Catalog& catalog = folded_.catalog();
  ChainRequest sliding = request_;
  sliding.to.freedom = Freedom::sliding;
  const std::optional<SpanChoice> choice = best_span(folded_, sliding, span_);
  if (!choice) return {};
  for (const Move& move : choice->route.moves) {
    const catalog::Part& part = catalog.part(move.part);
    if (move.cut && !move.stub && move.own.micrometres < room_to_bow(catalog, part))
      return {fact("no_room_to_bow", catalog::stock_name(part))};
  }
  return {};
}

Fact WhyNoSpan::reason() const {
  Facts aside;
  if (span_.aside() > Length{}) aside.push_back(fact("with_axes_apart", span_.aside()));
  Facts nearest;
  if (answer_.nearest_below && answer_.nearest_above)
    nearest.push_back(fact("nearest_distances", *answer_.nearest_below, *answer_.nearest_above));
  else if (answer_.nearest_below || answer_.nearest_above)
    nearest.push_back(
        fact("nearest_distance", answer_.nearest_below ? *answer_.nearest_below : *answer_.nearest_above));
  return fact("not_at_that_distance", span_.along, std::move(aside), without_room_to_bow(), std::move(nearest));
}

NoChain WhyNoSpan::explain() {
  answer_.only_the_distance = true;
  add_distances();
  add_sliding_end();
  add_ports_in_line();
  add_rules();
  add_narrowing();
  answer_.reason = reason();
  return std::move(answer_);
}

}  // namespace

NoChain why_no_span(const FoldedCatalog& folded, const ChainRequest& request, const Span& span) {
  if (!best_chain(folded, request)) return why_no_chain(folded, request, &span);
  if (request.taken) {
    NoChain none = why_not_taken(fact("taken_is_not_so_long", span.along));
    none.only_the_distance = true;
    return none;
  }
  return WhyNoSpan(folded, request, span).explain();
}

}  // namespace riserun::chain
