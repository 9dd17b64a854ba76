#include "report/drawing/part_drawing.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::report {

namespace {

using catalog::Catalog;
using catalog::End;
using catalog::Part;
using catalog::Port;

/// What an arm of the part looks like from its middle out to one port; metres.
struct Arm {
  double heading = 0.0;  // degrees, as drawn
  double outside = 0.0;  // of the thread, tube or barb
  double bore = 0.0;
  double joint = 0.0;  // length of thread, barb or socket
  double pitch = 0.0;  // between the threads that are hinted
  double reach = 0.0;  // from the middle
  bool female = false;
  bool threaded = false;
  bool barb = false;
};

/// Of a size whose table holds no measure, the nearest thing that is drawn: a thread twice as long as wide is none.
Arm arm_of(const Catalog& catalog, const Part& part, const Port& port) {
  const catalog::PortType& type = catalog.port_type(port.type);
  const catalog::JointKind& kind = catalog.kind(type.kind);
  Arm arm;
  arm.heading = port.heading_degrees;
  arm.bore = in_metres(port.bore);
  arm.female = type.end == End::female;
  arm.threaded = kind.threaded;
  arm.barb = type.end == End::male && kind.male_notation.find("barb") != std::string::npos;
  if (const catalog::JointSize* size = catalog.joint_size(type)) {
    arm.outside = in_metres(std::max(size->outside_diameter, size->major_diameter));
    arm.joint = in_metres(std::max(size->thread_length, size->make_up()));
    if (size->threads_per_inch > 0.0) arm.pitch = in_metres(inches(1.0)) / size->threads_per_inch;
  }
  if (arm.outside <= 0.0) arm.outside = std::max(1.25 * arm.bore, in_metres(part.across_flats) / 1.5);
  if (arm.outside <= 0.0) arm.outside = in_metres(inches(1.0));
  if (arm.bore <= 0.0) arm.bore = 0.75 * arm.outside;
  arm.bore = std::min(arm.bore, (arm.barb ? 0.9 : 0.92) * arm.outside);
  if (arm.joint <= 0.0) arm.joint = 0.6 * arm.outside;
  arm.reach = in_metres(port.reach);
  return arm;
}

/// Degrees by which the part is turned so that the entered port looks left.
double turn_of(const std::vector<Arm>& arms, std::size_t enter) { return 180.0 - arms[enter].heading; }

class PartSketch {
 public:
  PartSketch(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave) {
    for (const Port& port : part.ports) arms_.push_back(arm_of(catalog, part, port));
    const double turn = enter < arms_.size() ? turn_of(arms_, enter) : 0.0;
    for (Arm& arm : arms_) arm.heading += turn;
    // Turned over, not about, where the way out would look down: water is drawn going up.
    if (leave < arms_.size() && std::sin(arms_[leave].heading * kRadian) < -0.1)
      for (Arm& arm : arms_) arm.heading = -arm.heading;
    measure(in_metres(part.across_flats));
  }

  Drawing draw() {
    for (const Arm& arm : arms_) body(arm);
    hub(Ink::part_body, body_ / 2.0, "body");
    for (const Arm& arm : arms_) way(arm);
    double least = body_;
    for (const Arm& arm : arms_) least = std::min(least, arm.bore);
    hub(Ink::part_bore, least / 2.0, "middle");
    for (const Arm& arm : arms_) threads(arm);
    if (broken_) break_marks();
    bounds();
    return std::move(drawing_);
  }

 private:
  static constexpr double kRadian = std::numbers::pi / 180.0;
  static constexpr double kLongestArm = 2.2;   // of the body's width; longer ones are broken
  static constexpr double kFemaleBody = 1.28;  // width of a socket, of its thread
  static constexpr double kBarbTip = 1.14;     // width over the barbs, of the bore of the hose

  void measure(double across_flats) {
    bool any_female = false;
    for (const Arm& arm : arms_) {
      body_ = std::max(body_, arm.outside * (arm.female ? kFemaleBody : arm.barb ? kBarbTip : 1.0));
      any_female = any_female || arm.female;
    }
    if (any_female || arms_.size() == 1) body_ = std::max(body_, std::min(across_flats, 1.6 * body_));
    for (Arm& arm : arms_) {
      arm.reach = std::max(arm.reach, arm.female ? 0.35 * body_ : 0.7 * arm.joint);
      arm.joint = std::min(arm.joint, 0.9 * arm.reach);
      if (arm.reach <= kLongestArm * body_) continue;
      arm.reach = kLongestArm * body_;
      broken_ = true;
    }
  }

  /// From along the arm and across it to the drawing.
  static Spot turned(const Arm& arm, double along, double across) {
    const double c = std::cos(arm.heading * kRadian);
    const double s = std::sin(arm.heading * kRadian);
    return {along * c - across * s, along * s + across * c};
  }
  void quad(const Arm& arm, double from, double to, double half_from, double half_to, Ink fill, std::string name,
            bool edge) {
    Area area{std::move(name),
              {turned(arm, from, -half_from), turned(arm, to, -half_to), turned(arm, to, half_to),
               turned(arm, from, half_from)},
              fill};
    if (edge) area.edge = Ink::part_edge;
    drawing_.shapes.push_back(std::move(area));
  }

