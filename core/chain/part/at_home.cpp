#include "chain/part/at_home.h"

#include <algorithm>

namespace riserun::chain {

bool is_at_home_on(const catalog::Catalog& catalog, const catalog::Part& part, std::size_t port) {
  const catalog::KindId kind = catalog.port_type(part.ports[port].type).kind;
  const auto has = [&](catalog::KindId beside) {
    for (std::size_t other = 0; other < part.ports.size(); ++other)
      if (other != port && catalog.port_type(part.ports[other].type).kind == beside) return true;
    return false;
  };
  const auto threads = catalog.foreign_threads();
  return std::any_of(threads.begin(), threads.end(), [&](const catalog::ForeignThread& thread) {
    return thread.kind == kind && std::any_of(thread.beside.begin(), thread.beside.end(), has);
  });
}

}  // namespace riserun::chain
