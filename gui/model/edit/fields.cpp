#include "gui/model/edit/fields.h"

#include "quantity/read.h"

#include <fmt/format.h>

namespace riserun::gui {

namespace {

using quantity::UnitSystem;
using enum FieldKind;
using Words = std::vector<std::string>;

const Words kFreedoms = {"fixed", "sliding", "spinning", "loose"};
const Words kOrders = {"parts", "price", "loss", "length", "bin"};
const Words kBranchFreedoms = {"fixed", "loose"};
const Words kBranchOrders = {"parts", "price", "bin"};
const Words kServices = {"water", "air"};

/// Gathers the fields of one group; a key is its own label unless another is given.
class Group {
 public:
  Group(std::string title, JobPath at) { group_ = {std::move(title), std::move(at), {}}; }

  Group& add(std::string key, FieldKind kind, Words choices = {}) {
    JobPath at = group_.at / key;
    group_.fields.push_back({std::move(at), std::move(key), kind, std::move(choices), false});
    return *this;
  }
  Group& below(const std::string& map, const std::string& key, FieldKind kind, Words choices = {}) {
    group_.fields.push_back({group_.at / map / key, map + " " + key, kind, std::move(choices), false});
    return *this;
  }
  Group& needed() {
    group_.fields.back().needed = true;
    return *this;
  }
  FieldGroup done() { return std::move(group_); }

