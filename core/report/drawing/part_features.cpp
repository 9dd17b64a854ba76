#include "report/drawing/part_features.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::report {

namespace {

using catalog::BodyShape;
using catalog::Family;
using catalog::Part;
using catalog::Role;

/// A straight part's body, half as wide as `half`, between places along its axis: what features are set on.
struct Seat {
  Axis run;
  Axis up;       // across the run, through the middle
  double half;   // of the body's width
  double left;   // along the run, where the ends begin
  double right;  // ...
  double width() const { return right - left; }
};

Seat seat_of(const ArmSet& set) {
  const Arm& a = set.arms[0];
  const Arm& b = set.arms[1];
  const double half = set.body / 2.0;
  return {{{}, b.heading}, {{}, b.heading + 90.0}, half, -0.55 * a.reach, 0.55 * b.reach};
}

void lever_handle(PartPen& pen, const Seat& seat) {
  const double top = 1.75 * seat.half;
  pen.round({}, "ball", std::min(1.3 * seat.half, 0.62 * seat.width()));
  pen.tube(seat.up, "stem", 0.9 * seat.half, top, 0.36 * seat.half, 0.28 * seat.half);
  pen.tube({seat.run.at(0.0, top + 0.13 * seat.half), seat.run.heading}, "lever", -0.45 * seat.half, 0.8 * seat.half,
           0.13 * seat.half, 0.13 * seat.half);
  pen.area(seat.run, "lever",
           {{0.8 * seat.half, top},
            {3.6 * seat.half, top + 0.32 * seat.half},
            {3.6 * seat.half, top + 0.58 * seat.half},
            {0.8 * seat.half, top + 0.26 * seat.half}});
  pen.square(seat.up, "nut", top + 0.26 * seat.half, top + 0.5 * seat.half, 0.2 * seat.half);
}

/// Bonnet, packing nut, stem and wheel of a valve that is turned many times.
void hand_wheel(PartPen& pen, const Seat& seat, double high, double wheel) {
  const double h = seat.half;
  pen.tube(seat.up, "bonnet", 0.7 * h, 1.5 * h, 0.85 * h, 0.62 * h);
  pen.hexagon(seat.up, "bonnet nut", 1.5 * h, 1.95 * h, 0.72 * h);
  pen.tube(seat.up, "packing nut", 1.95 * h, 2.3 * h, 0.42 * h, 0.42 * h);
  pen.tube(seat.up, "stem", 2.3 * h, high * h, 0.14 * h, 0.14 * h);
  pen.tube(seat.up, "wheel", high * h, (high + 0.32) * h, wheel * h, wheel * h);
  for (int i = -3; i <= 3; ++i)
    pen.line(seat.up, "rim", {{high * h, i * wheel * h / 4.0}, {(high + 0.32) * h, i * wheel * h / 4.0}});
  pen.tube(seat.up, "nut", (high + 0.32) * h, (high + 0.5) * h, 0.18 * h, 0.18 * h);
}

void needle(PartPen& pen, const Seat& seat) {
  const double h = seat.half;
  pen.hexagon(seat.up, "bonnet nut", 0.8 * h, 1.3 * h, 0.6 * h);
  pen.tube(seat.up, "stem", 1.3 * h, 2.1 * h, 0.16 * h, 0.16 * h);
  pen.tube(seat.up, "knob", 2.1 * h, 2.8 * h, 0.62 * h, 0.62 * h);
  for (int i = -2; i <= 2; ++i) pen.line(seat.up, "knurl", {{2.1 * h, 0.24 * i * h}, {2.8 * h, 0.24 * i * h}});
  pen.line(seat.up, "needle", {{0.8 * h, -0.12 * h}, {0.0, 0.0}, {0.8 * h, 0.12 * h}}, Line::hidden);
}

/// A leg toward where the flow goes, down, with its screen inside.
void strainer_leg(PartPen& pen, const Seat& seat) {
  const double h = seat.half;
  const Axis leg{{}, seat.run.heading - 45.0};
  pen.tube(leg, "leg", 0.3 * h, 2.3 * h, 0.8 * h, 0.8 * h);
  pen.hexagon(leg, "cap", 2.3 * h, 2.75 * h, 0.92 * h);
  pen.square(leg, "plug", 2.75 * h, 3.05 * h, 0.3 * h);
  for (const double side : {-0.5, 0.5})
    pen.line(leg, "screen", {{0.4 * h, side * h}, {2.3 * h, side * h}}, Line::hidden);
  for (int i = 1; i < 6; ++i) {
    const double along = (0.4 + 0.32 * i) * h;
    pen.line(leg, "screen", {{along, -0.5 * h}, {along + 0.2 * h, 0.5 * h}}, Line::hidden);
  }
}

void bowl(PartPen& pen, const Seat& seat) {
  const double wide = std::max(0.5 * seat.width(), 1.25 * seat.half);
  const double h = seat.half;
  const Axis down{{}, seat.run.heading - 90.0};
  pen.tube(down, "head", -1.05 * h, 1.25 * h, 1.15 * wide, 1.15 * wide);
  pen.tube(down, "ring", 1.25 * h, 1.75 * h, 1.25 * wide, 1.25 * wide);
  for (int i = -4; i <= 4; ++i) pen.line(down, "rib", {{1.25 * h, 0.28 * i * wide}, {1.75 * h, 0.28 * i * wide}});
  pen.area(down, "bowl",
           {{1.75 * h, -wide},
            {5.6 * h, -0.92 * wide},
            {6.3 * h, -0.5 * wide},
            {6.3 * h, 0.5 * wide},
            {5.6 * h, 0.92 * wide},
            {1.75 * h, wide}});
  pen.line(down, "cartridge",
           {{1.9 * h, -0.6 * wide}, {5.5 * h, -0.6 * wide}, {5.5 * h, 0.6 * wide}, {1.9 * h, 0.6 * wide}},
           Line::hidden);
  pen.tube(down, "drain", 6.3 * h, 6.7 * h, 0.14 * wide, 0.14 * wide);
}

void check_body(PartPen& pen, const Seat& seat, catalog::CheckKind kind) {
  const double h = seat.half;
  if (kind == catalog::CheckKind::swing) {
    pen.area(seat.up, "bonnet", {{0.6 * h, -1.0 * h}, {1.25 * h, -0.85 * h}, {1.25 * h, 0.85 * h}, {0.6 * h, 1.0 * h}});
    pen.hexagon(seat.up, "cap", 1.25 * h, 1.65 * h, 0.75 * h);
    // The flap hangs from its pin and leans on its seat.
    pen.line(seat.run, "flap", {{-0.35 * h, 0.85 * h}, {-0.15 * h, -0.62 * h}}, Line::hidden, 1.5F);
    pen.line(seat.run, "flap", {{-0.35 * h, 0.85 * h}, {0.45 * h, 0.75 * h}}, Line::hidden);
  } else {
    pen.hexagon(seat.run, "hexagon", seat.left, seat.right, 1.12 * h);
    const double from = seat.left + 0.2 * seat.width();
    pen.line(seat.run, "poppet", {{from, -0.5 * h}, {from + 0.18 * h, 0.0}, {from, 0.5 * h}}, Line::hidden, 1.5F);
    pen.spring(seat.run, from + 0.2 * h, seat.right - 0.1 * seat.width(), 0.32 * h, Line::hidden);
  }
}

/// Spring bonnet with its knob over the body, a small gauge on its front.
void regulator(PartPen& pen, const Seat& seat) {
  const double h = seat.half;
  pen.tube(seat.up, "bonnet", 0.9 * h, 1.2 * h, 1.5 * h, 1.5 * h);
  pen.tube(seat.up, "bonnet", 1.2 * h, 2.6 * h, 1.3 * h, 0.75 * h);
  pen.spring(seat.up, 1.25 * h, 2.5 * h, 0.42 * h, Line::hidden);
  pen.tube(seat.up, "stem", 2.6 * h, 2.85 * h, 0.24 * h, 0.24 * h);
  pen.tube(seat.up, "knob", 2.85 * h, 3.7 * h, 0.9 * h, 0.78 * h);
  for (int i = -2; i <= 2; ++i) pen.line(seat.up, "knurl", {{2.85 * h, 0.34 * i * h}, {3.7 * h, 0.3 * i * h}});
  pen.tube(seat.up, "bottom cap", -1.7 * h, -0.9 * h, 0.7 * h, 0.8 * h);
}

/// Seen as cut open: two bulges that leave a small hole between them, as the symbol of a fixed restriction has it
/// (ISO 1219-1).
void restrictor(PartPen& pen, const Seat& seat, const ArmSet& set) {
  const double hole = std::min(set.arms[0].bore, set.arms[1].bore) / 2.0;
  const double middle = (seat.left + seat.right) / 2.0;
  const double wall = 0.62 * seat.half;
  const double long_half = std::min(0.9 * wall, 0.45 * seat.width());
  pen.tube(seat.run, "way", middle - 1.1 * long_half, middle + 1.1 * long_half, wall, wall, Ink::part_bore);
  for (const double side : {-1.0, 1.0}) {
    std::vector<std::pair<double, double>> bulge;
    constexpr int kSteps = 12;
    for (int i = 0; i <= kSteps; ++i) {
      const double share = 1.0 - 2.0 * i / kSteps;  // from one end of the bulge to the other
      bulge.emplace_back(middle - side * share * long_half,
                         side * (hole + (wall - hole) * (1.0 - std::sqrt(1.0 - share * share))));
    }
    pen.area(seat.run, "orifice", bulge, Ink::part_edge);
  }
}

/// The nut over the joint of the two halves, the smaller octagon of the other beside it.
void union_nut(PartPen& pen, const Seat& seat, bool dielectric) {
  const double h = seat.half;
  const double from = -0.32 * seat.width();
  const double to = 0.30 * seat.width();
  pen.hexagon(seat.run, "union nut", from, to, 1.34 * h);
  pen.tube(seat.run, "shoulder", to, to + 0.12 * seat.width(), 1.12 * h, 1.12 * h);
  if (dielectric) pen.tube(seat.run, "insulator", from - 0.1 * seat.width(), from, 1.0 * h, 1.0 * h, Ink::part_edge);
}

/// A valve that comes out of its line: a nut on each side of it.
void true_union_nuts(PartPen& pen, const Seat& seat, const ArmSet& set) {
  for (const Arm& arm : set.arms)
    pen.hexagon({{}, arm.heading}, "union nut", 0.4 * arm.reach, 0.72 * arm.reach, 1.4 * seat.half);
}

void bulkhead(PartPen& pen, const Seat& seat, const ArmSet& set) {
  const double h = seat.half;
  const double left = -set.arms[0].reach;
  const double right = set.arms[1].reach;
  const double length = right - left;
  const double body = 1.12 * h;
  pen.tube(seat.run, "thread", left + 0.2 * length, right, body, body);
  for (int i = 1; i < 16; ++i) {
    const double along = left + (0.2 + 0.05 * i) * length;
    pen.line(seat.run, "thread", {{along, -body}, {along + 0.02 * length, body}});
  }
  pen.hexagon(seat.run, "flange", left, left + 0.2 * length, 1.75 * h);
  pen.tube(seat.run, "gasket", left + 0.2 * length, left + 0.26 * length, 1.6 * h, 1.6 * h, Ink::part_edge);
  pen.hexagon(seat.run, "lock nut", left + 0.42 * length, left + 0.62 * length, 1.6 * h);
}

void grips(PartPen& pen, const ArmSet& set) {
  for (const Arm& arm : set.arms)
    if (arm.female && arm.threaded && arm.shape == catalog::EndShape::plain)
      pen.hexagon({{}, arm.heading}, "hexagon", 0.52 * arm.reach, arm.reach, 1.06 * arm.half);
}

/// The line that is printed along a hose, beside its axis: it shows whether the hose is twisted.
void lay_line(PartPen& pen, const ArmSet& set) {
  const Axis axis{{}, set.arms[1].heading};
  const double beside = 0.45 * set.arms[1].half;
  for (const double side : {-0.04, 0.04})
    pen.line(
        axis, "lay line",
        {{-set.arms[0].reach, beside + side * set.arms[1].half}, {set.arms[1].reach, beside + side * set.arms[1].half}},
        Line::full, 0.5F);
}

/// The wire that keeps a hose from being sucked flat.
void wound_wire(PartPen& pen, const ArmSet& set) {
  const Arm& arm = set.arms[1];
  const Axis axis{{}, arm.heading};
  constexpr int kTurns = 18;
  const double step = set.length / kTurns;
  for (int i = 1; i < kTurns; ++i) {
    const double along = -set.arms[0].reach + i * step;
    pen.line(axis, "wire", {{along - 0.3 * step, -arm.half}, {along + 0.3 * step, arm.half}});
  }
}

void gauge(PartPen& pen, const Arm& arm) {
  const Axis axis{{}, arm.heading};
  // A dial of 2-1/2 in on 1/4 in, 2 in on 1/8 in (common practice).
  const double radius = 2.35 * arm.outside;
  pen.square(axis, "square", arm.start - 0.7 * arm.outside, arm.start, 0.5 * arm.outside);
  const Spot middle = axis.at(arm.start - 0.6 * arm.outside - radius, 0.0);
  pen.round(middle, "case", radius);
  pen.round(middle, "dial", 0.86 * radius, Ink::part_bore);
  constexpr int kMarks = 11;
  for (int i = 0; i < kMarks; ++i) {
    const Axis mark{middle, 225.0 - 27.0 * i};
    pen.line(mark, "mark", {{(i % 5 == 0 ? 0.6 : 0.7) * radius, 0.0}, {0.8 * radius, 0.0}});
  }
  const Axis hand{middle, 150.0};
  pen.line(hand, "hand", {{-0.18 * radius, 0.0}, {0.66 * radius, 0.0}}, Line::full, 2.0F);
  pen.round(middle, "hub", 0.09 * radius, Ink::part_edge);
}

void relief(PartPen& pen, const Arm& arm) {
  const Axis up{{}, arm.heading + 180.0};
  const double w = arm.outside;
  const double from = -arm.start;
  pen.hexagon(up, "hexagon", from, from + 0.6 * w, 0.78 * w);
  pen.tube(up, "bonnet", from + 0.6 * w, from + 2.3 * w, 0.62 * w, 0.62 * w);
  for (const double side : {-0.34, 0.0, 0.34})
    pen.round(up.at(from + 0.95 * w, side * w), "outlet", 0.11 * w, Ink::part_edge);
  pen.spring(up, from + 1.2 * w, from + 2.2 * w, 0.4 * w, Line::hidden);
  pen.hexagon(up, "cap", from + 2.3 * w, from + 2.6 * w, 0.7 * w);
  pen.tube(up, "stem", from + 2.6 * w, from + 2.95 * w, 0.1 * w, 0.1 * w);
  const Spot ring = up.at(from + 3.35 * w, 0.0);  // that lifts the stem by hand
  pen.round(ring, "ring", 0.42 * w);
  pen.round(ring, "ring", 0.3 * w, Ink::part_bore);
}

void muffler(PartPen& pen, const Arm& arm) {
  const Axis up{{}, arm.heading + 180.0};
  const double w = arm.outside;
  const double from = -arm.start;
  pen.hexagon(up, "hexagon", from, from + 0.5 * w, 0.75 * w);
  pen.area(up, "sinter",
           {{from + 0.5 * w, -0.6 * w},
            {from + 2.0 * w, -0.5 * w},
            {from + 2.35 * w, -0.28 * w},
            {from + 2.35 * w, 0.28 * w},
            {from + 2.0 * w, 0.5 * w},
            {from + 0.5 * w, 0.6 * w}});
  for (int row = 0; row < 6; ++row)
    for (int i = -1; i <= 1; ++i)
      pen.round(up.at(from + (0.7 + 0.27 * row) * w, (0.28 * i + (row % 2 == 0 ? 0.0 : 0.12)) * w), "grain", 0.035 * w,
                Ink::part_edge);
}

/// The basket that keeps chips out, and what it closes by.
void foot_basket(PartPen& pen, const Arm& arm) {
  const Axis down{{}, arm.heading + 180.0};
  const double h = arm.half;
  const double length = std::max(1.6 * arm.reach, 2.6 * h);
  pen.hexagon(down, "hexagon", -arm.reach, -0.45 * arm.reach, 1.08 * h);
  pen.tube(down, "body", -0.45 * arm.reach, 0.25 * h, 1.25 * h, 1.25 * h);
  pen.tube(down, "basket", 0.25 * h, length - arm.reach + 0.6 * h, 1.15 * h, 0.95 * h);
  const double end = length - arm.reach + 0.6 * h;
  for (int i = 1; i < 7; ++i) {
    const double along = 0.25 * h + (end - 0.25 * h) * i / 7.0;
    pen.line(down, "slot", {{along, -0.85 * h}, {along, 0.85 * h}}, Line::full, 1.5F);
  }
}

void clamp(PartPen& pen, const Arm& arm) {
  const Axis axis{{}, 0.0};
  const double radius = 0.7 * arm.outside;
  pen.round({}, "band", radius);
  pen.round({}, "opening", 0.9 * radius, Ink::part_bore);
  pen.area(axis, "housing",
           {{-0.42 * radius, 0.9 * radius},
            {0.42 * radius, 0.9 * radius},
            {0.42 * radius, 1.32 * radius},
            {-0.42 * radius, 1.32 * radius}});
  pen.area(axis, "screw",
           {{0.42 * radius, 0.98 * radius},
            {0.85 * radius, 0.98 * radius},
            {0.85 * radius, 1.24 * radius},
            {0.42 * radius, 1.24 * radius}});
  pen.line(axis, "slot", {{0.68 * radius, 1.11 * radius}, {0.85 * radius, 1.11 * radius}}, Line::full, 1.5F);
  for (int i = -3; i <= 3; ++i)
    pen.line(axis, "slot", {{0.1 * i * radius, 0.98 * radius}, {(0.1 * i + 0.06) * radius, 1.24 * radius}});
}

void draw_shape(PartPen& pen, const Family& family, const Seat& seat, const ArmSet& set) {
  switch (family.shape) {
    case BodyShape::ball_valve:
      grips(pen, set);
      lever_handle(pen, seat);
      return;
    case BodyShape::gate_valve:
      grips(pen, set);
      hand_wheel(pen, seat, 3.0, 1.15);
      return;
    case BodyShape::bibb:
      draw_bibb(pen, set);
      return;
    case BodyShape::needle_valve:
      grips(pen, set);
      needle(pen, seat);
      return;
    case BodyShape::strainer:
      strainer_leg(pen, seat);
      grips(pen, set);
      return;
    case BodyShape::bowl:
      bowl(pen, seat);
      return;
    case BodyShape::bulkhead:
      bulkhead(pen, seat, set);
      return;
    case BodyShape::muffler:
    case BodyShape::pipe:
    case BodyShape::usual:
      return;
  }
}

}  // namespace

