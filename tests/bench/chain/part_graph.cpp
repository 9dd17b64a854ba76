#include "bench/chain/part_graph.h"

#include "chain/part/move.h"

#include <set>

namespace riserun::bench {

namespace {

std::uint32_t open_gripless(catalog::PortTypeId type) { return 4 * type.row + 2; }
std::uint32_t entered_gripless(catalog::PortTypeId type) { return 4 * type.row + 3; }

void add_parts(const catalog::Catalog& catalog, PartGraph& graph, std::set<catalog::PortTypeId>& no_grip) {
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.part({row});
    if (!part.stocked || !chain::is_plain_connector(catalog, part)) continue;
    for (std::size_t enter = 0; enter < (part.arrow ? 1u : 2u); ++enter) {
      const chain::Move move = chain::bought_move(catalog, {row}, enter, 1 - enter);
      const Weight weight = kOnePart + part.price.cents();
      if (move.no_grip) {
        no_grip.insert({move.enter_type, move.leave_type});
        graph.arcs.push_back({entered_gripless(move.enter_type), open_gripless(move.leave_type), weight});
      } else {
        graph.arcs.push_back({entered(move.enter_type), open_end(move.leave_type), weight});
      }
    }
  }
}

}  // namespace

PartGraph part_graph(const catalog::Catalog& catalog) {
  PartGraph graph;
  std::set<catalog::PortTypeId> no_grip;
  add_parts(catalog, graph, no_grip);
  const auto types = static_cast<std::uint32_t>(catalog.port_types().size());
  graph.nodes = 4 * types;
  for (std::uint32_t row = 0; row < types; ++row) {
    const catalog::PortTypeId type{row};
    for (const catalog::Mate& mate : catalog.mates(type)) {
      graph.arcs.push_back({open_end(type), entered(mate.other), 0});
      if (catalog.mating_rules()[mate.rule].turning == catalog::Turning::neither) continue;
      const bool from_gripless = no_grip.contains(type);
      const bool to_gripless = no_grip.contains(mate.other);
      if (from_gripless) graph.arcs.push_back({open_gripless(type), entered(mate.other), 0});
      if (to_gripless) graph.arcs.push_back({open_end(type), entered_gripless(mate.other), 0});
      if (from_gripless && to_gripless) graph.arcs.push_back({open_gripless(type), entered_gripless(mate.other), 0});
    }
  }
  return graph;
}

}  // namespace riserun::bench
