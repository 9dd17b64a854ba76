// The walls: the panels, what air pressure they may see, what one more row of stays would give; and the factors of
// safety at the setting and with the regulator failed.
#include "plan/stage/drafting.h"
#include "quantity/write.h"
#include "reservoir/relief.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::plan {

namespace {

using reservoir::Panel;
using reservoir::WallRequest;

WallRequest wall_request(const Draft& draft) {
  const Settled& settled = draft.settled;
  return {settled.box,
          draft.plan.job.reservoir.sheet.thickness,
          draft.plan.job.reservoir.supports.layout.value_or(reservoir::SupportLayout{}),
          draft.plan.levels.charge_depth,
          settled.water.density,
          settled.metal,
          settled.design_stress,
          settled.design_stress_basis};
}

std::vector<Panel> bare_panels(const Draft& draft, const BarePanel& bare, Length length, Length width) {
  return reservoir::bare_panels(length, width, draft.plan.job.reservoir.sheet.thickness, bare.lid_only,
                                draft.plan.levels.charge_depth, draft.settled.water.density);
}

std::vector<Panel> panels_of(const Draft& draft) {
  const auto& bare = draft.plan.job.reservoir.supports.widest_bare_panel;
  if (bare) return bare_panels(draft, *bare, bare->length, bare->width);
  const WallRequest request = wall_request(draft);
  return reservoir::box_panels(request.box, request.thickness, request.supports, request.water_depth, request.water);
}

reservoir::WallCheck check_at(const Draft& draft, GaugePressure pressure) {
  return reservoir::check_walls(draft.plan.walls.panels, draft.settled.metal, draft.settled.design_stress,
                                draft.settled.design_stress_basis, pressure);
}

/// The widest panel cut in two across its longer side.
std::optional<NextStay> halved_panel(const Draft& draft, const BarePanel& bare, GaugePressure limit) {
  const Length half = bare.length / 2.0;
  const auto panels = bare_panels(draft, bare, std::max(half, bare.width), std::min(half, bare.width));
  const reservoir::WallCheck check = reservoir::check_walls(panels, draft.settled.metal, draft.settled.design_stress,
                                                            draft.settled.design_stress_basis, psig(0.0));
  const Panel& weakest = check.panels[check.weakest].panel;
  return NextStay{"one more stay across the middle of each panel that wide",
                  limit,
                  check.limit,
                  weakest.name,
                  weakest.length,
                  weakest.width};
}

std::optional<NextStay> next_stay(const Draft& draft, GaugePressure limit) {
  const auto& bare = draft.plan.job.reservoir.supports.widest_bare_panel;
  if (bare) return halved_panel(draft, *bare, limit);
  const std::vector<reservoir::NextSupport> next = reservoir::next_supports(wall_request(draft));
  if (next.empty() || !(next.front().limit > limit)) return std::nullopt;
  const reservoir::NextSupport& best = next.front();
  return NextStay{best.what, limit, best.limit, best.weakest, best.panel_length, best.panel_width};
}

void assume_supports(Draft& draft) {
  const Supports& supports = draft.plan.job.reservoir.supports;
  if (supports.widest_bare_panel && !supports.widest_bare_panel->lid_only)
    draft.assume("where the widest bare panel is", "in the lid, and in the floor under the charge",
                 "'in: lid' was not given: the worse of the two counts", "reservoir.supports.widest bare panel.in");
  const auto& layout = supports.layout;
  const bool none = !supports.widest_bare_panel &&
                    (!layout || (layout->baffles_across == 0 && layout->baffles_along == 0 && !layout->lid &&
                                 !layout->floor && !layout->long_side && !layout->short_side));
  if (none)
    draft.assume("stays and baffles of the reservoir", "none: each wall is one bare panel",
                 "none were given, and that is on the safe side");
}

void caution_bulge(Draft& draft) {
  const reservoir::WallCheck& check = draft.plan.walls.at_set;
  const reservoir::PanelResult& weakest = check.panels[check.weakest];
  if (weakest.small_deflection && weakest.small_deflection_at_limit) return;
  draft.caution(Topic::walls,
                "A panel bulges by more than half its thickness, where the small-bulge plate theory behind these "
                "figures no longer holds: it over-states stress and bulge there.",
                "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells");
}

void caution_factor(Draft& draft) {
  const WallsPlan& walls = draft.plan.walls;
  const auto red = [](double factor) { return factor < reservoir::kAirLiftFactor; };
  if (red(walls.factor_at_set) || red(walls.factor_at_full_supply))
    draft.caution(
        Topic::walls,
        fmt::format("California Title 8 section 3301(e) asks a factor of safety of 4 at the greatest pressure that can "
                    "occur when air lifts a substance: this reservoir has {:.1f} on yield at the set pressure and "
                    "{:.2g} at full supply pressure.",
                    walls.factor_at_set, walls.factor_at_full_supply),
        "California Code of Regulations, Title 8, section 3301");
}

}  // namespace

void draft_wall_limit(Draft& draft) {
  WallsPlan& walls = draft.plan.walls;
  assume_supports(draft);
  walls.metal = draft.settled.metal;
  walls.panels = panels_of(draft);
  walls.limit = check_at(draft, psig(0.0)).limit;
  if (!draft.plan.job.reservoir.supports.widest_bare_panel)
    walls.limit = std::min(walls.limit, reservoir::wall_limit(wall_request(draft)));
  walls.next_stay = next_stay(draft, walls.limit);
}

void draft_walls_in_use(Draft& draft) {
  WallsPlan& walls = draft.plan.walls;
  const GaugePressure set = draft.plan.transfer.setting;
  walls.at_set = check_at(draft, set);
  walls.full_supply = draft.settled.full_supply;
  const reservoir::SafetyFactors factors = reservoir::safety_factors(walls.panels, walls.metal, set, walls.full_supply);
  walls.factor_at_set = factors.at_set_on_yield;
  walls.factor_at_set_on_ultimate = factors.at_set_on_ultimate;
  walls.factor_at_full_supply = factors.at_supply_on_yield;
  walls.factor_at_full_supply_on_ultimate = factors.at_supply_on_ultimate;
  const reservoir::Box& box = draft.settled.box;
  walls.lid_force = newtons(in_pascals(set) * in_square_metres(box.length * box.width));
  const auto& layout = draft.plan.job.reservoir.supports.layout;
  if (layout) walls.loads = reservoir::support_loads(box, *layout, set);
  if (layout && layout->lid_stays_are_posts) {
    const reservoir::WallBays bays = reservoir::lid_bays(*layout);
    const Length pitch =
        std::max(box.length / static_cast<double>(bays.along), box.width / static_cast<double>(bays.across));
    walls.stayed_limit =
        reservoir::stayed_plate_limit(draft.plan.job.reservoir.sheet.thickness, pitch, draft.settled.design_stress);
  }
  caution_bulge(draft);
  caution_factor(draft);
}

}  // namespace riserun::plan
