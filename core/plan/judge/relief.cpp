#include "plan/judge/knob_gauge.h"
#include "plan/judge/limits.h"
#include "plan/judge/open.h"
#include "plan/judge/relief_capacity.h"
#include "plan/judge/relief_room.h"
#include "plan/sold.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <cmath>

namespace riserun::plan {

namespace {

using quantity::at_most;
using quantity::more_than;

constexpr const char* kSection465 = "California Code of Regulations, Title 8, section 465 (from memory)";
constexpr const char* kFullInlet = "ASME BPVC Section VIII UG-135(b), from memory: as wide as the valve's inlet";
constexpr const char* kReliefRules = "ASME BPVC Section VIII UG-125, UG-134";

/// The lowest valve that is sold and stays shut, with walls that keep their factor while it is fully open.
std::vector<Mend> room_for_valve(const Plan& plan, const Settled& settled, const ReliefValve& valve) {
  const auto sold = valve_that_fits(plan, valve, kCodePressure);
  if (!sold) return {};
  return with_too(stiffer_for_four(plan, settled, *sold + (valve.full_flow - valve.opens)),
                  fact("valve_that_opens_at", *sold), {{kReliefSetting, *sold}});
}

/// A regulator whose outlet rises less when nothing is drawn, so that the valve that is there stays shut.
void add_tighter_regulator(const Plan& plan, const ReliefValve& valve, Finding& finding) {
  const TransferPlan& transfer = plan.transfer;
  const transfer::AirSupply& air = transfer.system.air;
  // A setting that is worked out comes down for it, as far as it still lifts the water with the knob off to the low
  // side, on the dial and as it is printed.
  const double step = in_pascals(kDialStep);
  const double lifts = in_pascals(transfer.fill.pressure_to_finish + transfer.knob_off) / kAsPrinted;
  const GaugePressure setting =
      transfer.setting_given ? transfer.setting : gauge_pascals(std::ceil(lifts / step) * step / kAsPrinted);
  const GaugePressure highest = opens_at_least(plan, valve.opens) - transfer.knob_off + air.after_regulator.opens_at();
  const GaugePressure rise = gauge_pascals(kAsPrinted * (in_pascals(highest) - in_pascals(setting)));
  if (more_than(kLeastLockUp, rise) || at_most(air.lock_up, rise - psig(0.0))) return;
  finding.or_else.insert(finding.or_else.begin(),
                         {fact("regulator_that_locks_up_within", rise), {{{"air.lock up", rise}}}});
}

/// What the job says that opens the check valve on the air's way is added to the setting: where the valve is sold that
/// opens at less, that one.
void add_lighter_check(const Plan& plan, Finding& finding) {
  const auto& given = plan.job.air.check_valve;
  if (!given) return;
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::feed) continue;
    for (const WayPart& each : way.parts) {
      const catalog::Part& part = plan.catalog->part(each.part);
      const bool is_check = plan.catalog->family(part.family).role == catalog::Role::check_valve;
      if (!is_check || !part.opens_at || !more_than(*given, *part.opens_at)) continue;
      finding.or_else.insert(finding.or_else.begin(), {fact("check_valve_as_it_is_sold", part.name, *part.opens_at),
                                                       {{{"air.check valve opens at", ""}}}});
      return;
    }
  }
}

/// A setting of the job's own, turned down until the valve stays shut.
std::optional<Mend> down_to_shut(const Plan& plan) {
  const auto& shut = plan.transfer.relief_stays_shut;
  if (!plan.transfer.setting_given || !shut) return std::nullopt;
  const GaugePressure lower = within_limit(*shut);
  if (!more_than(lower, plan.transfer.least_setting)) return std::nullopt;
  return Mend{fact("lower_setting", lower), {{{"air.set pressure", lower}}}};
}

