#include "reservoir/box_panels.h"

#include <algorithm>
#include <utility>

namespace riserun::reservoir {
namespace {

WallBays bays_or(const std::optional<WallBays>& given, int baffles_along_wall, int baffles_across_wall) {
  if (given) return *given;
  return {baffles_along_wall + 1, baffles_across_wall + 1};
}

Panel panel(std::string name, Length along, Length across, WallBays bays, Length thickness, PressureDifference water) {
  const Length a = along / static_cast<double>(bays.along);
  const Length b = across / static_cast<double>(bays.across);
  return {std::move(name), std::max(a, b), std::min(a, b), thickness, water};
}

PressureDifference water_pressure(Length depth, Density water) {
  return pressure_of(metres_of_head(in_metres(depth)), water);
}

WallCheck check(const WallRequest& request, const SupportLayout& supports) {
  return check_walls(box_panels(request.box, request.thickness, supports, request.water_depth, request.water),
                     request.metal, request.design_stress, request.design_stress_basis, GaugePressure());
}

// Posts hold the sheet at points, which bends it more than a row does.
std::optional<PressureDifference> post_limit(const WallRequest& request, const SupportLayout& supports) {
  const WallBays bays = lid_bays(supports);
  if (!supports.lid_stays_are_posts || bays.along < 2 || bays.across < 2) return std::nullopt;
  const Length pitch = std::max(request.box.length / static_cast<double>(bays.along),
                                request.box.width / static_cast<double>(bays.across));
  return stayed_plate_limit(request.thickness, pitch, request.design_stress);
}

GaugePressure limit_of(const WallRequest& request, const SupportLayout& supports, const WallCheck& checked) {
  const auto posts = post_limit(request, supports);
  return posts ? std::min(checked.limit, GaugePressure() + *posts) : checked.limit;
}

NextSupport judge(const WallRequest& request, GaugePressure now, std::string what, SupportLayout supports) {
  const WallCheck checked = check(request, supports);
  const PanelResult& weakest = checked.panels[checked.weakest];
  const GaugePressure limit = limit_of(request, supports, checked);
  return {std::move(what),
          std::move(supports),
          limit,
          limit - now,
          weakest.panel.name,
          weakest.panel.length,
          weakest.panel.width,
          weakest.small_deflection_at_limit};
}

// A baffle divides every wall that it is welded to. Bays that were not stated follow from the baffles by themselves;
// stated ones have to be counted on.
SupportLayout with_baffle_across(SupportLayout supports) {
  ++supports.baffles_across;
  if (supports.lid) ++supports.lid->along;
  if (supports.floor) ++supports.floor->along;
  if (supports.long_side) ++supports.long_side->along;
  return supports;
}

SupportLayout with_baffle_along(SupportLayout supports) {
  ++supports.baffles_along;
  if (supports.lid) ++supports.lid->across;
  if (supports.floor) ++supports.floor->across;
  if (supports.short_side) ++supports.short_side->along;
  return supports;
}

// Stays tie lid and floor to each other, so a row of them divides both.
SupportLayout with_row_of_stays(SupportLayout supports, int along, int across) {
  const WallBays lid = lid_bays(supports);
  const WallBays floor = floor_bays(supports);
  supports.lid = WallBays{lid.along + along, lid.across + across};
  supports.floor = WallBays{floor.along + along, floor.across + across};
  return supports;
}

SupportLayout with_bay(SupportLayout supports, std::optional<WallBays> SupportLayout::*wall, WallBays now, int along,
                       int across) {
  supports.*wall = WallBays{now.along + along, now.across + across};
  return supports;
}

}  // namespace

WallBays lid_bays(const SupportLayout& s) { return bays_or(s.lid, s.baffles_across, s.baffles_along); }
WallBays floor_bays(const SupportLayout& s) { return bays_or(s.floor, s.baffles_across, s.baffles_along); }
WallBays long_side_bays(const SupportLayout& s) { return bays_or(s.long_side, s.baffles_across, 0); }
WallBays short_side_bays(const SupportLayout& s) { return bays_or(s.short_side, s.baffles_along, 0); }

// On a side wall `along` counts bays of its level measure and `across` bays of its height.
std::vector<Panel> box_panels(const Box& box, Length thickness, const SupportLayout& supports, Length water_depth,
                              Density water) {
  const Length longer = std::max(box.length, box.width);
  const Length shorter = std::min(box.length, box.width);
  const PressureDifference at_floor = water_pressure(water_depth, water);
  std::vector<Panel> panels;
  panels.push_back(panel("lid panel", longer, shorter, lid_bays(supports), thickness, {}));
  // A floor that stands on the shop's floor all over cannot bulge.
  if (!supports.floor_carried) {
    panels.push_back(panel("floor panel", longer, shorter, floor_bays(supports), thickness, at_floor));
  }
  panels.push_back(panel("long side panel", longer, box.height, long_side_bays(supports), thickness, at_floor));
  panels.push_back(panel("short side panel", shorter, box.height, short_side_bays(supports), thickness, at_floor));
  return panels;
}

std::vector<Panel> bare_panels(Length length, Length width, Length thickness, bool lid_only, Length water_depth,
                               Density water) {
  std::vector<Panel> panels = {panel("widest lid panel", length, width, {}, thickness, {})};
  if (!lid_only) {
    panels.push_back(panel("widest floor panel", length, width, {}, thickness, water_pressure(water_depth, water)));
  }
  return panels;
}

GaugePressure wall_limit(const WallRequest& request) {
  return limit_of(request, request.supports, check(request, request.supports));
}

std::vector<NextSupport> next_supports(const WallRequest& request) {
  const SupportLayout& now = request.supports;
  const GaugePressure limit = wall_limit(request);
  const WallBays long_side = long_side_bays(now);
  const WallBays short_side = short_side_bays(now);
  std::vector<NextSupport> next;
  const auto add = [&](std::string what, SupportLayout supports) {
    next.push_back(judge(request, limit, std::move(what), std::move(supports)));
  };
  add("one more baffle across the length", with_baffle_across(now));
  add("one more baffle along the length", with_baffle_along(now));
  add("one more row of stays between lid and floor, across the length", with_row_of_stays(now, 1, 0));
  add("one more row of stays between lid and floor, along the length", with_row_of_stays(now, 0, 1));
  add("one more upright stiffener on each long side", with_bay(now, &SupportLayout::long_side, long_side, 1, 0));
  add("one more level stiffener on each long side", with_bay(now, &SupportLayout::long_side, long_side, 0, 1));
  add("one more upright stiffener on each short side", with_bay(now, &SupportLayout::short_side, short_side, 1, 0));
  add("one more level stiffener on each short side", with_bay(now, &SupportLayout::short_side, short_side, 0, 1));
  // Stable: of two that help alike the one that is less work, which is named first, stays first.
  std::stable_sort(next.begin(), next.end(),
                   [](const NextSupport& a, const NextSupport& b) { return a.limit > b.limit; });
  return next;
}

SupportLoads support_loads(const Box& box, const SupportLayout& supports, GaugePressure pressure) {
  const Length longer = std::max(box.length, box.width);
  const Length shorter = std::min(box.length, box.width);
  const WallBays bays = lid_bays(supports);
  const Length bay_along = longer / static_cast<double>(bays.along);
  const Length bay_across = shorter / static_cast<double>(bays.across);
  const auto on = [&](Length a, Length b) { return newtons(in_pascals(pressure) * in_square_metres(a * b)); };
  // Each row or post carries what lies halfway to its neighbours on both sides, which is one bay.
  SupportLoads loads;
  loads.lid = on(longer, shorter);
  if (supports.lid_stays_are_posts && bays.along > 1 && bays.across > 1) {
    loads.posts = (bays.along - 1) * (bays.across - 1);
    loads.each_post = on(bay_along, bay_across);
    return loads;
  }
  loads.rows_across = bays.along - 1;
  loads.rows_along = bays.across - 1;
  if (loads.rows_across > 0) {
    loads.each_row_across = on(bay_along, shorter);
    loads.weld_of_row_across = loads.each_row_across / shorter;
  }
  if (loads.rows_along > 0) {
    loads.each_row_along = on(bay_across, longer);
    loads.weld_of_row_along = loads.each_row_along / longer;
  }
  return loads;
}

}  // namespace riserun::reservoir
