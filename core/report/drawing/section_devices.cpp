#include "report/drawing/section_devices.h"

#include "report/drawing/run_drawing.h"

#include <algorithm>

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
  const plan::JobPort* port = plan::find_port(plan.job, bung.port);
  const double y = port != nullptr && port->face_height ? in_metres(*port->face_height) : kLow * in_metres(box.height);
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

/// The run's drawing begins at 0, 0 and goes to the right: it is turned by quarters and moved to its bung.
Spot placed(const Spot& spot, const Bung& bung) {
  const bool up = bung.heading > 45.0;
  return {bung.face.x + (up ? -spot.y : spot.x), bung.face.y + (up ? spot.x : spot.y)};
}

void add_run(const Plan& plan, const chain::Run& run, const Bung& bung, std::vector<Shape>& shapes) {
  for (Shape& shape : run_picture(*plan.catalog, run).drawing.shapes) {
    if (auto* area = std::get_if<Area>(&shape)) {
      for (Spot& spot : area->outline) spot = placed(spot, bung);
      shapes.push_back(std::move(shape));
    } else if (auto* stroke = std::get_if<Stroke>(&shape)) {
      if (stroke->line == Line::centre) continue;
      for (Spot& spot : stroke->points) spot = placed(spot, bung);
      shapes.push_back(std::move(shape));
    }
  }
}

}  // namespace

std::optional<double> along_lid(const Plan& plan, const std::string& port) {
  for (const plan::LidBung& bung : plan.lid_map.bungs)
    if (bung.port == port && bung.place == plan::Place::lid && bung.at) return in_metres(bung.at->from_left);
  return std::nullopt;
}

std::vector<Shape> devices_on(const Plan& plan) {
  std::vector<Shape> shapes;
  for (const plan::LidBung& one : plan.lid_map.bungs) {
    if (one.port == plan.riser.bung) continue;
    const std::optional<Bung> bung = bung_of(plan, one);
    if (!bung) continue;
    if (const chain::Run* run = run_at(plan, one.port); run != nullptr) add_run(plan, *run, *bung, shapes);
    shapes.push_back(Area{"bung " + one.port, bung->outline, Ink::part_edge});
  }
  return shapes;
}

}  // namespace riserun::report
