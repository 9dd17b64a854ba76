#include "plan/stage/walls.h"

#include "hydraulics/fluid.h"
#include "plan/judge/stiffer.h"
#include "plan/settle/wall_request.h"
#include "reservoir/relief.h"
#include "reservoir/test_pressure.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::plan {

namespace {

using reservoir::Panel;
using reservoir::WallRequest;

/// The air pressure at which the weakest wall's stress is `allowed`.
GaugePressure limit_at(WallRequest request, Stress allowed) {
  request.design_stress = allowed;
  return reservoir::wall_limit(request);
}

reservoir::WallCheck check_at(const Settled& settled, const std::vector<Panel>& panels, GaugePressure pressure) {
  return reservoir::check_walls(panels, settled.metal, settled.design_stress, settled.design_stress_basis, pressure);
}

std::optional<NextStay> next_stay(const WallRequest& request, GaugePressure limit) {
  const std::vector<reservoir::NextSupport> next = reservoir::next_supports(request);
  constexpr double kPays = 1.01;  // less is not seen in the limit as it is printed
  if (next.empty() || !(next.front().limit > gauge_pascals(kPays * in_pascals(limit)))) return std::nullopt;
  const reservoir::NextSupport& best = next.front();
  return NextStay{best.what, best.supports, limit, best.limit, best.weakest, best.panel_length, best.panel_width};
}

bool has_baffles(const Supports& supports) {
  return supports.layout && supports.layout->baffles_across + supports.layout->baffles_along > 0;
}

void assume_supports(const Inputs& inputs, Remarks& remarks) {
  const Supports& supports = inputs.job.reservoir.supports;
  const auto& layout = supports.layout;
  if (layout && layout->bare && !layout->bare->lid_only)
    remarks.assume(fact("bare_panel_in_lid_and_floor"), "reservoir.supports.widest bare panel.in");
  const bool none = !layout || (!layout->bare && !has_baffles(supports) && !layout->lid && !layout->floor &&
                                !layout->long_side && !layout->short_side);
  if (none) remarks.assume(fact("no_stays"));
  if (are_shut_in(inputs)) remarks.assume(fact("supports_are_inside"), "reservoir.supports");
  if (layout && layout->bare && !layout->long_side && !layout->short_side) remarks.assume(fact("sides_are_bare"));
  if (!supports.floor_carried) remarks.assume(fact("floor_on_legs"), "reservoir.supports.floor carried");
}

void caution_bulge(const reservoir::WallCheck& check, Remarks& remarks) {
  const reservoir::PanelResult& weakest = check.panels[check.weakest];
  if (weakest.small_deflection && weakest.small_deflection_at_limit) return;
  remarks.caution(Topic::walls, fact("panel_bulges_beyond_theory"),
                  "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells");
}

const char* const kFloorBars = "floor";       // as reservoir/stay_bars names that wall
const Length kMouseHole = inches(1.0 / 2.0);  // of its height: common practice

bool bars_on_floor(const WallsPlan& walls) {
  return std::any_of(walls.bars.begin(), walls.bars.end(),
                     [](const reservoir::StayBars& bars) { return bars.wall == kFloorBars; });
}

/// Walls that keep 4 there have room for the least leak test with air and its relief valve, too.
const GaugePressure kLeastAtFour = psig(0.75);
const GaugePressure kLeastRead = psig(0.005);  // half a hundredth: no dial shows it

/// With room for the leak test and its relief valve.
GaugePressure wanted_limit(GaugePressure in_use) {
  return gauge_pascals(std::max(in_pascals(in_use), in_pascals(reservoir::kLeastTestPressure)) *
                       reservoir::kLimitOverTestPressure);
}

void set_factors(const Inputs& inputs, GaugePressure setting, WallsPlan& walls) {
  walls.full_supply = inputs.settled.full_supply;
  const reservoir::SafetyFactors factors =
      reservoir::safety_factors(walls.panels, walls.metal, setting, walls.full_supply, walls.stayed);
  walls.factor_at_set = factors.at_set_on_yield;
  walls.factor_at_set_on_ultimate = factors.at_set_on_ultimate;
  walls.factor_at_full_supply = factors.at_supply_on_yield;
  walls.factor_at_full_supply_on_ultimate = factors.at_supply_on_ultimate;
}

/// Bars are sold as plate is: no better than the metal's own grade, whatever the sheet's certificate says.
Stress allowed_in_bars(const Inputs& inputs) {
  const auto plain = reservoir::find_sheet_metal(inputs.job.reservoir.sheet.metal);
  const Stress design = inputs.settled.design_stress;
  return plain ? std::min(design, reservoir::design_stress(*plain).stress) : design;
}

void set_loads(const Inputs& inputs, const WallRequest& request, GaugePressure setting, WallsPlan& walls) {
  walls.lid_force = reservoir::support_loads(request.box, request.supports, setting).lid;
  walls.loads_at = std::max(walls.limit, setting);
  walls.loads = reservoir::support_loads(request.box, request.supports, walls.loads_at);
  walls.bars =
      reservoir::stay_bars(request.box, inputs.settled.baffle_plate, request.supports,
                           {walls.loads_at, request.water_depth, request.water}, allowed_in_bars(inputs),
                           walls.metal.elastic_modulus, {inputs.job.reservoir.sheet.thickness, walls.metal.weld_metal});
  walls.weld_throat =
      reservoir::weld_throat(std::max(walls.loads.weld_of_row(), walls.loads.weld_of_edge), walls.metal.weld_metal);
}

void set_vacuum(const Inputs& inputs, const WallRequest& request, bool riser_lets_air_in, WallsPlan& walls) {
  const Settled& settled = inputs.settled;
  walls.vacuum_limit = reservoir::wall_vacuum_limit(request);
  walls.warmest = settled.warmest;
  walls.coldest = settled.coldest;
  if (!riser_lets_air_in)
    walls.cooling_vacuum = hydraulics::vacuum_of_cooling(settled.warmest, settled.coldest, settled.atmosphere);
}

void set_stays(const Inputs& inputs, WallRequest request, const WallLoad& load, WallsPlan& walls) {
  if (walls.limit < load.in_use) walls.stays_for_use = reservoir::stay_spacing(request, wanted_limit(load.in_use));
  if (walls.four_to_one >= load.in_use) return;
  WallRequest stayed = request;
  request.design_stress = quarter_of_yield(inputs.settled);
  walls.stays_for_four = reservoir::stay_spacing(request, load.in_use);
  if (!walls.stays_for_four) return;
  // The limit that is told of stays is that of the design stress, here as in a mend.
  stayed.supports = walls.stays_for_four->supports;
  walls.stays_for_four->limit = reservoir::wall_limit(stayed);
}

}  // namespace

