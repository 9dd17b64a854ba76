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

/// `READY`, `NOT YET`, `REFUSED`.
std::string verdict_of(plan::Verdict verdict);

}  // namespace riserun::views
