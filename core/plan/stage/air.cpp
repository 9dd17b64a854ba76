#include "plan/stage/air.h"

#include "chain/finder.h"
#include "hydraulics/air.h"
#include "plan/judge/limits.h"
#include "plan/stage/relief_valves.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace riserun::plan {

namespace {

using hydraulics::AirElement;
using hydraulics::AirLine;
using hydraulics::LineElement;

bool is_role(const Catalog& catalog, PartId part, catalog::Role role) {
  return catalog.family(catalog.part(part).family).role == role;
}

/// What opens a check valve: the job's word, or the catalog's, or what is assumed; nullopt: it is none.
std::optional<PressureDifference> opening_of(const Inputs& inputs, PartId part) {
  if (!is_role(inputs.catalog, part, catalog::Role::check_valve)) return std::nullopt;
  const auto& listed = inputs.catalog.part(part).opens_at;
  if (inputs.job.air.check_valve || !listed) return inputs.settled.check_valve;
  return *listed - GaugePressure();
}

/// The parts of a way one after the other. The hole of a restrictor stands alone: the jet is lost in the thread.
class Row {
 public:
  explicit Row(const Inputs& inputs) : inputs_(inputs) {}

  void add(const WayPart& part) {
    if (is_role(inputs_.catalog, part.part, catalog::Role::restrictor)) {
      close();
      for (const LineElement& element : part.elements)
        row_.push_back(hydraulics::drilled_hole(element.name, element.bore));
      return;
    }
    if (const auto opens = opening_of(inputs_, part.part); opens && !part.elements.empty())
      checks_.emplace_back(open_.size(), *opens);
    open_.insert(open_.end(), part.elements.begin(), part.elements.end());
  }
  AirLine line() {
    close();
    return AirLine(row_);
  }

 private:
  void close() {
    std::vector<AirElement> elements = hydraulics::air_elements(open_);
    for (const auto& [row, opens_at] : checks_) {
      elements[row].opens_at = opens_at;
      elements[row].one_way = true;
    }
    std::move(elements.begin(), elements.end(), std::back_inserter(row_));
    open_.clear();
    checks_.clear();
  }

