#include "chain/answers/alternatives.h"

#include "chain/answers/order_instead.h"
#include "chain/build/assemble.h"
#include "chain/build/line_kept.h"
#include "chain/part/run_ends.h"
#include "chain/search/best_chain.h"
#include "chain/search/bin_use.h"
#include "chain/search/pareto_chains.h"
#include "chain/search/potentials.h"
#include "chain/search/tie_key.h"
#include "chain/search/yardstick.h"

#include <algorithm>
#include <tuple>

namespace riserun::chain {

namespace {

// The route's own cost is its measures side by side; those that only some orders look at are added up here.
Cost cost_under(const Catalog& catalog, const ChainRequest& request, const Route& route) {
  const auto& [parts, cents, micrometres, nanometres, buy] = route.cost.tuple;
  const RunEnds ends = run_ends(catalog, request);
  Measures measures;
  for (const Move& move : route.moves) {
    measures += move.own;
    if (&move != route.moves.data()) add_inner_joint(catalog, ends, move.enter_type, measures);
    add_passing(catalog, ends, move.enter_type, measures);
    add_passing(catalog, ends, move.leave_type, measures);
    for (const PartId plug : move.plugs) add_plugging(catalog, ends, catalog.part(plug).ports[0].type, measures);
  }
  measures.wishes = 0;
  measures.parts = parts;
  measures.cents = cents;
  measures.micrometres = micrometres;
  measures.nanometres = nanometres;
  measures.buy = buy;
  return cost_of(request.order, measures);
}

/// A route with what it is sorted by.
struct Row {
  Route route;
  Cost cost;
  Rest rest;
  TieKey key;
  std::vector<PartId> parts;  // plugs behind their part
};

/// Some route has more bushings than the request allows.
bool breaks_bushings(const ChainRequest& request, const std::vector<Route>& routes) {
  return request.most_bushings && std::any_of(routes.begin(), routes.end(), [&](const Route& route) {
           return bushing_count(route.moves) > *request.most_bushings;
         });
}

/// The bin is first taken to be without end, and bushings without limit, as best_chain() does: where no chain of the
/// wider set breaks a count, that set is the real one.
std::vector<Route> routes_within_the_bin(const FoldedCatalog& folded, const Rules& rules) {
  const ChainRequest& request = rules.request();
  GraphExtras extras;
  extras.all_measures = true;
  extras.counted.assign(request.bin.items.size(), false);
  std::optional<int> limit;
  while (true) {
    const PortGraph graph(folded, rules, extras);
    std::vector<Route> routes =
        pareto_chains(folded, rules, graph, distances_to_goal(graph, rules, request.to), kMorePartsThanFewest, limit);
    bool breaks = !limit && breaks_bushings(request, routes);
    if (breaks) limit = request.most_bushings;
    extras.counts_bushings = limit.has_value();
    for (const Route& route : routes) breaks |= count_overdrawn(request, route.moves, extras.counted);
    if (!breaks) return routes;
  }
}

std::vector<Route> unbeaten_routes(const PreparedCatalog& prepared, const Rules& rules) {
  const FoldedCatalog& folded = prepared.folded();
  const ChainRequest& request = rules.request();
  if (!GraphCache::is_plain(request)) return routes_within_the_bin(folded, rules);
  GraphExtras extras;
  extras.all_measures = true;
  const auto routes_with = [&](std::optional<int> most_bushings) {
    extras.counts_bushings = most_bushings.has_value();
    const auto kept = prepared.graphs().graph_for(folded, rules, extras);
    return pareto_chains(folded, rules, kept->graph(), *kept->distances_to(rules, request.to), kMorePartsThanFewest,
                         most_bushings);
  };
  std::vector<Route> routes = routes_with({});
  return breaks_bushings(request, routes) ? routes_with(request.most_bushings) : routes;
}

Row row_of(const FoldedCatalog& folded, Route route) {
  Row row{std::move(route), {}, {}, {}, {}};
  row.key = tie_key(folded, row.route.moves);
  for (const Move& move : row.route.moves) {
    row.parts.push_back(move.part);
    row.parts.insert(row.parts.end(), move.plugs.begin(), move.plugs.end());
  }
  return row;
}

std::vector<Row> sorted_rows(const FoldedCatalog& folded, const ChainRequest& request, std::vector<Route> routes) {
  std::vector<Row> rows;
  for (Route& route : routes) {
    rows.push_back(row_of(folded, std::move(route)));
    rows.back().cost = cost_under(folded.catalog(), request, rows.back().route);
    rows.back().rest =
        rest_of(folded.catalog(), request.order, end_metals(folded.catalog(), request), rows.back().route.moves);
  }
  std::sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) {
    return std::tie(a.cost, a.rest, a.key) < std::tie(b.cost, b.rest, b.key);
  });
  return rows;
}

