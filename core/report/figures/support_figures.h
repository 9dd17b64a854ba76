// The figures of the walls that are about what holds them: stays, welds, vacuum, passages.
#pragma once

#include "report/figures/figure.h"

#include <vector>

namespace riserun::report {

/// Behind those of the panels, in the group of the walls.
void add_support_figures(const plan::WallsPlan& walls, std::vector<Figure>& figures);

}  // namespace riserun::report
