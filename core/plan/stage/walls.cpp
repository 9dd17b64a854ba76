// The walls: the panels, what air pressure they may see, what one more row of stays would give; and the factors of
// safety at the setting and with the regulator failed.
#include "plan/stage/walls.h"

#include "reservoir/relief.h"

#include <algorithm>

namespace riserun::plan {

namespace {

using reservoir::Panel;
using reservoir::WallRequest;

WallRequest wall_request(const Inputs& inputs, Length charge) {
  const Settled& settled = inputs.settled;
  return {settled.box,
          inputs.job.reservoir.sheet.thickness,
          inputs.job.reservoir.supports.layout.value_or(reservoir::SupportLayout{}),
          charge,
          settled.water.density,
          settled.metal,
          settled.design_stress,
          settled.design_stress_basis};
}

std::vector<Panel> bare_panels(const Inputs& inputs, Length charge, const BarePanel& bare, Length length,
                               Length width) {
  return reservoir::bare_panels(length, width, inputs.job.reservoir.sheet.thickness, bare.lid_only, charge,
                                inputs.settled.water.density);
}

std::vector<Panel> panels_of(const Inputs& inputs, Length charge) {
  const auto& bare = inputs.job.reservoir.supports.widest_bare_panel;
  if (bare) return bare_panels(inputs, charge, *bare, bare->length, bare->width);
  const WallRequest request = wall_request(inputs, charge);
  return reservoir::box_panels(request.box, request.thickness, request.supports, request.water_depth, request.water);
}

/// The air pressure at which the weakest wall's stress is `allowed`.
GaugePressure limit_at(const Inputs& inputs, const std::vector<Panel>& panels, Length charge, Stress allowed) {
  const GaugePressure limit = reservoir::check_walls(panels, inputs.settled.metal, allowed, {}, psig(0.0)).limit;
  if (inputs.job.reservoir.supports.widest_bare_panel) return limit;
  WallRequest request = wall_request(inputs, charge);
  request.design_stress = allowed;
  return std::min(limit, reservoir::wall_limit(request));
}

reservoir::WallCheck check_at(const Settled& settled, const std::vector<Panel>& panels, GaugePressure pressure) {
  return reservoir::check_walls(panels, settled.metal, settled.design_stress, settled.design_stress_basis, pressure);
}

/// The widest panel cut in two across its longer side.
std::optional<NextStay> halved_panel(const Inputs& inputs, Length charge, const BarePanel& bare, GaugePressure limit) {
  const Length half = bare.length / 2.0;
  const auto panels = bare_panels(inputs, charge, bare, std::max(half, bare.width), std::min(half, bare.width));
  const reservoir::WallCheck check = check_at(inputs.settled, panels, psig(0.0));
  const Panel& weakest = check.panels[check.weakest].panel;
  return NextStay{"one more stay across the middle of each panel that wide",
                  limit,
                  check.limit,
                  weakest.name,
                  weakest.length,
                  weakest.width};
}

std::optional<NextStay> next_stay(const Inputs& inputs, Length charge, GaugePressure limit) {
  const auto& bare = inputs.job.reservoir.supports.widest_bare_panel;
  if (bare) return halved_panel(inputs, charge, *bare, limit);
  const std::vector<reservoir::NextSupport> next = reservoir::next_supports(wall_request(inputs, charge));
  if (next.empty() || !(next.front().limit > limit)) return std::nullopt;
  const reservoir::NextSupport& best = next.front();
  return NextStay{best.what, limit, best.limit, best.weakest, best.panel_length, best.panel_width};
}

void assume_supports(const Supports& supports, Remarks& remarks) {
  if (supports.widest_bare_panel && !supports.widest_bare_panel->lid_only)
    remarks.assume(fact("bare_panel_in_lid_and_floor"), "reservoir.supports.widest bare panel.in");
  const auto& layout = supports.layout;
  const bool none = !supports.widest_bare_panel &&
                    (!layout || (layout->baffles_across == 0 && layout->baffles_along == 0 && !layout->lid &&
                                 !layout->floor && !layout->long_side && !layout->short_side));
  if (none) remarks.assume(fact("no_stays"));
  const bool baffles = layout && layout->baffles_across + layout->baffles_along > 0;
  if (baffles && !supports.passages)
    remarks.assume(fact("baffles_have_passages", kPassageAtFloor, kPassageAtLid), "reservoir.supports.passages");
}

void caution_bulge(const reservoir::WallCheck& check, Remarks& remarks) {
  const reservoir::PanelResult& weakest = check.panels[check.weakest];
  if (weakest.small_deflection && weakest.small_deflection_at_limit) return;
  remarks.caution(Topic::walls, fact("panel_bulges_beyond_theory"),
                  "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells");
}

}  // namespace

WallLimit find_wall_limit(const Inputs& inputs, Length charge, Remarks& remarks) {
  const Supports& supports = inputs.job.reservoir.supports;
  assume_supports(supports, remarks);
  WallLimit walls;
  walls.panels = panels_of(inputs, charge);
  walls.limit = limit_at(inputs, walls.panels, charge, inputs.settled.design_stress);
  walls.four_to_one =
      limit_at(inputs, walls.panels, charge, inputs.settled.metal.yield * (1.0 / reservoir::kAirLiftFactor));
  walls.next_stay = next_stay(inputs, charge, walls.limit);
  return walls;
}

WallsPlan plan_walls(const Inputs& inputs, const WallLimit& limit, GaugePressure setting, Remarks& remarks) {
  WallsPlan walls;
  walls.metal = inputs.settled.metal;
  walls.panels = limit.panels;
  walls.limit = limit.limit;
  walls.four_to_one = limit.four_to_one;
  walls.next_stay = limit.next_stay;
  walls.at_set = check_at(inputs.settled, walls.panels, setting);
  walls.full_supply = inputs.settled.full_supply;
  const reservoir::SafetyFactors factors =
      reservoir::safety_factors(walls.panels, walls.metal, setting, walls.full_supply);
  walls.factor_at_set = factors.at_set_on_yield;
  walls.factor_at_set_on_ultimate = factors.at_set_on_ultimate;
  walls.factor_at_full_supply = factors.at_supply_on_yield;
  walls.factor_at_full_supply_on_ultimate = factors.at_supply_on_ultimate;
  const reservoir::Box& box = inputs.settled.box;
  walls.lid_force = newtons(in_pascals(setting) * in_square_metres(box.length * box.width));
  const auto& layout = inputs.job.reservoir.supports.layout;
  if (layout) walls.loads = reservoir::support_loads(box, *layout, setting);
  if (layout && layout->lid_stays_are_posts) {
    const reservoir::WallBays bays = reservoir::lid_bays(*layout);
    const Length pitch =
        std::max(box.length / static_cast<double>(bays.along), box.width / static_cast<double>(bays.across));
    walls.stayed_limit =
        reservoir::stayed_plate_limit(inputs.job.reservoir.sheet.thickness, pitch, inputs.settled.design_stress);
  }
  caution_bulge(walls.at_set, remarks);
  return walls;
}

}  // namespace riserun::plan
