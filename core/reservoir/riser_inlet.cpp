// clang-format off
#include <math.h>  // before Boost 1.74's pchip, which calls isnan without saying whose
#include <boost/math/interpolators/pchip.hpp>
// clang-format on

#include "reservoir/riser.h"

#include <algorithm>
#include <cassert>
#include <vector>

namespace riserun::reservoir {
namespace {

constexpr double kFreeEntry = 0.78;      // Crane TP-410 A-29, inward projecting, any wall
constexpr double kThickWallEntry = 0.5;  // Idelchik, thick-walled end well inside the tank
constexpr double kFloorScatter = 0.3;    // of sigma1: recalled values
constexpr double kGapGoverns = 0.2;      // s/D
constexpr double kSigmaWhereGapGoverns = 1.6;
constexpr double kGapContraction = 0.6;  // of the stream in the gap: an upper estimate of its loss

/// What the floor adds to the entry's K. Source: Idelchik, 3rd ed., section 3 (sigma1), from memory.
double floor_loss(double s) {
  using boost::math::interpolators::pchip;
  static const pchip<std::vector<double>> table(
      std::vector<double>{kGapGoverns, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1.0},
      std::vector<double>{kSigmaWhereGapGoverns, 0.65, 0.37, 0.25, 0.15, 0.07, 0.04, 0.0},
      -2.0 * kSigmaWhereGapGoverns / kGapGoverns, 0.0);
  if (s >= 1.0) return 0.0;
  if (s <= kGapGoverns) return kSigmaWhereGapGoverns * (kGapGoverns / s) * (kGapGoverns / s);
  return table(s);
}

/// The velocity head in the gap, as a multiple of the bore's.
double gap_loss(double s) {
  const double bore_to_gap = 1.0 / (4.0 * kGapContraction * s);
  return bore_to_gap * bore_to_gap;
}

}  // namespace

hydraulics::LineEnd riser_inlet(double clearance_to_bore) {
  assert(clearance_to_bore > 0.0);
  const double floor = floor_loss(clearance_to_bore);
  const double gap = gap_loss(clearance_to_bore);
  const double entry = kFreeEntry + floor;
  const double low = kThickWallEntry + (1.0 - kFloorScatter) * floor;
  const double high = std::max(kFreeEntry + (1.0 + kFloorScatter) * floor, gap);
  hydraulics::LineEnd end;
  end.entry_k = entry;
  end.exit_k = std::max(1.0, gap);
  end.scatter = std::max(1.0 - low / entry, high / entry - 1.0);
  // The gap's loss is an upper estimate, so the truth lies between a free exit's 1.0 and it.
  end.exit_scatter = 1.0 - 1.0 / end.exit_k;
  end.source = "Crane TP-410 A-29 and Idelchik section 3 (sigma1, from memory)";
  return end;
}

}  // namespace riserun::reservoir
