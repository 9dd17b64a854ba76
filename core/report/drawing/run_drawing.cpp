#include "report/drawing/run_drawing.h"

#include "report/drawing/hose_clamp.h"
#include "report/drawing/part_drawing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace riserun::report {

namespace {

using catalog::Catalog;
using catalog::End;
using chain::Follower;
using chain::Run;

constexpr double kRadian = std::numbers::pi / 180.0;

/// A part's picture, turned and moved to its place.
struct Placed {
  PartPicture picture;
  RunItem item;
  bool socket = false;  // it goes over what it is joined to
  double aside = 0.0;   // what it costs that its ports lead where they do
};

struct Box {
  Spot low;
  Spot high;
  double shared_with(const Box& other) const {
    const double wide = std::min(high.x, other.high.x) - std::max(low.x, other.low.x);
    const double tall = std::min(high.y, other.high.y) - std::max(low.y, other.low.y);
    return wide > 0.0 && tall > 0.0 ? wide * tall : 0.0;
  }
};

/// Of a shape, every spot through `move`.
void move_shape(Shape& shape, const auto& move, bool mirrored) {
  if (auto* area = std::get_if<Area>(&shape)) {
    for (Spot& spot : area->outline) spot = move(spot);
    if (mirrored) std::reverse(area->outline.begin(), area->outline.end());  // it goes on turning left
  } else if (auto* stroke = std::get_if<Stroke>(&shape)) {
    for (Spot& spot : stroke->points) spot = move(spot);
  }
}

/// The picture with its port `entered` at a spot, looking back against `heading`.
PartPicture put(PartPicture picture, std::size_t entered, const Spot& where, double heading, bool mirrored) {
  const double c = std::cos(heading * kRadian);
  const double s = std::sin(heading * kRadian);
  const Spot own = picture.ports[entered].at;
  const auto move = [&](const Spot& spot) {
    const double x = spot.x - own.x;
    const double y = (spot.y - own.y) * (mirrored ? -1.0 : 1.0);
    return Spot{where.x + x * c - y * s, where.y + x * s + y * c};
  };
  for (Shape& shape : picture.drawing.shapes) move_shape(shape, move, mirrored);
  for (PortSpot& port : picture.ports) port = {move(port.at), (mirrored ? -port.heading : port.heading) + heading};
  Box box{{1e9, 1e9}, {-1e9, -1e9}};
  for (const Shape& shape : picture.drawing.shapes)
    if (const auto* area = std::get_if<Area>(&shape))
      for (const Spot& spot : area->outline) {
        box.low = {std::min(box.low.x, spot.x), std::min(box.low.y, spot.y)};
        box.high = {std::max(box.high.x, spot.x), std::max(box.high.y, spot.y)};
      }
  picture.drawing.low = box.low;
  picture.drawing.high = box.high;
  return picture;
}

class RunSketch {
 public:
  RunSketch(const Catalog& catalog, const Run& run) : catalog_(catalog), run_(run) {}

  RunPicture draw() {
    put_together();
    if (run_.ends.size() > 1) turn_out_of_the_way();
    return gathered();
  }

 private:
  struct Open {
    Spot at;
    double heading = 0.0;
  };

  /// A part's own picture, and which way round it is put on.
  struct Turned {
    PartPicture drawn;
    bool upright = false;          // a spout looks down, whatever is in its way
    std::optional<bool> mirrored;  // nothing yet: as is best where it is put on
  };

  void put_together() {
    placed_.assign(run_.parts.size(), {});
    faces_.assign(run_.ends.size(), {});
    extra_.clear();
    stubs_.clear();
    hose_ends_.clear();
    before_.clear();
    after_.clear();
    turn_ = 0;
    for (const chain::RunJoint& joint : run_.joints) {
      if (joint.to_end)
        end_at(joint);
      else
        part_at(joint);
    }
    for (std::size_t row = 0; row < run_.parts.size(); ++row) plugs_of(row);
    for (const chain::RunJoint& joint : run_.joints) hose_end(joint);
  }

  /// What leads aside is turned to the other side as long as less lies over other things then: a branch that is best
  /// where it begins may run into another further on.
  void turn_out_of_the_way() {
    double least = cost_of_all();
    for (bool better = true; better;) {
      better = false;
      for (std::size_t turn = 0; turn < turned_.size(); ++turn) {
        if (!leads_aside(turned_[turn])) continue;
        turned_[turn].mirrored = !*turned_[turn].mirrored;
        put_together();
        const double cost = cost_of_all();
        better = better || cost < least - 1e-12;
        if (cost >= least - 1e-12) turned_[turn].mirrored = !*turned_[turn].mirrored;
        least = std::min(least, cost);
      }
    }
    put_together();
  }