/// Such a valve, or a setting that the one that is there lets be; else the walls have no room for either.
void mend_setting(const Plan& plan, const Settled& settled, const ReliefValve& valve, Finding& finding) {
  finding.or_else = room_for_valve(plan, settled, valve);
  // Where it passes what keeps the factor already, that has its own finding.
  const bool passes = more_than(valve.full_flow, plan.walls.four_to_one);
  if (auto closer = closer_valve(plan, valve, passes ? std::optional(plan.walls.limit) : std::nullopt))
    finding.or_else.insert(finding.or_else.begin(), std::move(*closer));
  add_tighter_regulator(plan, valve, finding);
  add_lighter_check(plan, finding);
  if (auto finer = finer_gauge_under(plan, opens_at_least(plan, valve.opens)))
    finding.or_else.insert(finding.or_else.begin(), std::move(*finer));
  const GaugePressure limit = plan.walls.limit;
  // What is advised keeps the factor of four, but for a setting of the job's own that passes it already.
  const bool passes_four = more_than(plan.transfer.setting, plan.walls.four_to_one);
  const auto fits = valve_that_fits(plan, valve, passes_four ? limit : std::min(limit, plan.walls.four_to_one));
  if (fits) {
    finding.mend = fact("valve_that_opens_at", *fits);
    // A setting that is worked out goes down for it, where it would open it.
    if (more_than(plan.transfer.setting, *fits))
      finding.mend = fact("setting_goes_down_for_it", quantity::Facts{*finding.mend});
    finding.ways_to_try = {{{kReliefSetting, *fits}}};
    if (auto down = down_to_shut(plan)) finding.or_else.insert(finding.or_else.begin(), std::move(*down));
    if (const auto down = turned_down(plan)) mend_first_by({*down}, finding);
    return;
  }
  const auto& shut = plan.transfer.relief_stays_shut;
  const GaugePressure lower = shut ? gauge_pascals(in_pascals(*shut) * kAsPrinted) : psig(0.0);
  // With room to lift the water surely.
  if (in_pascals(lower) > kRoomToLift * in_pascals(plan.transfer.fill.pressure_to_finish)) {
    finding.mend = fact("lower_setting", lower);
    finding.ways_to_mend = {{{"air.set pressure", lower}}};
  } else {
    finding.mend = fact("room_for_a_higher_valve");
  }
}

/// It opens, is off by its tolerance, and rises to full flow: all of that stays under the walls' limit.
void judge_setting(const Plan& plan, const Settled& settled, const ReliefValve& valve, Open& open) {
  const GaugePressure setting = plan.transfer.setting;
  if (more_than(setting, valve.opens))
    mend_setting(plan, settled, valve,
                 open.not_yet(Topic::relief, fact("relief_valve_blows_in_use", valve.connection, valve.opens, setting),
                              {}, {}, "worked out"));
  else if (more_than(left_alone(plan), opens_at_least(plan, valve.opens)))
    mend_setting(plan, settled, valve,
                 open.not_yet(Topic::relief,
                              fact("relief_valve_weeps", valve.connection, valve.opens,
                                   opens_at_least(plan, valve.opens), left_alone(plan), plan.transfer.knob_off),
                              {}, {}, "worked out"));
  if (at_most(valve.full_flow, plan.walls.limit)) return;
  Finding& finding = open.not_yet(
      Topic::relief, fact("relief_valve_opens_above_limit", valve.connection, valve.opens, valve.full_flow),
      Against{valve.full_flow, plan.walls.limit}, fact("give_the_valves_own_figures"), kReliefRules);
  finding.or_else = stiffer_for_four(plan, settled, valve.full_flow);
  if (auto closer = closer_valve(plan, valve)) finding.or_else.insert(finding.or_else.begin(), std::move(*closer));
  if (const auto own = own_figures(plan, valve)) {
    finding.ways_to_try = own->ways_to_try;
    return;
  }
  const auto lower = valve_that_fits(plan, valve, std::min(plan.walls.limit, plan.walls.four_to_one));
  if (lower) {
    finding.mend = fact("valve_that_opens_at", *lower);
    finding.ways_to_try = {{{kReliefSetting, *lower}}};
  } else if (auto under = lower_valve(plan, settled, valve)) {
    finding.mend = std::move(under->fact);
    finding.ways_to_try = std::move(under->ways_to_try);
  } else {
    finding.mend = fact(plan.transfer.setting_given ? "stiffer_walls_or_lower_setting" : "stiffer_walls");
  }
}

Length way_length(const Way& way) {
  Length sum{};
  for (const WayPart& part : way.parts) sum += part.length;
  return sum;
}

