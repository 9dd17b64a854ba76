#include "gui/model/canvas/table_side.h"

#include "report/drawing/inlet.h"

#include <algorithm>

namespace riserun::gui {

namespace {

constexpr float kPipe = 9.0F;        // thickness of a pipe as drawn
constexpr float kLeastOver = 14.0F;  // of a pipe's axis over the rim
constexpr float kInside = 30.0F;     // of its other leg from the wall
constexpr float kOut = 26.0F;        // of the line from the wall

/// Points a metre of the table's height.
float up_of(const plan::Plan& plan, const Box& table) {
  return table.size.height / std::max(0.001F, static_cast<float>(in_metres(plan.transfer.system.table.rim)));
}

}  // namespace

float height_at_side(const plan::Plan& plan, const Box& table, const std::string& name) {
  const plan::JobPort* port = plan::port_named(plan.job.table.ports, name);
  if (port == nullptr) return table.size.height / 2.0F;
  const report::Inlet inlet = report::inlet_at(plan, *port);
  const float height = static_cast<float>(inlet.height) * up_of(plan, table);
  return inlet.place == plan::Place::over_rim ? std::max(height, table.size.height + kLeastOver) : height;
}

std::vector<Point> pipe_over_rim(const plan::Plan& plan, const Box& table, const std::string& name) {
  const plan::JobPort* port = plan::port_named(plan.job.table.ports, name);
  if (port == nullptr || port->place != plan::Place::over_rim) return {};
  const float y = table.bottom() - height_at_side(plan, table, name);
  const float mouth = table.bottom() - static_cast<float>(report::inlet_at(plan, *port).mouth) * up_of(plan, table);
  const float down = table.right() - kInside;
  return {{table.right() + kPipe, y}, {down, y}, {down, std::clamp(mouth, y + kPipe, table.bottom() - 3.0F)}};
}

std::vector<Point> way_outside(const Box& table, const Point& face, const Point& inlet) {
  const float level = std::min(face.y, table.bottom() + kUnderTable / 2.0F);
  const float out = std::max(table.right(), inlet.x) + kOut;
  return {face, {face.x, level}, {out, level}, {out, inlet.y}, inlet};
}

}  // namespace riserun::gui