  static bool leads_aside(const Turned& part) {
    const std::vector<PortSpot>& ports = part.drawn.ports;
    return !part.upright && std::any_of(ports.begin(), ports.end(), [](const PortSpot& port) {
      return std::abs(std::sin(port.heading * kRadian)) > 1e-6;
    });
  }

  double cost_of_all() const {
    std::vector<const Placed*> all;
    for (const Placed& one : placed_) all.push_back(&one);
    for (const Placed& one : extra_) all.push_back(&one);
    double cost = 0.0;
    for (std::size_t a = 0; a < all.size(); ++a) {
      cost += all[a]->aside;
      for (std::size_t b = 0; b < a; ++b) cost += box_of(*all[a]).shared_with(box_of(*all[b]));
    }
    return cost;
  }

  static Box box_of(const Placed& one) { return {one.picture.drawing.low, one.picture.drawing.high}; }

  /// Where the inner side of a joint ends.
  Open open_end(const chain::RunJoint& joint) const {
    if (joint.inner == chain::kBase) return {};
    const PortSpot& port = placed_[joint.inner].picture.ports[joint.inner_port];
    return {port.at, port.heading};
  }

  bool is_socket(catalog::PortTypeId type) const { return catalog_.port_type(type).end == End::female; }

  Placed at_joint(catalog::PartId id, std::size_t entered, std::size_t leave, const Open& open, double overlap) {
    const double angle = open.heading * kRadian;
    const Spot where{open.at.x - overlap * std::cos(angle), open.at.y - overlap * std::sin(angle)};
    if (turn_ == turned_.size())
      turned_.push_back({part_picture(catalog_, catalog_.part(id), entered, leave),
                         catalog_.family(catalog_.part(id).family).shape == catalog::BodyShape::bibb,
                         {}});
    Turned& turned = turned_[turn_++];
    Placed best;
    double least = 1e18;
    bool chosen = false;
    for (const bool mirrored : {false, true}) {
      if (mirrored != turned.mirrored.value_or(mirrored) || (mirrored && turned.upright)) continue;
      Placed tried{put(turned.drawn, entered, where, open.heading, mirrored), {}};
      tried.aside = cost_of_sides(tried.picture, entered);
      double cost = tried.aside;
      for (const Placed& other : placed_) cost += box_of(tried).shared_with(box_of(other));
      if (cost >= least - 1e-12) continue;
      least = cost;
      best = std::move(tried);
      chosen = mirrored;
    }
    turned.mirrored = chosen;
    best.item.part = id;
    best.item.broken = best.picture.broken;
    best.item.heading = open.heading;
    const Drawing& drawing = best.picture.drawing;
    const Spot from = best.picture.ports[entered].at;
    const Spot to = leave < best.picture.ports.size() && leave != entered
                        ? best.picture.ports[leave].at
                        : Spot{(drawing.low.x + drawing.high.x) / 2.0, (drawing.low.y + drawing.high.y) / 2.0};
    best.item.middle = {(from.x + to.x) / 2.0, (from.y + to.y) / 2.0};
    best.item.low = drawing.low;
    best.item.high = drawing.high;
    best.item.ports = best.picture.ports;
    return best;
  }

  /// Where a picture's other ports lead: to the right is best, back to the left worst, as a branch that leads back runs
  /// into what the run stands on.
  static double cost_of_sides(const PartPicture& picture, std::size_t entered) {
    double cost = 0.0;
    for (std::size_t port = 0; port < picture.ports.size(); ++port)
      if (port != entered)
        cost += 1e-5 * (1.0 - std::cos(picture.ports[port].heading * kRadian)) -
                1e-6 * std::sin(picture.ports[port].heading * kRadian);
    return cost;
  }

  void part_at(const chain::RunJoint& joint) {
    const chain::RunPart& part = run_.parts[joint.outer];
    placed_[joint.outer] = at_joint(part.part, part.enter, part.leave(), open_end(joint), in_metres(joint.make_up));
    placed_[joint.outer].item.cut_length = part.cut_length;
    if (joint.inner != chain::kBase) (is_socket(joint.b) ? before_ : after_).emplace_back(joint.inner, joint.outer);
  }

