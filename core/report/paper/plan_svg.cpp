#include "report/paper/plan_svg.h"

#include "report/paper/pages.h"
#include "report/paper/pictures.h"
#include "report/paper/svg_brush.h"
#include "report/words/plan_keys.h"

#include <fmt/format.h>

namespace riserun::report {

namespace {

constexpr double kSheetMargin = 24.0;

Room room_of(UnitSystem units) { return {paper_of(units).width - 2.0 * kSheetMargin, paper_of(units).height}; }

}  // namespace

std::string plan_svg(const plan::Plan& plan, const std::string& /*job_file*/, const Style& style) {
  SvgBrush brush;
  const Room room = room_of(style.units);
  const std::string name = plan.job.name.empty() ? "Plan" : plan.job.name;
  brush.words({kSheetMargin, kSheetMargin + 14.0}, Anchor::start, name, Ink::text, {15.0, true});
  brush.words({kSheetMargin, kSheetMargin + 28.0}, Anchor::start,
              fmt::format("Verdict: {}. Walls hold {}. Arithmetic, not a design to a pressure vessel code.",
                          key_of(plan.verdict), write_pressure_alone(plan.walls.limit, style.units)),
              Ink::text, {8.0, false});
  double down = kSheetMargin + 44.0;
  for (const Picture& picture : pictures_of(plan, style.units, room, brush.letters())) {
    paint_picture(picture, {kSheetMargin, down}, room.width, brush);
    down += picture.height();
  }
  return brush.svg(room.width + 2.0 * kSheetMargin, down + kSheetMargin, name, true);
}

std::vector<std::string> svg_pictures(const plan::Plan& plan, UnitSystem units) {
  const Room room = room_of(units);
  std::vector<std::string> elements;
  const Letters letters;
  for (const Picture& picture : pictures_of(plan, units, room, letters)) {
    SvgBrush brush;
    paint_picture(picture, {2.0, 0.0}, room.width, brush);
    elements.push_back(brush.svg(room.width + 4.0, picture.height(), picture.title, false));
  }
  return elements;
}

}  // namespace riserun::report
