#include "plan/stage/bin_left.h"

namespace riserun::plan {

bool BinLeft::take(PartId part) {
  for (catalog::BinItem& item : bin_.items) {
    if (item.part != part || item.count == 0) continue;
    --item.count;
    return true;
  }
  return false;
}

void BinLeft::take(const Bin& given) {
  for (const catalog::BinItem& item : given.items)
    for (int i = 0; i < item.count; ++i) take(item.part);
}

}  // namespace riserun::plan
