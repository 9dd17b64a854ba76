#include "gui/model/canvas/node_prices.h"

#include "plan/run_cost.h"

#include <algorithm>

namespace riserun::gui {

namespace {

using plan::ConnectionPlan;

/// Hose that is cut to a length, of which the list may have more than one piece.
bool is_hose_by_length(const plan::Plan& plan, const ConnectionPlan& connection, const Node& node) {
  return connection.hose_length && !node.cut_length && plan.catalog->part(*node.part).cut_to_length;
}

void price_hoses(const plan::Plan& plan, const ConnectionPlan& connection, std::vector<Node*> hoses) {
  while (!hoses.empty()) {
    const catalog::PartId part = *hoses.front()->part;
    const auto others =
        std::stable_partition(hoses.begin(), hoses.end(), [&](Node* node) { return node->part == part; });
    const auto alike = static_cast<int>(others - hoses.begin());
    int to_buy = plan::pieces_for(plan.list.buy, part, connection.name);
    const int each = (to_buy + plan::pieces_for(plan.list.from_bin, part, connection.name)) / alike;
    for (auto hose = hoses.begin(); hose != others; ++hose) {
      (*hose)->pieces = each;
      (*hose)->bought = std::min(each, to_buy);
      to_buy -= (*hose)->bought;
    }
    hoses.erase(hoses.begin(), others);
  }
}

quantity::Price price_of_plugs(const plan::Plan& plan, const ConnectionPlan& connection, const Node& node) {
  quantity::Price price;
  if (node.kind == NodeKind::part)
    for (const chain::Follower& plug : connection.run()->parts[node.place].plugs())
      if (!plug.from_bin) price += plan.catalog->part(plug.plug).price;
  return price;
}

/// Each hose has its own; what does not divide is the first's, and so is a price that is not known.
void share_clamps(const plan::ClampsBought& clamps, const std::vector<Node*>& hoses) {
  int left = clamps.count;
  quantity::Price rest = clamps.price;
  for (std::size_t i = hoses.size(); i-- > 0;) {
    const int own = i == 0 ? left : clamps.count / static_cast<int>(hoses.size());
    hoses[i]->clamps = own;
    if (i > 0 && clamps.price.known())
      hoses[i]->clamps_price = quantity::Price::from_cents(clamps.price.cents() * own / std::max(1, clamps.count));
    else if (i == 0)
      hoses[i]->clamps_price = rest;
    rest = rest - hoses[i]->clamps_price;
    left -= own;
  }
}

void price_run(const plan::Plan& plan, const ConnectionPlan& connection, const std::vector<Node*>& nodes) {
  std::vector<Node*> hoses;
  std::vector<Node*> clamped;
  for (Node* node : nodes) {
    node->bought = node->from_bin ? 0 : node->pieces;
    if (is_hose_by_length(plan, connection, *node)) hoses.push_back(node);
    if (plan.catalog->part(*node->part).cut_to_length) clamped.push_back(node);
  }
  price_hoses(plan, connection, hoses);
  for (Node* node : nodes)
    node->price = plan.catalog->part(*node->part).price * node->bought + price_of_plugs(plan, connection, *node);
  share_clamps(plan::clamps_bought(plan, connection.name), clamped);
}

}  // namespace

void price_nodes(const plan::Plan& plan, Sketch& sketch) {
  for (std::size_t row = 0; row < plan.connections.size(); ++row) {
    if (plan.connections[row].run() == nullptr) continue;  // what does not go together is not bought
    std::vector<Node*> nodes;
    for (Node& node : sketch.nodes)
      if (node.connection == row && node.part) nodes.push_back(&node);
    price_run(plan, plan.connections[row], nodes);
  }
}

}  // namespace riserun::gui