  const Inputs& inputs_;
  std::vector<LineElement> open_;                                   // that follow each other without a hole between
  std::vector<std::pair<std::size_t, PressureDifference>> checks_;  // rows of open_, and what opens them
  std::vector<AirElement> row_;
};

template <class Part>
AirLine line_of(const Inputs& inputs, Part from, Part to) {
  Row row(inputs);
  for (; from != to; ++from) row.add(*from);
  return row.line();
}

/// What ends a way, as the air meets it from its joint to the room.
WayPart device_part(const Catalog& catalog, PartId device) {
  const catalog::Part& part = catalog.part(device);
  chain::Chain alone;
  alone.parts.resize(1);
  chain::RunPart& link = alone.parts.front();
  link.part = device;
  link.ports.resize(part.ports.size());
  if (part.ports.size() > 1) {
    link.ports[1].what = chain::Follower::What::end;
    return {device, 0, 1, {}, {}, chain::line_elements(catalog, alone)};
  }
  LineElement element;
  element.name = part.name;
  element.bore = part.ports[0].bore;
  WayPart way{device, 0, 0, {}, {}, {}};
  if (element.bore > metres(0.0)) way.elements.push_back(std::move(element));
  return way;
}

AirLine vent_of(const Inputs& inputs, const Way& way) {
  std::vector<WayPart> parts = way.parts;
  parts.push_back(device_part(inputs.catalog, *way.device));
  return line_of(inputs, parts.begin(), parts.end());
}

transfer::ReliefValve relief_of(const Inputs& inputs, const Way& way) {
  const catalog::Part& part = inputs.catalog.part(*way.device);
  const JobReliefValve& given = inputs.job.relief_valve;
  const GaugePressure opens = *part.opens_at + given.tolerance.value_or(kCodeTolerance);
  return {line_of(inputs, way.parts.begin(), way.parts.end()), part.ports[0].bore, opens,
          opens + given.rise.value_or(code_rise(*part.opens_at))};
}

/// The key speaks of a restrictor that stands in the run already, where one with no wider a hole does.
bool key_is_in_run(const Inputs& inputs, std::vector<WayPart>::const_iterator from,
                   std::vector<WayPart>::const_iterator to) {
  const auto& key = inputs.job.air.restrictor;
  return key && std::any_of(from, to, [&](const WayPart& part) {
           return is_role(inputs.catalog, part.part, catalog::Role::restrictor) && part.bore &&
                  quantity::at_most(*part.bore, *key);
         });
}

void split_feed(const Inputs& inputs, const Way& way, AirWays& air) {
  const auto regulator = last_regulator(inputs.catalog, way);
  if (regulator == way.parts.end()) {
    air.after_regulator = line_of(inputs, way.parts.begin(), way.parts.end());
    return;
  }
  air.regulator = regulator->part;
  if (key_is_in_run(inputs, way.parts.begin(), regulator)) air.before_regulator = {};
  const auto first = first_stage(inputs.catalog, way);
  if (first != way.parts.end()) {
    air.first_stage = first->part;
    air.behind_first_stage = line_of(inputs, std::next(first), regulator).followed_by(air.before_regulator);
  }
  // A restrictor that the job names stands right before the regulator.
  const AirLine key = air.before_regulator;
  air.before_regulator = first != way.parts.end()
                             ? line_of(inputs, way.parts.begin(), first).followed_by(air.behind_first_stage)
                             : line_of(inputs, way.parts.begin(), regulator).followed_by(key);
  air.after_regulator = line_of(inputs, std::next(regulator), way.parts.end());
}

/// What lets the water only up: a foot valve, or a check valve in the run.
void find_water_check(const Inputs& inputs, const std::vector<Way>& ways, const ConnectionPlan* water, AirWays& air) {
  transfer::WaterCheck& check = air.water_check;
  const auto add = [&](PressureDifference opens) {
    check.one_way = true;
    check.opens_at = check.opens_at + opens;
  };
  if (inputs.job.riser.foot_valve) add(inputs.settled.check_valve);
  if (water == nullptr) return;
  for (const Way& way : ways) {
    if (way.connection != water->name) continue;
    for (const WayPart& part : way.parts)
      if (const auto opens = opening_of(inputs, part.part)) add(*opens);
  }
  const Job& job = inputs.job;
  const JobPort* inlet = port_named(job.table.ports, water->to);
  if (inlet == nullptr) inlet = port_named(job.table.ports, water->from);
  air.water_comes_up = inlet == nullptr || inlet->place.value_or(Place::floor) == Place::floor;
}

void say_what_is_assumed(const Inputs& inputs, const AirWays& air, Remarks& remarks) {
  const Job& job = inputs.job;
  // The catalog says it of a check valve; a foot valve is no part of a run.
  if (job.riser.foot_valve && !job.air.check_valve)
    remarks.assume(fact("check_valve_opens", inputs.settled.check_valve), "air.check valve opens at");
  if (air.vents.empty()) {
    if (!job.vent.bore) remarks.assume(fact("vent_bore", inputs.settled.vent.bore), "vent.bore");
    if (!job.vent.count) remarks.assume(fact("one_vent"), "vent.count");
  } else if (job.vent.bore || job.vent.count) {
    remarks.note(Topic::transfer, fact("vents_are_the_connections"));
  }
}

/// The highest pressure behind a row that its flow can come to from that pressure before it.
double pressure_behind(const AirLine& row, double flow, double from, double least, double gas) {
  double low = least;
  double high = from;
  constexpr int kHalvings = 60;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (low + high);
    (row.upstream(flow, middle, gas).pressure <= from ? low : high) = middle;
  }
  return low;
}

void add_places(const AirLine& row, MassFlow flow, AbsolutePressure to, const transfer::System& system,
                bool before_regulator, std::vector<AirPlace>& places) {
  const std::vector<AbsolutePressure> pressures = row.pressures(flow, to, system.temperature);
  for (std::size_t i = 0; i < row.elements().size(); ++i) {
    const AirElement& element = row.elements()[i];
    const GaugePressure before = gauge(pressures[i], system.atmosphere);
    const GaugePressure behind = gauge(pressures[i + 1], system.atmosphere);
    // A part with two bores is one place.
    if (!places.empty() && places.back().name == element.name && places.back().before_regulator == before_regulator) {
      places.back().bore = std::min(places.back().bore, element.bore);
      places.back().behind = behind;
    } else {
      places.push_back({element.name, element.bore, before, behind, before_regulator});
    }
  }
}

