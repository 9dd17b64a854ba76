#include "report/drawing/part_ends.h"

#include <algorithm>

namespace riserun::report {

namespace {

using catalog::EndShape;

Axis axis_of(const Arm& arm) { return {{}, arm.heading}; }

/// The crests of a thread, leaning by its lead.
void crests(PartPen& pen, const Arm& arm, double from, double to, double half_from, double half_to,
            Line line = Line::full) {
  constexpr double kMost = 14.0;  // as many as the eye still parts
  const double length = to - from;
  const double step = std::max(arm.pitch > 0.0 ? arm.pitch : length / 8.0, length / kMost);
  const double lean = 0.5 * step;
  for (double along = from + 0.8 * step; along < to - 0.3 * step; along += step) {
    const double half = half_from + (half_to - half_from) * (along - from) / length;
    pen.line(axis_of(arm), "thread", {{along - lean / 2.0, -half}, {along + lean / 2.0, half}}, line);
  }
}

void male_thread(PartPen& pen, const Arm& arm, double to) {
  const double half = arm.outside / 2.0;
  // A taper thread is thinner at its end, 1 in 16 (ASME B1.20.1); drawn a little more than it is, so that it shows.
  const double end = arm.tapered ? half - 0.05 * (to - arm.start) : half;
  pen.tube(axis_of(arm), "spigot", arm.start, to, half, end);
  crests(pen, arm, arm.start, to, half, end);
}

void barb(PartPen& pen, const Arm& arm) {
  constexpr int kTeeth = 4;
  constexpr double kOver = 1.16;  // width over the barbs, of the bore of the hose
  const double half = arm.outside / 2.0;
  const double step = (arm.reach - arm.start) / kTeeth;
  for (int i = 0; i < kTeeth; ++i)
    pen.tube(axis_of(arm), "barb", arm.start + i * step, arm.start + (i + 1) * step, kOver * half, 0.92 * half);
}

void male_end(PartPen& pen, const Arm& arm) {
  const Axis axis = axis_of(arm);
  const double half = arm.outside / 2.0;
  const double length = arm.reach - arm.start;
  const auto at = [&](double share) { return arm.start + share * length; };
  switch (arm.shape) {
    case EndShape::barb:
      barb(pen, arm);
      return;
    case EndShape::cone:
      male_thread(pen, arm, at(0.7));
      pen.tube(axis, "cone", at(0.7), arm.reach, 0.86 * half, 0.55 * half);
      return;
    case EndShape::groove:
      pen.tube(axis, "spigot", at(0.0), at(0.3), 1.05 * half, 1.05 * half);
      pen.tube(axis, "groove", at(0.3), at(0.62), 0.86 * half, 0.86 * half);
      pen.tube(axis, "spigot", at(0.62), at(1.0), 1.05 * half, 1.0 * half);
      return;
    case EndShape::plug:
      pen.tube(axis, "spigot", at(0.0), at(0.55), 0.62 * half, 0.62 * half);
      pen.tube(axis, "ring", at(0.42), at(0.58), 0.85 * half, 0.85 * half);
      pen.tube(axis, "spigot", at(0.58), at(1.0), 0.7 * half, 0.45 * half);
      return;
    default:
      break;
  }
  if (arm.threaded)
    male_thread(pen, arm, arm.reach);
  else
    pen.tube(axis, "spigot", arm.start, arm.reach, half, half);
}

void levers(PartPen& pen, const Arm& arm) {
  const Axis axis = axis_of(arm);
  const double length = arm.reach - arm.start;
  const double pivot = arm.reach - 0.3 * length;
  const double back = pivot - 1.35 * length;
  for (const double side : {-1.0, 1.0}) {
    // The cam on its pin, the arm folded back along the body, the ring that it is pulled by.
    const double in = 1.08 * arm.half;
    const double out = 1.3 * arm.half;
    const double slope = 0.12 * arm.half;
    if (side > 0.0)
      pen.area(axis, "lever", {{back, in + slope}, {pivot, in}, {pivot, out}, {back, out + slope}});
    else
      pen.area(axis, "lever", {{back, -out - slope}, {pivot, -out}, {pivot, -in}, {back, -in - slope}});
    const double middle = side * 1.12 * arm.half;
    pen.round(axis.at(pivot, middle), "cam", 0.26 * arm.half);
    pen.round(axis.at(pivot, middle), "pin", 0.07 * arm.half, Ink::part_edge);
    pen.round(axis.at(back - 0.14 * arm.half, side * (1.19 * arm.half + slope)), "ring", 0.2 * arm.half,
              Ink::part_bore);
  }
}

/// The sleeve that is drawn back is the widest of it, and stands before its mouth (common practice).
void coupler(PartPen& pen, const Arm& arm) {
  constexpr double kSleeve = 1.9;  // times what goes in
  const Axis axis = axis_of(arm);
  const double length = arm.reach - arm.start;
  const auto at = [&](double share) { return arm.start + share * length; };
  pen.tube(axis, "mouth ring", at(0.9), arm.reach, 1.35 * arm.half, 1.35 * arm.half);
  pen.tube(axis, "sleeve", at(0.08), at(0.9), kSleeve * arm.half, kSleeve * arm.half);
  for (int i = 1; i < 7; ++i) {
    const double along = at(0.3 + 0.5 * i / 7.0);
    pen.line(axis, "knurl", {{along, -kSleeve * arm.half}, {along, kSleeve * arm.half}});
  }
}

void band_clamp(PartPen& pen, const Arm& arm) {
  const Axis axis = axis_of(arm);
  const double length = arm.reach - arm.start;
  const double from = arm.reach - 0.6 * length;
  const double to = arm.reach - 0.25 * length;
  pen.tube(axis, "band", from, to, 1.04 * arm.half, 1.04 * arm.half, Ink::part_bore);
  pen.area(axis, "screw",
           {{from - 0.05 * length, 1.0 * arm.half},
            {to + 0.05 * length, 1.0 * arm.half},
            {to + 0.05 * length, 1.25 * arm.half},
            {from - 0.05 * length, 1.25 * arm.half}});
}

void female_end(PartPen& pen, const Arm& arm, bool bands) {
  const Axis axis = axis_of(arm);
  const double length = arm.reach - arm.start;
  if (!arm.covered) pen.tube(axis, "socket", arm.start, arm.reach, arm.half, arm.half);
  switch (arm.shape) {
    case EndShape::nut:
      pen.hexagon(axis, "nut", arm.reach - std::max(0.8 * length, 0.5 * arm.half), arm.reach, 1.08 * arm.half);
      return;
    case EndShape::levers:
      levers(pen, arm);
      return;
    case EndShape::collar:
      pen.tube(axis, "collar", arm.reach - 0.10 * length, arm.reach, 0.72 * arm.half, 0.72 * arm.half, Ink::part_bore);
      return;
    case EndShape::crimp:
      pen.tube(axis, "ring", arm.reach - 0.55 * length, arm.reach - 0.2 * length, 1.18 * arm.half, 1.18 * arm.half,
               Ink::part_bore);
      return;
    case EndShape::coupler:
      coupler(pen, arm);
      return;
    case EndShape::bands:
      band_clamp(pen, arm);
      return;
    default:
      break;
  }
  if (bands && arm.threaded)
    pen.tube(axis, "band", arm.reach - std::min(0.4 * length, 0.36 * arm.half), arm.reach, 1.1 * arm.half,
             1.1 * arm.half);
}

void flange(PartPen& pen, const Arm& arm) {
  const Axis axis = axis_of(arm);
  const double from = arm.reach - arm.joint;
  pen.tube(axis, "flange", from, arm.reach, arm.outside / 2.0, arm.outside / 2.0);
  const double bolt = 0.39 * arm.outside;  // bolt circle to outside, ASME B16.5 class 150: 0.70 to 0.80
  for (const double side : {-bolt, bolt}) {
    for (const double edge : {-0.045, 0.045})
      pen.line(axis, "bolt hole", {{from, side + edge * arm.outside}, {arm.reach, side + edge * arm.outside}},
               Line::hidden);
    pen.line(axis, "axis", {{from - 0.04 * arm.outside, side}, {arm.reach + 0.04 * arm.outside, side}}, Line::centre);
  }
}

}  // namespace

void draw_end(PartPen& pen, const Arm& arm, bool bands) {
  if (arm.shape == EndShape::flange)
    flange(pen, arm);
  else if (arm.female)
    female_end(pen, arm, bands);
  else
    male_end(pen, arm);
}

void draw_inside(PartPen& pen, const Arm& arm, bool leads_through) {
  const Axis axis = axis_of(arm);
  const double inner = arm.female && arm.shape != EndShape::hose ? arm.reach - arm.joint : arm.reach;
  const double half = arm.bore / 2.0;
  for (const double side : {-half, half})
    if (leads_through) pen.line(axis, "bore", {{std::min(0.0, inner), side}, {inner, side}}, Line::hidden);
  if (arm.female && arm.shape != EndShape::hose) {
    const double mouth = arm.outside / 2.0;
    pen.line(axis, "mouth", {{arm.reach, -mouth}, {inner, -0.95 * mouth}, {inner, 0.95 * mouth}, {arm.reach, mouth}},
             Line::hidden);
    if (arm.covered && arm.threaded) crests(pen, arm, inner, arm.reach, 0.93 * mouth, 0.97 * mouth, Line::hidden);
  }
  pen.line(axis, "axis", {{0.0, 0.0}, {arm.reach + 0.12 * 2.0 * arm.half, 0.0}}, Line::centre);
}

}  // namespace riserun::report