void draw_on_run(PartPen& pen, const Family& family, const Part& part, const ArmSet& set) {
  const Seat seat = seat_of(set);
  draw_shape(pen, family, seat, set);
  if (family.role == Role::check_valve) {
    grips(pen, set);
    check_body(pen, seat, family.check);
  }
  if (family.role == Role::regulator) {
    grips(pen, set);
    regulator(pen, seat);
  }
  const bool hose = set.arms[0].shape == catalog::EndShape::hose && set.arms[1].shape == catalog::EndShape::hose;
  if (family.flexible && family.role == Role::device)
    wound_wire(pen, set);
  else if (hose)
    lay_line(pen, set);
  if (family.role == Role::restrictor) restrictor(pen, seat, set);
  if (part.closing && family.role == Role::check_valve)
    true_union_nuts(pen, seat, set);
  else if (part.closing)
    union_nut(pen, seat, part.dielectric);
  if (part.arrow || part.one_way) {
    const double across = family.shape == BodyShape::bowl ? 0.0 : -0.45 * seat.half;
    pen.arrow(seat.run, -0.6 * seat.half, 0.6 * seat.half, across);
  }
}

void draw_end_device(PartPen& pen, const Family& family, const Part& /*part*/, const ArmSet& set) {
  const Arm& arm = set.arms[0];
  if (family.role == Role::gauge) gauge(pen, arm);
  if (family.role == Role::relief_valve) relief(pen, arm);
  if (family.role == Role::check_valve) foot_basket(pen, arm);
  if (family.role == Role::hose_clamp) clamp(pen, arm);
  if (family.shape == BodyShape::muffler) muffler(pen, arm);
}

void draw_bibb(PartPen& pen, const ArmSet& set) {
  const Seat seat{{{}, set.arms[0].heading + 180.0}, {{}, set.arms[0].heading + 270.0}, set.body / 2.0, 0.0, 0.0};
  pen.round({}, "body", 1.05 * seat.half);
  hand_wheel(pen, seat, 2.7, 0.9);
}

void draw_small_lever(PartPen& pen, const Arm& arm) {
  const Axis axis{{}, arm.heading};
  const double middle = 0.5 * arm.start;
  pen.round(axis.at(middle, 0.0), "ball", 0.7 * arm.half);
  pen.area(axis, "lever",
           {{middle - 0.15 * arm.half, -0.15 * arm.half},
            {middle + 1.2 * arm.half, -0.15 * arm.half},
            {middle + 1.2 * arm.half, 0.15 * arm.half},
            {middle - 0.15 * arm.half, 0.15 * arm.half}});
}

}  // namespace riserun::report