bool are_shut_in(const Inputs& inputs) {
  const auto& layout = inputs.job.reservoir.supports.layout;
  return inputs.settled.lid_closed && layout &&
         (layout->baffles_across + layout->baffles_along > 0 || layout->lid || layout->floor || layout->long_side ||
          layout->short_side);
}

std::optional<Passages> find_passages(const Inputs& inputs, Length riser_bore, Remarks& remarks) {
  const Supports& supports = inputs.job.reservoir.supports;
  if (!has_baffles(supports) || !supports.passages.value_or(true)) return std::nullopt;
  // Two corners, each half a square: together the square of the leg.
  const double bore = in_inches(riser_bore);
  const double leg = std::sqrt(kPassageOverRiser * std::numbers::pi / 4.0 * bore * bore);
  const Length at_floor = std::max(kPassageAtFloor, inches(std::ceil(leg * 4.0) / 4.0));
  if (!supports.passages)
    remarks.assume(fact("baffles_have_passages", at_floor, kPassageAtLid), "reservoir.supports.passages");
  return Passages{at_floor, kPassageAtLid, !supports.passages};
}

void add_mouse_holes(const Inputs& inputs, Length riser_bore, WallsPlan& walls, Remarks& remarks) {
  const Supports& supports = inputs.job.reservoir.supports;
  if (!bars_on_floor(walls) || !supports.passages.value_or(true)) return;
  // Each as wide as the riser.
  const double area = std::numbers::pi / 4.0 * in_inches(riser_bore) * in_inches(riser_bore);
  const Length along = inches(std::ceil(area / in_inches(kMouseHole) * 4.0) / 4.0);
  walls.mouse_holes = MouseHoles{along, kMouseHole};
  for (reservoir::StayBars& bars : walls.bars)
    if (bars.wall == kFloorBars && bars.height > metres(0.0)) bars.height += kMouseHole;
  if (!supports.passages)
    remarks.assume(fact("floor_stays_have_mouse_holes", along, kMouseHole), "reservoir.supports.passages");
}

