#include "bench/chain/part_graph.h"

namespace riserun::bench {

PartGraph part_graph(const catalog::Catalog& catalog) {
  PartGraph graph;
  const auto types = static_cast<std::uint32_t>(catalog.port_types().size());
  graph.nodes = 2 * types;
  for (std::uint32_t row = 0; row < types; ++row)
    for (const catalog::Mate& mate : catalog.mates({row}))
      graph.arcs.push_back({open_end({row}), entered(mate.other), 0});
  for (const catalog::Part& part : catalog.parts()) {
    if (part.ports.size() != 2 || !part.stocked) continue;
    if (catalog.family(part.family).role != catalog::Role::connector) continue;
    const Weight weight = kOnePart + part.price.cents();
    graph.arcs.push_back({entered(part.ports[0].type), open_end(part.ports[1].type), weight});
    if (!part.one_way) graph.arcs.push_back({entered(part.ports[1].type), open_end(part.ports[0].type), weight});
  }
  return graph;
}

}  // namespace riserun::bench