  void end_at(const chain::RunJoint& joint) {
    const chain::RunEnd& end = run_.ends[joint.outer];
    const Open open = open_end(joint);
    const double angle = open.heading * kRadian;
    const double in = in_metres(joint.make_up);
    faces_[joint.outer] = {{open.at.x - in * std::cos(angle), open.at.y - in * std::sin(angle)}, open.heading};
    if (end.device) {
      extra_.push_back(at_joint(*end.device, end.device_port, end.device_port, open, in));
      extra_.back().socket = is_socket(joint.b);
      extra_.back().item.end = joint.outer;
      return;
    }
    stub(open, joint);
  }

  void plugs_of(std::size_t row) {
    const chain::RunPart& part = run_.parts[row];
    for (std::size_t port = 0; port < part.ports.size() && !placed_[row].picture.ports.empty(); ++port) {
      const Follower& follower = part.ports[port];
      if (follower.what != Follower::What::plug) continue;
      const catalog::Part& plug = catalog_.part(follower.plug);
      const catalog::JointSize* size = catalog_.joint_size(catalog_.port_type(plug.ports[0].type));
      const PortSpot& spot = placed_[row].picture.ports[port];
      extra_.push_back(
          at_joint(follower.plug, 0, 0, {spot.at, spot.heading}, size == nullptr ? 0.0 : in_metres(size->make_up())));
      extra_.back().socket = is_socket(plug.ports[0].type);
    }
  }

  /// What the run ends at and is no part of it, in hidden lines.
  void stub(const Open& open, const chain::RunJoint& joint) {
    const catalog::JointSize* size = catalog_.joint_size(catalog_.port_type(joint.b));
    const double half = 0.7 * (size == nullptr ? in_metres(inches(1.0)) : in_metres(size->outside_diameter));
    const double overlap = in_metres(joint.make_up);
    const double angle = open.heading * kRadian;
    const auto at = [&](double along, double across) {
      return Spot{open.at.x + along * std::cos(angle) - across * std::sin(angle),
                  open.at.y + along * std::sin(angle) + across * std::cos(angle)};
    };
    const double far = 1.2 * half;
    stubs_.push_back(
        Stroke{"end",
               {at(-overlap, -half), at(far, -half), at(far, half), at(-overlap, half), at(-overlap, -half)},
               Ink::part_edge,
               1.0F,
               Line::hidden});
  }

  /// Plugs and devices first, then parts so that a male end comes before the socket that it goes into.
  RunPicture gathered() {
    RunPicture picture;
    for (Placed& placed : extra_)
      if (!placed.socket) take(picture, placed);
    std::vector<bool> done(placed_.size(), false);
    for (std::size_t round = 0; round <= placed_.size(); ++round)
      for (std::size_t row = 0; row < placed_.size(); ++row)
        if (!done[row] && !waits(row, done)) {
          done[row] = true;
          take(picture, placed_[row]);
        }
    for (Placed& placed : extra_)
      if (placed.socket) take(picture, placed);
    for (const HoseEnd& end : hose_ends_) clamp_on(picture.drawing, end);
    picture.faces = faces_;
    for (const Placed& placed : placed_) picture.items.push_back(placed.item);
    for (const Placed& placed : extra_) picture.items.push_back(placed.item);
    for (Stroke& stroke : stubs_) picture.drawing.shapes.push_back(std::move(stroke));
    base_stub(picture);
    picture.drawing.low = {0.0, 0.0};
    take_in_shapes(picture.drawing);
    return picture;
  }

  void hose_end(const chain::RunJoint& joint) {
    const catalog::Seal* seal = catalog_.seal(catalog_.mating_rules()[joint.rule].seal);
    if (seal == nullptr || !seal->clamped) return;
    const bool outer = is_socket(joint.b);
    if (outer ? joint.to_end : joint.inner == chain::kBase) return;  // not this run's hose
    const Open open = open_end(joint);
    const double on = in_metres(joint.make_up);
    const Axis out{open.at, open.heading};
    HoseEnd end{outer ? Axis{out.at(-on, 0.0), open.heading} : Axis{open.at, open.heading + 180.0}, joint.make_up, 0.0,
                0.0};
    end.half = half_width(placed_[outer ? joint.outer : joint.inner].picture.drawing, end.axis);
    const catalog::JointSize* size = catalog_.joint_size(catalog_.port_type(outer ? joint.a : joint.b));
    if (size != nullptr) end.barb = in_metres(size->outside_diameter) / 2.0;
    hose_ends_.push_back(end);
  }