bool same_fitting(const Catalog& catalog, PartId a, PartId b) {
  const catalog::Part& x = catalog.part(a);
  const catalog::Part& y = catalog.part(b);
  const auto same_type = [](const catalog::Port& p, const catalog::Port& q) { return p.type == q.type; };
  return x.family == y.family && x.size == y.size &&
         std::equal(x.ports.begin(), x.ports.end(), y.ports.begin(), y.ports.end(), same_type);
}

/// The same fittings the same way round, in other materials in at least one place.
bool same_but_for_material(const Catalog& catalog, const Row& a, const Row& b) {
  if (a.key.ports != b.key.ports) return false;
  const std::vector<PartId>& x = a.parts;
  const std::vector<PartId>& y = b.parts;
  const auto metals = [&](PartId id) {
    const catalog::Part& part = catalog.part(id);
    return std::pair(part.material, part.far_material.value_or(part.material));
  };
  return std::equal(x.begin(), x.end(), y.begin(), y.end(),
                    [&](PartId p, PartId q) { return same_fitting(catalog, p, q); }) &&
         !std::equal(x.begin(), x.end(), y.begin(), y.end(),
                     [&](PartId p, PartId q) { return metals(p) == metals(q); });
}

// "brass" where all parts are of it, else part by part: "brass + nylon + brass".
std::string materials_of(const Catalog& catalog, const std::vector<PartId>& parts) {
  const auto name = [&](PartId id) { return catalog.material(catalog.part(id).material).name; };
  const bool all_one =
      std::all_of(parts.begin(), parts.end(), [&](PartId id) { return name(id) == name(parts.front()); });
  std::string text = name(parts.front());
  for (std::size_t i = 1; i < parts.size() && !all_one; ++i) text += " + " + name(parts[i]);
  return text;
}

}  // namespace

std::vector<Alternative> alternatives(const PreparedCatalog& prepared, const ChainRequest& request,
                                      std::size_t most_rows) {
  const FoldedCatalog& folded = prepared.folded();
  const Catalog& catalog = folded.catalog();
  const Rules rules(catalog, request);
  std::optional<Route> best = best_chain(prepared, request);
  if (!best) return {};
  const Row first = row_of(folded, std::move(*best));
  const std::vector<Row> rows = sorted_rows(folded, request, unbeaten_routes(prepared, rules));
  std::vector<const Row*> shown{&first};
  std::vector<Alternative> answer;
  answer.reserve(std::min(most_rows, rows.size() + 1));
  answer.push_back({assemble(catalog, request, first.route.moves), {}});
  add_order_instead(prepared, request, answer.front().chain);
  for (const Row& row : rows) {
    if (row.key == first.key) continue;
    const auto like = std::find_if(shown.begin(), shown.end(),
                                   [&](const Row* earlier) { return same_but_for_material(catalog, *earlier, row); });
    if (like == shown.end()) {
      shown.push_back(&row);
      if (answer.size() == most_rows) continue;
      Chain& other = answer.emplace_back(Alternative{assemble(catalog, request, row.route.moves), {}}).chain;
      if (keeps_the_line(request.order)) other.kept = line_kept(catalog, request, other, false);
    } else if (const auto at = static_cast<std::size_t>(like - shown.begin()); at < answer.size()) {
      answer[at].same_in.push_back(materials_of(catalog, row.parts));
    }
  }
  return answer;
}

}  // namespace riserun::chain
