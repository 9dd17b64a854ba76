#include "report/drawing/stays.h"

#include "reservoir/stay_rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace riserun::report {

namespace {

using plan::Plan;
using reservoir::StayBars;
using reservoir::WallBays;

class InSight {
 public:
  explicit InSight(const Plan& plan)
      : plan_(plan),
        box_(plan.job.reservoir),
        length_(in_metres(box_.length)),
        height_(in_metres(box_.height)),
        lengthwise_(box_.length >= box_.width) {}

  std::vector<StayInSight> all() {
    const auto& layout = box_.supports.layout;
    if (!layout) return {};
    const int plates = lengthwise_ ? layout->baffles_across : layout->baffles_along;
    for (const Length& middle : reservoir::middles_of_baffles(box_.length, plan_.lid_map.plate, plates))
      add(StayKind::baffle, in_metres(middle), 0.0, 0.0, height_);
    const Length thick = std::max(bar(reservoir::kTies).thickness, plan_.lid_map.plate);
    for (const plan::LidSpot& tie : plan_.lid_map.ties)
      add(StayKind::post, in_metres(tie.from_left), in_metres(thick) / 2.0, 0.0, height_);
    if (layout->lid && plan_.lid_map.ties.empty()) level_wall("lid", *layout->lid, *layout, true);
    if (layout->floor) level_wall("floor", *layout->floor, *layout, false);
    const auto& front = lengthwise_ ? layout->long_side : layout->short_side;
    const auto& ends = lengthwise_ ? layout->short_side : layout->long_side;
    if (front) front_wall(lengthwise_ ? "long sides" : "short sides", *front, plates);
    if (ends) end_walls(lengthwise_ ? "short sides" : "long sides", *ends);
    std::stable_sort(found_.begin(), found_.end(),
                     [](const StayInSight& a, const StayInSight& b) { return a.left < b.left; });
    return std::move(found_);
  }

 private:
  /// The wall's bars, those that run through before those between them; none: nothing of a size.
  StayBars bar(const std::string& wall) const {
    for (const StayBars& bars : plan_.walls.bars)
      if (bars.wall == wall) return bars;
    return {};
  }
  bool has(const std::string& wall) const { return bar(wall).count > 0; }

  void add(StayKind kind, double x, double half, double bottom, double top) {
    const StayInSight stay{kind, x - half, bottom, x + half, top};
    constexpr double kSame = 1e-6;  // m
    const auto same = [&](const StayInSight& other) {
      return other.kind == kind && std::abs(other.left - stay.left) < kSame &&
             std::abs(other.bottom - bottom) < kSame && std::abs(other.top - top) < kSame;
    };
    if (std::none_of(found_.begin(), found_.end(), same)) found_.push_back(stay);
  }

  std::vector<Length> middles(Length inside, int plates, int bays) const {
    return reservoir::middles_of_stays(inside, plan_.lid_map.plate, plates, bays);
  }
  static double stands_out(const StayBars& bars) { return in_metres(std::max(bars.height, bars.thickness)); }

  /// Of lid or floor: bars on edge, seen from their ends where they run from front to back, else along.
  void level_wall(const std::string& wall, const WallBays& bays, const reservoir::SupportLayout& layout, bool hangs) {
    if (!has(wall)) return;
    const StayBars bars = bar(wall);
    const double high = stands_out(bars);
    const double bottom = hangs ? height_ - high : 0.0;
    const int first = lengthwise_ ? layout.baffles_across : layout.baffles_along;
    const int second = lengthwise_ ? layout.baffles_along : layout.baffles_across;
    for (const Length& x : middles(box_.length, first, lengthwise_ ? bays.along : bays.across))
      add(StayKind::bar, in_metres(x), in_metres(bars.thickness) / 2.0, bottom, bottom + high);
    if (!middles(box_.width, second, lengthwise_ ? bays.across : bays.along).empty())
      add(StayKind::bar, length_ / 2.0, length_ / 2.0, bottom, bottom + high);
  }

  /// Of the wall that one looks at, and the one behind: flat against it.
  void front_wall(const std::string& wall, const WallBays& bays, int plates) {
    if (!has(wall)) return;
    const double half = in_metres(bar(wall).thickness) / 2.0;
    for (const Length& x : middles(box_.length, plates, bays.along))
      add(StayKind::bar, in_metres(x), half, 0.0, height_);
    for (const Length& y : middles(box_.height, 0, bays.across))
      add(StayKind::bar, length_ / 2.0, length_ / 2.0, in_metres(y) - half, in_metres(y) + half);
  }

  /// Of left and right end: as far as they stand out.
  void end_walls(const std::string& wall, const WallBays& bays) {
    if (!has(wall)) return;
    const StayBars bars = bar(wall);
    const double out = stands_out(bars) / 2.0;
    const double half = in_metres(bars.thickness) / 2.0;
    for (const double x : {out, length_ - out}) {
      if (bays.along > 1) add(StayKind::bar, x, out, 0.0, height_);
      for (const Length& y : middles(box_.height, 0, bays.across))
        add(StayKind::bar, x, out, in_metres(y) - half, in_metres(y) + half);
    }
  }

  const Plan& plan_;
  const plan::JobReservoir& box_;
  double length_, height_;
  bool lengthwise_;  // its length is its longer measure, along which bays are counted first
  std::vector<StayInSight> found_;
};

}  // namespace

std::vector<StayInSight> stays_in_sight(const Plan& plan) { return InSight(plan).all(); }

std::vector<Shape> stay_shapes(const Plan& plan) {
  std::vector<Shape> shapes;
  for (const StayInSight& stay : stays_in_sight(plan)) {
    const auto line = [&](const char* name, std::vector<Spot> points, float width, Line kind) {
      shapes.push_back(Stroke{name, std::move(points), Ink::sheet_metal, width, kind});
    };
    switch (stay.kind) {
      case StayKind::baffle:
        line("baffle", {{stay.left, stay.bottom}, {stay.left, stay.top}}, 1.5F, Line::hidden);
        break;
      case StayKind::post:
        for (const double x : {stay.left, stay.right})
          line("post", {{x, stay.bottom}, {x, stay.top}}, 1.0F, Line::full);
        break;
      case StayKind::bar: {
        std::vector<Spot> outline = box_outline(stay.left, stay.bottom, stay.right, stay.top);
        outline.push_back(outline.front());
        line("bar", std::move(outline), 0.8F, Line::hidden);
        break;
      }
    }
  }
  return shapes;
}

std::string posts_and_bars(const Plan& plan) {
  int posts = 0;
  int bars = 0;
  for (const StayBars& each : plan.walls.bars) (each.wall == reservoir::kTies ? posts : bars) += each.count;
  std::string text;
  if (posts > 0) text = fmt::format("{} {}", posts, posts == 1 ? "post" : "posts");
  if (bars > 0) text += fmt::format("{}{} {} at the walls", text.empty() ? "" : ", ", bars, bars == 1 ? "bar" : "bars");
  return text;
}

std::string bays_of_stays(const Plan& plan) {
  const auto& layout = plan.job.reservoir.supports.layout;
  std::string text;
  const auto tell = [&](const char* wall, const std::optional<WallBays>& bays) {
    if (bays) text += fmt::format("{}{} {} x {}", text.empty() ? "" : ", ", wall, bays->along, bays->across);
  };
  if (!layout) return text;
  tell("lid", layout->lid);
  tell("floor", layout->floor);
  tell("long sides", layout->long_side);
  tell("short sides", layout->short_side);
  return text;
}

}  // namespace riserun::report
