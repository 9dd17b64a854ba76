#include "report/drawing/part_arms.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::report {

namespace {

using catalog::Catalog;
using catalog::End;
using catalog::EndShape;
using catalog::Part;
using catalog::Port;

constexpr double kLeastReach = 0.12;  // of the body's width; none is as short
constexpr double kSpout = 60.0;       // degrees that a bibb's spout is turned down by (common practice)
constexpr double kLongestArm = 2.6;   // of the body's width; longer ones are broken

EndShape shape_of(const catalog::JointKind& kind, End end) {
  return end == End::male ? kind.male_shape : end == End::female ? kind.female_shape : kind.neither_shape;
}

/// Of a size whose table holds no measure, the nearest thing that is drawn.
Arm arm_of(const Catalog& catalog, const Part& part, const Port& port) {
  const catalog::PortType& type = catalog.port_type(port.type);
  const catalog::JointKind& kind = catalog.kind(type.kind);
  Arm arm;
  arm.heading = port.heading_degrees;
  arm.bore = in_metres(port.bore);
  arm.kind = type.kind;
  arm.female = type.end == End::female;
  arm.threaded = kind.threaded;
  arm.tapered = kind.tapered;
  arm.shape = shape_of(kind, type.end);
  if (const catalog::JointSize* size = catalog.joint_size(type)) {
    arm.outside = in_metres(std::max(size->outside_diameter, size->major_diameter));
    arm.joint = in_metres(std::max(size->thread_length, size->make_up()));
    if (size->threads_per_inch > 0.0) arm.pitch = in_metres(inches(1.0)) / size->threads_per_inch;
  }
  if (arm.outside <= 0.0) arm.outside = std::max(1.25 * arm.bore, in_metres(part.across_flats) / 1.5);
  if (arm.outside <= 0.0) arm.outside = in_metres(inches(1.0));
  if (arm.bore <= 0.0) arm.bore = 0.75 * arm.outside;
  arm.bore = std::min(arm.bore, (arm.shape == EndShape::barb ? 0.9 : 0.92) * arm.outside);
  if (arm.joint <= 0.0) arm.joint = arm.shape == EndShape::flange ? 0.16 * arm.outside : 0.6 * arm.outside;
  arm.reach = in_metres(port.reach);
  return arm;
}

/// Of a socket, its width to that of what goes in (common practice): thread needs a thick wall, a cup is thin.
double socket_share(const Arm& arm) {
  switch (arm.shape) {
    case EndShape::nut:
    case EndShape::coupler:
    case EndShape::levers:
      return 1.4;
    case EndShape::crimp:
      return 1.0;
    case EndShape::collar:
      return 1.7;
    case EndShape::hose:
      return 1.35;
    default:
      return arm.threaded ? 1.28 : 1.16;
  }
}

double width_of(const Arm& arm) {
  if (arm.female) return socket_share(arm) * arm.outside;
  return arm.shape == EndShape::flange ? 0.5 * arm.outside : arm.outside;
}

/// Where the male ends begin. Of a straight part with one male end its thread may go past the middle, as a bushing's
/// does; what a wrench holds stays at least a quarter of the length.
void begin_ends(ArmSet& set, bool pipe) {
  constexpr double kLeastHead = 0.28;  // of the length
  if (!set.straight) {
    for (Arm& arm : set.arms) arm.start = std::max(arm.reach - arm.joint, set.arms.size() == 1 ? 0.0 : 0.2 * arm.reach);
    return;
  }
  Arm& a = set.arms[0];
  Arm& b = set.arms[1];
  const bool grip = !pipe && (set.flats > 0.0 || a.shape != b.shape);
  if (!a.female && !b.female) {
    const double most = (grip ? 1.0 - kLeastHead : 0.96) * set.length;
    const double shrink = std::min(1.0, most / (a.joint + b.joint));
    for (Arm* arm : {&a, &b}) arm->start = arm->reach - arm->joint * shrink;
    return;
  }
  for (Arm* arm : {&a, &b})
    arm->start = arm->reach - std::min(arm->joint, arm->female ? set.length : (1.0 - kLeastHead) * set.length);
}

/// What is sold by the length, and what is threaded pipe, may be drawn shorter than it is.
bool may_be_broken(const ArmSet& set, const catalog::Family& family, const Part& part) {
  return family.flexible || part.cut_to_length || part.threaded_when_cut ||
         (set.straight && !set.arms[0].female && !set.arms[1].female && set.flats <= 0.0);
}

/// Which sockets the body covers.
void cover(ArmSet& set, const catalog::Family& family, const Part& part) {
  const auto plain = [](const Arm& arm) { return arm.female && arm.shape == EndShape::plain; };
  const bool connector =
      family.role == catalog::Role::connector && family.shape == catalog::BodyShape::usual && !part.closing;
  for (Arm& arm : set.arms) {
    if (!plain(arm)) continue;
    const Arm& other = &arm == &set.arms.front() ? set.arms.back() : set.arms.front();
    const bool alike = other.female && std::abs(other.half - arm.half) < 1e-6 && plain(other);
    const bool head = !other.female && other.shape != EndShape::flange;
    arm.covered = family.weld_bung != catalog::WeldBung::none ||
                  (set.arms.size() == 1 && family.role == catalog::Role::plug) ||
                  (set.straight && (head || (connector && alike)));
  }
}

void measure(ArmSet& set, const catalog::Family& family, const Part& part) {
  for (Arm& arm : set.arms) {
    arm.half = width_of(arm) / 2.0;
    set.body = std::max(set.body, 2.0 * arm.half);
  }
  for (Arm& arm : set.arms) {
    // Of what the catalog says no length of, the usual proportions.
    if (arm.reach < kLeastReach * set.body)
      arm.reach = std::max(arm.reach, arm.female ? 0.35 * set.body : 0.7 * arm.joint);
    if (may_be_broken(set, family, part) && arm.reach > kLongestArm * set.body) {
      arm.reach = kLongestArm * set.body;
      set.broken = true;
    }
    arm.joint = std::min(arm.joint, arm.female ? 0.95 * arm.reach : 1.9 * arm.reach);
  }
  if (set.straight) set.length = set.arms[0].reach + set.arms[1].reach;
  begin_ends(set, family.shape == catalog::BodyShape::pipe);
}

}  // namespace

ArmSet arms_of(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave) {
  constexpr double kRadian = std::numbers::pi / 180.0;
  ArmSet set;
  set.flats = in_metres(part.across_flats);
  for (const Port& port : part.ports) set.arms.push_back(arm_of(catalog, part, port));
  const double turn = enter < set.arms.size() ? 180.0 - set.arms[enter].heading : 0.0;
  for (Arm& arm : set.arms) arm.heading += turn;
  if (leave < set.arms.size() && std::sin(set.arms[leave].heading * kRadian) < -0.1)
    for (Arm& arm : set.arms) arm.heading = -arm.heading;
  // The spout of a bibb looks down; which port is entered says what is down.
  if (catalog.family(part.family).shape == catalog::BodyShape::bibb && set.arms.size() == 2 && enter == 0)
    set.arms[1].heading = set.arms[0].heading + 180.0 - kSpout;
  set.straight =
      set.arms.size() == 2 && std::abs(std::cos((set.arms[0].heading - set.arms[1].heading) * kRadian) + 1.0) < 1e-6;
  measure(set, catalog.family(part.family), part);
  cover(set, catalog.family(part.family), part);
  return set;
}

}  // namespace riserun::report
