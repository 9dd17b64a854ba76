// Finds chains in one catalog. Folding the catalog is done once and kept, so that each further question is quick.
#pragma once

#include "chain/alternatives.h"
#include "chain/best_route.h"
#include "chain/result.h"
#include "chain/shelf_empty.h"
#include "chain/span_alternatives.h"

namespace riserun::chain {

class Finder {
 public:
  /// Keeps a reference: the catalog must outlive the finder.
  explicit Finder(const Catalog& catalog) : network_(catalog) {}

  /// The best chain under the request's order, provably, or why there is none. Safe to ask from several threads.
  Answer find(const ChainRequest& request) const;
  /// The best chain that makes a distance between the two ports, or why there is none.
  Answer find_span(const ChainRequest& request, const Span& span) const;
  /// The best chain and what a person may prefer to it; empty where find() tells why there is none.
  std::vector<Alternative> alternatives(const ChainRequest& request, std::size_t most_rows) const {
    return chain::alternatives(network_, request, store_, most_rows);
  }
  /// The best chain that makes a distance and what a person may prefer to it.
  std::vector<Alternative> alternatives(const ChainRequest& request, const Span& span, std::size_t most_rows) const {
    return span_alternatives(network_, request, store_, span, most_rows);
  }
  /// What to take for each bought part of an answer to the request when the shelf has none of it.
  std::vector<Substitute> shelf_empty(const ChainRequest& request, const Chain& chain) const {
    return chain::shelf_empty(network_, request, chain);
  }
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
