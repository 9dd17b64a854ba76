#include "gui/model/canvas/sketch.h"

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
    for (std::size_t row = 0; row < plan_.manifolds.size(); ++row) add_manifold(row);
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
  void tell_joint(Link& link, std::size_t row, const chain::ChainJoint& joint,
                  const std::vector<chain::BuildStep>& steps, std::optional<MaterialId> asked_at_a,
                  std::optional<MaterialId> asked_at_b) const {
    link.joint = row;
    link.seal = catalog_.mating_rules()[joint.rule].seal;
    for (const chain::BuildStep& step : steps) link.closing |= step.closing && step.joint == row;
    const auto one = material_at(link.a, asked_at_a);
    const auto other = material_at(link.b, asked_at_b);
    if (one && other) link.galvanic = catalog_.galvanic(*one, *other);
  }

  void link(PinAt a, PinAt b, std::size_t row, std::size_t joint) {
    const plan::ConnectionPlan& connection = plan_.connections[row];
    Link& link = add_link(a, b, row, connection.service);
    if (const chain::Chain* chain = connection.chain(); chain != nullptr && joint < chain->joints.size())
      tell_joint(link, joint, chain->joints[joint], chain->steps, connection.request.from.material,
                 connection.request.to.material);
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
    node.cut_length = link.cut_length;
    node.pieces = link.pieces;
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

  // ---- connections with several far ends
  const plan::JobConnection* asked_as(const std::string& name) const {
    for (const plan::JobConnection& connection : plan_.job.connections)
      if (connection.name == name) return &connection;
    return nullptr;
  }

  /// The port that a branch leads to; nullopt: it ends in a device.
  std::optional<PinAt> port_of_branch(const plan::ManifoldPlan& manifold, std::size_t target) const {
    const plan::JobConnection* asked = asked_as(manifold.name);
    if (asked == nullptr || target >= asked->branches.size() || asked->branches[target].to.empty()) return std::nullopt;
    return port_named(asked->branches[target].to);
  }

  std::size_t add_branching_part(const plan::ManifoldPlan& manifold, std::size_t row, std::size_t place) {
    const chain::AssemblyPart& made = manifold.assembly()->parts[place];
    const Part& part = catalog_.part(made.part);
    Node node;
    node.key = fmt::format("{}/{}/{}", manifold.name, part.id, ++seen_[{row, made.part}]);
    node.part = made.part;
    node.from_bin = made.from_bin;
    node.connection = row;
    node.place = place;
    node.pins = {pin_of(part, made.enter, false)};
    using What = chain::PortFollower::What;
    for (const bool plugged : {false, true}) {
      for (std::size_t port = 0; port < made.ports.size(); ++port) {
        const chain::PortFollower& follower = made.ports[port];
        if (follower.what == What::inner || (follower.what == What::plug) != plugged) continue;
        node.pins.push_back(pin_of(part, port, plugged));
        if (plugged) node.pins.back().plug = follower.plug;
      }
    }
    sketch_.nodes.push_back(std::move(node));
    return sketch_.nodes.size() - 1;
  }

  PinAt add_branch_end(const plan::ManifoldPlan& manifold, std::size_t row, std::size_t target) {
    const chain::AssemblyEnd& end = manifold.assembly()->ends[target];
    if (!end.device) return port_of_branch(manifold, target).value_or(PinAt{kReservoir, 0});
    const Part& part = catalog_.part(*end.device);
    Node node;
    node.key = fmt::format("{}/device/{}", manifold.name, manifold.to[target]);
    node.kind = NodeKind::device;
    node.part = *end.device;
    node.from_bin = end.from_bin;
    node.connection = row;
    node.place = target;
    node.pins = {pin_of(part, end.device_port, false)};
    for (std::size_t port = 0; port < part.ports.size(); ++port)
      if (port != end.device_port) node.pins.push_back(pin_of(part, port, true));
    sketch_.nodes.push_back(std::move(node));
    return {sketch_.nodes.size() - 1, 0};
  }

  PinAt pin_for_port(std::size_t node, std::size_t part_port) const {
    const std::vector<Pin>& pins = sketch_.nodes[node].pins;
    std::size_t pin = 0;
    while (pin + 1 < pins.size() && pins[pin].part_port != part_port) ++pin;
    return {node, pin};
  }

  void add_assembly(const plan::ManifoldPlan& manifold, std::size_t row, PinAt base) {
    const chain::Assembly& assembly = *manifold.assembly();
    const std::size_t first = sketch_.nodes.size();  // nodes of the parts stand in their order
    for (std::size_t place = 0; place < assembly.parts.size(); ++place) add_branching_part(manifold, row, place);
    for (std::size_t i = 0; i < assembly.joints.size(); ++i) {
      const chain::AssemblyJoint& joint = assembly.joints[i];
      const PinAt a = joint.inner == chain::kBase ? base : pin_for_port(first + joint.inner, joint.inner_port);
      const PinAt b = joint.to_target ? add_branch_end(manifold, row, joint.outer) : PinAt{first + joint.outer, 0};
      const auto asked = joint.to_target ? assembly.ends[joint.outer].port.material : std::nullopt;
      tell_joint(add_link(a, b, row, manifold.service), i, joint.joint, assembly.steps,
                 manifold.request.rules.from.material, asked);
    }
    for (std::size_t target = 0; target < manifold.to.size(); ++target)
      if (manifold.request.branch(target).flow == chain::BranchFlow::to_base) tell_feed(assembly, target, row);
  }

  /// From the branch's end back to the base.
  void tell_feed(const chain::Assembly& assembly, std::size_t target, std::size_t row) {
    std::size_t outer = target;
    bool at_target = true;
    for (std::size_t i = assembly.joints.size(); i-- > 0;) {
      const chain::AssemblyJoint& joint = assembly.joints[i];
      if (joint.to_target != at_target || joint.outer != outer) continue;
      for (Link& link : sketch_.links) link.towards_a |= link.connection == row && link.joint == i;
      outer = joint.inner;
      at_target = false;
    }
  }

  /// Nothing can be put together: one thing in the place of its parts, and what it would lead to.
  void add_gap(const plan::ManifoldPlan& manifold, std::size_t row, PinAt base) {
    Node node;
    node.key = manifold.name + "/open end";
    node.kind = NodeKind::open_end;
    node.connection = row;
    node.pins = {{"", manifold.request.rules.from.type, 0, false, std::nullopt}};
    std::vector<PinAt> ports;
    for (std::size_t target = 0; target < manifold.to.size(); ++target) {
      const auto port = port_of_branch(manifold, target);
      if (!port) continue;
      ports.push_back(*port);
      node.pins.push_back({"", sketch_.nodes[port->node].pins[port->pin].type, 0, false, std::nullopt});
    }
    sketch_.nodes.push_back(std::move(node));
    const std::size_t gap = sketch_.nodes.size() - 1;
    add_link(base, {gap, 0}, row, manifold.service);
    for (std::size_t i = 0; i < ports.size(); ++i) add_link({gap, i + 1}, ports[i], row, manifold.service);
  }

  void add_manifold(std::size_t manifold_row) {
    const plan::ManifoldPlan& manifold = plan_.manifolds[manifold_row];
    const std::optional<PinAt> base = port_named(manifold.from);
    if (!base) return;
    const std::size_t row = plan_.connections.size() + manifold_row;
    manifold.assembly() != nullptr ? add_assembly(manifold, row, *base) : add_gap(manifold, row, *base);
  }

  const plan::Plan& plan_;
  const Catalog& catalog_;
  Sketch sketch_;
  std::map<std::pair<std::size_t, PartId>, int> seen_;  // how often a connection has had the part so far
};

}  // namespace

Sketch sketch_of(const plan::Plan& plan) { return Drafter(plan).run(); }

const plan::ManifoldPlan* manifold_of(const plan::Plan& plan, std::size_t connection) {
  const std::size_t first = plan.connections.size();
  return connection >= first && connection - first < plan.manifolds.size() ? &plan.manifolds[connection - first]
                                                                           : nullptr;
}

std::string name_of_connection(const plan::Plan& plan, std::size_t connection) {
  if (connection < plan.connections.size()) return plan.connections[connection].name;
  const plan::ManifoldPlan* manifold = manifold_of(plan, connection);
  return manifold != nullptr ? manifold->name : "";
}

}  // namespace riserun::gui
