// The transfer: the setting, filling and draining, and why the air supply or the walls do not allow it.
#include "plan/stage/transfer.h"

#include "hydraulics/mouth.h"
#include "plan/judge/limits.h"
#include "plan/judge/relief_room.h"
#include "plan/sold.h"
#include "plan/stage/knob_room.h"
#include "plan/stage/relief_valves.h"
#include "plan/stage/transfer_cautions.h"
#include "plan/stage/unfilled.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace riserun::plan {

namespace {

using quantity::at_most;
using quantity::more_than;
using transfer::Stop;

const double kUsualOverFinish = 1.5;            // setting over the pressure to finish, where nothing is wished for
const Length kShowingFilm = inches(1.0 / 8.0);  // what is left then shows as puddles: common practice
const Length kWettedFilm = millimetres(1.0);    // on steel that is well wetted: a contact angle of about 20 degrees
const double kOilyAngle = 90.0;                 // degrees, on an oily or painted floor

GaugePressure rounded_up(GaugePressure value) {
  const double step = in_pascals(kDialStep);
  return gauge_pascals(std::ceil(in_pascals(value) / step - 1e-9) * step);
}

GaugePressure scaled(GaugePressure value, double by) { return gauge_pascals(in_pascals(value) * by); }

/// The least on the dial that finishes the fill, also where it is set as it was printed, in either unit.
GaugePressure that_lifts(GaugePressure to_finish) {
  return rounded_up(scaled(to_finish, (1.0 + kBalances) / kAsPrinted));
}

transfer::System system_for(const Inputs& inputs, const RiserPlan& riser, const hydraulics::Line& line,
                            const Levels& levels, const AirWays& air) {
  transfer::System system;
  system.reservoir = inputs.settled.box;
  system.table = inputs.settled.table;
  system.riser_end_height = riser.riser.end_height;
  system.inlet_height = levels.inlet_height;
  system.line = line;
  system.water = inputs.settled.water;
  system.temperature = inputs.settled.temperature;
  system.atmosphere = inputs.settled.atmosphere;
  system.air = inputs.settled.air;
  system.air.before_regulator = air.before_regulator;
  system.air.after_regulator = air.after_regulator;
  if (air.first_stage) system.air.first_stage = transfer::FirstStage{{}, air.behind_first_stage};
  system.vent = inputs.settled.vent;
  system.vent.ways = air.vents;
  system.check = air.water_check;
  system.dip_uncovers_riser = true;
  return system;
}

/// What the weakest of walls and regulator allows.
GaugePressure highest_setting(const Settled& settled, const WallLimit& walls) {
  return std::min(walls.limit, settled.regulator_range);
}

Fact weakest(const Settled& settled, const WallLimit& walls) {
  return fact(walls.limit <= settled.regulator_range ? "what_walls_may_see" : "what_regulator_can_be_set_to");
}

/// A first guess for the search: what holds the full table, with room for losses.
GaugePressure first_guess(const Settled& settled, const Levels& levels) {
  const PressureDifference hold = pressure_of(metres_of_head(in_metres(levels.lift_full)), settled.water.density);
  return gauge_pascals(std::max(in_pascals(hold) * kUsualOverFinish, in_pascals(psig(0.25))));
}

GaugePressure finish_and_half(GaugePressure to_finish) { return scaled(to_finish, kUsualOverFinish); }

/// The most that is worked out: what walls and regulator allow, and, where that finishes the fill, no more than keeps
/// the walls' factor of safety at four and the job's relief valves shut.
GaugePressure most_worked_out(const TransferPlan& plan, const WallLimit& walls, GaugePressure to_finish) {
  const GaugePressure lifts = that_lifts(to_finish);
  GaugePressure most = within_limit(plan.highest_setting);
  const auto keep_below = [&](GaugePressure limit) {
    if (at_most(lifts, within_limit(limit))) most = std::min(most, within_limit(limit));
  };
  keep_below(walls.four_to_one);
  if (plan.relief_stays_shut) keep_below(*plan.relief_stays_shut);
  return most;
}

/// The pressure to finish and half as much again, but not above the most.
GaugePressure usual_setting(const TransferPlan& plan, const WallLimit& walls, GaugePressure to_finish) {
  const GaugePressure wanted = rounded_up(finish_and_half(to_finish));
  const GaugePressure most = most_worked_out(plan, walls, to_finish);
  return at_most(wanted, most) ? wanted : std::max(most, that_lifts(to_finish));
}

/// What a setting below the usual one is as high as.
Fact what_holds_down(const Settled& settled, const WallLimit& walls, const TransferPlan& plan, GaugePressure setting) {
  if (plan.relief_stays_shut && setting == within_limit(*plan.relief_stays_shut)) return fact("what_keeps_relief_shut");
  const bool by_factor = at_most(setting, walls.four_to_one) && walls.four_to_one < highest_setting(settled, walls);
  return by_factor ? fact("what_keeps_four_to_one") : weakest(settled, walls);
}

/// Slower than the regulator can hold a setting over what just finishes is no setting.
GaugePressure least_that_is_held(const Inputs& inputs, GaugePressure to_finish) {
  return rounded_up(to_finish + inputs.settled.regulator_repeatability / (kLargeShare * kAsPrinted));
}

void choose_for_wish(const Inputs& inputs, const Levels& levels, const WallLimit& walls, GaugePressure to_finish,
                     TransferPlan& plan, Remarks& remarks) {
  const Time wished = *inputs.job.wishes.fill_time;
  const GaugePressure usual = usual_setting(plan, walls, to_finish);
  const GaugePressure highest = most_worked_out(plan, walls, to_finish);
  plan.setting_for_wish = transfer::setting_for_time(plan.system, plan.start, levels.table_depth, wished, highest);
  if (plan.setting_for_wish) {
    plan.setting = std::min(rounded_up(scaled(*plan.setting_for_wish, 1.0 / kAsPrinted)), highest);
    const GaugePressure least = std::min(usual, least_that_is_held(inputs, to_finish));
    if (more_than(least, plan.setting)) {
      plan.setting = least;
      plan.setting_basis = fact("least_that_the_regulator_holds", wished);
      return;
    }
    plan.setting_basis = plan.setting < usual ? fact("fills_in_wished_time_below_usual", wished, usual)
                                              : fact("fills_in_wished_time", wished);
    return;
  }
  plan.setting = usual;
  plan.setting_basis =
      fact("no_setting_fills_in_wished_time", highest, what_holds_down(inputs.settled, walls, plan, highest), wished);
  remarks.caution(Topic::transfer, fact("wished_time_cannot_be_met", wished, plan.setting_basis), "worked out");
}

/// A regulator locks up above its setting, less the springs behind it, and a valve may open below its mark by its
/// tolerance.
std::optional<GaugePressure> relief_stays_shut(const JobReliefValve& given, const transfer::AirSupply& air,
                                               const std::vector<transfer::ReliefValve>& valves) {
  if (valves.empty()) return std::nullopt;
  const auto first =
      std::min_element(valves.begin(), valves.end(), [](const auto& a, const auto& b) { return a.opens < b.opens; });
  const GaugePressure mark = first->opens - given.tolerance.value_or(kCodeTolerance);
  return mark - given.tolerance.value_or(PressureDifference()) - locks_up_by(air);
}

void choose_setting(const Inputs& inputs, const Levels& levels, const WallLimit& walls, const AirWays& air,
                    TransferPlan& plan, Remarks& remarks) {
  const Job& job = inputs.job;
  plan.highest_setting = highest_setting(inputs.settled, walls);
  plan.system.air.set_pressure = job.air.set_pressure.value_or(first_guess(inputs.settled, levels));
  set_first_stage(inputs.catalog, air, plan.system.air);
  const GaugePressure finish = transfer::pressure_to_finish(plan.system, plan.start, levels.table_depth);
  plan.least_setting = that_lifts(finish);
  leave_room_for_the_knob(inputs, air, plan);
  plan.usual_setting = usual_setting(plan, walls, finish);
  if (job.air.set_pressure) {
    plan.setting = *job.air.set_pressure;
    plan.setting_given = true;
    plan.setting_basis = fact("as_the_job_says");
    return;
  }
  const GaugePressure lifts = that_lifts(finish);
  if (more_than(lifts, plan.highest_setting)) {
    plan.setting = lifts;
    plan.setting_basis = fact("what_just_finishes", weakest(inputs.settled, walls));
  } else if (job.wishes.fill_time) {
    choose_for_wish(inputs, levels, walls, finish, plan, remarks);
  } else {
    const GaugePressure usual = plan.setting = plan.usual_setting;
    plan.setting_basis = in_pascals(usual) >= in_pascals(finish) * kUsualOverFinish
                             ? fact("half_as_much_again")
                             : fact("as_high_as_may_be", what_holds_down(inputs.settled, walls, plan, usual));
  }
  remarks.assume(fact("regulator_setting", plan.setting, plan.setting_basis), "air.set pressure");
}

/// What the air must be set to, at least: on the dial, unless the job says a setting of its own that is let in.
GaugePressure asked_by_fill(const TransferPlan& plan, GaugePressure most) {
  const GaugePressure finish = plan.fill.pressure_to_finish;
  return plan.setting_given && at_most(plan.setting, most) ? finish : that_lifts(finish);
}

GaugePressure in_use(const TransferPlan& plan, GaugePressure limit, const std::vector<transfer::ReliefValve>& valves) {
  const GaugePressure finish = plan.fill.pressure_to_finish;
  // A setting that just finishes is what is left where the walls allow no better.
  const bool no_better = more_than(asked_by_fill(plan, limit), limit);
  const GaugePressure most = no_better ? rounded_up(finish_and_half(finish)) : plan.setting;
  const auto first = std::min_element(valves.begin(), valves.end(),
                                      [](const auto& a, const auto& b) { return a.wide_open < b.wide_open; });
  return first == valves.end() ? most : std::max(most, first->wide_open);
}

/// The two numbers side by side: what the fill asks for and what the walls may see.
void refuse_by_walls(const Inputs& inputs, const Levels& levels, const TransferPlan& plan, const WallLimit& walls,
                     Remarks& remarks) {
  const GaugePressure limit = walls.limit;
  const GaugePressure finish = asked_by_fill(plan, limit);
  if (more_than(finish, limit)) {
    Finding& finding =
        remarks.refuse({Topic::walls, fact("fill_needs_more_than_walls_may_see"), Against{finish, limit}, {}});
    mend_weak_walls(inputs, {levels.charge_depth, plan.setting, plan.in_use}, walls, finding);
  } else if (more_than(plan.setting, limit)) {
    // Where the limit is far above what the fill needs, all the way down: at the limit the relief valve, the gauge and
    // the factor would each ask for less, one after the other.
    const GaugePressure usual = plan.usual_setting;
    const GaugePressure lower = more_than(usual, finish) ? std::min(usual, within_limit(limit)) : within_limit(limit);
    remarks
        .refuse({Topic::walls, fact("setting_is_more_than_walls_may_see"), Against{plan.setting, limit},
                 fact("set_the_regulator_lower", lower, finish)})
        .ways_to_mend = {{{"air.set pressure", lower}}};
  }
}

/// What a setting that is too low is raised to: the usual one, or, where that leaves the walls a factor under four,
/// what fills in the time wished for.
GaugePressure raised_setting(const Inputs& inputs, const Levels& levels, const WallLimit& walls,
                             const TransferPlan& plan) {
  const GaugePressure finish = plan.fill.pressure_to_finish;
  const GaugePressure usual = usual_setting(plan, walls, finish);
  const auto& wished = inputs.job.wishes.fill_time;
  if (!wished || at_most(usual, walls.four_to_one)) return usual;
  const auto fills = transfer::setting_for_time(plan.system, plan.start, levels.table_depth, *wished, usual);
  if (!fills) return usual;
  const GaugePressure least = std::min(usual, least_that_is_held(inputs, finish));
  return std::clamp(rounded_up(scaled(*fills, 1.0 / kAsPrinted)), least, usual);
}

/// As high as the fill works well with, where walls and regulator allow that.
void set_higher(Finding& finding, const TransferPlan& plan, GaugePressure to) {
  if (more_than(to, plan.highest_setting)) return;
  finding.mend = fact("set_the_regulator_higher", to);
  finding.ways_to_mend = {{{"air.set pressure", to}}};
}

/// What opens it is what the setting misses, may be; and against the drain it must not stay in any case.
void try_without_foot_valve(Finding& finding) {
  if (finding.mend) finding.or_else = {{std::move(*finding.mend), std::move(finding.ways_to_mend)}};
  finding.mend = fact("leave_out_foot_valve");
  finding.ways_to_mend = {{{"riser.foot valve", "no"}}};
}

/// A pipe over the rim: all the water goes over its highest point.
bool refuse_by_crest(const Inputs& inputs, const Levels& levels, const TransferPlan& plan, const WallLimit& walls,
                     Remarks& remarks) {
  if (!levels.mouth_height || plan.setting >= plan.fill.pressure_to_start) return false;
  const Head held = head_of(plan.setting - GaugePressure(), plan.system.water.density);
  set_higher(
      remarks.refuse(
          {Topic::transfer, fact("crest_out_of_reach"), Against{levels.lift_start, metres(in_metres(held))}, {}}),
      plan, raised_setting(inputs, levels, walls, plan));
  return true;
}

void refuse_by_setting(const Inputs& inputs, const Levels& levels, const TransferPlan& plan, const WallLimit& walls,
                       Remarks& remarks) {
  const GaugePressure finish = plan.fill.pressure_to_finish;
  const GaugePressure range = inputs.settled.regulator_range;
  if (more_than(asked_by_fill(plan, range), range)) {
    const GaugePressure wider = regulator_range_for(inputs.catalog, finish);
    Finding& finding =
        remarks.refuse({Topic::transfer, fact("fill_needs_more_than_regulator"),
                        Against{asked_by_fill(plan, range), range}, fact("take_regulator_with_range", wider)});
    if (names_a_regulator(inputs)) {
      finding.mend = fact("range_in_both_places", wider);
      finding.ways_to_try = {{{kRegulatorOfRange, wider}, {"air.regulator range", wider}}};
    } else {
      finding.ways_to_mend = {{{"air.regulator range", wider}}};
    }
    return;
  }
  if (!levels.enough) return;  // what a table asks that is never filled is nothing to set to
  if (refuse_by_crest(inputs, levels, plan, walls, remarks)) return;
  // Where the walls allow no better than what just finishes, they are what is to be mended.
  const bool walls_hold_it_down =
      !plan.setting_given && more_than(asked_by_fill(plan, plan.highest_setting), plan.highest_setting);
  if (plan.setting < finish) {
    Finding& finding =
        remarks.refuse({Topic::transfer, fact("setting_does_not_lift_the_water"), Against{finish, plan.setting}, {}});
    set_higher(finding, plan, raised_setting(inputs, levels, walls, plan));
    if (inputs.job.riser.foot_valve) try_without_foot_valve(finding);
  } else if (!walls_hold_it_down && in_pascals(plan.setting) <= in_pascals(finish) * (1.0 + kBalances)) {
    set_higher(remarks.refuse({Topic::transfer, fact("setting_only_balances"), Against{finish, plan.setting}, {}}),
               plan, raised_setting(inputs, levels, walls, plan));
  }
}

/// Where draining starts: from the full table, held there by the air, or from what the fill came to.
transfer::Start when_up(const transfer::Fill& fill, const Levels& levels) {
  if (fill.stop == Stop::goal_reached) return {levels.reservoir_depth_up, levels.table_depth, fill.hold_pressure};
  const GaugePressure held = fill.history.empty() ? psig(0.0) : fill.history.back().ullage_pressure;
  return {fill.reservoir_depth, fill.table_depth, held};
}

void caution_transfer(const TransferPlan& plan, Remarks& remarks) {
  const transfer::Fill& fill = plan.fill;
  if (fill.walk_away == transfer::WalkAway::table_overflows) {
    const GaugePressure stops = within_limit(fill.self_limiting_pressure.value_or(psig(0.0)));
    remarks.caution(Topic::whole_job,
                    at_most(that_lifts(fill.pressure_to_finish), stops)
                        ? fact("table_overflows_unless_set_to", fill.walk_away_spill, stops)
                        : fact("table_overflows_if_left", fill.walk_away_spill),
                    "worked out");
  }
  if (fill.walk_away == transfer::WalkAway::air_blows_through)
    remarks.caution(Topic::transfer, fact("air_blows_through_if_left"), "worked out");
}

/// To a film that shows, and on to the one that stays whatever is waited for.
void drain_table(const Inputs& inputs, const Levels& levels, TransferPlan& plan) {
  const transfer::Start up = plan.when_up = when_up(plan.fill, levels);
  const reservoir::Table& table = inputs.settled.table;
  transfer::System& system = plan.system;
  if (levels.mouth_height) {
    // A siphon takes the water down to its mouth, or nothing.
    plan.siphon = SiphonPlan{levels.inlet_height, *levels.mouth_height, *levels.mouth_height < levels.table_depth};
    transfer::System siphon = system;
    if (plan.siphon->covered) siphon.inlet_height = *levels.mouth_height;
    plan.drain = transfer::drain(siphon, up, inputs.detail());
    plan.left_in_table = plan.left_if_oily = plan.drain.left_in_table;
    return;
  }
  plan.film = kShowingFilm;
  plan.thinnest_film = kWettedFilm;
  plan.oily_film = hydraulics::film_left(kOilyAngle, inputs.settled.water.density);
  system.mouth = {system.line.elements().back().bore, plan.film};
  plan.drain = transfer::drain(system, up, inputs.detail());
  transfer::System to_the_last = system;
  to_the_last.mouth.film = plan.thinnest_film;
  const transfer::Drain last = transfer::drain(to_the_last, up, transfer::Detail::course);
  if (last.stop == Stop::goal_reached) plan.to_thinnest_film = last.time;
  plan.left_in_table = last.left_in_table;
  plan.left_if_oily = std::max(last.left_in_table, table.volume_at(levels.inlet_height + plan.oily_film));
}

Velocity velocity_in(Length bore, VolumeFlow flow) { return flow / (0.25 * std::numbers::pi * bore * bore); }

RiserMargin riser_margin(const RiserPlan& riser, const transfer::Fill& fill) {
  const Length bore = riser.request.pipe.bore;
  return {fill.last_flow, velocity_in(bore, fill.last_flow), fill.margin_over_riser_end,
          hydraulics::dip_depth(fill.last_flow), hydraulics::intake_submergence(bore, fill.last_flow)};
}

std::optional<JetPlan> jet_of(const transfer::System& system, const transfer::Fill& fill) {
  if (!(fill.arrival_flow > cubic_metres_per_second(0.0))) return std::nullopt;
  const Velocity velocity = velocity_in(system.line.elements().back().bore, fill.arrival_flow);
  const Length height = hydraulics::jet_height(velocity);
  return JetPlan{velocity, height, height * hydraulics::kJetMost, system.table.rim - system.inlet_height};
}

}  // namespace

