#include "report/drawing/part_bodies.h"

#include "report/drawing/part_features.h"

#include <algorithm>
#include <cmath>

namespace riserun::report {

namespace {

using catalog::BodyShape;
using catalog::Family;
using catalog::Part;
using catalog::Role;

/// Pipe, tube and hose keep their width; of two widths a swage lies between. What has parallel threads or two kinds of
/// end has something for a wrench, where its family does not say that it is a pipe.
bool is_pipe(const Family& family, const ArmSet& set, const Part& part) {
  if (family.shape == BodyShape::pipe) return true;
  const Arm& a = set.arms[0];
  const Arm& b = set.arms[1];
  if (a.female != b.female || a.shape != b.shape || a.kind != b.kind || set.flats > 0.0 || part.closing) return false;
  if (a.female) return a.shape == catalog::EndShape::hose;
  return a.shape == catalog::EndShape::plain && (a.tapered || !a.threaded);
}

/// Of two widths it is drawn down between them, and straight under each thread.
void pipe_body(PartPen& pen, const Axis& axis, double from, double half_from, double to, double half_to, Ink ink) {
  if (std::abs(half_from - half_to) < 1e-6) return pen.tube(axis, "body", from, to, half_from, half_to, ink);
  const auto at = [&](double share) { return from + share * (to - from); };
  pen.tube(axis, "body", at(0.0), at(0.3), half_from, half_from);
  pen.tube(axis, "swage", at(0.3), at(0.7), half_from, half_to);
  pen.tube(axis, "body", at(0.7), at(1.0), half_to, half_to);
}

/// A hose with its ends on it.
void hose_body(PartPen& pen, const ArmSet& set) {
  const double half = 0.68 * std::max(set.arms[0].bore, set.arms[1].bore);
  pen.tube({{}, set.arms[1].heading}, "body", -0.92 * set.arms[0].reach, 0.92 * set.arms[1].reach, half, half,
           Ink::rubber);
}

/// Half the width that a wrench goes over: the corners of the hexagon, where flats are given.
double grip_of(const ArmSet& set) {
  double widest = 0.0;
  for (const Arm& arm : set.arms) widest = std::max(widest, arm.female ? arm.half : 0.56 * arm.outside);
  return set.flats > 0.0 ? std::max(set.flats / std::sqrt(3.0), 0.5 * widest) : 1.06 * widest;
}

/// How far the body goes toward a socket: under it, or over all of it.
double inner(const Arm& arm) { return arm.covered ? arm.reach : std::max(0.5 * arm.reach, arm.start); }

void straight_body(PartPen& pen, const Family& family, const Part& part, const ArmSet& set) {
  const Axis axis{{}, set.arms[1].heading};
  const Arm& a = set.arms[0];
  const Arm& b = set.arms[1];
  // Along the axis from the first port to the second, both ends left out.
  const double to = b.covered ? b.reach : b.start;
  const double from = std::min(-(a.covered ? a.reach : a.start), to - 0.12 * set.length);
  if (is_pipe(family, set, part)) {
    const bool hose = a.shape == catalog::EndShape::hose;
    pipe_body(pen, axis, -a.start, a.half, b.start, b.half, hose ? Ink::rubber : Ink::part_body);
    return;
  }
  if (family.flexible) {
    hose_body(pen, set);
    return;
  }
  const bool both_sockets = a.female && b.female;
  if (both_sockets && (family.shape != BodyShape::usual || family.role != Role::connector || part.closing)) {
    pen.tube(axis, "body", -0.96 * a.reach, 0.96 * b.reach, 0.94 * a.half, 0.94 * b.half);
  } else if (both_sockets) {
    pen.tube(axis, "body", -inner(a), inner(b), a.half, b.half);
  } else if (a.shape == catalog::EndShape::flange || b.shape == catalog::EndShape::flange) {
    pen.tube(axis, "hub", from, to, set.arms[1].half, set.arms[1].half);
  } else if (family.weld_bung != catalog::WeldBung::none) {
    pen.tube(axis, "body", from, to, set.body / 2.0, set.body / 2.0);
  } else {
    pen.hexagon(axis, "hexagon", from, to, grip_of(set));
  }
}

/// Arms and the ball between them: first their outlines, then what is inside without any, so that of the outlines only
/// that of the whole is left.
void bent_body(PartPen& pen, const ArmSet& set) {
  const auto half_of = [](const Arm& arm) { return arm.female ? 0.88 * arm.half : arm.half; };
  double round = 0.0;
  for (const Arm& arm : set.arms) round = std::max(round, half_of(arm));
  for (const bool edge : {true, false}) {
    for (const Arm& arm : set.arms) {
      const double to = arm.female ? arm.reach : std::max(arm.start, 0.2 * arm.reach);
      pen.tube({{}, arm.heading}, "body", 0.0, to, half_of(arm), half_of(arm), Ink::part_body, edge);
    }
    pen.round({}, "elbow", round, Ink::part_body, edge);
  }
}

/// In the back of a plug without a head: it is turned by a key.
void key_hole(PartPen& pen, const Arm& arm) {
  const double deep = arm.start + 0.6 * (arm.reach - arm.start);
  const double half = 0.28 * arm.outside;
  pen.line({{}, arm.heading}, "key", {{arm.start, -half}, {deep, -half}, {deep, half}, {arm.start, half}},
           Line::hidden);
}

void end_body(PartPen& pen, const Family& family, const ArmSet& set) {
  const Arm& arm = set.arms[0];
  const Axis axis{{}, arm.heading};
  if (family.role == Role::plug && arm.shape == catalog::EndShape::flange) return;
  if (family.role != Role::plug) return;
  if (arm.female) {  // a cap: its closed end is rounded off
    const double back = arm.reach - std::max(arm.joint * 1.25, 0.8 * arm.half);
    pen.area(axis, "cap",
             {{back, -0.55 * arm.half},
              {back + 0.25 * arm.half, -0.9 * arm.half},
              {back + 0.5 * arm.half, -arm.half},
              {arm.reach, -arm.half},
              {arm.reach, arm.half},
              {back + 0.5 * arm.half, arm.half},
              {back + 0.25 * arm.half, 0.9 * arm.half},
              {back, 0.55 * arm.half}});
    return;
  }
  const double head = 0.45 * arm.outside;
  if (set.flats > 0.95 * arm.outside)
    pen.hexagon(axis, "hexagon", arm.start - head, arm.start, set.flats / std::sqrt(3.0));
  else if (set.flats > 0.0)
    pen.flat(axis, "square", arm.start - head, arm.start, set.flats / 2.0);
  else if (!arm.threaded)
    pen.tube(axis, "rim", arm.start - 0.15 * arm.outside, arm.start, 0.6 * arm.outside, 0.6 * arm.outside);
}

}  // namespace

void draw_body(PartPen& pen, const Family& family, const Part& part, const ArmSet& set) {
  if (set.arms.size() == 1) {
    end_body(pen, family, set);
    return;
  }
  if (set.straight) {
    straight_body(pen, family, part, set);
    return;
  }
  bent_body(pen, set);
}

void draw_features(PartPen& pen, const Family& family, const Part& part, const ArmSet& set) {
  if (set.arms.size() == 1) {
    if (family.role == Role::plug && !set.arms[0].female && set.arms[0].threaded && set.flats <= 0.0)
      key_hole(pen, set.arms[0]);
    draw_end_device(pen, family, part, set);
    return;
  }
  if (set.straight) {
    draw_on_run(pen, family, part, set);
    return;
  }
  if (family.shape == BodyShape::bibb) draw_bibb(pen, set);
  if (family.shape == BodyShape::ball_valve)
    for (std::size_t row = 1; row < set.arms.size(); ++row) draw_small_lever(pen, set.arms[row]);
}

}  // namespace riserun::report