/// The row before the regulator with a first stage in it, which gives what it is set to, or what comes to it where that
/// is less.
/// @param inlet  of the regulator, were the first stage wide open [Pa absolute]
/// @return the regulator's inlet [Pa absolute]
double add_first_stage(const AirLine& before, MassFlow flow, double inlet, double outlet,
                       const transfer::System& system, std::vector<AirPlace>& places) {
  const transfer::FirstStage& stage = *system.air.first_stage;
  const double gas = hydraulics::kAirGasConstant * in_kelvins(system.temperature);
  const double set = in_pascals(absolute(stage.setting, system.atmosphere));
  inlet = std::min(inlet, pressure_behind(stage.behind, in_kilograms_per_second(flow), set, outlet, gas));
  const auto& all = before.elements();
  const AirLine row({all.begin(), all.end() - static_cast<std::ptrdiff_t>(stage.behind.elements().size())});
  const double receiver = in_pascals(absolute(system.air.receiver_pressure, system.atmosphere));
  const double gives = stage.behind.upstream(in_kilograms_per_second(flow), inlet, gas).pressure;
  const double comes = pressure_behind(row, in_kilograms_per_second(flow), receiver, gives, gas);
  add_places(row, flow, absolute_pascals(comes), system, true, places);
  places.push_back({"first stage",
                    {},
                    gauge(absolute_pascals(comes), system.atmosphere),
                    gauge(absolute_pascals(gives), system.atmosphere),
                    true});
  add_places(stage.behind, flow, absolute_pascals(inlet), system, true, places);
  return inlet;
}

}  // namespace

AirWays find_air_ways(const Inputs& inputs, const std::vector<Way>& ways, const ConnectionPlan* water,
                      Remarks& remarks) {
  AirWays air;
  air.before_regulator = inputs.settled.air.before_regulator;
  const auto feed = std::find_if(ways.begin(), ways.end(), [](const Way& way) { return way.use == WayUse::feed; });
  if (feed != ways.end()) split_feed(inputs, *feed, air);
  for (const Way& way : ways) {
    if (!way.device) continue;
    if (way.use == WayUse::relief) air.relief.push_back(relief_of(inputs, way));
    if (way.use == WayUse::gauge && first_that_stops(inputs.catalog, way) == nullptr)
      if (const auto& scale = inputs.catalog.part(*way.device).full_scale) air.gauge_scales.push_back(*scale);
    if (way.use == WayUse::vent && !is_role(inputs.catalog, *way.device, catalog::Role::plug))
      air.vents.push_back(vent_of(inputs, way));
  }
  find_water_check(inputs, ways, water, air);
  say_what_is_assumed(inputs, air, remarks);
  return air;
}

void set_first_stage(const Catalog& catalog, const AirWays& air, transfer::AirSupply& supply) {
  if (!air.first_stage) return;
  const GaugePressure range = catalog.part(*air.first_stage).full_scale.value_or(psig(0.0));
  supply.first_stage->setting =
      gauge_pascals(std::max(0.5 * in_pascals(range), kFirstStage * in_pascals(supply.set_pressure)));
}

AirPlan plan_air(const transfer::System& system, const transfer::Fill& fill) {
  AirPlan plan;
  const transfer::AirSupply& supply = system.air;
  plan.lock_up = supply.lock_up;
  plan.droop = pascals(supply.droop * in_pascals(supply.set_pressure));
  plan.rated_flow = supply.regulator_rated_flow;
  const auto peak =
      std::max_element(fill.history.begin(), fill.history.end(),
                       [](const transfer::Instant& a, const transfer::Instant& b) { return a.free_air < b.free_air; });
  if (peak == fill.history.end() || !(peak->free_air > cubic_metres_per_second(0.0))) return plan;
  plan.greatest_flow = peak->free_air;
  const MassFlow flow = hydraulics::mass_flow_of_free_air(peak->free_air, system.atmosphere, system.temperature);
  const double gas = hydraulics::kAirGasConstant * in_kelvins(system.temperature);
  const AbsolutePressure ullage = absolute(peak->ullage_pressure, system.atmosphere);
  const double outlet =
      supply.after_regulator.upstream(in_kilograms_per_second(flow), in_pascals(ullage), gas).pressure;
  const AirLine before = AirLine({hydraulics::air_opening("feed", supply.feed_bore, supply.feed_discharge_coefficient)})
                             .followed_by(supply.before_regulator);
  const double receiver = in_pascals(absolute(supply.receiver_pressure, system.atmosphere));
  double inlet = pressure_behind(before, in_kilograms_per_second(flow), receiver, outlet, gas);
  if (supply.first_stage) {
    inlet = add_first_stage(before, flow, inlet, outlet, system, plan.places);
  } else {
    add_places(before, flow, absolute_pascals(inlet), system, true, plan.places);
  }
  if (!plan.places.empty()) plan.places.front().before = supply.receiver_pressure;
  plan.places.push_back({"regulator",
                         {},
                         gauge(absolute_pascals(inlet), system.atmosphere),
                         gauge(absolute_pascals(outlet), system.atmosphere),
                         false});
  add_places(supply.after_regulator, flow, ullage, system, false, plan.places);
  return plan;
}

}  // namespace riserun::plan
