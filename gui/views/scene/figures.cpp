#include "gui/views/scene/figures.h"

#include "report/figures/figures.h"

#include <algorithm>
#include <utility>

namespace riserun::views {

namespace {

std::vector<Figure> in_words(const std::vector<report::Figure>& figures, UnitSystem units) {
  std::vector<Figure> rows;
  for (const report::Figure& figure : figures)
    rows.push_back({std::string(figure.label), report::written(figure, units), report::written_beside(figure, units),
                    report::said(figure.source, units)});
  return rows;
}

/// By a label that tells its group, too.
std::vector<std::pair<std::string, std::string>> labelled(const plan::Plan& plan, UnitSystem units) {
  std::vector<std::pair<std::string, std::string>> rows = {{"verdict", verdict_of(plan.verdict)}};
  for (const Figure& figure : headline(plan, units)) rows.emplace_back(figure.label, figure.value);
  for (const FigureGroup& group : figures_of(plan, units))
    for (const Figure& figure : group.figures) rows.emplace_back(group.title + ": " + figure.label, figure.value);
  return rows;
}

}  // namespace

std::vector<Change> changes_between(const plan::Plan& before, const plan::Plan& now, UnitSystem units) {
  const auto old_rows = labelled(before, units);
  const auto new_rows = labelled(now, units);
  const auto value_in = [](const auto& rows, const std::string& label) {
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const auto& one) { return one.first == label; });
    return row == rows.end() ? std::string("none") : row->second;
  };
  std::vector<Change> changes;
  for (const auto& [label, value] : new_rows)
    if (const std::string was = value_in(old_rows, label); was != value) changes.push_back({label, was, value});
  for (const auto& [label, value] : old_rows)
    if (value_in(new_rows, label) == "none" && value != "none") changes.push_back({label, value, "none"});
  return changes;
}

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
