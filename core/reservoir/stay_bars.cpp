#include "reservoir/stay_bars.h"

#include "reservoir/plug_welds.h"
#include "reservoir/stay_rows.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
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

/// A wall with its longer measure and its shorter one, the baffles that divide each, and the pressure at its lowest
/// edge.
struct Wall {
  const char* name;
  Length along;
  Length across;
  int baffles_of_along;
  int baffles_of_across;
  PressureDifference pressure;
  int alike;
};

const Length kSameLength = inches(1.0 / 64.0);  // no saw tells them apart

/// Of one row: those of one length, with their bays.
struct Pieces {
  Length length{};
  std::vector<int> bays;
};

/// The longest first, those too short to be there left out.
std::vector<Pieces> alike_in(const std::vector<Length>& lengths) {
  std::vector<int> order(lengths.size());
  std::iota(order.begin(), order.end(), 0);
  const auto at = [&](int bay) { return lengths[static_cast<std::size_t>(bay)]; };
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return at(a) > at(b); });
  std::vector<Pieces> pieces;
  for (const int bay : order) {
    if (at(bay) < kSameLength) break;
    if (pieces.empty() || pieces.back().length - at(bay) > kSameLength) pieces.push_back({at(bay), {}});
    pieces.back().bays.push_back(bay + 1);
  }
  for (Pieces& alike : pieces) std::sort(alike.bays.begin(), alike.bays.end());
  return pieces;
}

class Bars {
 public:
  Bars(Length plate, Stress allowed, Stress elastic_modulus, const LidSheet& lid)
      : plate_(plate), allowed_(allowed), elastic_modulus_(elastic_modulus), lid_(lid) {}

  void add_rows(const Wall& wall, WallBays bays) {
    const std::vector<Length> through = middles_of_stays(wall.along, plate_, wall.baffles_of_along, bays.along);
    const Length thickness = add(wall, static_cast<int>(through.size()), wall.along / static_cast<double>(bays.along),
                                 clear_lengths(wall.across, baffles(wall.across, wall.baffles_of_across)), false);
    std::vector<Crossing> crossings = baffles(wall.along, wall.baffles_of_along);
    for (const Length& middle : through) crossings.push_back({middle, thickness});
    const std::vector<Length> between = middles_of_stays(wall.across, plate_, wall.baffles_of_across, bays.across);
    add(wall, static_cast<int>(between.size()), wall.across / static_cast<double>(bays.across),
        clear_lengths(wall.along, std::move(crossings)), true);
  }

  void add_ties(const Wall& lid, Length height, WallBays bays) {
    const std::size_t along = middles_of_stays(lid.along, plate_, lid.baffles_of_along, bays.along).size();
    const std::size_t across = middles_of_stays(lid.across, plate_, lid.baffles_of_across, bays.across).size();
    if (along * across == 0) return;
    StayBars ties{kTies, static_cast<int>(along * across), height, {}, {}, {}, false, {}};
    const Length a = lid.along / static_cast<double>(bays.along);
    const Length b = lid.across / static_cast<double>(bays.across);
    ties.load = newtons(in_pascals(lid.pressure) * in_square_metres(a * b));
    const double of_strength = std::sqrt(in_newtons(ties.load) / in_pascals(allowed_));
    const double side = std::max(of_strength, in_metres(plug_hole(ties.load, lid_.thickness, lid_.metal)));
    ties.thickness = ties.height = std::max(metres(rounded_up(side, kEighthInch)), kThinnestTie);
    bars_.push_back(std::move(ties));
  }

  std::vector<StayBars> made() && { return std::move(bars_); }

 private:
  std::vector<Crossing> baffles(Length inside, int count) const {
    std::vector<Crossing> crossings;
    for (const Length& middle : middles_of_baffles(inside, plate_, count)) crossings.push_back({middle, plate_});
    return crossings;
  }

  /// All pieces of a wall's rows one way are of the flat bar that the longest takes. Returns its thickness.
  Length add(const Wall& wall, int rows, Length strip, const std::vector<Length>& spans, bool between) {
    Length thickness{};
    if (rows < 1) return thickness;
    Length height{};
    for (Pieces& pieces : alike_in(spans)) {
      const int count = static_cast<int>(pieces.bays.size()) * rows * wall.alike;
      StayBars bars{wall.name, count, pieces.length, {}, thickness, height, between, {}};
      if (pieces.bays.size() < spans.size()) bars.bays = std::move(pieces.bays);
      bars.load = newtons(in_pascals(wall.pressure) * in_square_metres(pieces.length * strip));
      if (thickness == Length{}) size_bar(bars, allowed_, elastic_modulus_);
      thickness = bars.thickness;
      height = bars.height;
      bars_.push_back(std::move(bars));
    }
    return thickness;
  }

  Length plate_;
  Stress allowed_;
  Stress elastic_modulus_;
  LidSheet lid_;
  std::vector<StayBars> bars_;
};

}  // namespace

std::vector<StayBars> stay_bars(const Box& box, Length plate, const SupportLayout& supports, const StayLoad& load,
                                Stress allowed, Stress elastic_modulus, const LidSheet& sheet) {
  if (supports.bare) return {};
  const Length longer = std::max(box.length, box.width);
  const Length shorter = std::min(box.length, box.width);
  const PressureDifference air = load.air - GaugePressure();
  const PressureDifference wet = air + pressure_of(metres_of_head(in_metres(load.water_depth)), load.water);
  Bars bars(plate, allowed, elastic_modulus, sheet);
  const int along = supports.baffles_across;  // that divide the length
  const int across = supports.baffles_along;
  const Wall lid{"lid", longer, shorter, along, across, air, 1};
  if (supports.lid) {
    const bool posts = supports.lid_stays_are_posts && supports.lid->along > 1 && supports.lid->across > 1;
    if (posts)
      bars.add_ties(lid, box.height, *supports.lid);
    else
      bars.add_rows(lid, *supports.lid);
  }
  if (supports.floor && !supports.floor_carried && !posts_stand(supports))
    bars.add_rows({"floor", longer, shorter, along, across, wet, 1}, *supports.floor);
  if (supports.long_side) bars.add_rows({"long sides", longer, box.height, along, 0, wet, 2}, *supports.long_side);
  if (supports.short_side) bars.add_rows({"short sides", shorter, box.height, across, 0, wet, 2}, *supports.short_side);
  return std::move(bars).made();
}

}  // namespace riserun::reservoir
