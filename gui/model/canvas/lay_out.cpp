#include "gui/model/canvas/lay_out.h"

#include "gui/model/canvas/placing.h"

#include <algorithm>

namespace riserun::gui {

std::vector<report::RunPicture> run_pictures(const plan::Plan& plan) {
  std::vector<report::RunPicture> pictures;
  for (const plan::ConnectionPlan& connection : plan.connections)
    pictures.push_back(connection.run() != nullptr ? report::run_picture(*plan.catalog, *connection.run())
                                                   : report::RunPicture{});
  return pictures;
}

std::string moved_as(const plan::Plan& plan, const Node& node) {
  if (node.kind == NodeKind::air_supply) return node.key;
  const std::string connection = name_of_connection(plan, node.connection);
  return connection.empty() ? "" : "run " + connection;
}

Layout lay_out(const LayoutWish& wish) {
  if (wish.scale) return placed_at(wish, *wish.scale);
  // The largest scale at which all of it fits without being shrunk; else the one that shrinks its letters least.
  Layout best;
  float most = 0.0F;
  for (const double scale : {1300.0, 1100.0, 900.0, 750.0, 600.0}) {
    Layout tried = placed_at(wish, scale);
    const float zoom = std::min(wish.room.width / std::max(1.0F, tried.all.size.width),
                                wish.room.height / std::max(1.0F, tried.all.size.height));
    if (std::min(zoom, 1.0F) <= most + 1e-4F) continue;
    most = std::min(zoom, 1.0F);
    best = std::move(tried);
    if (zoom >= 1.0F) break;
  }
  return best;
}

}  // namespace riserun::gui
