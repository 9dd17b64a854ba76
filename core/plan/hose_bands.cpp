#include "plan/hose_bands.h"

#include <algorithm>

namespace riserun::plan {

std::vector<Length> bands_on(Length pushed_on) {
  const Length second = kHoseBandGap * 2.0 + kHoseBand;
  if (pushed_on >= second + kHoseBand) return {kHoseBandGap, second};
  return {std::max(Length{}, std::min(kHoseBandGap, (pushed_on - kHoseBand) / 2.0))};
}

}  // namespace riserun::plan
