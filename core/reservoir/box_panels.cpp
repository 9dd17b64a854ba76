#include "reservoir/box_panels.h"

#include "reservoir/stay_rows.h"

#include <algorithm>
#include <functional>
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

// Posts hold the sheet at points, which bends it more than a row does; the water on the floor leaves the air less.
std::optional<PressureDifference> post_limit(const WallRequest& request, const SupportLayout& supports) {
  WallRequest with_posts = request;
  with_posts.supports = supports;
  const auto stayed = stayed_surface(with_posts);
  if (!stayed) return std::nullopt;
  const PressureDifference stands = stayed_plate_limit(stayed->thickness, stayed->pitch, request.design_stress);
  return std::max(pascals(0.0), stands - stayed->water);
}

GaugePressure limit_of(const WallRequest& request, const SupportLayout& supports, const WallCheck& checked) {
  const auto posts = post_limit(request, supports);
  return posts ? std::min(checked.limit, GaugePressure() + *posts) : checked.limit;
}

NextSupport judge(const WallRequest& request, GaugePressure now, std::string what, SupportLayout supports) {
  const WallCheck checked = check(request, supports);
  const PanelResult& weakest = checked.panels[checked.weakest];
  const GaugePressure limit = limit_of(request, supports, checked);
  if (limit < checked.limit) {  // by the posts' rule
    WallRequest with_posts = request;
    with_posts.supports = supports;
    const Length pitch = stayed_surface(with_posts)->pitch;
    return {std::move(what), std::move(supports), limit, limit - now, kStayedSpan, pitch, pitch, true};
  }
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

/// One more bay between each two baffles, so that all of these stay alike.
int one_more_each(int bays, int baffles) {
  const int baffled = baffles + 1;
  return bays + baffled - bays % baffled;
}

// Stays tie lid and floor to each other, so a row of them divides both.
SupportLayout with_row_of_stays(SupportLayout supports, bool across_the_length) {
  const WallBays lid = lid_bays(supports);
  const WallBays floor = floor_bays(supports);
  const auto with_one = [&](const WallBays& bays) {
    return across_the_length ? WallBays{one_more_each(bays.along, supports.baffles_across), bays.across}
                             : WallBays{bays.along, one_more_each(bays.across, supports.baffles_along)};
  };
  supports.lid = with_one(lid);
  supports.floor = with_one(floor);
  return supports;
}

SupportLayout with_bay(SupportLayout supports, std::optional<WallBays> SupportLayout::*wall, WallBays now, int along,
                       int across) {
  supports.*wall = WallBays{now.along + along, now.across + across};
  return supports;
}

SupportLayout with_bare_panel_halved(SupportLayout supports) {
  BarePanel& bare = *supports.bare;
  const Length half = std::max(bare.length, bare.width) / 2.0;
  const Length other = std::min(bare.length, bare.width);
  bare.length = std::max(half, other);
  bare.width = std::min(half, other);
  return supports;
}

using Adds = std::function<void(const char* what, SupportLayout supports)>;

void rows_of_lid_and_floor(const SupportLayout& now, const Adds& add) {
  if (now.bare) {
    add("one more stay across the middle of each panel that wide", with_bare_panel_halved(now));
    if (!now.bare->lid_only || now.floor_carried) return;
    const WallBays floor = floor_bays(now);
    add("one more stiffener under the floor, across the length", with_bay(now, &SupportLayout::floor, floor, 1, 0));
    add("one more stiffener under the floor, along the length", with_bay(now, &SupportLayout::floor, floor, 0, 1));
    return;
  }
  add("one more baffle across the length", with_baffle_across(now));
  add("one more baffle along the length", with_baffle_along(now));
  add(now.baffles_across > 0
          ? "one more row of stays between lid and floor in each bay of the baffles, across the length"
          : "one more row of stays between lid and floor, across the length",
      with_row_of_stays(now, true));
  add(now.baffles_along > 0 ? "one more row of stays between lid and floor in each bay of the baffles, along the length"
                            : "one more row of stays between lid and floor, along the length",
      with_row_of_stays(now, false));
}

}  // namespace

bool posts_stand(const SupportLayout& s) {
  if (!s.lid_stays_are_posts || !s.lid) return false;
  const auto has_rows = [](int baffles, int bays) { return !middles_of_stays(metres(1.0), {}, baffles, bays).empty(); };
  return has_rows(s.baffles_across, s.lid->along) && has_rows(s.baffles_along, s.lid->across);
}

