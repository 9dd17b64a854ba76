// Runs that turn. A straight run's length follows from two heights; one that turns is made of legs that nobody has
// measured, and a hose beside an elbow has to turn back what that turned.
#include "chain/finder.h"
#include "plan/job/facing.h"
#include "plan/judge/hose_of_size.h"
#include "plan/judge/open.h"
#include "quantity/nearly.h"

#include <algorithm>

namespace riserun::plan {

namespace {

bool bends(const Catalog& catalog, PartId id) {
  const catalog::Part& part = catalog.part(id);
  return part.flexible || catalog.family(part.family).flexible;
}

bool has_a_hose(const Catalog& catalog, const chain::Chain& chain) {
  return std::any_of(chain.parts.begin(), chain.parts.end(),
                     [&](const chain::RunPart& link) { return bends(catalog, link.part); });
}

bool turns(const Catalog& catalog, const chain::RunPart& link) {
  constexpr double kNone = 1.0;  // degrees that count as none
  return turn_between(catalog.part(link.part), link.enter, link.leave()) > kNone;
}

void judge_rigid(const Plan& plan, const ConnectionPlan& line, Open& open) {
  Finding& finding =
      open.not_yet(Topic::connections, fact("rigid_run_round_a_corner", line.name, line.from, line.to), {},
                   fact(line.request.taken ? "take_one_with_a_hose" : "hose_round_the_corner"), "common practice");
  if (line.request.taken) return;
  if (const auto hose = hose_of_size(plan, line)) finding.ways_to_try = {{{kNeedOf, line.name, hose}}};
  for (const std::string& name : {line.from, line.to})
    if (const JobPort* port = port_named(plan.job.table.ports, name); port != nullptr && port->place != Place::floor)
      finding.or_else = {into_floor(name)};
}

/// What is left for the hose between the parts that stand in line with the two ports, at least: what stands beyond a
/// turn makes nothing of the distance.
Length left_to_make(const Catalog& catalog, const ConnectionPlan& line) {
  const std::vector<chain::RunPart>& parts = line.chain()->parts;
  const auto stands_aside = [&](const chain::RunPart& link) {
    return turns(catalog, link) || bends(catalog, link.part);
  };
  Length left = *line.gap;
  const auto take = [&](auto begin, auto end, bool forward) {
    for (auto link = begin; link != end; ++link) {
      const std::vector<catalog::Port>& ports = catalog.part(link->part).ports;
      if (stands_aside(*link)) {
        if (!bends(catalog, link->part)) left -= ports[forward ? link->enter : link->leave()].reach;
        return;
      }
      left -= ports[link->enter].reach + ports[link->leave()].reach;
    }
  };
  take(parts.begin(), parts.end(), true);
  take(parts.rbegin(), parts.rend(), false);
  return left;
}

void judge_beside_hose(const Plan& plan, const ConnectionPlan& line, const JobConnection& asked, Open& open) {
  const Catalog& catalog = *plan.catalog;
  const std::vector<chain::RunPart>& parts = line.chain()->parts;
  const auto turned = std::find_if(parts.begin(), parts.end(), [&](const chain::RunPart& link) {
    return !bends(catalog, link.part) && turns(catalog, link);
  });
  if (turned == parts.end()) return;
  const std::string& part = catalog.part(turned->part).name;
  const Length left = line.gap ? left_to_make(catalog, line) : Length();
  if (asked.hose_length && !quantity::more_than(left, *asked.hose_length)) return;
  Finding& finding = open.not_yet(Topic::connections,
                                  asked.hose_length ? fact("hose_short_beside_a_turn", line.name, part, left)
                                                    : fact("fitting_turns_beside_a_hose", line.name, part),
                                  {}, fact("leave_turn_out_or_lay_the_hose", part), "common practice");
  if (!line.request.taken) finding.ways_to_try = {{{kNeedLeftOut, line.name, turned->part}}};
}

}  // namespace

void judge_turns(const Plan& plan, const Settled& /*settled*/, Open& open) {
  for (const JobConnection& asked : plan.job.connections) {
    const ConnectionPlan* line = connection_named(plan.connections, asked.name);
    if (line == nullptr || line->chain() == nullptr || line->ends_in) continue;
    const bool has_hose = has_a_hose(*plan.catalog, *line->chain());
    const auto in_line = look_at_each_other(plan.job, line->from, line->to);
    if (in_line == false && asked.gap)
      open.not_yet(Topic::connections, fact("gap_round_a_corner", line->name, line->from, line->to), {},
                   fact("heights_in_place_of_gap"), "common practice");
    if (in_line == false && !has_hose) judge_rigid(plan, *line, open);
    const bool along_a_wall = in_line == false && !line->hose_rise && !asked.hose_length &&
                              port_named(plan.job.reservoir.ports, line->from) != nullptr &&
                              port_named(plan.job.reservoir.ports, line->to) != nullptr;
    if (has_hose && ((in_line == true && line->gap) || along_a_wall)) judge_beside_hose(plan, *line, asked, open);
  }
}

}  // namespace riserun::plan
