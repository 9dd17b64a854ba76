// What the shop already has: parts with counts, in one bin or in several.
#pragma once

#include "catalog/ids.h"

#include <algorithm>
#include <string>
#include <vector>

namespace riserun::catalog {

struct BinItem {
  PartId part;
  int count = 0;
  bool operator==(const BinItem&) const = default;
};

/// At most one item a part, in the order of the file.
struct Bin {
  std::vector<BinItem> items;

  int count_of(PartId part) const {
    for (const BinItem& item : items)
      if (item.part == part) return item.count;
    return 0;
  }
  /// A count below none is none.
  void add(PartId part, int pieces = 1) {
    for (BinItem& item : items) {
      if (item.part != part) continue;
      item.count = std::max(item.count, 0) + pieces;
      return;
    }
    items.push_back({part, pieces});
  }
  /// All of the pieces, or none where there are not so many: then false.
  bool take(PartId part, int pieces = 1) {
    for (BinItem& item : items) {
      if (item.part != part || item.count < pieces) continue;
      item.count -= pieces;
      return true;
    }
    return false;
  }
  bool operator==(const Bin&) const = default;
};

/// One of several bins: the truck's, the shop's.
struct NamedBin {
  std::string name;  // as it is called on a list; empty: the only one, in the job itself
  std::string file;  // that holds it; empty: the job itself
  Bin bin;
  bool operator==(const NamedBin&) const = default;
};

/// What lies in all of them.
inline Bin all_of(const std::vector<NamedBin>& bins) {
  Bin all;
  for (const NamedBin& one : bins)
    for (const BinItem& item : one.bin.items) all.add(item.part, item.count);
  return all;
}

}  // namespace riserun::catalog