  /// A round middle where arms meet at an angle.
  void hub(Ink fill, double radius, std::string name) {
    if (arms_.size() == 2 && std::abs(std::cos((arms_[0].heading - arms_[1].heading) * kRadian) + 1.0) < 1e-6) return;
    if (arms_.size() < 2) return;
    Area area{std::move(name), {}, fill};
    constexpr int kSides = 20;
    for (int i = 0; i < kSides; ++i) {
      const double angle = 2.0 * std::numbers::pi * i / kSides;
      area.outline.push_back({radius * std::cos(angle), radius * std::sin(angle)});
    }
    drawing_.shapes.push_back(std::move(area));
  }

  void body(const Arm& arm) {
    const double shoulder = arm.reach - arm.joint;
    if (arm.female) {
      quad(arm, 0.0, arm.reach, body_ / 2.0, body_ / 2.0, Ink::part_body, "socket", true);
      return;
    }
    if (shoulder > 0.0) quad(arm, 0.0, shoulder, body_ / 2.0, body_ / 2.0, Ink::part_body, "body", true);
    const double half = arm.outside / 2.0;
    if (arm.barb) {
      barbs(arm, shoulder, half);
      return;
    }
    // A taper thread is thinner at its end; drawn a little more than it is, so that it shows.
    quad(arm, shoulder, arm.reach, half, arm.threaded ? 0.93 * half : half, Ink::part_body, "spigot", true);
  }

  void barbs(const Arm& arm, double from, double half) {
    constexpr int kTeeth = 4;
    const double step = (arm.reach - from) / kTeeth;
    for (int i = 0; i < kTeeth; ++i)
      quad(arm, from + i * step, from + (i + 1) * step, kBarbTip * half, half, Ink::part_body, "barb", true);
  }

  void way(const Arm& arm) {
    const double half = arm.bore / 2.0;
    quad(arm, 0.0, arm.reach, half, half, Ink::part_bore, "bore", false);
    if (!arm.female) return;
    const double mouth = arm.outside / 2.0;
    quad(arm, arm.reach - arm.joint, arm.reach, 0.93 * mouth, mouth, Ink::part_bore, "mouth", false);
  }

  /// Short strokes where the thread is: across a male end, in the wall of a female one.
  void threads(const Arm& arm) {
    if (!arm.threaded) return;
    constexpr double kFewest = 5.0;
    const double pitch = std::max(arm.pitch > 0.0 ? 1.6 * arm.pitch : 0.0, arm.joint / 9.0);
    const double step = std::min(pitch, arm.joint / kFewest);
    const double lean = 0.25 * step;
    for (double along = arm.reach - arm.joint + 0.6 * step; along < arm.reach - 0.2 * step; along += step)
      for (const double side : {-1.0, 1.0}) {
        const double outer = side * arm.outside / 2.0 * (arm.female ? 1.1 : 0.97);
        const double inner =
            side * (arm.female ? 0.96 * arm.outside / 2.0 : std::max(arm.bore / 2.0, 0.78 * arm.outside / 2.0));
        drawing_.shapes.push_back(Stroke{
            "thread", {turned(arm, along - lean, outer), turned(arm, along + lean, inner)}, Ink::part_edge, 1.0F});
      }
  }

  /// Two slanting strokes with a gap between: some length is left out here.
  void break_marks() {
    const Arm level;
    const double half = 0.62 * body_;
    const double gap = 0.10 * body_;
    const double lean = 0.12 * body_;
    drawing_.shapes.push_back(Area{"break",
                                   {turned(level, -gap - lean, -half), turned(level, gap - lean, -half),
                                    turned(level, gap + lean, half), turned(level, -gap + lean, half)},
                                   Ink::card});
    for (const double x : {-gap, gap})
      drawing_.shapes.push_back(
          Stroke{"break", {turned(level, x - lean, -half), turned(level, x + lean, half)}, Ink::part_edge, 1.0F});
  }

  void bounds() {
    drawing_.low = {-0.5 * body_, -0.5 * body_};
    drawing_.high = {0.5 * body_, 0.5 * body_};
    for (const Shape& shape : drawing_.shapes)
      if (const auto* area = std::get_if<Area>(&shape))
        for (const Spot& spot : area->outline) {
          drawing_.low = {std::min(drawing_.low.x, spot.x), std::min(drawing_.low.y, spot.y)};
          drawing_.high = {std::max(drawing_.high.x, spot.x), std::max(drawing_.high.y, spot.y)};
        }
  }

  std::vector<Arm> arms_;
  double body_ = 0.0;  // width
  bool broken_ = false;
  Drawing drawing_;
};

}  // namespace

Drawing part_drawing(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave) {
  if (part.ports.empty()) return {};
  return PartSketch(catalog, part, std::min(enter, part.ports.size() - 1), leave).draw();
}

}  // namespace riserun::report
