// The widest bare panel against the box and against the stays that are given beside it.
#include "plan/job/job_reading.h"
#include "quantity/nearly.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace riserun::plan {

using catalog::Value;
using quantity::at_most;

namespace {

/// A flat wall or a panel of it, with the name that the messages call it by.
struct Rectangle {
  std::string name;
  Length a{};
  Length b{};

  Length longer() const { return std::max(a, b); }
  Length shorter() const { return std::min(a, b); }
};

bool fits_in(const Rectangle& inner, const Rectangle& outer) {
  return at_most(inner.longer(), outer.longer() + kTape) && at_most(inner.shorter(), outer.shorter() + kTape);
}

std::string measures(const Rectangle& rectangle, UnitSystem units) {
  return fmt::format("{} x {}", write_length(rectangle.longer(), units), write_length(rectangle.shorter(), units));
}

Rectangle divided(const char* name, Length along, Length across, const reservoir::WallBays& bays) {
  return {name, along / static_cast<double>(bays.along), across / static_cast<double>(bays.across)};
}

/// The bays that the job gives beside the panel, of the walls that the panel speaks of.
std::vector<Rectangle> bays_beside(const JobReservoir& box, const reservoir::SupportLayout& layout, bool of_all_walls) {
  const Length longer = std::max(box.length, box.width);
  const Length shorter = std::min(box.length, box.width);
  std::vector<Rectangle> bays;
  if (layout.floor) bays.push_back(divided("floor bays", longer, shorter, *layout.floor));
  if (of_all_walls && layout.long_side)
    bays.push_back(divided("long side bays", longer, box.height, *layout.long_side));
  if (of_all_walls && layout.short_side)
    bays.push_back(divided("short side bays", shorter, box.height, *layout.short_side));
  return bays;
}

}  // namespace

void check_panel(JobReading& reading, const Value& root, const Job& job) {
  const JobReservoir& box = job.reservoir;
  const auto& layout = box.supports.layout;
  const auto bare = layout ? layout->bare : std::nullopt;
  const Length none = metres(0.0);
  if (!bare || !(box.length > none) || !(box.width > none) || !(box.height > none)) return;
  const Value value = root["reservoir"]["supports"]["widest bare panel"];
  const Rectangle panel{"the panel", bare->length, bare->width};
  const Rectangle lid{"lid", box.length, box.width};
  const Rectangle sides[] = {{"long side", std::max(box.length, box.width), box.height},
                             {"short side", std::min(box.length, box.width), box.height}};
  const bool in_a_side = !bare->lid_only && std::any_of(std::begin(sides), std::end(sides),
                                                        [&](const Rectangle& side) { return fits_in(panel, side); });
  if (!fits_in(panel, lid) && !in_a_side)
    reading.problems.add(
        value, fmt::format("{}: a panel of {} does not fit {}; allowed is up to the bare lid, {}{}", value.path(),
                           measures(panel, job.units), bare->lid_only ? "the lid" : "any wall of the reservoir",
                           measures(lid, job.units),
                           bare->lid_only ? "" : fmt::format(", or a bare side, {}", measures(sides[0], job.units))));
  if (bare->lid_only) return;
  for (const Rectangle& bay : bays_beside(box, *layout, value["in"].exists()))
    if (!fits_in(bay, panel))
      reading.problems.add(
          value, fmt::format("{}: {} is not the widest: the '{}' beside it leave panels of {}; allowed is from there "
                             "on, more bays, or 'in: lid'",
                             value.path(), measures(panel, job.units), bay.name, measures(bay, job.units)));
}

}  // namespace riserun::plan