/// A port on the way whose nominal size is below that of the valve's inlet.
struct Necked {
  std::string part;
  std::string size;
  std::string of_valve;
};

std::optional<Necked> necked_to(const Catalog& catalog, const Way& way) {
  if (!way.device) return std::nullopt;
  const auto size_of = [&](PartId part, std::size_t port) {
    return catalog.port_type(catalog.part(part).ports[port].type).size;
  };
  const catalog::SizeId inlet = size_of(*way.device, 0);
  std::optional<Necked> narrowest;
  double least = catalog.nominal_inches(inlet);
  for (const WayPart& each : way.parts)
    for (const std::size_t port : {std::size_t{each.enter}, std::size_t{each.leave}}) {
      const catalog::SizeId size = size_of(each.part, port);
      const double inches = catalog.nominal_inches(size);
      if (inches <= 0.0 || inches >= least) continue;
      least = inches;
      narrowest = Necked{catalog.part(each.part).name, catalog.size_name(size), catalog.size_name(inlet)};
    }
  return narrowest;
}

/// Weight and spring close it upright alone: out of a side it takes what turns it up, out of the lid nothing that turns
/// it aside.
void judge_stand(const Plan& plan, const ReliefValve& valve, const Way& way, Open& open) {
  if (way.upright) return;
  const ConnectionPlan* connection = connection_named(plan.connections, way.connection);
  const JobPort* port = port_named(plan.job.reservoir.ports, connection->from);
  const bool from_side = port != nullptr && port->place == Place::side;
  Finding& finding = open.not_yet(
      Topic::relief, fact(from_side ? "relief_valve_lies_flat" : "relief_valve_turned_aside", valve.connection), {},
      fact(from_side ? "elbow_to_stand_upright" : "straight_on_from_the_lid"), "common practice");
  if (!from_side || !way.branched) return;
  // On a manifold a need of all its branches stands wherever it goes best.
  const Mend lid = into_lid(port->name);
  finding.mend = lid.fact;
  finding.ways_to_mend = lid.ways_to_mend;
  finding.ways_to_try = lid.ways_to_try;
}

/// It holds a screen or a cartridge, which fills up and shuts the way.
bool clogs(const Catalog& catalog, const catalog::Part& part) {
  const catalog::BodyShape shape = catalog.family(part.family).shape;
  return shape == catalog::BodyShape::strainer || shape == catalog::BodyShape::bowl;
}

/// What stands between the reservoir and its relief valve leaves the way as wide as the valve's own inlet, and stays
/// where it is.
/// @return a restrictor stands there
bool judge_way_to(const Plan& plan, const ReliefValve& valve, const Way& way, Open& open) {
  const Catalog& catalog = *plan.catalog;
  for (const WayPart& each : way.parts) {
    const catalog::Part& part = catalog.part(each.part);
    const catalog::Role role = catalog.family(part.family).role;
    if (role == catalog::Role::restrictor) {
      open.not_yet(Topic::relief, fact("restrictor_before_relief_valve", valve.connection, part.name), {},
                   fact("take_restrictor_to_the_supply"), kFullInlet);
      return true;
    }
    if (clogs(catalog, part)) {
      open.not_yet(Topic::relief, fact("relief_valve_behind_a_screen", valve.connection, part.name), {},
                   fact("take_it_out_of_the_way", part.name), kFullInlet);
      return false;
    }
    if (part.flexible || catalog.family(part.family).flexible) {
      open.not_yet(Topic::relief, fact("relief_valve_on_a_hose", valve.connection, part.name), {},
                   fact("relief_valve_on_fittings"), "common practice");
      return false;
    }
  }
  judge_stand(plan, valve, way, open);
  if (const Length away = way_length(way); more_than(away, kFarthestRelief)) {
    open.not_yet(Topic::relief, fact("relief_valve_far_away", valve.connection, away), Against{away, kFarthestRelief},
                 fact("relief_valve_on_fittings"), kFullInlet);
    return false;
  }
  if (more_than(valve.own_bore, valve.bore))
    open.not_yet(Topic::relief, fact("way_to_relief_valve_is_narrower", valve.connection, valve.bore, valve.own_bore),
                 {}, fact("fittings_as_wide_as_the_valve"), kFullInlet);
  else if (const auto necked = necked_to(catalog, way)) {
    open.not_yet(Topic::relief,
                 fact("way_to_relief_valve_is_necked", valve.connection, necked->part, necked->size, necked->of_valve),
                 {}, fact("fittings_as_wide_as_the_valve"), kFullInlet);
  }
  return false;
}

