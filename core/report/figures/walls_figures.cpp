#include "report/figures/figures.h"
#include "report/figures/support_figures.h"

namespace riserun::report {

namespace {

constexpr const char* kPlates =
    "Each bare panel as a flat plate under uniform pressure, edges held and edges free, whichever stands less "
    "(Timoshenko and Woinowsky-Krieger), at the design stress, with the water standing on it.";
constexpr const char* kFactor =
    "Yield over the greatest stress of any panel. California Title 8 section 3301 asks 4 at the greatest pressure that "
    "can occur when air lifts a substance.";
constexpr const char* kFactorFailed =
    "If the regulator fails open and nothing gives way. Yield over the greatest stress of any panel. California Title "
    "8 "
    "section 3301 asks 4 at the greatest pressure that can occur when air lifts a substance.";
constexpr const char* kGreatest =
    "With the regulator failed open and the riser stopped: where the job's relief valves, with their tolerance and "
    "rise "
    "to full flow, pass all that the supply gives; without one the supply's own pressure.";
constexpr const char* kUltimate = "The same on the sheet's ultimate strength.";

}  // namespace

FigureGroup walls_figures(const plan::Plan& plan) {
  const plan::WallsPlan& walls = plan.walls;
  FigureGroup group{"walls", "Walls", plan::Topic::walls, {}};
  group.figures = {{.key = "checked_at",
                    .label = "checked at",
                    .value = walls.at_set.pressure,
                    .limit = walls.limit,
                    .source = {"The greatest air pressure of the fill, with the water standing under it.", {}}},
                   {.key = "design_stress",
                    .label = "design stress",
                    .value = walls.at_set.design_stress,
                    .beside = {"in {0}", {walls.metal.name}},
                    .source = {"{0}", {quantity::Facts{walls.at_set.design_stress_basis}}}},
                   {.key = "limit",
                    .label = "walls' limit",
                    .value = walls.limit,
                    .beside = {"{0}", {walls.weakest}},
                    .source = {kPlates, {}}},
                   {.key = "four_to_one",
                    .label = "4 to 1 up to",
                    .value = walls.four_to_one,
                    .form = "alone",
                    .source = {kFactor, {}}},
                   {.key = "factor_at_set",
                    .label = "factor at the setting",
                    .value = walls.factor_at_set,
                    .form = "factor",
                    .beside = {"asked: 4", {}},
                    .source = {kFactor, {}}},
                   {.key = "factor_at_full_supply",
                    .label = "factor at the full supply",
                    .value = walls.factor_at_full_supply,
                    .form = "factor",
                    .beside = {"at {0:alone}", {walls.full_supply}},
                    .source = {kFactorFailed, {}}},
                   {.key = "factor_at_set_on_ultimate",
                    .label = "at the setting, on ultimate",
                    .value = walls.factor_at_set_on_ultimate,
                    .form = "factor",
                    .source = {kUltimate, {}}},
                   {.key = "factor_at_full_supply_on_ultimate",
                    .label = "at the full supply, on ultimate",
                    .value = walls.factor_at_full_supply_on_ultimate,
                    .form = "factor",
                    .source = {kUltimate, {}}},
                   {.key = "lid_force",
                    .label = "force on the lid",
                    .value = walls.lid_force,
                    .beside = {"at the setting", {}},
                    .source = {"Set pressure times the lid's area.", {}}}};
  if (walls.next_stay)
    group.figures.push_back({.key = "limit_with_next_stay",
                             .label = "limit with the stay that pays most",
                             .value = walls.next_stay->limit_after,
                             .form = "alone",
                             .beside = {"{0}", {walls.next_stay->what}},
                             .source = {kPlates, {}}});
  if (walls.stayed_limit)
    group.figures.push_back({.key = "stayed_limit",
                             .label = "limit by the stayed-surface rule",
                             .value = *walls.stayed_limit,
                             .form = "alone",
                             .source = {"p = t^2 S C / pitch^2", {}}});
  add_support_figures(walls, group.figures);
  return group;
}

FigureGroup relief_figures(const plan::Plan& plan) {
  const plan::ReliefPlan& relief = plan.relief;
  FigureGroup group{"relief", "Relief", plan::Topic::relief, {}};
  group.figures = {{.key = "set_pressure",
                    .label = "relief valve",
                    .value = relief.set_pressure,
                    .form = "dial",
                    .limit = plan.walls.limit,
                    .source = {"At or below the walls' limit, above the greatest pressure of the fill.", {}}},
                   {.key = "must_pass",
                    .label = "it must pass",
                    .value = relief.must_pass,
                    .form = "air",
                    .beside = {"free air", {}},
                    .source = {"All that the supply gives through the feed with the regulator failed open.", {}}},
                   {.key = "greatest",
                    .label = "the most that can occur",
                    .value = relief.greatest,
                    .limit = plan.walls.limit,
                    .source = {kGreatest, {}}},
                   {.key = "factor_at_greatest",
                    .label = "factor there",
                    .value = relief.factor_at_greatest,
                    .form = "factor",
                    .beside = {"asked: 4", {}},
                    .source = {kFactor, {}}},
                   {.key = "lid_force_at_greatest",
                    .label = "force on the lid there",
                    .value = relief.lid_force_at_greatest,
                    .source = {"The greatest pressure times the lid's area.", {}}}};
  if (relief.valve_bore)
    group.figures.push_back({.key = "valve_bore",
                             .label = "which takes",
                             .value = *relief.valve_bore,
                             .form = "thickness2",
                             .beside = {"clear bore or more", {}},
                             .source = {"The bore that passes that much air at the relief pressure.", {}}});
  if (relief.failed_regulator_pressure)
    group.figures.push_back({.key = "failed_regulator_pressure",
                             .label = "regulator failed open",
                             .value = *relief.failed_regulator_pressure,
                             .limit = plan.walls.limit,
                             .source = {"What the air supply can hold in the reservoir against the open riser: the air "
                                        "through the feed bore and all of its connection.",
                                        {}}});
  if (relief.restrictor_bore)
    group.figures.push_back({.key = "restrictor_bore",
                             .label = "restrictor",
                             .value = *relief.restrictor_bore,
                             .form = "thickness2",
                             .beside = {"right before the regulator", {}},
                             .source = {"The next smaller hole that is sold, below the one that just keeps a failed "
                                        "regulator within the walls' limit; the job worked out again with it.",
                                        {}}});
  if (const auto& restrictor = relief.restrictor) {
    group.figures.push_back({.key = "pressure_with_restrictor",
                             .label = "regulator failed open, with it",
                             .value = relief.given ? restrictor->riser_stopped : restrictor->riser_open,
                             .limit = plan.walls.limit,
                             .source = {"As above, with the restrictor in its place.", {}}});
    group.figures.push_back({.key = "fill_time_with_restrictor",
                             .label = "the fill with it",
                             .value = restrictor->fill_time,
                             .source = {"Solved in time as the fill is, with the restrictor in its place.", {}}});
  }
  return group;
}

}  // namespace riserun::report
