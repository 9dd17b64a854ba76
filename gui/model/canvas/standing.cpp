#include "gui/model/canvas/pipe_way.h"
#include "gui/model/canvas/placing.h"
#include "gui/model/canvas/table_side.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::gui {

namespace {

constexpr double kRadian = std::numbers::pi / 180.0;

std::optional<plan::Place> place_of(const plan::Plan& plan, const std::string& port) {
  const plan::JobPort* found = plan::find_port(plan.job, port);
  return found == nullptr ? std::nullopt : found->place;
}

/// Where a pipe that goes on upwards may turn to the left without crossing the run's own words, or the runs on its way.
float clear_of_words(const Layout& layout, const RunBlock& block, const PlacedPin& face, bool over_own) {
  if (face.direction.y >= -0.5F) return face.where.y;
  float y = over_own ? std::min(face.where.y, block.all.corner.y) : face.where.y;
  for (const RunBlock& other : layout.runs)
    if (other.heading != Heading::right && other.all.corner.x < face.where.x && &other != &block)
      y = std::min(y, other.all.corner.y);
  return y;
}

}  // namespace

Standing standing_of(const plan::Plan& plan, const Sketch& sketch, std::size_t connection) {
  Standing standing;
  const Link* first = nullptr;
  bool lid = false;
  for (const Link& link : sketch.links) {
    if (link.connection != connection) continue;
    if (first == nullptr) first = &link;
    for (const PinAt& at : {link.a, link.b}) {
      standing.air |= at.node == kAirSupply;
      standing.reaches_table |= at.node == kTable;
      lid |= at.node == kReservoir &&
             place_of(plan, sketch.nodes[kReservoir].pins[at.pin].port).value_or(plan::Place::lid) == plan::Place::lid;
    }
  }
  if (first == nullptr) return standing;
  const std::size_t base = first->a.node;
  if (base >= kVessels) return standing;
  const std::string& port = sketch.nodes[base].pins[first->a.pin].port;
  if (base == kAirSupply) {
    // Regulator and check valve stand at the tank, as in the shop; only the hose leads to the compressor.
    standing.hangs_on_lid = lid;
    standing.zone = lid ? Zone::column : Zone::air;
    standing.heading = lid ? Heading::down : Heading::up;
  } else if (base == kTable) {
    const bool floor = place_of(plan, port).value_or(plan::Place::floor) == plan::Place::floor;
    standing.zone = floor ? Zone::column : Zone::shelf;
    standing.heading = floor ? Heading::down : Heading::right;
  } else if (place_of(plan, port).value_or(plan::Place::lid) != plan::Place::lid) {
    standing.zone = Zone::row;
    standing.heading = Heading::right;
  }
  standing.reaches_table &= lid;
  return standing;
}

bool leads_off_to_supply(const LayoutWish& wish, std::size_t connection, const Standing& standing) {
  const chain::Run* run = wish.plan.connections[connection].run();
  if (run == nullptr || !standing.air || standing.zone != Zone::column || standing.hangs_on_lid) return false;
  double right = 0.0;
  for (const Link& link : wish.sketch.links) {
    if (link.connection != connection || link.b.node != kAirSupply || link.joint == kNoRow) continue;
    // Of an upright run the picture's left is the canvas's left, too; sin is above zero to the left.
    const double angle = wish.pictures[connection].faces[run->joints[link.joint].outer].heading * kRadian;
    right -= (standing.heading == Heading::up ? 1.0 : -1.0) * std::sin(angle);
  }
  return right > 0.5;
}

bool is_on_side(const LayoutWish& wish, std::size_t vessel, std::size_t pin) {
  if (vessel == kAirSupply) return false;
  const plan::Place usual = vessel == kReservoir ? plan::Place::lid : plan::Place::floor;
  return place_of(wish.plan, wish.sketch.nodes[vessel].pins[pin].port).value_or(usual) != usual;
}

bool leads_outside(const LayoutWish& wish, std::size_t connection) {
  const Standing standing = standing_of(wish.plan, wish.sketch, connection);
  return standing.zone == Zone::column && standing.heading == Heading::up &&
         std::any_of(wish.sketch.links.begin(), wish.sketch.links.end(), [&](const Link& link) {
           return link.connection == connection && link.b.node == kTable && is_on_side(wish, kTable, link.b.pin);
         });
}

