#include "plan/judge/drain.h"
#include "report/figures/figures.h"
#include "report/text/plan_text.h"
#include "report/words/list_words.h"
#include "report/words/plan_keys.h"
#include "report/words/say.h"
#include "reservoir/relief.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::report {

namespace {

using plan::Plan;
using plan::Severity;
using plan::Topic;

/// The greatest pressure that can occur with what is in the job, and the factor of safety there.
std::string factor_line(const Plan& plan, UnitSystem units) {
  const FigureGroup relief = relief_figures(plan);
  const std::string holds =
      plan.walls.four_to_one > psig(0.0)
          ? "which holds up to " + write_pressure_alone(plan.walls.four_to_one, units)
          : "which the walls hold at no air pressure at all, the water's own weight being too much: more stays or "
            "thicker sheet";
  return fmt::format(
      "the factor of safety on yield is {} at {}, the greatest that can occur with what is in the job; "
      "California Title 8 section 3301(e) asks 4, {}",
      written(relief["factor_at_greatest"], units), written(relief["greatest"], units), holds);
}

std::string connections_line(const Plan& plan) {
  const auto all = static_cast<long>(plan.connections.size());
  if (all == 0) return "the job names no connection";
  const auto made = std::count_if(plan.connections.begin(), plan.connections.end(), [](const auto& connection) {
    return connection.run() != nullptr && connection.run()->buildable;
  });
  if (made == all)
    return counted(made, "connection goes", "connections go") + " together, " +
           counted(static_cast<long>(plan.list.buy.size()), "thing", "things") + " to buy";
  return fmt::format("{} of {} connections go together", made, all);
}

std::string water_line(const Plan& plan, UnitSystem units) {
  const FigureGroup levels = levels_figures(plan);
  return fmt::format("charge {} deep ({}); the table needs {}, the riser can lift {}, {} stays behind",
                     written(levels["charge_depth"], units), written_also(levels["charge_depth"], units),
                     written_also(levels["table_depth"], units), written(levels["usable"], units),
                     written_also(levels["heel_depth"], units));
}

std::string riser_line(const Plan& plan, UnitSystem units) {
  const FigureGroup riser = riser_figures(plan.riser);
  return fmt::format("{} in pipe, cut {} {}; clearance {} over the floor", plan.riser.size,
                     written(riser["cut_length"], units), said(riser["cut_length"].beside, units),
                     written(riser["clearance"], units));
}

std::string pressure_line(const Plan& plan, UnitSystem units) {
  const FigureGroup filling = filling_figures(plan);
  const auto nothing = nothing_to_hold(plan.transfer);
  return fmt::format("set {}; hold {}; walls' limit {}", write_pressure(plan.transfer.setting, units),
                     nothing ? say(*nothing, units) : written(filling["hold_pressure"], units),
                     written(walls_figures(plan)["limit"], units));
}

std::string time_with_range(const Figure& time, UnitSystem units) {
  if (!std::isfinite(in_seconds(std::get<Time>(*time.high)))) return written(time, units) + " (at worst never)";
  return written_with_range(time, units);
}

/// In place of a time that water would take through a run that is not there.
std::string no_run(const Plan& plan) { return fmt::format("not while '{}' has no chain", plan.transfer.missing_run); }

std::string fill_line(const Plan& plan, UnitSystem units) {
  const transfer::Fill& fill = plan.transfer.fill;
  if (!plan.transfer.missing_run.empty()) return no_run(plan);
  if (fill.stop != transfer::Stop::goal_reached) return "does not reach the wanted depth: see Filling";
  const FigureGroup filling = filling_figures(plan);
  const std::string time =
      fmt::format("{}, limited by the {}", time_with_range(filling["time"], units), fill.limited_by);
  const std::string shut = written(filling["shut_off_depth"], units);
  const std::string full = written(levels_figures(plan)["table_depth"], units);
  return shut == full ? time : fmt::format("{}; shut the air at {} and it coasts up to {}", time, shut, full);
}

std::string drain_line(const Plan& plan, UnitSystem units) {
  if (!plan.transfer.missing_run.empty()) return no_run(plan);
  if (plan.transfer.fill.stop != transfer::Stop::goal_reached) return "see Draining: the table is never full";
  if (const plan::ConnectionPlan* drain = plan::drain_in_place_of_line(plan))
    return fmt::format("by the table's own drain '{}': the line lets no water back", drain->name);
  const FigureGroup draining = draining_figures(plan);
  if (!plan::drains_by_line(plan)) return "never: " + said(draining["time"].beside, units);
  return fmt::format("{}; {} stays in the table", time_with_range(draining["time"], units),
                     written(draining["left_in_table"], units));
}

std::string walls_line(const Plan& plan, UnitSystem units) {
  const FigureGroup walls = walls_figures(plan);
  const std::string four_to_one = plan.walls.four_to_one > psig(0.0)
                                      ? "4 to 1 up to " + written(walls["four_to_one"], units)
                                      : "4 to 1 at no pressure";
  return fmt::format("limit {}, weakest: {}; {}; factor on yield {} at the setting",
                     write_pressure_alone(plan.walls.limit, units), said(walls["limit"].beside, units), four_to_one,
                     written(walls["factor_at_set"], units));
}

std::string list_line(const Plan& plan) {
  return fmt::format("buy {} for {}, take {} from the bin, {} to cut",
                     counted(static_cast<long>(plan.list.buy.size()), "item", "items"),
                     write_about(cost_with_metal(plan.list)),
                     counted(static_cast<long>(plan.list.from_bin.size()), "item", "items"),
                     counted(static_cast<long>(plan.list.cut.size()), "piece", "pieces"));
}

}  // namespace

std::string summary_text(const Plan& plan, const Style& style) {
  const std::string title = plan.job.name.empty() ? "Plan" : plan.job.name;
  std::string text = heading(title, style);
  text += wrapped("  Verdict   ", std::string(key_of(plan.verdict)), style.width);
  text += findings_text(plan, Severity::refused, style);
  if (plan.relief.factor_at_greatest < reservoir::kAirLiftFactor)
    text += wrapped("  UNDER 4   ", factor_line(plan, style.units), style.width);
  text += findings_text(plan, Severity::not_yet, style);
  text += remarks_text(plan, Topic::whole_job, style);
  const std::vector<std::vector<std::string>> rows = {
      {"Parts", connections_line(plan)},        {"Riser", riser_line(plan, style.units)},
      {"Water", water_line(plan, style.units)}, {"Pressure", pressure_line(plan, style.units)},
      {"Fill", fill_line(plan, style.units)},   {"Drain", drain_line(plan, style.units)},
      {"Walls", walls_line(plan, style.units)}, {"List", list_line(plan)},
  };
  for (const auto& row : rows) text += wrapped(fmt::format("  {:<9} ", row[0]), row[1], style.width);
  return text;
}

}  // namespace riserun::report
