#include "gui/views/scene/figures.h"

#include "report/figures/figures.h"

namespace riserun::views {

namespace {

std::vector<Figure> in_words(const std::vector<report::Figure>& figures, UnitSystem units) {
  std::vector<Figure> rows;
  for (const report::Figure& figure : figures)
    rows.push_back({std::string(figure.label), report::written(figure, units), report::written_beside(figure, units),
                    report::said(figure.source, units)});
  return rows;
}

}  // namespace

std::vector<Figure> headline(const plan::Plan& plan, UnitSystem units) {
  return in_words(report::headline_of(plan), units);
}

std::vector<Figure> safety_figures(const plan::Plan& plan, UnitSystem units) {
  return in_words(report::safety_of(plan), units);
}

std::vector<FigureGroup> figures_of(const plan::Plan& plan, UnitSystem units) {
  std::vector<FigureGroup> groups;
  for (const report::FigureGroup& group : report::figures_of(plan))
    groups.push_back({std::string(group.title), group.topic, in_words(group.figures, units)});
  return groups;
}

std::string verdict_of(plan::Verdict verdict) {
  switch (verdict) {
    case plan::Verdict::ready:
      return "READY";
    case plan::Verdict::not_yet:
      return "NOT YET";
    case plan::Verdict::refused:
      return "REFUSED";
  }
  return "";
}

}  // namespace riserun::views
