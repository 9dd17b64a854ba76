#include "chain/bin/split.h"

namespace riserun::chain {

std::strong_ordering compare(const Single& a, const Single& b) {
  if (a.met != b.met) return a.met ? std::strong_ordering::less : std::strong_ordering::greater;
  if (const auto by_make = a.make <=> b.make; by_make != 0) return by_make;
  if (const auto by_cost = a.cost <=> b.cost; by_cost != 0) return by_cost;
  if (const auto by_rest = a.rest <=> b.rest; by_rest != 0) return by_rest;
  if (const auto by_landing = a.off <=> b.off; by_landing != 0) return by_landing;
  if (const auto by_key = a.key <=> b.key; by_key != 0) return by_key;
  if (const auto by_end = a.end <=> b.end; by_end != 0) return by_end;
  if (const auto by_bin = b.end_from_bin <=> a.end_from_bin; by_bin != 0) return by_bin;
  return b.taken <=> a.taken;  // parts that cost nothing
}

Shares::Shares(std::size_t demands, const Counts& each) : items_(each.size()) {
  counts_.reserve(demands * items_);
  for (std::size_t demand = 0; demand < demands; ++demand) counts_.insert(counts_.end(), each.begin(), each.end());
}

bool is_worse(const Split& a, const Split& b) {
  if (a.unmet != b.unmet) return a.unmet > b.unmet;
  if (a.makes != b.makes) return a.makes > b.makes;
  if (a.sum != b.sum) return a.sum > b.sum;
  if (a.rest != b.rest) return a.rest > b.rest;
  for (std::size_t i = 0; i < a.singles.size(); ++i) {
    if (a.singles[i] == b.singles[i]) continue;  // most are
    if (const auto order = compare(*a.singles[i], *b.singles[i]); order != 0) return order > 0;
  }
  return a.number > b.number;
}

}  // namespace riserun::chain
