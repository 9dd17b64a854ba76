#include "report/drawing/drawing.h"

#include <algorithm>
#include <cmath>

namespace riserun::report {

std::vector<Spot> box_outline(double left, double bottom, double right, double top) {
  return {{left, bottom}, {right, bottom}, {right, top}, {left, top}};
}

namespace {

/// Neighbours that touch, moved as one: each wants to stand where its members want to on average.
struct Touching {
  double sum = 0.0;  // of what the members want, each less its distance from the run's first
  std::size_t count = 0;
  double first = 0.0;
};

}  // namespace

std::vector<double> spread(const std::vector<double>& wanted, double gap, double low, double high) {
  std::vector<std::size_t> order(wanted.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return wanted[a] < wanted[b]; });
  std::vector<Touching> runs;
  for (const std::size_t i : order) {
    Touching run{wanted[i], 1, wanted[i]};
    while (!runs.empty() && runs.back().first + gap * static_cast<double>(runs.back().count) > run.first) {
      const Touching before = runs.back();
      runs.pop_back();
      run.sum += before.sum - gap * static_cast<double>(before.count) * static_cast<double>(run.count);
      run.count += before.count;
      run.first = run.sum / static_cast<double>(run.count);
    }
    const double room = high - gap * static_cast<double>(run.count - 1);
    run.first = std::max(low, std::min(run.first, room));
    runs.push_back(run);
  }
  std::vector<double> places(wanted.size());
  std::size_t next = 0;
  double least = low;
  for (const Touching& run : runs) {
    double place = std::max(run.first, least);
    for (std::size_t k = 0; k < run.count; ++k, place += gap) places[order[next++]] = place;
    least = place;
  }
  return places;
}

std::vector<double> in_a_row(const std::vector<double>& middles, const std::vector<double>& widths, double gap,
                             double low, double high) {
  std::vector<double> begins(middles.size());
  for (std::size_t i = 0; i < begins.size(); ++i) begins[i] = middles[i] - widths[i] / 2.0;
  double most = high;
  for (std::size_t i = begins.size(); i-- > 0;) {
    begins[i] = std::min(begins[i], most - widths[i]);
    most = begins[i] - gap;
  }
  double least = low;
  for (std::size_t i = 0; i < begins.size(); ++i) {
    begins[i] = std::max(begins[i], least);
    least = begins[i] + widths[i] + gap;
  }
  return begins;
}

bool too_tall(const Label& label, const Placement& placement, float height) {
  return label.room_up > 0.0 && height > static_cast<float>(label.room_up) * placement.scale;
}

Placement fitted(const Drawing& drawing, const PixelBox& box, float pixel) {
  const double wide = std::max(drawing.width(), 1e-6);
  const double high = std::max(drawing.height(), 1e-6);
  Placement placement;
  placement.scale = static_cast<float>(std::min(box.width() / wide, box.height() / high));
  placement.left =
      static_cast<float>((box.left + box.right) / 2.0 - (drawing.low.x + drawing.high.x) / 2.0 * placement.scale);
  placement.bottom =
      static_cast<float>((box.top + box.bottom) / 2.0 + (drawing.low.y + drawing.high.y) / 2.0 * placement.scale);
  placement.pixel = pixel;
  return placement;
}

void take_in_shapes(Drawing& drawing) {
  const auto take = [&](const std::vector<Spot>& spots) {
    for (const Spot& spot : spots) {
      drawing.low = {std::min(drawing.low.x, spot.x), std::min(drawing.low.y, spot.y)};
      drawing.high = {std::max(drawing.high.x, spot.x), std::max(drawing.high.y, spot.y)};
    }
  };
  for (const Shape& shape : drawing.shapes) {
    if (const auto* area = std::get_if<Area>(&shape)) take(area->outline);
    if (const auto* stroke = std::get_if<Stroke>(&shape)) take(stroke->points);
  }
}

}  // namespace riserun::report
