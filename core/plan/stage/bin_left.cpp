#include "plan/stage/bin_left.h"

namespace riserun::plan {

bool BinLeft::take(PartId part) { return bin_.take(part); }

void BinLeft::take(const Bin& given) {
  for (const catalog::BinItem& item : given.items)
    for (int i = 0; i < item.count; ++i) take(item.part);
}

}  // namespace riserun::plan
