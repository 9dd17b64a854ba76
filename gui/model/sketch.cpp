#include "gui/model/sketch.h"

#include <fmt/format.h>

#include <map>

namespace riserun::gui {

namespace {

using catalog::Catalog;
using catalog::MaterialId;
using catalog::Part;
using catalog::PartId;
using catalog::PortTypeId;

constexpr std::size_t kReservoir = 0;
constexpr std::size_t kTable = 1;
constexpr std::size_t kAirSupply = 2;

Node vessel(NodeKind kind, const char* key, const std::vector<plan::JobPort>& ports) {
  Node node;
  node.key = key;
  node.kind = kind;
  for (const plan::JobPort& port : ports) node.pins.push_back({port.name, port.type, 0, true, std::nullopt});
  return node;
}

/// Lays the runs out part by part, and remembers the open end of the run so far.
class Drafter {
 public:
  explicit Drafter(const plan::Plan& plan) : plan_(plan), catalog_(*plan.catalog) {
    sketch_.nodes.push_back(vessel(NodeKind::reservoir, "reservoir", plan.job.reservoir.ports));
    sketch_.nodes.push_back(vessel(NodeKind::table, "table", plan.job.table.ports));
    sketch_.nodes.push_back(vessel(NodeKind::air_supply, "air supply", plan.job.air.ports));
  }

  Sketch run() {
    for (std::size_t row = 0; row < plan_.connections.size(); ++row) add_connection(row);
    return std::move(sketch_);
  }

 private:
  std::optional<PinAt> port_named(const std::string& name) const {
    for (const std::size_t node : {kReservoir, kTable, kAirSupply}) {
      const std::vector<Pin>& pins = sketch_.nodes[node].pins;
      for (std::size_t pin = 0; pin < pins.size(); ++pin)
        if (pins[pin].port == name) return PinAt{node, pin};
    }
    return std::nullopt;
  }

  std::optional<MaterialId> material_at(PinAt at, const plan::ConnectionPlan& connection) const {
    const Node& node = sketch_.nodes[at.node];
    if (node.part) return catalog_.part(*node.part).material_at(node.pins[at.pin].part_port);
    return node.pins[at.pin].port == connection.from ? connection.request.from.material
                                                     : connection.request.to.material;
  }

  void link(PinAt a, PinAt b, std::size_t row, std::size_t joint) {
    const plan::ConnectionPlan& connection = plan_.connections[row];
    Link link;
    link.a = a;
    link.b = b;
    link.connection = row;
    link.service = connection.service;
    sketch_.nodes[a.node].pins[a.pin].spare = false;
    sketch_.nodes[b.node].pins[b.pin].spare = false;
    if (const chain::Chain* chain = connection.chain(); chain != nullptr && joint < chain->joints.size()) {
      link.joint = joint;
      link.seal = catalog_.mating_rules()[chain->joints[joint].rule].seal;
      for (const chain::BuildStep& step : chain->steps) link.closing |= step.closing && step.joint == joint;
      const auto one = material_at(a, connection);
      const auto other = material_at(b, connection);
      if (one && other) link.galvanic = catalog_.galvanic(*one, *other);
    }
    sketch_.links.push_back(std::move(link));
  }

  static Pin pin_of(const Part& part, std::size_t port, bool spare) {
    return {"", part.ports[port].type, port, spare, std::nullopt};
  }

  /// A part of the run, with the ports it is entered and left by first.
  std::size_t add_part(const std::string& connection, const chain::ChainPart& link, std::size_t row,
                       std::size_t place) {
    const Part& part = catalog_.part(link.part);
    Node node;
    node.key = fmt::format("{}/{}/{}", connection, part.id, ++seen_[{row, link.part}]);
    node.part = link.part;
    node.from_bin = link.from_bin;
    node.connection = row;
    node.place = place;
    node.pins = {pin_of(part, link.enter, false), pin_of(part, link.leave, false)};
    std::size_t plug = 0;
    for (std::size_t port = 0; port < part.ports.size(); ++port) {
      if (port == link.enter || port == link.leave) continue;
      node.pins.push_back(pin_of(part, port, true));
      if (plug < link.plugs.size()) node.pins.back().plug = link.plugs[plug++];
    }
    sketch_.nodes.push_back(std::move(node));
    return sketch_.nodes.size() - 1;
  }

  PinAt add_device(const plan::ConnectionPlan& connection, std::size_t row) {
    const Part& part = catalog_.part(*connection.ends_in);
    Node node;
    node.key = connection.name + "/device";
    node.kind = NodeKind::device;
    node.part = *connection.ends_in;
    node.from_bin = connection.ends_in_from_bin;
    node.connection = row;
    node.place = connection.chain() != nullptr ? connection.chain()->parts.size() : 0;
    std::size_t entered = 0;
    while (entered + 1 < part.ports.size() && part.ports[entered].type != connection.request.to.type) ++entered;
    node.pins.push_back(pin_of(part, entered, false));
    for (std::size_t port = 0; port < part.ports.size(); ++port)
      if (port != entered) node.pins.push_back(pin_of(part, port, true));
    sketch_.nodes.push_back(std::move(node));
    return {sketch_.nodes.size() - 1, 0};
  }

  PinAt add_open_end(const plan::ConnectionPlan& connection, std::size_t row) {
    Node node;
    node.key = connection.name + "/open end";
    node.kind = NodeKind::open_end;
    node.connection = row;
    node.pins = {{"", connection.request.from.type, 0, false, std::nullopt},
                 {"", connection.request.to.type, 0, true, std::nullopt}};
    sketch_.nodes.push_back(std::move(node));
    return {sketch_.nodes.size() - 1, 0};
  }

  void add_connection(std::size_t row) {
    const plan::ConnectionPlan& connection = plan_.connections[row];
    const std::optional<PinAt> from = port_named(connection.from);
    if (!from) return;
    PinAt end = *from;
    std::size_t joint = 0;
    if (const chain::Chain* chain = connection.chain()) {
      for (std::size_t place = 0; place < chain->parts.size(); ++place) {
        const std::size_t node = add_part(connection.name, chain->parts[place], row, place);
        link(end, {node, 0}, row, joint++);
        end = {node, 1};
      }
    } else {
      const PinAt gap = add_open_end(connection, row);
      link(end, gap, row, kNoRow);
      end = {gap.node, 1};
    }
    const std::optional<PinAt> to =
        connection.ends_in ? std::optional(add_device(connection, row)) : port_named(connection.to);
    if (to) link(end, *to, row, connection.chain() != nullptr ? joint : kNoRow);
  }

  const plan::Plan& plan_;
  const Catalog& catalog_;
  Sketch sketch_;
  std::map<std::pair<std::size_t, PartId>, int> seen_;  // how often a connection has had the part so far
};

}  // namespace

Sketch sketch_of(const plan::Plan& plan) { return Drafter(plan).run(); }

}  // namespace riserun::gui
