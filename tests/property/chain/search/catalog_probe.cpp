// Shows the shipped catalog to an outside judge as plain text, and answers its questions.
//
//   catalog_probe dump     type ROW SPELLED / part ROW ID CONNECTOR STOCKED ONE_WAY TYPE... / mate ROW ROW
//   catalog_probe answer   reads "ROW ROW" lines; prints the number of parts of the best chain, or none
//   catalog_probe time     the same, but prints nanoseconds a question: best chain, full answer, all alternatives for
//                          a goal not asked for before and once more, and how many alternatives there are
#include "catalog/load/load.h"
#include "chain/finder.h"
#include "chain/search/best_chain.h"

#include <chrono>
#include <iostream>
#include <string>

namespace {

using namespace riserun;  // NOLINT(google-build-using-namespace)

void dump(const catalog::Catalog& catalog) {
  for (std::uint32_t row = 0; row < catalog.port_types().size(); ++row) {
    std::cout << "type " << row << ' ' << catalog.spelled({row}) << '\n';
    for (const catalog::Mate& mate : catalog.mates({row})) std::cout << "mate " << row << ' ' << mate.other.row << '\n';
  }
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.part({row});
    const bool connector = catalog.family(part.family).role == catalog::Role::connector;
    std::cout << "part " << row << ' ' << part.id << ' ' << connector << ' ' << part.stocked << ' ' << part.arrow;
    for (const catalog::Port& port : part.ports) std::cout << ' ' << port.type.row;
    std::cout << '\n';
  }
}

chain::ChainRequest request_for(std::uint32_t from, std::uint32_t to) {
  chain::ChainRequest request;
  request.from.type = {from};
  request.to.type = {to};
  request.order = chain::Order::parts;
  return request;
}

void answer(const chain::Finder& finder) {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  while (std::cin >> from >> to) {
    const auto route = best_chain(finder.prepared(), request_for(from, to));
    std::cout << from << ' ' << to << ' ' << (route ? std::to_string(route->moves.size()) : "none") << '\n';
  }
}

template <class Ask>
double nanoseconds(Ask ask) {
  const auto start = std::chrono::steady_clock::now();
  ask();
  return std::chrono::duration<double, std::nano>(std::chrono::steady_clock::now() - start).count();
}

void time_answers(const chain::Finder& finder) {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  while (std::cin >> from >> to) {
    const chain::ChainRequest request = request_for(from, to);
    (void)best_chain(finder.prepared(), request);
    const double best = nanoseconds([&] { (void)best_chain(finder.prepared(), request); });
    const double full = nanoseconds([&] { (void)finder.find(request); });
    const auto ask_all = [&] { return finder.alternatives(request_for(from, to), SIZE_MAX).size(); };
    std::size_t count = 0;
    const double first = nanoseconds([&] { count = ask_all(); });
    const double again = nanoseconds([&] { (void)ask_all(); });
    std::cout << best << ' ' << full << ' ' << first << ' ' << again << ' ' << count << '\n';
  }
}

}  // namespace

int main(int argc, char** argv) {
  const std::string what = argc > 1 ? argv[1] : "";
  const catalog::Catalog catalog = catalog::load_catalog(catalog::find_catalog_folder());
  const chain::Finder finder(catalog);
  if (what == "dump") dump(catalog);
  if (what == "answer") answer(finder);
  if (what == "time") time_answers(finder);
}
