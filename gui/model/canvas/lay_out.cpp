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

namespace {

constexpr float kHardly = 0.95F;

struct Tried {
  Layout layout;
  float zoom = 0.0F;  // that fits it into the room, 1 at most
};

/// The largest scale at which all of it fits without being shrunk; else the largest of those that shrink its letters
/// least or hardly more: parts that can be told apart are worth that.
/// @param hardly  of the most that any scale fits: what still counts as that
Tried largest(const LayoutWish& wish, float hardly) {
  std::vector<Tried> tries;
  float most = 0.0F;
  // Rows are as wide as their words, whatever the parts' scale.
  const bool in_rows = wish.plan.connections.size() > kMostStanding;
  const std::vector<double> scales =
      in_rows ? std::vector{600.0} : std::vector{1300.0, 1100.0, 900.0, 750.0, 600.0, 480.0};
  for (const double scale : scales) {
    Layout tried = placed_at(wish, scale);
    const float zoom = std::min({1.0F, wish.room.width / std::max(1.0F, tried.all.size.width),
                                 wish.room.height / std::max(1.0F, tried.all.size.height)});
    tries.push_back({std::move(tried), zoom});
    most = std::max(most, zoom);
    if (zoom >= 1.0F) break;
  }
  const auto good = [&](const Tried& tried) { return tried.zoom >= hardly * most; };
  return std::move(*std::find_if(tries.begin(), tries.end(), good));
}

/// In a large room letters may grow, too, beside parts of a fair size; none: there is no room for that.
std::optional<Layout> with_larger_letters(const LayoutWish& wish) {
  constexpr double kFair = 750.0;
  for (const float larger : {16.0F / 13.0F, 15.0F / 13.0F}) {
    const LayoutWish smaller{
        wish.plan,  wish.sketch, wish.pictures, wish.words, {wish.room.width / larger, wish.room.height / larger},
        wish.moved, {},          false};
    Tried tried = largest(smaller, 1.0F);
    if (tried.zoom >= 1.0F && tried.layout.scale >= kFair) return std::move(tried.layout);
  }
  return std::nullopt;
}

}  // namespace

Layout lay_out(const LayoutWish& wish) {
  WordSizes names = wish.words;
  names.beside = names.brief;
  const LayoutWish brief{wish.plan, wish.sketch, wish.pictures, names, wish.room, wish.moved, wish.scale, true};
  const auto as_brief = [](Layout layout) {
    layout.brief = true;
    return layout;
  };
  if (wish.scale) return wish.brief ? as_brief(placed_at(brief, *wish.scale)) : placed_at(wish, *wish.scale);
  if (std::optional<Layout> roomy = with_larger_letters(wish)) return std::move(*roomy);
  Tried all = largest(wish, kHardly);
  if (all.zoom >= kLeastLegible || all.layout.in_rows) return std::move(all.layout);
  Tried less = largest(brief, kHardly);
  return less.zoom > all.zoom ? as_brief(std::move(less.layout)) : std::move(all.layout);
}

}  // namespace riserun::gui
