// What the shop already has: parts with counts.
#pragma once

#include "catalog/ids.h"

#include <algorithm>
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

}  // namespace riserun::catalog
