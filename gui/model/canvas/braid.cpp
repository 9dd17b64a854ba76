#include "gui/model/canvas/braid.h"

#include <algorithm>
#include <utility>
#include <variant>

namespace riserun::gui {

std::vector<report::Shape> with_longer_braid(report::Drawing& art, double from, double sign, double by) {
  const auto is_braid = [](const report::Shape& shape) {
    const auto* stroke = std::get_if<report::Stroke>(&shape);
    return stroke != nullptr && stroke->name == "braid" && stroke->points.size() == 2;
  };
  const auto along = [&](const report::Spot& spot) { return (spot.y - from) * sign; };
  std::vector<report::Stroke> before;  // that end before the place, nearest last
  std::erase_if(art.shapes, [&](const report::Shape& shape) {
    if (!is_braid(shape)) return false;
    const auto& stroke = std::get<report::Stroke>(shape);
    const double a = along(stroke.points[0]);
    const double b = along(stroke.points[1]);
    if (std::max(a, b) <= 0.0) before.push_back(stroke);
    return a * b < 0.0;
  });
  const auto far = [&](const report::Stroke& stroke) {
    return std::max(along(stroke.points[0]), along(stroke.points[1]));
  };
  std::sort(before.begin(), before.end(), [&](const auto& a, const auto& b) { return far(a) < far(b); });
  if (before.size() < 4) return {};
  // Two strands lie crossed over each other, the next two a step further.
  const double step = far(before[before.size() - 1]) - far(before[before.size() - 3]);
  if (step <= 0.0) return {};
  std::vector<report::Shape> strands;
  for (const report::Stroke* strand : {&before[before.size() - 1], &before[before.size() - 2]})
    for (double on = step; far(*strand) + on < by; on += step) {
      report::Stroke more = *strand;
      for (report::Spot& spot : more.points) spot.y += sign * on;
      strands.emplace_back(std::move(more));
    }
  return strands;
}

}  // namespace riserun::gui
