// Small random catalogs and requests, small enough that every chain in them can be tried.
#pragma once

#include "catalog/catalog.h"
#include "chain/ask/request.h"

#include <random>

namespace riserun::chain::testing {

/// Numbers from a seed that come out the same with every standard library.
class Dice {
 public:
  explicit Dice(std::uint32_t seed) : engine_(seed) {}
  int below(int limit) { return static_cast<int>(engine_() % static_cast<std::uint32_t>(limit)); }
  int between(int low, int high) { return low + below(high - low + 1); }
  bool chance(int percent) { return below(100) < percent; }
  template <class T>
  T one_of(std::initializer_list<T> values) {
    return values.begin()[below(static_cast<int>(values.size()))];
  }

 private:
  std::mt19937 engine_;
};

/// The seed of the first world: 1, and beyond those that RISERUN_RANDOM_SKIP leaves out, so that other worlds can be
/// tried than those of every run.
std::uint32_t first_world();

/// 6 to 14 port types, 5 to 20 parts. Material 0 is a plastic that every rule allows.
catalog::Catalog random_catalog(Dice& dice);
/// Ends, freedoms, needs, bans, bin and rules; order parts.
ChainRequest random_request(Dice& dice, const catalog::Catalog& catalog);

/// Lets all parts and duties in: of the rules only needs, order, bin and freedoms are left.
void lift_other_rules(ChainRequest& request);

}  // namespace riserun::chain::testing