TransferPlan plan_transfer(const Inputs& inputs, const RiserPlan& riser, const hydraulics::Line& line,
                           const Levels& levels, const WallLimit& walls, const AirWays& air, Remarks& remarks) {
  TransferPlan plan;
  plan.system = system_for(inputs, riser, line, levels, air);
  plan.start = {levels.charge_depth, metres(0.0), psig(0.0)};
  plan.wanted_depth = levels.table_depth;
  plan.relief_stays_shut = relief_stays_shut(inputs.job.relief_valve, plan.system.air, air.relief);
  choose_setting(inputs, levels, walls, air, plan, remarks);
  find_knob_off(inputs, air, plan);
  plan.system.air.set_pressure = plan.setting;
  set_first_stage(inputs.catalog, air, plan.system.air);
  if (const auto& stage = plan.system.air.first_stage) remarks.assume(fact("first_stage_setting", stage->setting));
  plan.fill = transfer::fill(plan.system, plan.start, levels.table_depth, inputs.detail());
  if (const auto& delivery = plan.system.air.free_air_delivery; delivery && *delivery > VolumeFlow())
    plan.refill_time = plan.fill.free_air / *delivery;
  drain_table(inputs, levels, plan);
  plan.margin = riser_margin(riser, plan.fill);
  if (!levels.mouth_height && air.water_comes_up) plan.jet = jet_of(plan.system, plan.fill);
  if (plan.jet && more_than(plan.jet->most, plan.jet->rim))
    remarks.caution(Topic::transfer, fact("jet_goes_over_the_rim", plan.jet->most, plan.jet->rim), "worked out");
  plan.in_use = in_use(plan, walls.limit, air.relief);
  refuse_by_walls(inputs, levels, plan, walls, remarks);
  refuse_by_setting(inputs, levels, plan, walls, remarks);
  refuse_by_air(inputs, levels, plan, remarks);
  caution_transfer(plan, remarks);
  caution_time_and_rest(inputs.job.wishes, levels, plan, remarks);
  return plan;
}

}  // namespace riserun::plan