const Link* link_to_lid(const LayoutWish& wish, std::size_t connection) {
  for (const Link& link : wish.sketch.links)
    for (const PinAt* at : {&link.a, &link.b})
      if (link.connection == connection && at->node == kReservoir && !is_on_side(wish, kReservoir, at->pin))
        return &link;
  return nullptr;
}

float share_over_floor(const plan::Plan& plan, std::size_t connection) {
  constexpr float kLow = 0.12F;
  const plan::JobPort* port = plan::find_port(plan.job, plan.connections[connection].from);
  const Length height = plan.job.reservoir.height;
  if (port == nullptr || !port->face_height || height <= Length{}) return kLow;
  return std::clamp(static_cast<float>(static_cast<double>(*port->face_height / height)), 0.0F, 1.0F);
}

std::vector<float> outlets_of(const Box& supply, const std::vector<const PlacedPin*>& wanted) {
  std::vector<double> places;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(wanted.size());
    const double beyond = wanted[i] == nullptr ? 0.0 : wanted[i]->where.x - supply.right();
    places.push_back(wanted[i] == nullptr ? supply.corner.x + share * supply.size.width
                     : beyond > 0.0       ? supply.middle().x - 0.01 * beyond
                                          : wanted[i]->where.x);
  }
  const double most = supply.size.width - 2.0F * kShoulder;
  const double pitch = std::min<double>(kOutletPitch, most / std::max(1.0, static_cast<double>(wanted.size()) - 1.0));
  const auto spread = report::spread(places, pitch, supply.corner.x + kShoulder, supply.right() - kShoulder);
  return {spread.begin(), spread.end()};
}

const PlacedPin& face_of(const plan::Plan& plan, const Layout& layout, const Link& link) {
  const RunBlock& block = layout.runs[link.connection];
  const chain::Run* run = plan.connections[link.connection].run();
  if (block.faces.empty()) return block.base;
  return block.faces[run != nullptr && link.joint != kNoRow ? run->joints[link.joint].outer : 0];
}

void hand_over(const LayoutWish& wish, Layout& layout) {
  const Sketch& sketch = wish.sketch;
  layout.words.resize(sketch.nodes.size());
  for (const RunBlock& block : layout.runs) {
    for (const PlacedNode& node : block.nodes) {
      layout.nodes[node.node] = node.box;
      layout.words[node.node] = node.words;
      layout.pins[node.node] = node.pins;
    }
  }
  layout.ways.resize(sketch.links.size());
  layout.all = layout.nodes[kReservoir];
  for (std::size_t vessel = 0; vessel < kVessels; ++vessel)
    if (layout.nodes[vessel].size.width > 0.0F) layout.all = around(layout.all, layout.nodes[vessel]);
  for (const RunBlock& block : layout.runs) layout.all = around(layout.all, block.all);
  for (const auto& [pin, pipe] : layout.over_rim)
    for (const Point& point : pipe) layout.all = around(layout.all, between(point.x, point.y - 9.0F, point.x, point.y));
  if (layout.in_rows) return;
  int lane = 0;
  for (std::size_t i = 0; i < sketch.links.size(); ++i) {
    const Link& link = sketch.links[i];
    const bool to_a = link.a.node < kVessels;
    const bool to_b = link.b.node < kVessels;
    if (!to_a && !to_b) continue;
    PlacedPin a = to_a ? layout.pins[link.a.node][link.a.pin] : face_of(wish.plan, layout, link);
    PlacedPin b = to_b ? layout.pins[link.b.node][link.b.pin] : layout.runs[link.connection].base;
    const RunBlock& block = layout.runs[link.connection];
    const bool outside = link.b.node == kTable && leads_outside(wish, link.connection);
    const bool beside = std::abs(a.where.x - b.where.x) > 1.0F;
    const Point from = a.where;
    const Point to = b.where;
    if (!to_a && beside) a.where.y = clear_of_words(layout, block, a, true);
    if (!to_b && beside) b.where.y = clear_of_words(layout, block, b, false);
    layout.ways[i] = outside ? way_outside(layout.nodes[kTable], from, to) : pipe_way(a, b, beside ? lane++ % 6 : 0);
    if (!outside && !(from == a.where)) layout.ways[i].insert(layout.ways[i].begin(), from);
    if (!(to == b.where)) layout.ways[i].push_back(to);
    for (const Point& point : layout.ways[i]) layout.all = around(layout.all, {point, {}});
  }
}

}  // namespace riserun::gui
