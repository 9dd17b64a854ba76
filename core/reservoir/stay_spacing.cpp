#include "reservoir/stay_spacing.h"

#include <algorithm>

namespace riserun::reservoir {
namespace {

const Length kClosest = inches(2.0);  // no torch comes between closer ones: common practice

/// Of that wall alone.
GaugePressure limit_of_wall(const WallRequest& request, std::string_view wall) {
  std::vector<Panel> panels =
      box_panels(request.box, request.thickness, request.supports, request.water_depth, request.water);
  std::erase_if(panels, [&](const Panel& panel) { return panel.name.find(wall) == std::string::npos; });
  return check_walls(panels, request.metal, request.design_stress, {}, GaugePressure()).limit;
}

int most_bays(Length side) { return std::max(1, static_cast<int>(side / kClosest)); }

/// Fewest bays along a side with which it stands the pressure, as many between each two baffles that hold it; nullopt:
/// none do.
std::optional<WallBays> side_bays(const WallRequest& bare, std::optional<WallBays> SupportLayout::*side, WallBays now,
                                  int baffled, std::string_view wall, Length length, GaugePressure wanted) {
  WallRequest request = bare;
  for (WallBays bays = now; bays.along <= std::max(now.along, most_bays(length));
       bays.along += baffled - bays.along % baffled) {
    request.supports.*side = bays;
    if (limit_of_wall(request, wall) >= wanted) return bays;
  }
  return std::nullopt;
}

struct Grid {
  WallBays bays;
  int stays = 0;
  GaugePressure limit;
};

/// Lid and floor alone: the sides are divided so finely that they do not count.
Grid judged(WallRequest request, WallBays bays, int stays) {
  request.supports.lid = bays;
  request.supports.floor = bays;
  request.supports.lid_stays_are_posts = stays > 0;
  request.supports.long_side = WallBays{1000, 1000};
  request.supports.short_side = WallBays{1000, 1000};
  return {bays, stays, wall_limit(request)};
}

/// Lid and floor with the stays that they have, the sides left out.
bool stand_as_they_are(WallRequest request, GaugePressure wanted) {
  if (request.supports.bare || !(request.supports.lid || request.supports.floor)) return false;
  request.supports.long_side = WallBays{1000, 1000};
  request.supports.short_side = WallBays{1000, 1000};
  return wall_limit(request) >= wanted;
}

/// Stays stand between the baffles, so their bays are a multiple of the baffles'.
std::optional<Grid> fewest_stays(const WallRequest& request, GaugePressure wanted) {
  const int along_baffled = request.supports.baffles_across + 1;
  const int across_baffled = request.supports.baffles_along + 1;
  const Grid none = judged(request, {along_baffled, across_baffled}, 0);
  if (none.limit >= wanted) return none;
  const Length longer = std::max(request.box.length, request.box.width);
  const Length shorter = std::min(request.box.length, request.box.width);
  std::optional<Grid> best;
  for (int along = 2 * along_baffled; along <= most_bays(longer); along += along_baffled)
    for (int across = 2 * across_baffled; across <= most_bays(shorter); across += across_baffled) {
      const int stays = (along - along_baffled) * (across - across_baffled);
      if (best && stays > best->stays) break;
      const Length pitch = std::max(longer / static_cast<double>(along), shorter / static_cast<double>(across));
      // The quicker rule first: it is what most of them fail by.
      if (GaugePressure() + stayed_plate_limit(request.thickness, pitch, request.design_stress) < wanted) continue;
      const Grid grid = judged(request, {along, across}, stays);
      if (grid.limit < wanted) continue;
      if (!best || stays < best->stays || grid.limit > best->limit) best = grid;
      break;
    }
  return best;
}

/// The wall has fewer bays than that, or none that are known.
bool is_coarser(const WallRequest& request, WallBays wall, WallBays than) {
  return request.supports.bare.has_value() || wall.along < than.along || wall.across < than.across;
}

}  // namespace

std::optional<StaySpacing> stay_spacing(const WallRequest& request, GaugePressure wanted) {
  WallRequest made = request;
  made.supports.bare.reset();
  const bool as_they_are = stand_as_they_are(request, wanted);
  const std::optional<Grid> grid =
      as_they_are ? Grid{lid_bays(request.supports), 0, GaugePressure()} : fewest_stays(made, wanted);
  if (!grid) return std::nullopt;
  const Length longer = std::max(made.box.length, made.box.width);
  const Length shorter = std::min(made.box.length, made.box.width);
  const WallBays long_now = long_side_bays(made.supports);
  const WallBays short_now = short_side_bays(made.supports);
  const auto long_bays = side_bays(made, &SupportLayout::long_side, long_now, made.supports.baffles_across + 1,
                                   "long side", longer, wanted);
  const auto short_bays = side_bays(made, &SupportLayout::short_side, short_now, made.supports.baffles_along + 1,
                                    "short side", shorter, wanted);
  if (!long_bays || !short_bays) return std::nullopt;
  if (!as_they_are) {
    made.supports.lid = grid->bays;
    made.supports.floor = grid->bays;
    made.supports.lid_stays_are_posts = grid->stays > 0;
  }
  made.supports.long_side = long_bays;
  made.supports.short_side = short_bays;
  return StaySpacing{made.supports,
                     longer / static_cast<double>(grid->bays.along),
                     shorter / static_cast<double>(grid->bays.across),
                     grid->stays,
                     !as_they_are && grid->stays == 0 &&
                         (is_coarser(request, lid_bays(request.supports), grid->bays) ||
                          is_coarser(request, floor_bays(request.supports), grid->bays)),
                     longer / static_cast<double>(long_bays->along),
                     long_bays->along - long_now.along,
                     shorter / static_cast<double>(short_bays->along),
                     short_bays->along - short_now.along,
                     wall_limit(made)};
}

quantity::Facts facts_of(const StaySpacing& spacing) {
  using quantity::fact;
  quantity::Facts facts;
  if (spacing.lid_on_baffles) facts.push_back(fact("lid_and_floor_welded_to_baffles", spacing.along, spacing.across));
  const SupportLayout& layout = spacing.supports;
  const WallBays lid = lid_bays(layout);
  const WallBays long_side = long_side_bays(layout);
  const WallBays short_side = short_side_bays(layout);
  if (spacing.stays > 0)
    facts.push_back(fact("stays_in_a_grid", spacing.along, spacing.across, spacing.stays, lid.along, lid.across));
  if (spacing.long_side_stiffeners > 0)
    facts.push_back(fact("stiffeners_on_long_sides", spacing.long_side, long_side.along, long_side.across));
  if (spacing.short_side_stiffeners > 0)
    facts.push_back(fact("stiffeners_on_short_sides", spacing.short_side, short_side.along, short_side.across));
  return facts;
}

}  // namespace riserun::reservoir