/// Valves and the ways to them come in one order.
/// @return a restrictor stands before one
bool judge_ways_to_valves(const Plan& plan, Open& open) {
  auto valve = plan.relief.valves.begin();
  bool restricted = false;
  for (const Way& way : plan.ways)
    if (way.use == WayUse::relief) restricted = judge_way_to(plan, *valve++, way, open) || restricted;
  return restricted;
}

/// One that stands where it guards nothing is none.
/// @return there is one
bool judge_places(const Plan& plan, Open& open) {
  bool any = false;
  for (const Way& way : plan.ways) {
    if (!way.guards_nothing) continue;
    any = true;
    Finding& finding =
        open.not_yet(Topic::relief, *way.guards_nothing, {}, fact("relief_valve_on_a_port_of_its_own"), kSection465);
    if (finding.reason.code == "relief_valve_under_water")
      finding.or_else = {into_lid(std::get<std::string>(finding.reason.values.at(1)))};
  }
  return any;
}

/// What to buy: a valve that opens between the setting and what the walls may see; where none that is sold does, that
/// is said, with what would make room for one.
Fact valve_to_buy(const Plan& plan, const std::optional<PartId>& part) {
  const ReliefPlan& relief = plan.relief;
  const GaugePressure setting = plan.transfer.setting;
  if (part) return fact("buy_relief_valve", *plan.catalog->part(*part).opens_at, relief.must_pass);
  if (!(relief.set_pressure > setting)) return fact("relief_valve_once_walls_allow", setting, relief.must_pass);
  const auto above = relief_sold_above(*plan.catalog, relief.set_pressure);
  const auto below = relief_sold_below(*plan.catalog, relief.set_pressure);
  if (above && below)
    return fact("no_relief_valve_is_sold_between", relief.set_pressure, relief.must_pass, setting, *above, *below);
  if (above) return fact("no_relief_valve_is_sold_so_low", relief.set_pressure, relief.must_pass, setting, *above);
  return fact("buy_relief_valve", relief.set_pressure, relief.must_pass);
}

/// The same valve for another thread: of that port, where it is sold.
PartId for_port(const Catalog& catalog, PartId valve, const JobPort* port) {
  if (port == nullptr) return valve;
  std::optional<PartId> fits;
  for (const catalog::Mate& mate : catalog.mates(port->type))
    for (const catalog::PortUse& use : catalog.uses(mate.other)) {
      const catalog::Part& part = catalog.part(use.part);
      if (catalog.family(part.family).role != catalog::Role::relief_valve || use.port != 0 || !part.opens_at) continue;
      if (!at_most(*part.opens_at, *catalog.part(valve).opens_at) ||
          !at_most(*catalog.part(valve).opens_at, *part.opens_at))
        continue;
      if (!fits || part.price < catalog.part(*fits).price) fits = use.part;
    }
  return fits.value_or(valve);
}

/// On a bung that is still to come: as wide as what the supply gives asks, or the widest that is sold below that.
PartId wide_enough(const Plan& plan, PartId valve) {
  constexpr double kShares[] = {1.0, 0.8, 0.6, 0.4};
  const catalog::Part& part = plan.catalog->part(valve);
  if (!plan.relief.valve_bore || !part.opens_at) return valve;
  const Length asked = with_relief_margin(*plan.relief.valve_bore);
  for (const double share : kShares) {
    if (at_most(asked * share, part.ports[0].bore)) return valve;
    if (const auto wider = wider_relief_valve(*plan.catalog, *part.opens_at, asked * share)) return *wider;
  }
  return valve;
}

/// A setting that is worked out goes down for a valve which keeps the walls' factor, where the water is lifted still.
std::optional<PartId> valve_to_go_down_for(const Plan& plan) {
  const auto valve = relief_valve_for(*plan.catalog, plan.transfer.least_setting, plan.relief.set_pressure);
  return valve && setting_goes_under(plan, *plan.catalog->part(*valve).opens_at) ? valve : std::nullopt;
}

