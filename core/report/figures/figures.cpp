#include "report/figures/figures.h"

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
  Figure buy{.key = "buy",
             .label = "buy",
             .value = plan.list.total,
             .beside = {"{0:#line|lines}", {static_cast<std::int64_t>(plan.list.buy.size())}},
             .source = {"Indicative prices of what is not in the bin; your own price file replaces them.", {}}};
  return {std::move(set), renamed(filling["time"], "fill"), renamed(draining_figures(plan)["time"], "drain"),
          std::move(cut), std::move(buy)};
}

}  // namespace riserun::report
