#include "report/figures/figures.h"

#include "plan/judge/drain.h"
#include "report/words/list_words.h"
#include "reservoir/relief.h"

namespace riserun::report {

namespace {

/// The same figure under a name that stands by itself.
Figure renamed(Figure figure, std::string_view label) {
  figure.label = label;
  return figure;
}

/// Of a tank that cannot be tested with air there is one thing to say.
FigureGroup leak_test_or_none(const plan::Plan& plan) {
  FigureGroup group = leak_test_figures(plan);
  if (!plan.leak_test.possible)
    group.figures = {{.key = "test_with_air",
                      .label = "test with air",
                      .value = std::string("none"),
                      .source = group["pressure"].source}};
  return group;
}

/// A time stands in the largest type only where the water gets there.
Figure time_or_never(const plan::Plan& plan, Figure time, std::string_view label, const transfer::Transfer& transfer) {
  const bool missing = !plan.transfer.missing_run.empty();
  time.label = label;
  if (!missing && transfer.stop == transfer::Stop::goal_reached) {
    if (plan.water_connection) return time;
    time.beside = {"by a line that is assumed", {}};
    time.low.reset();
    time.high.reset();
    return time;
  }
  time.beside = missing ? Phrase{"'{0}' does not go together", {plan.transfer.missing_run}}
                        : Phrase{"stops after {0}", {transfer.time}};
  time.value = std::string("never");
  time.low.reset();
  time.high.reset();
  return time;
}

/// By the line, or by the table's own drain where that takes its place.
Figure drain_time(const plan::Plan& plan) {
  Figure time = draining_figures(plan)["time"];
  const plan::ConnectionPlan* own = plan::drain_in_place_of_line(plan);
  const plan::DrainPlan* drain = own != nullptr ? plan::drain_of(plan, *own) : nullptr;
  if (plan::drains_by_line(plan) || !plan.transfer.missing_run.empty())
    return time_or_never(plan, std::move(time), "drain", plan.transfer.drain);
  if (drain != nullptr && drain->time) {
    time.value = *drain->time;
    time.beside = {"by '{0}'", {own->name}};
  }
  return renamed(std::move(time), "drain");
}

}  // namespace

std::vector<FigureGroup> figures_of(const plan::Plan& plan) {
  return {riser_figures(plan.riser), levels_figures(plan), filling_figures(plan),  draining_figures(plan),
          walls_figures(plan),       relief_figures(plan), leak_test_or_none(plan)};
}

std::vector<Figure> headline_of(const plan::Plan& plan) {
  const FigureGroup riser = riser_figures(plan.riser);
  const FigureGroup filling = filling_figures(plan);
  Figure set = renamed(filling["set_pressure"], "set");
  set.form = "alone";
  Figure cut = renamed(riser["cut_length"], "cut riser");
  cut.beside = {"clearance {0}", {riser["clearance"].value}};
  const Price cost = cost_with_metal(plan.list);
  const bool some_priced = !cost.known() && cost.cents() > 0;  // the rest stands beside the sum
  const auto lines = static_cast<std::int64_t>(plan.list.buy.size());
  Figure buy{.key = "buy",
             .label = "buy",
             .value = some_priced ? Price::from_cents(cost.cents()) : cost,
             .beside = some_priced ? Phrase{"{0:#line|lines}, {1} without price", {lines, cost.without_price()}}
                                   : Phrase{"{0:#line|lines}", {lines}},
             .source = {"Indicative prices of what is not in the bin; your own price file replaces them.", {}}};
  if (plan.verdict == plan::Verdict::refused)
    for (Figure* figure : {&cut, &buy}) {
      figure->value = std::string("nothing");
      figure->beside = {"while it is refused", {}};
    }
  return {std::move(set), time_or_never(plan, filling["time"], "fill", plan.transfer.fill), drain_time(plan),
          std::move(cut), std::move(buy)};
}

std::vector<Figure> safety_of(const plan::Plan& plan) {
  const FigureGroup relief = relief_figures(plan);
  const FigureGroup walls = walls_figures(plan);
  return {relief["greatest"], renamed(relief["factor_at_greatest"], "safety factor there"),
          renamed(filling_figures(plan)["set_pressure"], "setting"),
          renamed(walls["factor_at_set"], "safety factor at the setting"), walls["four_to_one"]};
}

bool is_under_four(const plan::Plan& plan) { return plan.relief.factor_at_greatest < reservoir::kAirLiftFactor; }

}  // namespace riserun::report
