#include "report/drawing/section_devices.h"

#include "report/drawing/run_drawing.h"

#include <algorithm>
#include <iterator>

namespace riserun::report {

namespace {

using plan::Plan;

constexpr double kLow = 0.12;  // of the height: where a side port stands of which the job does not say how high

/// The bung as a block on the wall, and the spot and heading at which what is screwed into it begins.
struct Bung {
  std::vector<Spot> outline;
  Spot face;
  double heading = 90.0;  // degrees
};

std::optional<Bung> bung_of(const Plan& plan, const plan::LidBung& bung) {
  const plan::JobReservoir& box = plan.job.reservoir;
  const double half = std::max(in_metres(bung.outside), 0.01) / 2.0;
  const double stands_out = 1.2 * half;
  const double sheet = in_metres(box.sheet.thickness);
  if (bung.place == plan::Place::lid) {
    if (!bung.at) return std::nullopt;
    const double x = in_metres(bung.at->from_left);
    const double top = in_metres(box.height) + sheet;
    return Bung{box_outline(x - half, top, x + half, top + stands_out), {x, top + stands_out}, 90.0};
  }
  if (bung.place != plan::Place::side) return std::nullopt;
  const double y = bung.over_floor ? in_metres(*bung.over_floor) : kLow * in_metres(box.height);
  const double wall = in_metres(box.length) + sheet;
  return Bung{box_outline(wall, y - half, wall + stands_out, y + half), {wall + stands_out, y}, 0.0};
}

/// The run that begins there and leads neither to the table nor to another port; or what stands on one bung together,
/// one branch of which may lead to the air supply.
const chain::Run* run_at(const Plan& plan, const std::string& port) {
  for (const plan::ConnectionPlan& connection : plan.connections) {
    if (connection.from != port) continue;
    const auto leads_away = [&](const std::string& end) {
      const bool is_supply = plan::port_named(plan.job.air.ports, end) != nullptr;
      return plan::find_port(plan.job, end) != nullptr && !(is_supply && connection.ends.size() > 1);
    };
    if (std::none_of(connection.ends.begin(), connection.ends.end(), leads_away)) return connection.run();
  }
  return nullptr;
}

/// The run from the air supply that ends there, the part at the bung its last.
const chain::Run* run_into(const Plan& plan, const std::string& port) {
  for (const plan::ConnectionPlan& connection : plan.connections)
    if (!connection.branched && connection.to == port &&
        plan::port_named(plan.job.air.ports, connection.from) != nullptr)
      return connection.run();
  return nullptr;
}

/// The run's drawing begins at 0, 0 and goes to the right: it is turned by quarters and moved to its bung.
Spot placed(const Spot& spot, const Bung& bung) {
  const bool up = bung.heading > 45.0;
  return {bung.face.x + (up ? -spot.y : spot.x), bung.face.y + (up ? spot.x : spot.y)};
}

void each_spot(Shape& shape, const auto& change) {
  if (auto* area = std::get_if<Area>(&shape)) std::for_each(area->outline.begin(), area->outline.end(), change);
  if (auto* stroke = std::get_if<Stroke>(&shape)) std::for_each(stroke->points.begin(), stroke->points.end(), change);
}

/// From where to where it stands along the lid.
Along along_of(std::vector<Shape>& shapes) {
  Along along{1e9, -1e9};
  for (Shape& shape : shapes)
    each_spot(shape, [&](Spot& spot) { along = {std::min(along.from, spot.x), std::max(along.to, spot.x)}; });
  return along;
}

void turn_over(std::vector<Shape>& shapes, double x) {
  for (Shape& shape : shapes) {
    each_spot(shape, [&](Spot& spot) { spot.x = 2.0 * x - spot.x; });
    if (auto* area = std::get_if<Area>(&shape)) std::reverse(area->outline.begin(), area->outline.end());
  }
}

/// Finds each thing on the lid a place where it covers no other.
class Room {
 public:
  Room(std::vector<Along> taken, double lid) : taken_(std::move(taken)), lid_(lid) {}

