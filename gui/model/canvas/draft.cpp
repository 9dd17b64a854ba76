#include "gui/model/canvas/draft.h"

#include "gui/model/canvas/node_prices.h"

#include <fmt/format.h>

#include <map>

namespace riserun::gui {

namespace {

using catalog::Catalog;
using catalog::MaterialId;
using catalog::Part;
using catalog::PartId;
using catalog::PortTypeId;

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

  /// Of a part's end; of a vessel's port what the request knows of it.
  std::optional<MaterialId> material_at(PinAt at, std::optional<MaterialId> asked) const {
    const Node& node = sketch_.nodes[at.node];
    return node.part ? std::optional(catalog_.part(*node.part).material_at(node.pins[at.pin].part_port)) : asked;
  }

  Link& add_link(PinAt a, PinAt b, std::size_t row, plan::Service service) {
    sketch_.nodes[a.node].pins[a.pin].spare = false;
    sketch_.nodes[b.node].pins[b.pin].spare = false;
    Link link;
    link.a = a;
    link.b = b;
    link.connection = row;
    link.service = service;
    sketch_.links.push_back(std::move(link));
    return sketch_.links.back();
  }

  /// What is known of the joint that a link is.
  void tell_joint(Link& link, const plan::ConnectionPlan& connection, std::size_t row) const {
    const chain::RunJoint& joint = connection.run()->joints[row];
    link.joint = row;
    link.seal = catalog_.mating_rules()[joint.rule].seal;
    for (const chain::BuildStep& step : connection.run()->steps) link.closing |= step.closing && step.joint == row;
    const auto one = material_at(link.a, connection.request.from.material);
    const auto other =
        material_at(link.b, joint.to_end ? connection.run()->ends[joint.outer].port.material : std::nullopt);
    if (one && other) link.galvanic = catalog_.galvanic(*one, *other);
  }

  static Pin pin_of(const Part& part, std::size_t port, bool spare) {
    return {"", part.ports[port].type, port, spare, std::nullopt};
  }

  /// A part of the run: the port that it is entered by, those that lead on, then the spare ones.
  void add_part(const plan::ConnectionPlan& connection, std::size_t row, std::size_t place) {
    const chain::RunPart& made = connection.run()->parts[place];
    const Part& part = catalog_.part(made.part);
    Node node;
    node.key = fmt::format("{}/{}/{}", connection.name, part.id, ++seen_[{row, made.part}]);
    node.part = made.part;
    node.from_bin = made.from_bin;
    node.connection = row;
    node.place = place;
    node.cut_length = made.cut_length;
    node.pieces = made.pieces;
    node.pins = {pin_of(part, made.enter, false)};
    for (const bool plugged : {false, true}) {
      for (std::size_t port = 0; port < made.ports.size(); ++port) {
        const chain::Follower& follower = made.ports[port];
        if (plugged ? follower.what != chain::Follower::What::plug : !follower.leads_on()) continue;
        node.pins.push_back(pin_of(part, port, plugged));
        if (plugged) node.pins.back().plug = follower.plug;
      }
    }
    sketch_.nodes.push_back(std::move(node));
  }

  PinAt add_device(const plan::ConnectionPlan& connection, std::size_t row, std::size_t end, PartId device,
                   std::size_t entered, bool from_bin) {
    const Part& part = catalog_.part(device);
    Node node;
    node.key = connection.branched ? fmt::format("{}/device/{}", connection.name, connection.ends[end])
                                   : connection.name + "/device";
    node.kind = NodeKind::device;
    node.part = device;
    node.from_bin = from_bin;
    node.connection = row;
    node.place = connection.branched ? end : connection.run() == nullptr ? 0 : connection.run()->parts.size();
    node.pins.push_back(pin_of(part, entered, false));
    for (std::size_t port = 0; port < part.ports.size(); ++port)
      if (port != entered) node.pins.push_back(pin_of(part, port, true));
    sketch_.nodes.push_back(std::move(node));
    return {sketch_.nodes.size() - 1, 0};
  }

  const plan::JobConnection* asked_as(const std::string& name) const {
    for (const plan::JobConnection& connection : plan_.job.connections)
      if (connection.name == name) return &connection;
    return nullptr;
  }

  /// The vessel's port that an end is; nullopt: it is a device.
  std::optional<PinAt> port_of_end(const plan::ConnectionPlan& connection, std::size_t end) const {
    if (!connection.branched) return connection.ends_in ? std::nullopt : port_named(connection.to);
    const plan::JobConnection* asked = asked_as(connection.name);
    if (asked == nullptr || end >= asked->branches.size() || asked->branches[end].to.empty()) return std::nullopt;
    return port_named(asked->branches[end].to);
  }

