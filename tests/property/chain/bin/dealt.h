// What several demands get of one bin, held against the best that a judge knows.
#pragma once

#include "chain/ask/allocation.h"
#include "property/chain/exhaustive.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <vector>

namespace riserun::chain::testing {

/// What all demands get, each a One with `met`, `tuple` and `key()`.
template <class One>
struct Dealt {
  int unmet = 0;
  Tuple sum{};
  std::vector<One> of;

  void add(const One& one) {
    unmet += one.met ? 0 : 1;
    for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += one.tuple[i];
    of.push_back(one);
  }
};

template <class One>
bool better(const Dealt<One>& a, const Dealt<One>& b) {
  if (a.unmet != b.unmet) return a.unmet < b.unmet;
  if (a.sum != b.sum) return a.sum < b.sum;
  for (std::size_t i = 0; i < a.of.size(); ++i) {
    if (a.of[i].met != b.of[i].met) return a.of[i].met;
    if (a.of[i].key() != b.of[i].key()) return a.of[i].key() < b.of[i].key();
  }
  return false;
}

/// Demands of a small random catalog, and the bin that they share.
struct DemandsOfOneBin {
  catalog::Catalog catalog;
  std::vector<Demand> demands;
  catalog::Bin bin;
  Order order = Order::parts;
  std::vector<std::size_t> like;  // by demand: row of the first one that asks for the same
};

/// Counts the allocations, and compares each with the best that a judge knows.
struct Comparison {
  int compared = 0, shared = 0, unmet = 0, too_long = 0;

  /// @param longest  parts of the longest run found; the judge tried all of up to `depth` parts
  template <class One>
  void compare(const DemandsOfOneBin& world, const Allocation& answer, const Dealt<One>& found, std::int64_t longest,
               const Dealt<One>& best, int depth) {
    for (std::size_t row = 0; row < world.bin.items.size(); ++row) {
      int given = 0;
      for (const Allotment& allotment : answer.of) given += allotment.given.items[row].count;
      EXPECT_LE(given, world.bin.items[row].count);
    }
    if (longest > depth) {
      ++too_long;
      EXPECT_FALSE(better(best, found));
      return;
    }
    EXPECT_EQ(found.unmet, best.unmet);
    EXPECT_EQ(found.sum, best.sum);
    EXPECT_EQ(found.of, best.of);
    ++compared;
    shared += answer.proof.contested.empty() ? 0 : 1;
    unmet += best.unmet > 0 ? 1 : 0;
  }
};

}  // namespace riserun::chain::testing
