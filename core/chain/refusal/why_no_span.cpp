#include "chain/refusal/why_no_span.h"

#include "chain/build/span_texts.h"
#include "chain/refusal/why_no_chain.h"
#include "chain/rules/rules.h"
#include "chain/search/best_chain.h"
#include "chain/span/best_span.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::chain {

namespace {

/// A change of the request or of the distance, and what to tell the person to do for it.
class Mending {
 public:
  Mending(const FoldedCatalog& folded, const ChainRequest& request, const Span& span)
      : folded_(folded), request_(request), span_(span) {}

  NoChain explain();

 private:
  template <class Change>
  void try_change(Change change, std::string mend) {
    ChainRequest changed = request_;
    Span distance = span_;
    change(changed, distance);
    if (best_span(folded_, changed, distance)) answer_.mends.push_back(std::move(mend));
  }
  void try_distances();
  void try_sliding_end();
  void try_rules();
  std::string reason() const;
  bool bans_hose() const;

  const FoldedCatalog& folded_;
  const ChainRequest& request_;
  const Span& span_;
  NoChain answer_;
};

void Mending::try_distances() {
  const NearestSpans nearest = nearest_spans(folded_, request_, span_);
  answer_.nearest_below = nearest.below;
  answer_.nearest_above = nearest.above;
  if (nearest.above)
    answer_.mends.push_back(fmt::format("move the ports {} farther apart, to {}",
                                        tape_length(*nearest.above - span_.along), tape_length(*nearest.above)));
  if (nearest.below)
    answer_.mends.push_back(fmt::format("move the ports {} closer together, to {}",
                                        tape_length(span_.along - *nearest.below), tape_length(*nearest.below)));
}

void Mending::try_sliding_end() {
  if (span_.aside() > Length{}) return;
  ChainRequest sliding = request_;
  sliding.to.freedom = request_.to.freedom == Freedom::spinning ? Freedom::loose : Freedom::sliding;
  if (best_chain(folded_, sliding))
    answer_.mends.push_back(fmt::format("let {} slide along its axis", name_of_last(request_.to)));
}

bool Mending::bans_hose() const {
  const auto parts = folded_.catalog().parts();
  for (std::size_t row = 0; row < request_.banned.size(); ++row)
    if (request_.banned[row] && parts[row].flexible) return true;
  return false;
}

void Mending::try_rules() {
  if (bans_hose())
    try_change(
        [&](ChainRequest& request, Span&) {
          const auto parts = folded_.catalog().parts();
          for (std::size_t row = 0; row < request.banned.size(); ++row)
            if (parts[row].flexible) request.banned[row] = false;
        },
        "allow a hose");
  if (span_.aside() > Length{})
    try_change([](ChainRequest&, Span& span) { span = {span.along, {}, {}}; }, "bring the two ports into line");
  if (Rules(folded_.catalog(), request_).closing() != Closing::none)
    try_change([](ChainRequest& request, Span&) { request.to.freedom = Freedom::spinning; },
               fmt::format("let {} turn", name_of_last(request_.to)));
  if (!request_.special_order)
    try_change([](ChainRequest& request, Span&) { request.special_order = true; },
               "allow parts that a store must order");
  if (std::find(request_.not_sold.begin(), request_.not_sold.end(), true) != request_.not_sold.end())
    try_change([](ChainRequest& request, Span&) { request.not_sold.clear(); }, "buy what the bin does not hold");
  if (request_.most_parts)
    try_change([](ChainRequest& request, Span&) { request.most_parts.reset(); }, "allow more parts");
  if (request_.smallest_bore)
    try_change([](ChainRequest& request, Span&) { request.smallest_bore.reset(); },
               fmt::format("accept a bore below {:.3g} in", in_inches(*request_.smallest_bore)));
  if (std::find(request_.banned.begin(), request_.banned.end(), true) != request_.banned.end())
    try_change([](ChainRequest& request, Span&) { request.banned.clear(); }, "allow the parts that are ruled out");
}

std::string Mending::reason() const {
  std::string text = fmt::format("the two ports can be joined, but not by stock pieces, cut pipe or a hose at {}",
                                 tape_length(span_.along));
  if (span_.aside() > Length{}) text += fmt::format(" with their axes {} apart", tape_length(span_.aside()));
  if (answer_.nearest_below || answer_.nearest_above) {
    text += "; the nearest that can be made ";
    text += answer_.nearest_below && answer_.nearest_above
                ? fmt::format("are {} and {}", tape_length(*answer_.nearest_below), tape_length(*answer_.nearest_above))
                : "is " + tape_length(answer_.nearest_below ? *answer_.nearest_below : *answer_.nearest_above);
  }
  return text;
}

NoChain Mending::explain() {
  answer_.only_the_distance = true;
  try_distances();
  try_sliding_end();
  try_rules();
  answer_.reason = reason();
  return std::move(answer_);
}

}  // namespace

NoChain why_no_span(const FoldedCatalog& folded, const ChainRequest& request, const Span& span) {
  if (!best_chain(folded, request)) return why_no_chain(folded, request);
  return Mending(folded, request, span).explain();
}

}  // namespace riserun::chain
