// Finds chains in one catalog. Folding the catalog is done once and kept, so that each further question is quick.
#pragma once

#include "chain/best_route.h"
#include "chain/result.h"

namespace riserun::chain {

class Finder {
 public:
  /// Keeps a reference: the catalog must outlive the finder.
  explicit Finder(const Catalog& catalog) : network_(catalog) {}

  /// The best chain under the request's order, provably, or why there is none. Safe to ask from several threads.
  Answer find(const ChainRequest& request) const;
  /// The best chain's parts alone, without its sums and its build order.
  std::optional<Route> best(const ChainRequest& request) const {
    return GraphStore::is_plain(request) ? best_route(network_, request, store_) : best_route(network_, request);
  }

  const Network& network() const { return network_; }

 private:
  Network network_;
  GraphStore store_;
};

}  // namespace riserun::chain
