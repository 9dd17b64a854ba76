// The water runs out by a drain with nothing but its own weight behind it: what holds it back, and what lets it out too
// slowly.
#include "plan/judge/drain.h"
#include "plan/judge/limits.h"
#include "plan/judge/open.h"

#include <algorithm>

namespace riserun::plan {

namespace {

const std::string& name_of(const Way& way) { return way.branched ? way.end : way.connection; }

/// The part taken out of what the run needs; of a branch no change says it.
void leave_out(const Plan& plan, const Way& way, PartId part, Finding& finding) {
  finding.mend = fact("leave_the_part_out", plan.catalog->part(part).name);
  if (!way.branched) finding.ways_to_try = {{{kNeedLeftOut, way.connection, part}}};
}

Volume full_of(const Plan& plan, const DrainPlan& drain) {
  return drain.of_table ? plan.levels.need : plan.levels.charge;
}

/// @return it has its finding
bool judge_check(const Plan& plan, const DrainPlan& drain, Open& open) {
  if (!drain.check) return false;
  const Way& way = plan.ways[drain.way];
  const std::string& part = plan.catalog->part(*drain.check).name;
  Finding& finding =
      drain.time ? open.not_yet(
                       Topic::connections,
                       fact("check_valve_in_a_drain", name_of(way), part, drain.held, drain.left, full_of(plan, drain)),
                       {}, {}, "worked out")
                 : open.not_yet(Topic::connections,
                                fact("check_valve_shuts_a_drain", name_of(way), part, drain.held, drain.full), {}, {},
                                "worked out");
  leave_out(plan, way, *drain.check, finding);
  return true;
}

bool judge_restrictor(const Plan& plan, const DrainPlan& drain, Open& open) {
  if (!drain.restrictor) return false;
  const Way& way = plan.ways[drain.way];
  Finding& finding =
      open.not_yet(Topic::connections,
                   fact("restrictor_in_a_drain", name_of(way), plan.catalog->part(*drain.restrictor).name, *drain.time),
                   {}, {}, "worked out");
  leave_out(plan, way, *drain.restrictor, finding);
  return true;
}

/// Against frost it is emptied in the evening, else over night; a table while somebody waits.
Time longest(const Plan& plan, const DrainPlan& drain) {
  if (drain.of_table) return kLongestTableDrain;
  return plan.job.against_frost.drained ? kEvening : kNight;
}

void judge_time(const Plan& plan, const DrainPlan& drain, Open& open) {
  if (!drain.time || *drain.time <= longest(plan, drain)) return;
  open.not_yet(Topic::connections,
               fact(drain.of_table                   ? "table_drain_takes_too_long"
                    : plan.job.against_frost.drained ? "drain_outlasts_the_evening"
                                                     : "drain_takes_too_long",
                    name_of(plan.ways[drain.way]), *drain.time),
               Against{*drain.time, longest(plan, drain)}, fact("wider_drain"), "common practice");
}

/// What shatters under compressed air ends no run from the reservoir: the leak test puts air there, and so does water
/// that runs out.
void judge_plastic_ends(const Plan& plan, Open& open) {
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::water || !way.device || plan.catalog->part(*way.device).air) continue;
    const ConnectionPlan* connection = connection_named(plan.connections, way.connection);
    if (port_named(plan.job.reservoir.ports, connection->from) == nullptr) continue;
    const std::string& part = plan.catalog->part(*way.device).name;
    open.refuse(Topic::connections, fact("plastic_end_on_the_reservoir", name_of(way), part), {},
                fact("metal_end_in_its_place", part), "common practice");
  }
}

bool is_asked_for(const Plan& plan, const Way& way, PartId part) {
  const ConnectionPlan* connection = connection_named(plan.connections, way.connection);
  const auto& needs = connection->request.needs;
  return std::any_of(needs.begin(), needs.end(), [&](const chain::Need& need) {
    return std::find(need.parts.begin(), need.parts.end(), part) != need.parts.end();
  });
}

/// Before its valve a hose of the reservoir's holds the pressure on barbs and clamps.
void judge_hose_before_valve(const Plan& plan, const DrainPlan& drain, Open& open) {
  const Way& way = plan.ways[drain.way];
  if (drain.of_table || !plan.catalog->part(*way.device).air) return;  // of plastic it is refused, hose and all
  for (const WayPart& part : way.parts) {
    const catalog::Part& row = plan.catalog->part(part.part);
    if (plan.catalog->family(row.family).can_shut) return;
    if (!row.flexible) continue;
    Finding& finding = open.not_yet(Topic::connections, fact("drain_valve_behind_hose", name_of(way), part.length), {},
                                    fact("drain_valve_on_its_bung"), "common practice");
    if (!way.branched && is_asked_for(plan, way, part.part))
      finding.ways_to_try = {{{kNeedLeftOut, way.connection, part.part}}};
    return;
  }
}

}  // namespace

void judge_drains_by_weight(const Plan& plan, const Settled& /*settled*/, Open& open) {
  judge_plastic_ends(plan, open);
  for (const DrainPlan& drain : plan.drains) judge_hose_before_valve(plan, drain, open);
  for (const DrainPlan& drain : plan.drains)
    if (!judge_check(plan, drain, open) && !judge_restrictor(plan, drain, open)) judge_time(plan, drain, open);
}

}  // namespace riserun::plan
