#include "chain/finder.h"

#include "chain/assemble.h"
#include "chain/span.h"
#include "chain/why_none.h"

namespace riserun::chain {

Answer Finder::find(const ChainRequest& request) const {
  if (const std::optional<Route> route = best(request)) return assemble(network_.catalog(), request, route->moves);
  return why_none(network_, request);
}

Answer Finder::find_span(const ChainRequest& request, const Span& span) const {
  return chain::find_span(network_, request, span);
}

Answer find_chain(const Catalog& catalog, const ChainRequest& request) { return Finder(catalog).find(request); }

}  // namespace riserun::chain