void judge_no_valve(const Plan& plan, const Settled& settled, Open& open) {
  const ReliefPlan& relief = plan.relief;
  const Catalog& catalog = *plan.catalog;
  const GaugePressure setting = plan.transfer.setting;
  const JobPort* port = free_port_for(plan, "relief");
  const auto above = relief_sold_above(catalog, setting);
  auto part = relief_valve_for(catalog, setting, relief.set_pressure);
  if (!part) part = valve_to_go_down_for(plan);
  auto higher = !part && above && setting > psig(0.0) ? relief_valve_for(catalog, setting, *above) : std::nullopt;
  if (part && port == nullptr) part = wide_enough(plan, *part);
  if (part) part = for_port(catalog, *part, port);
  if (higher) higher = for_port(catalog, *higher, port);
  // What is bought has a mark that is sold; a spring for another one must be set by who sells it.
  const auto bought = part ? part : higher;
  std::optional<Purchase> valve;
  if (bought || relief.set_pressure > psig(0.0)) {
    const GaugePressure opens = bought ? *catalog.part(*bought).opens_at : relief.set_pressure;
    Fact measure = relief.valve_bore ? fact("set_at_with_clear_bore", opens, with_relief_margin(*relief.valve_bore))
                                     : fact("set_at", opens);
    if (!bought) measure = fact("adjustable_set_at", opens);
    valve = Purchase{"relief", "relief valve", std::move(measure), bought};
  }
  // A reducing valve is none: ASME BPVC Section VIII UG-125(g), note.
  Finding& finding =
      open.not_yet(Topic::relief, fact("no_relief_valve"), {}, valve_to_buy(plan, part), kSection465, std::move(valve));
  if (part) put_on_lid(plan, *part, port, finding);
  if (part && at_most(*catalog.part(*part).opens_at, setting))
    finding.mend = fact("setting_goes_down_for_it", quantity::Facts{*finding.mend});
  if (part || !higher) return;
  Finding on_lid;
  on_lid.mend = fact("buy_relief_valve", *above, relief.must_pass);
  put_on_lid(plan, *higher, port, on_lid);
  finding.also_buy = on_lid.also_buy;
  const Changes& put = on_lid.ways_to_mend.empty() ? on_lid.ways_to_try.front() : on_lid.ways_to_mend.front();
  finding.or_else = with_too(stiffer_for_four(plan, settled, *above), *on_lid.mend, put);
  for (Mend& mend : finding.or_else) {
    if (finding.buy) mend.buys = {*finding.buy};
    mend.buys.insert(mend.buys.end(), on_lid.also_buy.begin(), on_lid.also_buy.end());
  }
}

/// A setting may leave no room under what keeps the factor at 4: the valve that is advised then passes it, and that is
/// not left unsaid.
void judge_advised_setting(const Plan& plan, const Settled& settled, Open& open) {
  if (plan.transfer.setting > plan.walls.limit) return;  // refused
  if (plan.relief.set_pressure <= plan.walls.four_to_one) return;
  open.not_yet(Topic::relief, fact("relief_setting_passes_four_to_one", plan.relief.set_pressure),
               Against{plan.relief.set_pressure, plan.walls.four_to_one}, fact("stiffer_walls_or_lower_setting"),
               kFactorOfFour)
      .or_else = stiffer_for_four(plan, settled, plan.relief.set_pressure);
}

}  // namespace

void judge_relief(const Plan& plan, const Settled& settled, Open& open) {
  const bool idle = judge_places(plan, open);
  bool enough = true;
  if (plan.relief.given) {
    // Taken out, the restrictor is no reason for a smaller one on the supply side.
    enough = !judge_ways_to_valves(plan, open) && judge_capacity(plan, open);
    for (const ReliefValve& valve : plan.relief.valves) judge_setting(plan, settled, valve, open);
  } else {
    if (!idle && !devices_are_missing(plan)) judge_no_valve(plan, settled, open);
    judge_advised_setting(plan, settled, open);
  }
  judge_leak_test(plan, settled, enough, open);
}

}  // namespace riserun::plan
