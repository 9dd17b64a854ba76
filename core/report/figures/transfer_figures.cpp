#include "plan/judge/drain.h"
#include "report/figures/figures.h"

#include <cmath>

namespace riserun::report {

namespace {

constexpr const char* kSolved =
    "Solved in time: water in reservoir and table, air in the ullage, regulator, receiver and line. Friction "
    "Colebrook-White, fittings Crane TP-410, inlet Idelchik. The range: all coefficients at one end of their published "
    "spread, the air supply or the vent a tenth more or less, the setting off by the regulator's repeatability, and "
    "iron and steel pipe as rough as old water pipe (1.5 mm) at the slow end.";

constexpr const char* kRim =
    "Shallow water falls over the inlet's rim as over a weir: at most 1.705 pi D h^1.5 (critical depth over a broad "
    "crest; below 60 mm a bound), between 1.55 for a broad crest in use and 1.805 for a sharp one, or what the line "
    "takes where that is less.";

Figure left_in_table(const plan::TransferPlan& transfer) {
  return {
      .key = "left_in_table",
      .label = "stays in the table",
      .value = transfer.left_in_table,
      .low = transfer.left_in_table,
      .high = transfer.left_if_oily,
      .source = {transfer.siphon
                     ? "Below the mouth of the pipe over the rim; all of it where the mouth does not reach the water."
                     : "Below the inlet, and the film that stays on a level floor: 1 mm where it is well wetted, "
                       "3 to 4 mm where it is oily or painted (capillary length, contact angles 20 to 90 degrees).",
                 {}}};
}

void add_siphon(const plan::SiphonPlan& siphon, std::vector<Figure>& figures) {
  figures.push_back(
      {.key = "siphon_crest",
       .label = "drains as a siphon over",
       .value = siphon.crest,
       .beside = {siphon.covered ? "it must be full of water to start" : "its mouth is out of the water", {}},
       .source = {"The highest point of the pipe, above the table's floor.", {}}});
  figures.push_back({.key = "siphon_mouth",
                     .label = "and breaks at",
                     .value = siphon.mouth,
                     .beside = {"where its mouth uncovers", {}},
                     .source = {"Where the pipe ends, above the table's floor.", {}}});
}

/// How far depth and time move with the setting.
void add_sensitivity(const plan::Plan& plan, std::vector<Figure>& figures) {
  const transfer::Fill& fill = plan.transfer.fill;
  figures.push_back({.key = "rise_per_tenth_psi",
                     .label = "0.1 psi more at rest",
                     .value = fill.rise_per_tenth_psi,
                     .beside = {"deeper in the table", {}},
                     .source = {"0.1 psi as height of water, shared by table and reservoir by their areas.", {}}});
  if (fill.time_per_tenth_psi) {
    // What the solver leaves is none, where the compressor and no regulator decides.
    constexpr double kNone = 0.05;  // s
    const bool none = std::abs(in_seconds(*fill.time_per_tenth_psi)) < kNone;
    figures.push_back({.key = "time_per_tenth_psi",
                       .label = "0.1 psi more at the regulator",
                       .value = none ? quantity::Value(std::string("no"))
                                     : quantity::Value(seconds(-in_seconds(*fill.time_per_tenth_psi))),
                       .beside = {"shorter", {}},
                       .source = {kSolved, {}}});
  }
  if (plan.job.measured_fill_time)
    figures.push_back({.key = "measured_time",
                       .label = "measured",
                       .value = *plan.job.measured_fill_time,
                       .beside = {"worked out {0}", {fill.time}},
                       .source = {"By the clock, as the job says; nothing is worked out from it.", {}}});
}

void add_margin(const plan::RiserMargin& margin, std::vector<Figure>& figures) {
  if (!(margin.flow > cubic_metres_per_second(0.0))) return;
  figures.push_back(
      {.key = "riser_dip",
       .label = "riser draws air below",
       .value = margin.dip,
       .beside = {"over its end, in quiet water", {}},
       .source = {"0.69 (Q^2/g)^0.2 at the flow at the end of the fill: the dip of the surface reaches the "
                  "mouth (Lubin and Springer 1967).",
                  {}}});
  figures.push_back(
      {.key = "riser_submergence",
       .label = "surely none above",
       .value = margin.intake,
       .beside = {"between the two air may be drawn; a cross in the mouth helps", {}},
       .source = {"D (1 + 2.3 v / sqrt(g D)), which ANSI/HI 9.8 asks of the intakes of full-size pumps.", {}}});
}

void add_jet(const plan::JetPlan& jet, std::vector<Figure>& figures) {
  figures.push_back(
      {.key = "jet_height",
       .label = "fountain at first",
       .value = jet.height,
       .low = jet.height,
       .high = jet.most,
       .beside = {"over the inlet; the rim stands {0} over it; a deflector or an elbow turns it aside", {jet.rim}},
       .source = {"v^2/2g of the mean velocity at the inlet when the water first arrives, and up to 1.3 "
                  "times that (upright pipes, discharge table).",
                  {}}});
}

/// What a fill and a drain have in common.
std::vector<Figure> common_figures(const transfer::Transfer& transfer, const char* free_air) {
  return {{.key = "time",
           .label = "time",
           .value = transfer.time,
           .low = transfer.time_low,
           .high = transfer.time_high,
           .source = {kSolved, {}}},
          {.key = "moved", .label = "moved", .value = transfer.volume, .source = {kSolved, {}}},
          {.key = "mean_flow", .label = "mean flow", .value = transfer.mean_flow, .source = {kSolved, {}}},
          {.key = "peak_flow", .label = "greatest flow", .value = transfer.peak_flow, .source = {kSolved, {}}},
          {.key = "free_air", .label = free_air, .value = transfer.free_air, .form = "air", .source = {kSolved, {}}},
          {.key = "limited_by",
           .label = "limited by",
           .value = transfer.limited_by,
           .source = {"The resistance whose removal would save the most time.", {}}}};
}

/// The time until the water stands still is no time in which a table drains that most of it stays in.
void say_it_never_drains(const plan::TransferPlan& transfer, Figure& time) {
  time.value = std::string("never");
  time.low.reset();
  time.high.reset();
  time.beside =
      transfer.fill.volume > Volume{} ? Phrase{"{0} stays", {transfer.left_in_table}} : Phrase{"no water comes up", {}};
}

}  // namespace

std::optional<quantity::Fact> nothing_to_hold(const plan::TransferPlan& transfer) {
  if (transfer.fill.hold_pressure > psig(0.0)) return std::nullopt;
  if (transfer.system.check.one_way) return quantity::fact("check_valve_holds");
  if (transfer.siphon && transfer.siphon->covered) return quantity::fact("siphon_runs_back");
  return quantity::fact("inlet_over_the_water_holds");
}

FigureGroup filling_figures(const plan::Plan& plan) {
  const transfer::Fill& fill = plan.transfer.fill;
  FigureGroup group{"filling", "Filling", plan::Topic::transfer, common_figures(fill, "free air used")};
  if (plan.transfer.refill_time)
    group.figures.push_back({.key = "refill_time",
                             .label = "compressor runs for that",
                             .value = *plan.transfer.refill_time,
                             .source = {"The free air of one fill over the compressor's free air delivery.", {}}});
  const auto pressure = [&](std::string_view key, std::string_view label, GaugePressure value, Phrase source,
                            Phrase beside = {}) {
    group.figures.push_back({.key = key,
                             .label = label,
                             .value = value,
                             .limit = plan.walls.limit,
                             .beside = std::move(beside),
                             .source = std::move(source)});
  };
  pressure("set_pressure", "regulator setting", plan.transfer.setting,
           {"{0}.", {quantity::Facts{plan.transfer.setting_basis}}});
  group.figures.back().form = "dial";
  if (const auto& stage = plan.transfer.system.air.first_stage)
    group.figures.push_back({.key = "first_stage",
                             .label = "first stage's setting",
                             .value = stage->setting,
                             .source = {"The regulator before the regulator: the middle of its range, or twice what "
                                        "the one behind it is set to (common practice).",
                                        {}}});
  pressure("pressure_to_start", "pressure to start", fill.pressure_to_start,
           {"Density of the water times gravity times the height from the charge to the table's inlet.", {}});
  if (!nothing_to_hold(plan.transfer))
    pressure("hold_pressure", "hold pressure", fill.hold_pressure,
             {"Density of the water times gravity times the lift when the table is at its depth.", {}});
  pressure("pressure_to_finish", "pressure to finish", fill.pressure_to_finish,
           {"The least setting that reaches the wanted depth.", {}});
  pressure("highest_ullage_pressure", "highest in the tank", fill.highest_ullage_pressure, {kSolved, {}});
  if (plan.transfer.setting_for_wish)
    pressure("setting_for_wish", "for the wished time", *plan.transfer.setting_for_wish,
             {"The setting at which the fill takes as long as is wished.", {}});
  pressure(
      "pressure_left_alone", "left alone, the tank gets", fill.pressure_left_alone,
      {"The setting and the regulator's lock-up, less what opens the way behind it; no more than the supply has.", {}});
  group.figures.push_back({.key = "greatest_air_flow",
                           .label = "greatest air flow",
                           .value = plan.air.greatest_flow,
                           .form = "air",
                           .source = {kSolved, {}}});
  group.figures.push_back({.key = "shut_off_depth",
                           .label = "shut the air at",
                           .value = fill.shut_off_depth,
                           .beside = {"coasts up {0}", {fill.coast_up}},
                           .source = {"The air that is in the reservoir goes on pushing: from this depth it brings the "
                                      "table to the wanted depth.",
                                      {}}});
  group.figures.push_back({.key = "margin_over_riser_end",
                           .label = "water over the riser",
                           .value = fill.margin_over_riser_end,
                           .beside = {"left at the end", {}},
                           .source = {"Depth left in the reservoir less the height of the riser's end.", {}}});
  add_sensitivity(plan, group.figures);
  add_margin(plan.transfer.margin, group.figures);
  if (plan.transfer.jet) add_jet(*plan.transfer.jet, group.figures);
  if (fill.self_limiting_pressure)
    pressure("self_limiting_pressure", "stops by itself at", *fill.self_limiting_pressure, {kSolved, {}},
             {"below the rim", {}});
  return group;
}

FigureGroup draining_figures(const plan::Plan& plan) {
  FigureGroup group{"draining", "Draining", plan::Topic::transfer,
                    common_figures(plan.transfer.drain, "free air let out")};
  const plan::TransferPlan& transfer = plan.transfer;
  if (!plan::drains_by_line(plan)) say_it_never_drains(transfer, group.figures.front());
  if (transfer.siphon) {
    add_siphon(*transfer.siphon, group.figures);
  } else {
    group.figures.push_back({.key = "film",
                             .label = "counted as drained at",
                             .value = transfer.film,
                             .beside = {"over the inlet", {}},
                             .source = {kRim, {}}});
    if (transfer.to_thinnest_film)
      group.figures.push_back({.key = "time_to_thinnest_film",
                               .label = "and to the film that stays",
                               .value = *transfer.to_thinnest_film,
                               .beside = {"{0:2}, on a floor that is well wetted", {transfer.thinnest_film}},
                               .source = {kRim, {}}});
  }
  group.figures.push_back(left_in_table(transfer));
  return group;
}

}  // namespace riserun::report
