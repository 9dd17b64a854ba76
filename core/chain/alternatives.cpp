#include "chain/alternatives.h"

#include "chain/assemble.h"
#include "chain/best_route.h"
#include "chain/frontier.h"

#include <algorithm>
#include <tuple>

namespace riserun::chain {

namespace {

std::vector<std::uint32_t> ids_of(const Network& network, const Route& route) {
  std::vector<std::uint32_t> ids;
  for (const Move& move : route.moves) {
    ids.push_back(network.rank(move.part));
    for (const PartId plug : move.plugs) ids.push_back(network.rank(plug));
  }
  return ids;
}

std::vector<std::pair<std::uint8_t, std::uint8_t>> ways_of(const Route& route) {
  std::vector<std::pair<std::uint8_t, std::uint8_t>> ways;
  for (const Move& move : route.moves) ways.emplace_back(move.enter, move.leave);
  return ways;
}

Cost cost_under(Order order, const Route& route) {
  const auto& [parts, cents, micrometres, nanometres, buy] = route.cost.tuple;
  Measures measures{0, parts, cents, micrometres, nanometres, buy, 0};
  for (const Move& move : route.moves) measures.drawbacks += move.own.drawbacks;
  return cost_of(order, measures);
}

/// A route with what it is sorted by.
struct Row {
  Route route;
  Cost cost;
  std::vector<std::uint32_t> ids;
  std::vector<std::pair<std::uint8_t, std::uint8_t>> ways;
  bool same_chain(const Row& other) const { return ids == other.ids && ways == other.ways; }
};

/// The bin is first taken to be without end, as best_route() does: where no chain of the wider set breaks a count, that
/// set is the real one.
std::vector<Route> routes_within_the_bin(const Network& network, const Rules& rules) {
  const ChainRequest& request = rules.request();
  GraphExtras extras;
  extras.all_measures = true;
  extras.counted.assign(request.bin.items.size(), false);
  while (true) {
    const RequestGraph graph(network, rules, extras);
    std::vector<Route> routes =
        frontier(network, rules, graph, graph.distances_to(rules, request.to), kMorePartsThanFewest);
    bool breaks = false;
    for (const Route& route : routes) {
      const std::vector<int> uses = uses_of_bin(request, route.moves);
      for (std::size_t item = 0; item < uses.size(); ++item) {
        if (extras.counted[item] || uses[item] <= request.bin.items[item].count) continue;
        extras.counted[item] = breaks = true;
      }
    }
    if (!breaks) return routes;
  }
}

std::vector<Route> unbeaten_routes(const Network& network, const Rules& rules, const GraphStore& store) {
  const ChainRequest& request = rules.request();
  if (!GraphStore::is_plain(request)) return routes_within_the_bin(network, rules);
  const auto kept = store.graph_for(network, rules, true);
  return frontier(network, rules, kept->graph(), *kept->distances_to(rules, request.to), kMorePartsThanFewest);
}

std::vector<Row> sorted_rows(const Network& network, const ChainRequest& request, std::vector<Route> routes) {
  std::vector<Row> rows;
  for (Route& route : routes) {
    Row& row = rows.emplace_back();
    row.cost = cost_under(request.order, route);
    row.ids = ids_of(network, route);
    row.ways = ways_of(route);
    row.route = std::move(route);
  }
  std::sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) {
    return std::tie(a.cost, a.ids, a.ways) < std::tie(b.cost, b.ids, b.ways);
  });
  return rows;
}

bool same_but_for_material(const Catalog& catalog, PartId a, PartId b) {
  const catalog::Part& x = catalog.part(a);
  const catalog::Part& y = catalog.part(b);
  const auto same_type = [](const catalog::Port& p, const catalog::Port& q) { return p.type == q.type; };
  return x.family == y.family && x.size == y.size &&
         std::equal(x.ports.begin(), x.ports.end(), y.ports.begin(), y.ports.end(), same_type);
}

bool same_but_for_material(const Catalog& catalog, const Route& a, const Route& b) {
  return std::equal(a.moves.begin(), a.moves.end(), b.moves.begin(), b.moves.end(), [&](const Move& x, const Move& y) {
    return x.enter == y.enter && x.leave == y.leave && same_but_for_material(catalog, x.part, y.part) &&
           std::equal(x.plugs.begin(), x.plugs.end(), y.plugs.begin(), y.plugs.end(),
                      [&](PartId p, PartId q) { return same_but_for_material(catalog, p, q); });
  });
}

// In the order of the chain, each once: "brass and nylon".
std::string materials_of(const Catalog& catalog, const Route& route) {
  std::vector<std::string> names;
  const auto add = [&](PartId id) {
    const std::string& name = catalog.material(catalog.part(id).material).name;
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  };
  for (const Move& move : route.moves) {
    add(move.part);
    for (const PartId plug : move.plugs) add(plug);
  }
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i)
    text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return text;
}

}  // namespace

std::vector<Alternative> alternatives(const Network& network, const ChainRequest& request, const GraphStore& store,
                                      std::size_t most_rows) {
  const Catalog& catalog = network.catalog();
  const Rules rules(catalog, request);
  const auto best = GraphStore::is_plain(request) ? best_route(network, request, store) : best_route(network, request);
  if (!best) return {};
  const std::vector<Row> rows = sorted_rows(network, request, unbeaten_routes(network, rules, store));
  const Row first = std::move(sorted_rows(network, request, {*best}).front());
  std::vector<const Route*> kept{&first.route};
  std::vector<Alternative> answer{{assemble(catalog, request, best->moves), {}}};
  for (const Row& row : rows) {
    if (row.same_chain(first)) continue;
    const auto like = std::find_if(kept.begin(), kept.end(), [&](const Route* route) {
      return same_but_for_material(catalog, *route, row.route);
    });
    if (like != kept.end()) {
      const auto at = static_cast<std::size_t>(like - kept.begin());
      if (at < answer.size()) answer[at].same_in.push_back(materials_of(catalog, row.route));
      continue;
    }
    kept.push_back(&row.route);
    if (answer.size() < most_rows) answer.push_back({assemble(catalog, request, row.route.moves), {}});
  }
  return answer;
}

}  // namespace riserun::chain