WallBays lid_bays(const SupportLayout& s) {
  // Where every crossing of the rows lies on a baffle there is no post, and nothing else is cut for the rows. Of one
  // row bars are made.
  const bool posts_are_meant = s.lid_stays_are_posts && s.lid && s.lid->along > 1 && s.lid->across > 1;
  const bool nothing_is_cut = posts_are_meant && !posts_stand(s);
  return bays_or(nothing_is_cut ? std::nullopt : s.lid, s.baffles_across, s.baffles_along);
}
// A post stands on the floor where it holds the lid.
WallBays floor_bays(const SupportLayout& s) {
  return bays_or(posts_stand(s) && !s.floor ? s.lid : s.floor, s.baffles_across, s.baffles_along);
}
WallBays long_side_bays(const SupportLayout& s) { return bays_or(s.long_side, s.baffles_across, 0); }
WallBays short_side_bays(const SupportLayout& s) { return bays_or(s.short_side, s.baffles_along, 0); }

// On a side wall `along` counts bays of its level measure and `across` bays of its height.
std::vector<Panel> box_panels(const Box& box, Length thickness, const SupportLayout& supports, Length water_depth,
                              Density water) {
  const Length longer = std::max(box.length, box.width);
  const Length shorter = std::min(box.length, box.width);
  const PressureDifference at_floor = water_pressure(water_depth, water);
  const auto& bare = supports.bare;
  std::vector<Panel> panels;
  panels.push_back(bare ? panel("widest lid panel", bare->length, bare->width, {}, thickness, {})
                        : panel("lid panel", longer, shorter, lid_bays(supports), thickness, {}));
  // A floor that stands on the shop's floor all over cannot bulge.
  if (!supports.floor_carried) {
    const bool stayed = bare && !bare->lid_only && !supports.floor;
    panels.push_back(stayed ? panel("widest floor panel", bare->length, bare->width, {}, thickness, at_floor)
                            : panel("floor panel", longer, shorter, floor_bays(supports), thickness, at_floor));
  }
  panels.push_back(panel("long side panel", longer, box.height, long_side_bays(supports), thickness, at_floor));
  panels.push_back(panel("short side panel", shorter, box.height, short_side_bays(supports), thickness, at_floor));
  return panels;
}

std::optional<StayedSurface> stayed_surface(const WallRequest& request) {
  const SupportLayout& supports = request.supports;
  const WallBays bays = lid_bays(supports);
  if (!posts_stand(supports)) return std::nullopt;
  const Length longer = std::max(request.box.length, request.box.width);
  const Length shorter = std::min(request.box.length, request.box.width);
  return StayedSurface{request.thickness,
                       std::max(longer / static_cast<double>(bays.along), shorter / static_cast<double>(bays.across)),
                       supports.floor_carried ? pascals(0.0) : water_pressure(request.water_depth, request.water)};
}

GaugePressure wall_limit(const WallRequest& request) {
  return limit_of(request, request.supports, check(request, request.supports));
}

GaugePressure wall_vacuum_limit(const WallRequest& request) {
  WallRequest empty = request;
  empty.water_depth = metres(0.0);
  empty.supports.floor_carried = false;
  return wall_limit(empty);
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
  rows_of_lid_and_floor(now, add);
  add(now.baffles_across > 0 ? "one more upright stiffener in each bay of the baffles on each long side"
                             : "one more upright stiffener on each long side",
      with_bay(now, &SupportLayout::long_side, long_side,
               one_more_each(long_side.along, now.baffles_across) - long_side.along, 0));
  add("one more level stiffener on each long side", with_bay(now, &SupportLayout::long_side, long_side, 0, 1));
  add(now.baffles_along > 0 ? "one more upright stiffener in each bay of the baffles on each short side"
                            : "one more upright stiffener on each short side",
      with_bay(now, &SupportLayout::short_side, short_side,
               one_more_each(short_side.along, now.baffles_along) - short_side.along, 0));
  add("one more level stiffener on each short side", with_bay(now, &SupportLayout::short_side, short_side, 0, 1));
  // Stable: of two that help alike the one that is less work, which is named first, stays first.
  std::stable_sort(next.begin(), next.end(),
                   [](const NextSupport& a, const NextSupport& b) { return a.limit > b.limit; });
  return next;
}

}  // namespace riserun::reservoir
