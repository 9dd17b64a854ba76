#include "reservoir/stay_bars.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace riserun::reservoir {
namespace {

constexpr double kQuarterInch = 0.25 * kMetresPerInch;
constexpr double kTallestBar = 12.0 * kMetresPerInch;
constexpr double kEighthInch = 0.125 * kMetresPerInch;
constexpr double kThicknesses[] = {3.0 / 16, 1.0 / 4, 3.0 / 8, 1.0 / 2, 5.0 / 8, 3.0 / 4, 1.0};  // in, as it is sold

double rounded_up(double metres, double step) { return std::ceil(metres / step - 1e-9) * step; }

/// The thinnest flat bar that carries it without being slender.
void size_bar(StayBars& bars, Stress allowed, Stress elastic_modulus) {
  const double force = in_newtons(bars.load);
  const double length = in_metres(bars.length);
  for (const double inches_thick : kThicknesses) {
    const double thickness = inches_thick * kMetresPerInch;
    const double of_strength = std::sqrt(6.0 * force * length / 8.0 / (in_pascals(allowed) * thickness));
    const double of_bulge = std::cbrt(12.0 * 5.0 * force * length * length /
                                      (384.0 * in_pascals(elastic_modulus) * thickness * kBulgeOfBar));
    const double height = rounded_up(std::max({of_strength, of_bulge, 4.0 * kQuarterInch}), kQuarterInch);
    bars.thickness = metres(thickness);
    bars.height = metres(height <= kTallestBar ? height : 0.0);
    if (height <= kHeightOfBar * thickness) return;
  }
}

/// A wall with its longer measure and its shorter one, and the pressure at its lowest edge.
struct Wall {
  const char* name;
  Length along;
  Length across;
  PressureDifference pressure;
  int alike;
};

class Bars {
 public:
  Bars(Stress allowed, Stress elastic_modulus) : allowed_(allowed), elastic_modulus_(elastic_modulus) {}

  void add_rows(const Wall& wall, WallBays bays) {
    add(wall, bays.along - 1, wall.across, wall.along / static_cast<double>(bays.along));
    add(wall, bays.across - 1, wall.along, wall.across / static_cast<double>(bays.across));
  }

  void add_ties(const Wall& lid, Length height, WallBays bays) {
    StayBars ties{kTies, (bays.along - 1) * (bays.across - 1), height, {}, {}, {}};
    const Length a = lid.along / static_cast<double>(bays.along);
    const Length b = lid.across / static_cast<double>(bays.across);
    ties.load = newtons(in_pascals(lid.pressure) * in_square_metres(a * b));
    const double side = rounded_up(std::sqrt(in_newtons(ties.load) / in_pascals(allowed_)), kEighthInch);
    ties.thickness = ties.height = std::max(metres(side), kThinnestTie);
    bars_.push_back(std::move(ties));
  }

  std::vector<StayBars> made() && { return std::move(bars_); }

 private:
  void add(const Wall& wall, int rows, Length span, Length strip) {
    if (rows < 1) return;
    StayBars bars{wall.name, rows * wall.alike, span, {}, {}, {}};
    bars.load = newtons(in_pascals(wall.pressure) * in_square_metres(span * strip));
    size_bar(bars, allowed_, elastic_modulus_);
    bars_.push_back(std::move(bars));
  }

  Stress allowed_;
  Stress elastic_modulus_;
  std::vector<StayBars> bars_;
};

}  // namespace

std::vector<StayBars> stay_bars(const Box& box, const SupportLayout& supports, const StayLoad& load, Stress allowed,
                                Stress elastic_modulus) {
  if (supports.bare) return {};
  const Length longer = std::max(box.length, box.width);
  const Length shorter = std::min(box.length, box.width);
  const PressureDifference air = load.air - GaugePressure();
  const PressureDifference wet = air + pressure_of(metres_of_head(in_metres(load.water_depth)), load.water);
  Bars bars(allowed, elastic_modulus);
  const Wall lid{"lid", longer, shorter, air, 1};
  if (supports.lid) {
    const bool posts = supports.lid_stays_are_posts && supports.lid->along > 1 && supports.lid->across > 1;
    if (posts)
      bars.add_ties(lid, box.height, *supports.lid);
    else
      bars.add_rows(lid, *supports.lid);
  }
  const bool tied = supports.lid && supports.lid_stays_are_posts;
  if (supports.floor && !supports.floor_carried && !tied)
    bars.add_rows({"floor", longer, shorter, wet, 1}, *supports.floor);
  if (supports.long_side) bars.add_rows({"long sides", longer, box.height, wet, 2}, *supports.long_side);
  if (supports.short_side) bars.add_rows({"short sides", shorter, box.height, wet, 2}, *supports.short_side);
  return std::move(bars).made();
}

}  // namespace riserun::reservoir
