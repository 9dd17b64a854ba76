// The searches of core/chain by themselves, by Google Benchmark: for whoever makes them faster.
#include "bench/chain/questions.h"
#include "catalog/load/load.h"
#include "chain/finder.h"
#include "chain/search/best_chain.h"

#include <benchmark/benchmark.h>

#include <random>

namespace {

using namespace riserun;         // NOLINT(google-build-using-namespace)
using namespace riserun::bench;  // NOLINT(google-build-using-namespace)

const catalog::Catalog& shipped() {
  static const catalog::Catalog catalog = catalog::load_catalog(catalog::find_catalog_folder());
  return catalog;
}

/// Random pairs of ports that a chain joins.
std::vector<chain::ChainRequest> joined_pairs(const chain::Finder& finder, std::size_t count, chain::Order order) {
  std::vector<chain::ChainRequest> requests;
  std::mt19937 dice(20);
  const auto types = static_cast<std::uint32_t>(shipped().port_types().size());
  while (requests.size() < count) {
    chain::ChainRequest request =
        request_for({static_cast<std::uint32_t>(dice()) % types}, {static_cast<std::uint32_t>(dice()) % types});
    request.order = order;
    if (best_chain(finder.prepared(), request)) requests.push_back(request);
  }
  return requests;
}

chain::Need need(const char* family) {
  chain::Need need{family, {}};
  for (std::uint32_t row = 0; row < shipped().parts().size(); ++row)
    if (shipped().family(shipped().part({row}).family).name == family) need.parts.push_back({row});
  return need;
}

template <class Ask>
void ask_pairs(benchmark::State& state, Ask ask, const std::vector<const char*>& needs = {}) {
  const chain::Finder finder(shipped());
  std::vector<chain::ChainRequest> requests = joined_pairs(finder, 64, static_cast<chain::Order>(state.range(0)));
  for (chain::ChainRequest& request : requests)
    for (const char* family : needs) request.needs.push_back(need(family));
  for (const chain::ChainRequest& request : requests) ask(finder, request);
  std::size_t next = 0;
  for (auto _ : state) ask(finder, requests[next++ % requests.size()]);
}

void best_chain(benchmark::State& state) {
  ask_pairs(state, [](const auto& finder, const auto& request) {
    benchmark::DoNotOptimize(best_chain(finder.prepared(), request));
  });
}
void best_chain_in_full(benchmark::State& state) {
  ask_pairs(state, [](const auto& finder, const auto& request) { benchmark::DoNotOptimize(finder.find(request)); });
}
void alternatives(benchmark::State& state) {
  ask_pairs(state, [](const auto& finder, const auto& request) {
    benchmark::DoNotOptimize(finder.alternatives(request, SIZE_MAX));
  });
}
void best_chain_with_a_valve(benchmark::State& state) {
  ask_pairs(
      state,
      [](const auto& finder, const auto& request) { benchmark::DoNotOptimize(best_chain(finder.prepared(), request)); },
      {"ball valve"});
}
void best_chain_with_three_needs(benchmark::State& state) {
  ask_pairs(
      state,
      [](const auto& finder, const auto& request) { benchmark::DoNotOptimize(best_chain(finder.prepared(), request)); },
      {"ball valve", "check valve", "union"});
}
void alternatives_with_a_valve(benchmark::State& state) {
  ask_pairs(
      state,
      [](const auto& finder, const auto& request) { benchmark::DoNotOptimize(finder.alternatives(request, SIZE_MAX)); },
      {"ball valve"});
}

/// Goals that were not asked about before: what earlier questions have left is thrown away.
void best_chain_to_a_new_goal(benchmark::State& state) {
  const chain::Finder joined(shipped());
  const auto requests = joined_pairs(joined, 64, static_cast<chain::Order>(state.range(0)));
  std::optional<chain::Finder> finder;
  std::size_t next = 0;
  for (auto _ : state) {
    if (next % requests.size() == 0) {
      state.PauseTiming();
      finder.emplace(shipped());
      benchmark::DoNotOptimize(best_chain(finder->prepared(), requests.front()));
      state.ResumeTiming();
    }
    benchmark::DoNotOptimize(best_chain(finder->prepared(), requests[next++ % requests.size()]));
  }
}

// By the order of the default, and by fewest parts.
void both_orders(benchmark::internal::Benchmark* bench) {
  bench->Unit(benchmark::kMicrosecond)->ArgName("order");
  for (const chain::Order order : {chain::Order::line, chain::Order::parts}) bench->Arg(static_cast<int>(order));
}

BENCHMARK(best_chain)->Apply(both_orders);
BENCHMARK(best_chain_to_a_new_goal)->Apply(both_orders);
BENCHMARK(best_chain_in_full)->Apply(both_orders);
BENCHMARK(alternatives)->Apply(both_orders);
BENCHMARK(best_chain_with_a_valve)->Apply(both_orders);
BENCHMARK(best_chain_with_three_needs)->Apply(both_orders);
BENCHMARK(alternatives_with_a_valve)->Apply(both_orders);

}  // namespace

BENCHMARK_MAIN();
