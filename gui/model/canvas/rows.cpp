#include "gui/model/canvas/rows.h"

#include <algorithm>

namespace riserun::gui {

namespace {

constexpr float kBeside = 22.0F;  // between two columns
constexpr float kUnder = 16.0F;   // between two runs
constexpr float kWide = 180.0F;   // of a column at the least: a run's count and price have room at half the size, too

/// How many columns there are when none is higher than that.
std::size_t columns_of(const std::vector<RunBlock>& runs, float high) {
  std::size_t columns = 1;
  float down = 0.0F;
  for (const RunBlock& run : runs) {
    if (down > 0.0F && down + run.all.size.height > high) {
      ++columns;
      down = 0.0F;
    }
    down += run.all.size.height + kUnder;
  }
  return columns;
}

/// The least height that does with so many columns.
float height_for(const std::vector<RunBlock>& runs, std::size_t columns) {
  float low = 0.0F;
  float high = 0.0F;
  for (const RunBlock& run : runs) {
    low = std::max(low, run.all.size.height);
    high += run.all.size.height + kUnder;
  }
  for (int halving = 0; halving < 20 && high - low > 1.0F; ++halving) {
    const float middle = (low + high) / 2.0F;
    (columns_of(runs, middle) <= columns ? high : low) = middle;
  }
  return high;
}

}  // namespace

void wrap_rows(const Size& room, Layout& layout) {
  std::vector<RunBlock>& runs = layout.runs;
  float wide = kWide;
  for (const RunBlock& run : runs) wide = std::max(wide, run.all.size.width + kBeside);
  const float left = std::max(layout.nodes[kReservoir].right(), layout.nodes[kTable].right()) + 2.0F * kBeside;
  const float beside = left - std::min(layout.nodes[kAirSupply].corner.x, layout.nodes[kTable].corner.x);
  float best = 0.0F;
  float most = 0.0F;
  for (std::size_t columns = 1; columns <= runs.size(); ++columns) {
    const float high = height_for(runs, columns);
    const float zoom = std::min(room.width / (beside + wide * static_cast<float>(columns)), room.height / high);
    if (zoom <= most) continue;
    most = zoom;
    best = high;
  }
  const float top = layout.nodes[kTable].corner.y;
  Point corner{left, top};
  for (RunBlock& run : runs) {
    if (corner.y > top && corner.y - top + run.all.size.height > best) corner = {corner.x + wide, top};
    run.move({corner.x - run.all.corner.x, corner.y - run.all.corner.y});
    run.all.size.width = wide - kBeside;  // its words may be as wide as the column
    corner.y += run.all.size.height + kUnder;
  }
}

}  // namespace riserun::gui
