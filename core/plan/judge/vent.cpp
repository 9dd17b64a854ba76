#include "plan/judge/open.h"
#include "plan/sold.h"

#include <algorithm>

namespace riserun::plan {

void judge_vent(const Plan& plan, const Settled& /*settled*/, Open& open) {
  const auto is_vent = [](const Way& way) { return way.use == WayUse::vent; };
  if (std::any_of(plan.ways.begin(), plan.ways.end(), is_vent)) return;
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::feed) continue;
    const auto check = std::find_if(way.parts.begin(), way.parts.end(), [&](const WayPart& part) {
      const catalog::Part& row = plan.catalog->part(part.part);
      return row.one_way && plan.catalog->family(row.family).role != catalog::Role::regulator;
    });
    if (check == way.parts.end()) continue;
    const auto valve = vent_valve(*plan.catalog);
    Finding& finding = open.not_yet(
        Topic::transfer, fact("no_vent_behind_check_valve", way.connection, plan.catalog->part(check->part).name), {},
        fact("add_a_vent"), "common practice", Purchase{"vent-valve", "ball valve", fact("for_the_vent"), valve});
    if (valve) finding.ways_to_mend = {{{"connections", "", valve}}};
    return;
  }
}

}  // namespace riserun::plan