  bool waits(std::size_t row, const std::vector<bool>& done) const {
    const auto before = [&](const auto& pair) { return pair.second == row && !done[pair.first]; };
    const auto after = [&](const auto& pair) { return pair.first == row && !done[pair.second]; };
    return std::any_of(before_.begin(), before_.end(), before) || std::any_of(after_.begin(), after_.end(), after);
  }

  static void take(RunPicture& picture, Placed& placed) {
    for (Shape& shape : placed.picture.drawing.shapes) picture.drawing.shapes.push_back(std::move(shape));
  }

  void base_stub(RunPicture& picture) const {
    if (run_.joints.empty()) return;
    const catalog::JointSize* size = catalog_.joint_size(catalog_.port_type(run_.joints.front().a));
    const double half = 0.7 * (size == nullptr ? in_metres(inches(1.0)) : in_metres(size->outside_diameter));
    picture.drawing.shapes.push_back(
        Stroke{"base",
               {{-1.2 * half, -half}, {0.0, -half}, {0.0, half}, {-1.2 * half, half}, {-1.2 * half, -half}},
               Ink::part_edge,
               1.0F,
               Line::hidden});
  }

  const Catalog& catalog_;
  const Run& run_;
  std::vector<Turned> turned_;  // in the order in which they are put on
  std::size_t turn_ = 0;
  std::vector<Placed> placed_;  // of each part of the run
  std::vector<Placed> extra_;
  std::vector<Stroke> stubs_;
  std::vector<HoseEnd> hose_ends_;
  std::vector<PortSpot> faces_;
  std::vector<std::pair<std::size_t, std::size_t>> before_;  // the first is drawn before the second
  std::vector<std::pair<std::size_t, std::size_t>> after_;   // ... after it
};

}  // namespace

RunPicture run_picture(const Catalog& catalog, const Run& run) { return RunSketch(catalog, run).draw(); }

void number_items(RunPicture& picture, double point) {
  constexpr double kWide = 12.0;  // points, of a number with its plate
  constexpr double kHigh = 11.0;
  std::vector<Box> taken;
  Drawing& drawing = picture.drawing;
  for (std::size_t row = 0; row < picture.items.size(); ++row) {
    const RunItem& item = picture.items[row];
    const auto box_at = [&](const Spot& spot) {
      return Box{{spot.x - kWide / 2.0 * point, spot.y - kHigh / 2.0 * point},
                 {spot.x + kWide / 2.0 * point, spot.y + kHigh / 2.0 * point}};
    };
    Spot best = item.middle;
    double least = 1e18;
    for (const double out : {9.0, 20.0, 31.0, 42.0})
      for (const auto& [x, y] :
           {std::pair(0.0, 1.0), std::pair(0.0, -1.0), std::pair(1.0, 0.0), std::pair(-1.0, 0.0)}) {
        const Spot tried{x == 0.0 ? item.middle.x : (x > 0.0 ? item.high.x : item.low.x) + x * out * point,
                         y == 0.0 ? item.middle.y : (y > 0.0 ? item.high.y : item.low.y) + y * out * point};
        double cost = 1e-3 * out * point * kWide * point;
        for (const Box& other : taken) cost += 4.0 * box_at(tried).shared_with(other);
        for (const RunItem& other : picture.items) cost += box_at(tried).shared_with({other.low, other.high});
        if (cost >= least) continue;
        least = cost;
        best = tried;
      }
    taken.push_back(box_at(best));
    drawing.shapes.push_back(Stroke{"leader", {item.middle, best}, Ink::faint_text, 0.8F});
    drawing.shapes.push_back(Label{fmt::format("item {}", row + 1), best, fmt::format("{}", row + 1), Ink::accent_text,
                                   Align::middle, Align::middle, Ink::accent_ground});
  }
  for (const Box& box : taken) {
    drawing.low = {std::min(drawing.low.x, box.low.x), std::min(drawing.low.y, box.low.y)};
    drawing.high = {std::max(drawing.high.x, box.high.x), std::max(drawing.high.y, box.high.y)};
  }
}

}  // namespace riserun::report
