#include "report/drawing/part_drawing.h"

#include "report/drawing/part_arms.h"
#include "report/drawing/part_bodies.h"
#include "report/drawing/part_ends.h"

#include <algorithm>

namespace riserun::report {

namespace {

using catalog::Catalog;
using catalog::Part;

/// Two slanting strokes with a gap between: some length is left out here.
void break_marks(PartPen& pen, const ArmSet& set) {
  const Axis level{{}, set.arms.back().heading};
  const double half = 0.62 * set.body;
  const double gap = 0.10 * set.body;
  const double lean = 0.12 * set.body;
  pen.area(level, "break", {{-gap - lean, -half}, {gap - lean, -half}, {gap + lean, half}, {-gap + lean, half}},
           Ink::card, false);
  for (const double x : {-gap, gap}) pen.line(level, "break", {{x - lean, -half}, {x + lean, half}});
}

void take_bounds(Drawing& drawing, double body) {
  drawing.low = {-0.5 * body, -0.5 * body};
  drawing.high = {0.5 * body, 0.5 * body};
  take_in_shapes(drawing);
}

bool takes_the_insides(const catalog::Family& family) {
  return family.role != catalog::Role::hose_clamp && family.role != catalog::Role::gauge;
}

/// Cast sockets have a band round their mouth: not forged bungs, not valves, and not where a hexagon is.
bool has_bands(const catalog::Family& family, const ArmSet& set, const Arm& arm) {
  const bool cast = family.weld_bung == catalog::WeldBung::none &&
                    (family.role == catalog::Role::connector || family.role == catalog::Role::plug);
  return cast && !(arm.covered && set.straight && !(set.arms[0].female && set.arms[1].female));
}

}  // namespace

PartPicture part_picture(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave) {
  PartPicture picture;
  if (part.ports.empty()) return picture;
  const catalog::Family& family = catalog.family(part.family);
  const ArmSet set = arms_of(catalog, part, std::min(enter, part.ports.size() - 1), leave);
  PartPen pen(picture.drawing);
  draw_body(pen, family, part, set);
  if (family.role != catalog::Role::hose_clamp)
    for (const Arm& arm : set.arms) draw_end(pen, arm, has_bands(family, set, arm));
  draw_features(pen, family, part, set);
  if (takes_the_insides(family))
    for (const Arm& arm : set.arms) draw_inside(pen, arm, family.role != catalog::Role::plug);
  if (set.broken) break_marks(pen, set);
  for (const Arm& arm : set.arms) picture.ports.push_back({Axis{{}, arm.heading}.at(arm.reach, 0.0), arm.heading});
  picture.broken = set.broken;
  take_bounds(picture.drawing, set.body);
  return picture;
}

Drawing part_drawing(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave) {
  return part_picture(catalog, part, enter, leave).drawing;
}

}  // namespace riserun::report
