#include "gui/model/canvas/sketch.h"

namespace riserun::gui {

const plan::ConnectionPlan* connection_at(const plan::Plan& plan, std::size_t connection) {
  return connection < plan.connections.size() ? &plan.connections[connection] : nullptr;
}

std::string name_of_connection(const plan::Plan& plan, std::size_t connection) {
  const plan::ConnectionPlan* at = connection_at(plan, connection);
  return at != nullptr ? at->name : "";
}

}  // namespace riserun::gui