  /// @param axis   of its bung
  /// @param fixed  the job says where: it may be seen from behind, and stays there
  void place(std::vector<Shape>& shapes, double axis, bool fixed) {
    constexpr double kStep = 0.01;  // m
    const Along own = along_of(shapes);
    const Along behind{2.0 * axis - own.to, 2.0 * axis - own.from};
    for (double away = 0.0; away <= (fixed ? 0.0 : lid_); away += kStep)
      for (const double by : {-away, away}) {
        if (axis + by < kEdge || axis + by > lid_ - kEdge) continue;
        for (const bool over : {false, true})
          if (is_free(over ? behind : own, by)) return put(shapes, axis, by, over);
      }
    put(shapes, axis, 0.0, false);
  }

 private:
  static constexpr double kEdge = 0.03;   // m from a wall to a bung's axis
  static constexpr double kClear = 0.01;  // m

  bool is_free(const Along& own, double by) const {
    return std::none_of(taken_.begin(), taken_.end(), [&](const Along& other) {
      return own.from + by < other.to + kClear && own.to + by > other.from - kClear;
    });
  }
  void put(std::vector<Shape>& shapes, double axis, double by, bool over) {
    if (over) turn_over(shapes, axis);
    for (Shape& shape : shapes) each_spot(shape, [&](Spot& spot) { spot.x += by; });
    taken_.push_back(along_of(shapes));
  }

  std::vector<Along> taken_;
  double lid_;
};

void add_run(const Plan& plan, const chain::Run& run, bool ends_here, const Bung& bung, std::vector<Shape>& shapes) {
  RunPicture picture = run_picture(*plan.catalog, run);
  const Spot end = ends_here ? picture.faces.at(0).at : Spot{};
  const auto turned = [&](const Spot& spot) {
    if (!ends_here) return placed(spot, bung);
    return placed({end.x - spot.x, end.y - spot.y}, bung);
  };
  for (Shape& shape : picture.drawing.shapes) {
    const auto* stroke = std::get_if<Stroke>(&shape);
    if (std::holds_alternative<Label>(shape) || (stroke != nullptr && stroke->line == Line::centre)) continue;
    if (ends_here && stroke != nullptr && stroke->name == "end") continue;  // what it ends at is the bung
    each_spot(shape, [&](Spot& spot) { spot = turned(spot); });
    shapes.push_back(std::move(shape));
  }
}

}  // namespace

std::optional<double> along_lid(const Plan& plan, const std::string& port) {
  for (const plan::LidBung& bung : plan.lid_map.bungs)
    if (bung.port == port && bung.place == plan::Place::lid && bung.at) return in_metres(bung.at->from_left);
  return std::nullopt;
}

std::vector<Shape> devices_on(const Plan& plan, const Along& line) {
  std::vector<Shape> shapes;
  Room room({line}, in_metres(plan.job.reservoir.length));
  // Those that the job gives a place come first; the others find room beside them.
  for (const bool given : {true, false})
    for (const plan::LidBung& one : plan.lid_map.bungs) {
      const plan::JobPort* port = plan::find_port(plan.job, one.port);
      const bool on_lid = one.place == plan::Place::lid;
      const bool fixed = !on_lid || (port != nullptr && port->at);
      const std::optional<Bung> bung = one.port == plan.riser.bung ? std::nullopt : bung_of(plan, one);
      if (fixed != given || !bung) continue;
      std::vector<Shape> own;
      if (const chain::Run* run = run_at(plan, one.port); run != nullptr) add_run(plan, *run, false, *bung, own);
      if (const chain::Run* run = run_into(plan, one.port); run != nullptr) add_run(plan, *run, true, *bung, own);
      own.push_back(Area{"bung " + one.port, bung->outline, Ink::part_edge});
      if (on_lid) room.place(own, bung->face.x, fixed);
      std::move(own.begin(), own.end(), std::back_inserter(shapes));
    }
  return shapes;
}

}  // namespace riserun::report