  std::optional<PinAt> add_end(const plan::ConnectionPlan& connection, std::size_t row, std::size_t end) {
    const chain::RunEnd& made = connection.run()->ends[end];
    if (made.device) return add_device(connection, row, end, *made.device, made.device_port, made.from_bin);
    return port_of_end(connection, end);
  }

  PinAt pin_for_port(std::size_t node, std::size_t part_port) const {
    const std::vector<Pin>& pins = sketch_.nodes[node].pins;
    std::size_t pin = 0;
    while (pin + 1 < pins.size() && pins[pin].part_port != part_port) ++pin;
    return {node, pin};
  }

  void add_run(const plan::ConnectionPlan& connection, std::size_t row, PinAt base) {
    const chain::Run& run = *connection.run();
    const std::size_t first = sketch_.nodes.size();  // nodes of the parts stand in their order
    for (std::size_t place = 0; place < run.parts.size(); ++place) add_part(connection, row, place);
    for (std::size_t i = 0; i < run.joints.size(); ++i) {
      const chain::RunJoint& joint = run.joints[i];
      const PinAt a = joint.inner == chain::kBase ? base : pin_for_port(first + joint.inner, joint.inner_port);
      const std::optional<PinAt> b =
          joint.to_end ? add_end(connection, row, joint.outer) : PinAt{first + joint.outer, 0};
      if (b) tell_joint(add_link(a, *b, row, connection.service), connection, i);
    }
    for (std::size_t end = 0; end < run.ends.size(); ++end)
      if (run.ends[end].feeds) tell_feed(run, end, row);
  }

  /// From the end back to the base.
  void tell_feed(const chain::Run& run, std::size_t end, std::size_t row) {
    std::size_t outer = end;
    bool at_end = true;
    for (std::size_t i = run.joints.size(); i-- > 0;) {
      const chain::RunJoint& joint = run.joints[i];
      if (joint.to_end != at_end || joint.outer != outer) continue;
      for (Link& link : sketch_.links) link.towards_a |= link.connection == row && link.joint == i;
      outer = joint.inner;
      at_end = false;
    }
  }

  /// Nothing can be put together: one thing in the place of its parts, and what it would lead to.
  void add_gap(const plan::ConnectionPlan& connection, std::size_t row, PinAt base) {
    Node node;
    node.key = connection.name + "/open end";
    node.kind = NodeKind::open_end;
    node.connection = row;
    node.pins = {{"", connection.request.from.type, 0, false, std::nullopt}};
    std::vector<PinAt> ends;
    for (std::size_t end = 0; end < connection.ends.size(); ++end) {
      const auto port = port_of_end(connection, end);
      if (connection.branched && !port) continue;
      const PortTypeId type =
          connection.branched ? sketch_.nodes[port->node].pins[port->pin].type : connection.request.to.type;
      node.pins.push_back({"", type, 0, !connection.branched, std::nullopt});
      if (port) ends.push_back(*port);
    }
    sketch_.nodes.push_back(std::move(node));
    const std::size_t gap = sketch_.nodes.size() - 1;
    add_link(base, {gap, 0}, row, connection.service);
    if (connection.ends_in) {
      const Part& part = catalog_.part(*connection.ends_in);
      std::size_t entered = 0;
      while (entered + 1 < part.ports.size() && part.ports[entered].type != connection.request.to.type) ++entered;
      ends.push_back(add_device(connection, row, 0, *connection.ends_in, entered, false));
    }
    for (std::size_t i = 0; i < ends.size(); ++i) add_link({gap, i + 1}, ends[i], row, connection.service);
  }

  void add_connection(std::size_t row) {
    const plan::ConnectionPlan& connection = plan_.connections[row];
    const std::optional<PinAt> base = port_named(connection.from);
    if (!base) return;
    connection.run() != nullptr ? add_run(connection, row, *base) : add_gap(connection, row, *base);
  }

  const plan::Plan& plan_;
  const Catalog& catalog_;
  Sketch sketch_;
  std::map<std::pair<std::size_t, PartId>, int> seen_;  // how often a connection has had the part so far
};

}  // namespace

Sketch sketch_of(const plan::Plan& plan) {
  Sketch sketch = Drafter(plan).run();
  price_nodes(plan, sketch);
  return sketch;
}

}  // namespace riserun::gui
