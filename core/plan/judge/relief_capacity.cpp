#include "plan/judge/relief_capacity.h"

#include "plan/judge/limits.h"
#include "plan/sold.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <cmath>

namespace riserun::plan {

namespace {

using quantity::at_most;

constexpr const char* kFuelGas = "worked out; fuel gas code section 416.2.5 sizes relief so";

/// The hole of the restrictor in the air's way to the reservoir.
std::optional<Length> restrictor_in_feed(const Plan& plan) {
  for (const Way& way : plan.ways)
    for (const WayPart& part : way.parts)
      if (way.use == WayUse::feed &&
          plan.catalog->family(plan.catalog->part(part.part).family).role == catalog::Role::restrictor)
        return part.bore;
  return std::nullopt;
}

/// The next wider one that is sold and passes what the supply gives; where none is, the bore that does, to a drill's
/// size up.
Fact wider_valve(const Plan& plan, const ReliefValve& valve) {
  // At one pressure the flow goes with the area.
  const double wider =
      std::sqrt(kReliefMargin * in_cubic_metres_per_second(valve.supply) / in_cubic_metres_per_second(valve.passes));
  const Length least = std::max(with_relief_margin(valve.needed_bore), valve.own_bore * wider);
  const auto sold = wider_relief_valve(*plan.catalog, valve.opens, least);
  if (!sold) return fact("valve_of_clear_bore", next_drill_up(least));
  const catalog::Part& part = plan.catalog->part(*sold);
  return fact("wider_valve_that_is_sold", part.name, part.ports[0].bore);
}

}  // namespace

Length with_relief_margin(Length bore) { return bore * std::sqrt(kReliefMargin); }

bool judge_capacity(const Plan& plan, Open& open) {
  const std::vector<ReliefValve>& valves = plan.relief.valves;
  const auto first = std::min_element(valves.begin(), valves.end(), [](const ReliefValve& a, const ReliefValve& b) {
    return a.full_flow < b.full_flow;
  });
  const bool holds = at_most(plan.relief.held, first->full_flow);
  if (holds && first->passes >= kReliefMargin * first->supply) return true;
  // What a feed that does not go together gives is not known.
  if (feed_is_missing(plan)) return holds;
  const Fact reason =
      holds ? fact("relief_valve_has_no_margin", first->connection, first->own_bore, first->passes, first->supply)
      : first->bore < first->own_bore
          ? fact("relief_valve_fed_too_narrow", first->connection, first->own_bore, first->bore, first->passes,
                 first->supply)
          : fact("relief_valve_too_narrow", first->connection, first->own_bore, first->passes, first->supply);
  // Of two holes in a row the smaller one decides: another one in its place, by the flow's ratio. Where one is sold
  // that does, and the fill was worked out again with it, it is that one.
  const auto has = restrictor_in_feed(plan);
  const double less = std::sqrt(in_cubic_metres_per_second(first->passes) /
                                (kReliefMargin * in_cubic_metres_per_second(first->supply)));
  const Length hole = has ? restrictor_sold_up_to(*plan.catalog, *has * less)
                      : plan.relief.restrictor
                          ? std::min(plan.relief.restrictor->bore,
                                     restrictor_sold_up_to(*plan.catalog, first->restrictor / std::sqrt(kReliefMargin)))
                          : restrictor_sold_up_to(*plan.catalog, first->restrictor / std::sqrt(kReliefMargin));
  if (!(hole > Length())) {
    open.not_yet(Topic::relief, reason, {},
                 fact("relief_valve_of_clear_bore", quantity::Facts{wider_valve(plan, *first)}), kFuelGas);
    return holds;
  }
  open.not_yet(Topic::relief, reason, {},
               has ? fact("smaller_restrictor", hole, *has, quantity::Facts{wider_valve(plan, *first)})
                   : fact("restrictor_on_supply_side", hole, quantity::Facts{wider_valve(plan, *first)}),
               kFuelGas, Purchase{"restrictor", "restrictor", fact("hole_no_larger_than", hole)})
      .ways_to_try = {{{kRestrictorInRun, hole}}};
  return holds;
}

}  // namespace riserun::plan