WallLimit find_wall_limit(const Inputs& inputs, Length charge, Remarks& remarks) {
  assume_supports(inputs, remarks);
  const WallRequest request = wall_request(inputs.job, inputs.settled, charge);
  WallLimit walls;
  walls.panels =
      reservoir::box_panels(request.box, request.thickness, request.supports, request.water_depth, request.water);
  walls.limit = reservoir::wall_limit(request);
  walls.four_to_one = limit_at(request, quarter_of_yield(inputs.settled));
  if (walls.four_to_one < kLeastRead) walls.four_to_one = psig(0.0);  // the water alone is all that it keeps
  walls.next_stay = next_stay(request, walls.limit);
  return walls;
}

void mend_weak_walls(const Inputs& inputs, const WallLoad& load, const WallLimit& limit, Finding& finding) {
  const auto& stay = limit.next_stay;
  // No mend of ours leaves a factor under 4.
  finding.or_else = stiffer_walls(inputs.job, inputs.settled, load.charge, std::max(load.in_use, kLeastAtFour),
                                  quarter_of_yield(inputs.settled));
  if (stay && stay->limit_after > load.in_use) {
    Mend mend = with_the_lid_off(
        inputs.settled,
        {fact("stay_lifts_limit", stay->what, stay->limit_after), {}, {{{kSupports, {}, {}, stay->supports}}}});
    finding.mend = std::move(mend.fact);
    finding.ways_to_try = std::move(mend.ways_to_try);
  } else if (stay) {
    finding.mend =
        with_the_lid_off(inputs.settled, {fact("stay_lifts_limit_too_little", stay->what, stay->limit_after)}).fact;
  } else {
    finding.mend = fact(inputs.settled.lid_closed ? "another_box_or_lower_table" : "thicker_sheet_or_lower_table");
  }
}

WallsPlan plan_walls(const Inputs& inputs, const WallLimit& limit, const WallLoad& load, Remarks& remarks) {
  WallsPlan walls;
  walls.metal = inputs.settled.metal;
  walls.panels = limit.panels;
  walls.limit = limit.limit;
  walls.four_to_one = limit.four_to_one;
  walls.next_stay = limit.next_stay;
  walls.at_set = check_at(inputs.settled, walls.panels, load.setting);
  const WallRequest request = wall_request(inputs.job, inputs.settled, load.charge);
  walls.stayed = reservoir::stayed_surface(request);
  if (walls.stayed)
    walls.stayed_limit =
        reservoir::stayed_plate_limit(walls.stayed->thickness, walls.stayed->pitch, request.design_stress);
  walls.weakest = walls.at_set.panels[walls.at_set.weakest].panel.name;
  if (walls.stayed) {
    walls.span_limit = std::max(GaugePressure(), GaugePressure() + *walls.stayed_limit - walls.stayed->water);
    if (*walls.span_limit < walls.at_set.limit) walls.weakest = reservoir::kStayedSpan;
  }
  set_factors(inputs, load.setting, walls);
  set_loads(inputs, request, load.setting, walls);
  set_vacuum(inputs, request, load.riser_lets_air_in, walls);
  set_stays(inputs, request, load, walls);
  caution_bulge(walls.at_set, remarks);
  return walls;
}

}  // namespace riserun::plan
