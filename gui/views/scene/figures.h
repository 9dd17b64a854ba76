// The plan's figures, written for the window: each with what must be read with it and where it comes from.
#pragma once

#include "plan/plan.h"

#include <string>
#include <vector>

namespace riserun::views {

struct Figure {
  std::string label;       // "cut length"
  std::string value;       // "14-1/16 in"
  std::string beside;      // what must be read with it: the range, the walls' limit; may be empty
  std::string where_from;  // never empty
};

struct FigureGroup {
  std::string title;
  plan::Topic topic;  // whose cautions, notes and findings stand under it
  std::vector<Figure> figures;
};

/// The few that are read from six feet.
std::vector<Figure> headline(const plan::Plan& plan, UnitSystem units);
/// What decides about safety.
std::vector<Figure> safety_figures(const plan::Plan& plan, UnitSystem units);
/// All of them, in the order of the printed plan.
std::vector<FigureGroup> figures_of(const plan::Plan& plan, UnitSystem units);

/// A figure that a change of the job has changed.
struct Change {
  std::string label;  // "Riser: cut length"; of the headline "set"
  std::string before;
  std::string now;
};
/// Those that read differently in the two plans, the verdict and the headline first; what only one of them has is told
/// as `none` in the other.
std::vector<Change> changes_between(const plan::Plan& before, const plan::Plan& now, UnitSystem units);

/// `READY`, `NOT YET`, `REFUSED`.
std::string verdict_of(plan::Verdict verdict);

}  // namespace riserun::views