 private:
  FieldGroup group_;
};

Words names_of(const std::vector<plan::JobPort>& ports) {
  Words names;
  for (const plan::JobPort& port : ports) names.push_back(port.name);
  return names;
}

Words all_port_names(const plan::Job& job) {
  Words names;
  for (const auto* ports : {&job.reservoir.ports, &job.table.ports, &job.air.ports})
    for (const plan::JobPort& port : *ports) names.push_back(port.name);
  return names;
}

FieldGroup reservoir_fields() {
  return Group("reservoir", at("reservoir"))
      .below("inside", "length", length)
      .needed()
      .below("inside", "width", length)
      .needed()
      .below("inside", "height", length)
      .needed()
      .add("sheet", sheet)
      .needed()
      .add("yield", stress)
      .add("ultimate", stress)
      .add("charge", length)
      .add("under the riser", length)
      .add("lid", choice, {"open", "welded"})
      .done();
}

FieldGroup support_fields() {
  return Group("supports", at("reservoir") / "supports")
      .add("baffles across", count)
      .add("baffles along", count)
      .add("lid bays", bays)
      .add("floor bays", bays)
      .add("long side bays", bays)
      .add("short side bays", bays)
      .add("lid stays", choice, {"posts", "rows"})
      .add("floor carried", yes_no)
      .add("solid share", share)
      .below("widest bare panel", "length", length)
      .below("widest bare panel", "width", length)
      .below("widest bare panel", "in", choice, {"lid", "any wall"})
      .done();
}

FieldGroup table_fields() {
  return Group("table", at("table"))
      .below("inside", "length", length)
      .needed()
      .below("inside", "width", length)
      .needed()
      .add("depth", length)
      .needed()
      .add("floor height", length)
      .needed()
      .add("rim", length)
      .add("solid share", share)
      .done();
}

FieldGroup riser_fields(const plan::Job& job) {
  return Group("riser", at("riser"))
      .add("clearance", length)
      .add("headroom", length)
      .add("bung", choice, names_of(job.reservoir.ports))
      .add("pipe", size)
      .add("material", material)
      .done();
}

FieldGroup air_fields() {
  return Group("air supply", at("air"))
      .add("delivery", air_flow)
      .add("receiver", volume)
      .add("receiver pressure", pressure)
      .add("regulator range", pressure)
      .add("set pressure", pressure)
      .add("droop", share)
      .add("feed bore", length)
      .done();
}

FieldGroup vent_fields() { return Group("vent", at("vent")).add("bore", length).add("count", count).done(); }

FieldGroup wish_fields() {
  return Group("wishes", at("wishes"))
      .add("fill time", time)
      .add("cost cap", price)
      .add("order", choice, kOrders)
      .done();
}

FieldGroup job_fields() {
  return Group("job", {})
      .add("name", words)
      .add("units", choice, {"inch", "metric"})
      .add("water temperature", temperature)
      .add("altitude", signed_length)
      .add("test pressure", pressure)
      .done();
}

void add_ports(const char* owner, const std::vector<plan::JobPort>& ports, std::vector<FieldGroup>& groups) {
  const std::string vessel = owner;
  for (const plan::JobPort& port : ports) {
    Group group(fmt::format("port '{}'", port.name), at(vessel) / "ports" / port.name);
    group.add("port", FieldKind::port).needed().add("material", material);
    if (vessel == "reservoir")
      group.add("where", choice, {"lid", "side", "floor"})
          .add("bung", choice, {"full coupling", "half coupling", "welded riser", "double-tapped bushing"})
          .add("welded in", yes_no)
          .add("bung length", length)
          .add("projects", length)
          .add("face height", length);
    if (vessel == "table")
      group.add("where", choice, {"floor", "side", "over rim"}).add("opens at", length).add("face height", length);
    groups.push_back(group.done());
  }
}

/// What a connection says of one run between two ends; with several far ends each branch has its own.
void add_far_end(Group& group, const plan::JobConnection& connection, const Words& ports) {
  if (!connection.branches.empty()) return;
  connection.ends_in ? group.add("ends in", words) : group.add("to", choice, ports);
  group.needed();
}

FieldGroup connection_fields(const plan::Job& job, std::size_t row) {
  const plan::JobConnection& connection = job.connections[row];
  const Words ports = all_port_names(job);
  const bool one_run = connection.branches.empty();
  Group group(fmt::format("connection '{}'", connection.name), at("connections") / row);
  group.add("name", words).add("from", choice, ports).needed();
  add_far_end(group, connection, ports);
  group.add("carries", choice, kServices).below("held", "from", choice, one_run ? kFreedoms : kBranchFreedoms);
  if (one_run) group.below("held", "to", choice, kFreedoms);
  group.add("order", choice, one_run ? kOrders : kBranchOrders).add("in order", yes_no);
  if (one_run) group.add("gap", length).add("offset", length).add("hose length", length).add("most parts", count);
  return group.add("rating", pressure)
      .add("smallest bore", length)
      .add("room", length)
      .add("most bushings", count)
      .add("hottest", temperature)
      .add("vacuum", yes_no)
      .add("special order", yes_no)
      .add("galvanic", choice, {"warn", "avoid"})
      .done();
}

void add_branches(const plan::Job& job, std::size_t row, std::vector<FieldGroup>& groups) {
  const plan::JobConnection& connection = job.connections[row];
  for (std::size_t i = 0; i < connection.branches.size(); ++i) {
    const plan::JobBranch& branch = connection.branches[i];
    Group group(fmt::format("branch '{}' of '{}'", branch.name, connection.name),
                at("connections") / row / "branches" / i);
    group.add("name", words);
    branch.ends_in ? group.add("ends in", words) : group.add("to", choice, all_port_names(job));
    groups.push_back(group.needed()
                         .add("smallest bore", length)
                         .add("feeds", yes_no)
                         .add("looks", choice, {"anywhere", "straight on", "to a side"})
                         .add("held", choice, kBranchFreedoms)
                         .add("special order", yes_no)
                         .done());
  }
}

bool holds(std::string_view text, std::string_view what) { return text.find(what) != std::string_view::npos; }

/// Which system the text's unit belongs to; nullopt: it has no unit that differs, or is not understood.
std::optional<UnitSystem> system_of(FieldKind kind, std::string_view text) {
  const auto metric_if = [](bool metric) { return metric ? UnitSystem::metric : UnitSystem::inch; };
  switch (kind) {
    case length:
    case signed_length:
      return metric_if(holds(text, "m"));
    case volume:
      return metric_if((holds(text, "L") || holds(text, "l") || holds(text, "m3")) && !holds(text, "gal"));
    case pressure:
      return metric_if(holds(text, "bar") || holds(text, "Pa") || holds(text, "mm"));
    case air_flow:
      return metric_if(holds(text, "L") || holds(text, "l/") || holds(text, "m3"));
    case stress:
      return metric_if(holds(text, "Pa"));
    case temperature:
      return metric_if(holds(text, "C") || holds(text, "K"));
    default:
      return std::nullopt;
  }
}

template <class T, class Write>
std::string rewritten(const quantity::Reading<T>& reading, const std::string& written, Write write) {
  const T* value = std::get_if<T>(&reading);
  return value != nullptr ? write(*value) : written;
}

}  // namespace

std::vector<FieldGroup> fields_of(const plan::Job& job) {
  std::vector<FieldGroup> groups = {reservoir_fields(), support_fields(), table_fields(), riser_fields(job),
                                    air_fields(),       vent_fields(),    wish_fields(),  job_fields()};
  add_ports("reservoir", job.reservoir.ports, groups);
  add_ports("table", job.table.ports, groups);
  add_ports("air", job.air.ports, groups);
  for (std::size_t row = 0; row < job.connections.size(); ++row) {
    groups.push_back(connection_fields(job, row));
    add_branches(job, row, groups);
  }
  return groups;
}

std::string shown_in(FieldKind kind, const std::string& written, UnitSystem units) {
  const std::optional<UnitSystem> system = system_of(kind, written);
  if (!system || *system == units) return written;
  switch (kind) {
    case length:
      return rewritten(quantity::read_length(written), written, [&](Length l) { return write_length(l, units); });
    case signed_length:
      return rewritten(quantity::read_signed_length(written), written,
                       [&](Length l) { return write_long_length(l, units); });
    case volume:
      return rewritten(quantity::read_volume(written), written, [&](Volume v) { return write_volume(v, units); });
    case pressure:
      return rewritten(quantity::read_pressure(written), written,
                       [&](GaugePressure p) { return write_pressure_alone(p, units); });
    case air_flow:
      return rewritten(quantity::read_air_flow(written), written,
                       [&](VolumeFlow q) { return write_air_flow(q, units); });
    case stress:
      return rewritten(quantity::read_stress(written), written, [&](Stress s) { return write_stress(s, units); });
    case temperature:
      return rewritten(quantity::read_temperature(written), written,
                       [&](Temperature t) { return write_temperature(t, units); });
    default:
      return written;
  }
}

}  // namespace riserun::gui
