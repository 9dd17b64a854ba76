// What the shop already has: parts with counts.
#pragma once

#include "catalog/ids.h"

#include <vector>

namespace riserun::catalog {

struct BinItem {
  PartId part;
  int count = 0;
};

/// At most one item a part, in the order of the file.
struct Bin {
  std::vector<BinItem> items;

  int count_of(PartId part) const {
    for (const BinItem& item : items)
      if (item.part == part) return item.count;
    return 0;
  }
};

}  // namespace riserun::catalog
