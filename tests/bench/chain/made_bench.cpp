// One invented catalog: what it takes to make, to fold and to ask, beside igraph's C library on the same parts.
//
//   made_bench PARTS [KINDS SIZES [PAIRS]]    a line of JSON
#include "bench/chain/igraph_paths.h"
#include "bench/chain/made_catalog.h"
#include "bench/chain/questions.h"
#include "bench/chain/stopwatch.h"
#include "chain/finder.h"
#include "chain/search/best_chain.h"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <random>
#include <set>
#include <string>

namespace {

using namespace riserun;         // NOLINT(google-build-using-namespace)
using namespace riserun::bench;  // NOLINT(google-build-using-namespace)

constexpr int kTimes = 16;

/// Bytes that the process holds in memory now.
double resident_bytes() {
  std::ifstream status("/proc/self/statm");
  double pages = 0.0;
  status >> pages >> pages;
  return pages * 4096.0;
}

double median(std::vector<double> values) {
  if (values.empty()) return 0.0;
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

std::size_t distinct_port_pairs(const PartGraph& graph) {
  std::set<std::pair<std::uint32_t, std::uint32_t>> pairs;
  for (const PartArc& arc : graph.arcs)
    if (arc.weight > 0) pairs.emplace(arc.from, arc.to);
  return pairs.size();
}

struct Times {
  std::vector<double> best, new_goal, all, all_new_goal, igraph;  // nanoseconds
};

void report(const MadeSizes& sizes, int pairs) {
  const double before = resident_bytes();
  std::optional<catalog::Catalog> catalog;
  const double make = nanoseconds_of([&] { catalog = made_catalog(sizes); });
  const double with_catalog = resident_bytes();
  std::optional<chain::Finder> finder;
  const chain::ChainRequest first = request_for({0}, {0});
  const double fold = nanoseconds_of([&] { (void)best_chain(finder.emplace(*catalog).prepared(), first); });
  const double fold_all = nanoseconds_of([&] { (void)finder->alternatives(first, SIZE_MAX); });
  const double with_finder = resident_bytes();
  const PartGraph graph = part_graph(*catalog);
  const IgraphPaths igraph(graph);
  Times times;
  std::mt19937 dice(20);
  int agree = 0;
  for (int i = 0; i < pairs; ++i) {
    const auto types = static_cast<std::uint32_t>(catalog->port_types().size());
    const catalog::PortTypeId from{static_cast<std::uint32_t>(dice()) % types};
    const catalog::PortTypeId to{static_cast<std::uint32_t>(dice()) % types};
    const chain::ChainRequest request = request_for(from, to);
    Distance ours, theirs;
    times.new_goal.push_back(nanoseconds_of([&] { ours = distance_of(best_chain(finder->prepared(), request)); }));
    times.best.push_back(nanoseconds_of([&] { (void)best_chain(finder->prepared(), request); }, kTimes));
    times.all_new_goal.push_back(nanoseconds_of([&] { (void)finder->alternatives(request, SIZE_MAX); }));
    times.all.push_back(nanoseconds_of([&] { (void)finder->alternatives(request, SIZE_MAX); }));
    times.igraph.push_back(nanoseconds_of([&] { theirs = igraph.shortest(open_end(from), entered(to)); }));
    agree += ours == theirs ? 1 : 0;
  }
  const auto parts = static_cast<double>(catalog->parts().size());
  fmt::print(R"({{"parts":{:.0f},"port_pairs":{},"make_ns":{:.0f},"fold_ns":{:.0f},"fold_all_ns":{:.0f},)", parts,
             distinct_port_pairs(graph), make, fold, fold_all);
  fmt::print(R"("catalog_bytes_per_part":{:.0f},"finder_bytes_per_part":{:.0f},"best":{:.0f},"best_new_goal":{:.0f},)",
             (with_catalog - before) / parts, (with_finder - with_catalog) / parts, median(times.best),
             median(times.new_goal));
  fmt::print(R"("all":{:.0f},"all_new_goal":{:.0f},"igraph":{:.0f},"agree":{},"pairs":{}}})", median(times.all),
             median(times.all_new_goal), median(times.igraph), agree, pairs);
  fmt::print("\n");
}

}  // namespace

int main(int argc, char** argv) {
  const auto argument = [&](int place, int otherwise) { return argc > place ? std::stoi(argv[place]) : otherwise; };
  MadeSizes sizes;
  sizes.parts = static_cast<std::size_t>(argument(1, 10'000));
  sizes.kinds = argument(2, sizes.kinds);
  sizes.sizes = argument(3, sizes.sizes);
  report(sizes, argument(4, 50));
}
