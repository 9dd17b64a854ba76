#include "chain/finder.h"

#include "chain/answers/alternatives.h"
#include "chain/answers/order_instead.h"
#include "chain/answers/picture.h"
#include "chain/answers/span_answer.h"
#include "chain/answers/substitutes.h"
#include "chain/answers/valve_side.h"
#include "chain/bin/allocate.h"
#include "chain/bin/least_spares.h"
#include "chain/build/assemble.h"
#include "chain/build/span_run.h"
#include "chain/check.h"
#include "chain/part/move.h"
#include "chain/part/swing.h"
#include "chain/refusal/why_no_assembly.h"
#include "chain/refusal/why_no_chain.h"
#include "chain/refusal/why_no_span.h"
#include "chain/search/best_chain.h"
#include "chain/span/best_span.h"
#include "chain/span/bow.h"
#include "chain/span/cut_pieces.h"
#include "chain/tree/best_tree.h"

#include <algorithm>
#include <cstdint>

namespace riserun::chain {

namespace {

ChainRequest with_taken(ChainRequest request, std::optional<std::vector<TakenPart>> parts) {
  request.taken = std::move(parts);
  return request;
}

}  // namespace

Finder::Finder(const Catalog& catalog) : prepared_(std::make_unique<const PreparedCatalog>(catalog)) {}

Finder::~Finder() = default;

const Catalog& Finder::catalog() const { return prepared_->catalog(); }

Answer Finder::find(const ChainRequest& request) const {
  check(catalog(), request);
  if (const std::optional<Route> route = best_chain(*prepared_, request)) {
    Chain chain = assemble(catalog(), request, route->moves);
    add_order_instead(*prepared_, request, chain);
    return chain;
  }
  return why_no_chain(prepared_->folded(), request);
}

Answer Finder::find_span(const ChainRequest& request, const Span& span) const {
  check(catalog(), request, span);
  if (std::optional<Chain> chain = span_run(prepared_->folded(), request, span)) return std::move(*chain);
  return why_no_span(prepared_->folded(), request, span);
}

AssemblyAnswer Finder::find_assembly(const AssemblyRequest& request) const {
  check(catalog(), request);
  const FoldedCatalog& folded = prepared_->folded();
  if (const auto tree = best_tree(folded, request)) return assemble(catalog(), request, tree->tree);
  return why_no_assembly(folded, request);
}

Answer Finder::make(const ChainRequest& request, const std::vector<TakenPart>& parts) const {
  return find(with_taken(request, parts));
}

Answer Finder::make(const ChainRequest& request, const Span& span, const std::vector<TakenPart>& parts) const {
  return find_span(with_taken(request, parts), span);
}

bool Finder::can_join(const ChainRequest& request, const std::optional<Span>& span) const {
  if (!span) {
    check(catalog(), request);
    return best_chain(*prepared_, request).has_value();
  }
  check(catalog(), request, *span);
  return best_span(prepared_->folded(), request, *span).has_value();
}

HoseFit Finder::fit_hose(catalog::PartId hose, Length room, Length aside) const {
  const HoseRun run = hose_run(catalog(), catalog().part(hose), in_micrometres(aside));
  HoseFit fit;
  fit.least_room = from_micrometres(run.least_room());
  fit.most_aside = from_micrometres(run.most_aside(in_micrometres(room)));
  fit.radius = from_micrometres(run.tightest());
  const std::int64_t taken = std::max(in_micrometres(room), run.least_room());
  fit.cut = from_micrometres(run.length(taken));
  fit.taut = from_micrometres(run.taut(taken));
  return fit;
}

std::vector<Alternative> Finder::alternatives(const ChainRequest& request, std::size_t most_rows) const {
  check(catalog(), request);
  return chain::alternatives(*prepared_, with_taken(request, std::nullopt), most_rows);
}

std::vector<Alternative> Finder::alternatives(const ChainRequest& request, const Span& span,
                                              std::size_t most_rows) const {
  check(catalog(), request, span);
  return span_alternatives(*prepared_, with_taken(request, std::nullopt), span, most_rows);
}

std::vector<Substitute> Finder::substitutes(const ChainRequest& request, const Chain& chain) const {
  check(catalog(), request);
  return chain::substitutes(prepared_->folded(), with_taken(request, std::nullopt), chain);
}

Allocation Finder::allocate(const std::vector<Demand>& demands, const catalog::Bin& bin, Order order,
                            Served* before) const {
  for (const Demand& demand : demands) {
    if (demand.request && demand.span)
      check(catalog(), *demand.request, *demand.span);
    else if (demand.request)
      check(catalog(), *demand.request);
  }
  return chain::allocate(*prepared_, demands, bin, order, before);
}

Spares Finder::least_spares(const std::vector<Chosen>& chosen, std::size_t most_together) const {
  for (const Chosen& one : chosen) check(catalog(), one.request);
  std::vector<Chosen> free = chosen;
  for (Chosen& one : free) one.request.taken.reset();
  return chain::least_spares(prepared_->folded(), free, most_together);
}

std::optional<Chain> Finder::best_with_valve_left(const ChainRequest& request, ReservoirEnd end,
                                                  const std::optional<Span>& span) const {
  const ChainRequest free = with_taken(request, std::nullopt);
  if (!span) {
    check(catalog(), request);
    return chain::best_with_valve_left(*prepared_, free, end);
  }
  check(catalog(), request, *span);
  return best_span_with_valve_left(*prepared_, free, *span, end);
}

std::string Finder::picture(const ChainRequest& request, const Chain* answer) const {
  return picture_of(prepared_->folded(), request, answer);
}

Answer find_chain(const Catalog& catalog, const ChainRequest& request) { return Finder(catalog).find(request); }

AssemblyAnswer find_assembly(const Catalog& catalog, const AssemblyRequest& request) {
  return Finder(catalog).find_assembly(request);
}

Length room_to_turn(const Catalog& catalog, const catalog::Part& part, std::size_t port) {
  return swing_radius(catalog, part, port);
}

Length drawn_back_by_bowing(const Catalog& catalog, const catalog::Part& hose, Length free) {
  const auto length = static_cast<double>(in_micrometres(free));
  return metres(drawn_back(length, radius_putting_on(catalog, hose)) * 1e-6);
}

}  // namespace riserun::chain
