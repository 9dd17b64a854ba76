#include "chain/answers/span_answer.h"

#include "chain/build/span_run.h"
#include "chain/span/best_span.h"

#include <algorithm>

namespace riserun::chain {

namespace {

/// The same request with nothing but the parts of that chain.
ChainRequest with_parts_of(const Catalog& catalog, ChainRequest request, const Chain& chain) {
  std::vector<bool> known(catalog.parts().size(), false);
  for (const RunPart& link : chain.parts) {
    known[link.part.row] = true;
    for (const Follower& plug : link.plugs()) known[plug.plug.row] = true;
  }
  request.banned.resize(catalog.parts().size(), false);
  for (std::size_t row = 0; row < known.size(); ++row)
    if (!known[row]) request.banned[row] = true;
  return request;
}

bool same_parts(const Chain& a, const Chain& b) {
  return std::equal(
      a.parts.begin(), a.parts.end(), b.parts.begin(), b.parts.end(),
      [](const RunPart& x, const RunPart& y) { return x.part == y.part && x.enter == y.enter && x.ports == y.ports; });
}

}  // namespace

std::vector<Alternative> span_alternatives(const PreparedCatalog& prepared, const ChainRequest& request,
                                           const Span& span, std::size_t most_rows) {
  if (moves_along(request.from.freedom) || moves_along(request.to.freedom))
    return alternatives(prepared, request, most_rows);
  std::optional<Chain> best = span_run(prepared.folded(), request, span);
  if (!best) return {};
  std::vector<Alternative> rows{{std::move(*best), {}}};
  for (Alternative& other : alternatives(prepared, request, SIZE_MAX)) {
    if (rows.size() == most_rows) break;
    std::optional<Chain> cut =
        span_run(prepared.folded(), with_parts_of(prepared.catalog(), request, other.chain), span);
    if (!cut) continue;
    // What is offered is what comes of it when it is taken.
    ChainRequest taken = request;
    taken.taken = taken_parts(*cut);
    std::optional<Chain> made = span_run(prepared.folded(), taken, span);
    if (!made) continue;
    other.chain = std::move(*made);
    const bool known = std::any_of(rows.begin(), rows.end(),
                                   [&](const Alternative& row) { return same_parts(row.chain, other.chain); });
    if (!known) rows.push_back(std::move(other));
  }
  return rows;
}

}  // namespace riserun::chain
