// The shipped catalog for figures.py: writes the part graph, then answers port pairs one by one and says what each of
// the searches took.
//
//   shipped_bench graph   a line `NODES`, then a line `FROM TO WEIGHT` for each arc
//   shipped_bench ask     reads rows of port types, "FROM TO", each TO once; answers each with a line of JSON
#include "bench/chain/boost_paths.h"
#include "bench/chain/igraph_paths.h"
#include "bench/chain/questions.h"
#include "bench/chain/stopwatch.h"
#include "catalog/load/load.h"
#include "chain/finder.h"
#include "chain/search/best_chain.h"

#include <fmt/format.h>

#include <iostream>
#include <string>

namespace {

using namespace riserun;         // NOLINT(google-build-using-namespace)
using namespace riserun::bench;  // NOLINT(google-build-using-namespace)

// What takes microseconds is asked several times in a row, and the mean taken.
constexpr int kTimes = 16;

/// One searcher for each kind of question, so that each meets its goals as new ones.
class Asking {
 public:
  Asking(const catalog::Catalog& catalog, const PartGraph& graph)
      : best_(catalog), full_(catalog), all_(catalog), igraph_(graph), boost_(graph) {
    // The catalog is folded once, as the others' graphs are made once.
    const chain::ChainRequest first = request_for({0}, {0});
    (void)best_chain(best_.prepared(), first);
    (void)full_.find(first);
    (void)all_.alternatives(first, SIZE_MAX);
  }

  std::string answer(catalog::PortTypeId from, catalog::PortTypeId to) {
    const chain::ChainRequest request = request_for(from, to);
    const std::uint32_t start = open_end(from);
    const std::uint32_t goal = entered(to);
    Distance distances[4];
    std::size_t rows = 0;
    std::string line = "{";
    const auto time = [&](const char* name, int times, auto ask) {
      line += fmt::format("\"{}\":{:.0f},", name, nanoseconds_of(ask, times));
    };
    time("best_new_goal", 1, [&] { distances[0] = distance_of(best_chain(best_.prepared(), request)); });
    time("best", kTimes, [&] { (void)best_chain(best_.prepared(), request); });
    time("find_new_goal", 1, [&] { (void)full_.find(request); });
    if (distances[0]) time("find", kTimes, [&] { (void)full_.find(request); });
    time("all_new_goal", 1, [&] { rows = all_.alternatives(request, SIZE_MAX).size(); });
    time("all", 4, [&] { (void)all_.alternatives(request, SIZE_MAX); });
    time("igraph", 1, [&] { distances[1] = igraph_.shortest(start, goal); });
    time("boost", 1, [&] { distances[2] = boost_.shortest_of_all(start, goal); });
    time("boost_stopped", 1, [&] { distances[3] = boost_.shortest(start, goal); });
    const bool agree = distances[1] == distances[0] && distances[2] == distances[0] && distances[3] == distances[0];
    return line + fmt::format(R"("distance":{},"agree":{},"rows":{}}})", distances[0].value_or(-1), agree, rows);
  }

 private:
  chain::Finder best_;
  chain::Finder full_;
  chain::Finder all_;
  IgraphPaths igraph_;
  BoostPaths boost_;
};

void write(const PartGraph& graph) {
  fmt::print("{}\n", graph.nodes);
  for (const PartArc& arc : graph.arcs) fmt::print("{} {} {}\n", arc.from, arc.to, arc.weight);
}

}  // namespace

int main(int argc, char** argv) {
  const std::string what = argc > 1 ? argv[1] : "";
  const catalog::Catalog catalog = catalog::load_catalog(catalog::find_catalog_folder());
  const PartGraph graph = part_graph(catalog);
  if (what == "graph") write(graph);
  if (what != "ask") return 0;
  Asking asking(catalog, graph);
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  while (std::cin >> from >> to) std::cout << asking.answer({from}, {to}) << std::endl;
}
