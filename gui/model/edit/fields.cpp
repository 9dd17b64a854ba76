#include "gui/model/edit/fields.h"

#include "chain/ask/askable.h"
#include "quantity/bare_number.h"
#include "quantity/read.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::gui {

namespace {

using quantity::UnitSystem;
using enum FieldKind;
using chain::Askable;
using chain::AskedKind;
using chain::AskedOf;
using Words = std::vector<std::string>;

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

/// What kind of field the value of a row takes; nullopt: words that name parts, which are wishes and no figures.
std::optional<FieldKind> kind_of(const Askable& row) {
  switch (row.kind) {
    case AskedKind::yes_no:
      return yes_no;
    case AskedKind::choice:
      return choice;
    case AskedKind::count:
      return count;
    case AskedKind::length:
      return length;
    case AskedKind::pressure:
      return pressure;
    case AskedKind::temperature:
      return temperature;
    default:
      return std::nullopt;
  }
}

Words choices_of(const Askable& row, bool one_run) {
  const auto words = one_run || row.branch_choices.empty() ? row.choices : row.branch_choices;
  return {words.begin(), words.end()};
}

/// A field for each thing that can be asked of it.
void add_asked(Group& group, AskedOf of, bool one_run) {
  for (const Askable& row : chain::askables()) {
    const std::optional<FieldKind> kind = kind_of(row);
    if (row.of != of || row.key.empty() || !kind || (row.one_run && !one_run)) continue;
    if (row.code == "held_ends") {
      group.below("held", "from", choice, choices_of(row, one_run));
      if (one_run) group.below("held", "to", choice, choices_of(row, one_run));
    } else {
      group.add(std::string(row.key), *kind, choices_of(row, one_run));
    }
  }
}

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
      .add("corrosion allowance", length)
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
      .add("passages", yes_no)
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
      .add("regulator repeatability", pressure)
      .add("set pressure", pressure)
      .add("droop", share)
      .add("rated flow", air_flow)
      .add("repeatability", pressure)
      .add("lock up", pressure)
      .add("feed bore", length)
      .add("restrictor", length)
      .add("check valve opens at", pressure)
      .done();
}

FieldGroup vent_fields() {
  return Group("vent", at("vent"))
      .add("bore", length)
      .add("count", count)
      .add("stays open", yes_no)
      .add("purged", yes_no)
      .done();
}

FieldGroup relief_fields() {
  return Group("relief valve", at("relief valve")).add("tolerance", pressure).add("rise", pressure).done();
}

FieldGroup wish_fields() {
  return Group("wishes", at("wishes"))
      .add("fill time", time)
      .add("cost cap", price)
      .add("order", choice, choices_of(chain::askable("order"), true))
      .done();
}

FieldGroup job_fields() {
  return Group("job", {})
      .add("name", words)
      .add("units", choice, {"inch", "metric"})
      .add("water temperature", temperature)
      .add("hottest", temperature)
      .add("against heat", words)
      .add("coldest", temperature)
      .add("against frost", words)
      .add("altitude", signed_length)
      .add("test pressure", pressure)
      .add("measured fill time", time)
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
          .add("face height", length)
          .add("at", lid_place);
    if (vessel == "table")
      group.add("where", choice, {"floor", "side", "over rim"})
          .add("opens at", length)
          .add("crest", length)
          .add("face height", length);
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
  add_asked(group, AskedOf::distance, one_run);
  if (one_run) group.add("hose length", length);
  add_asked(group, AskedOf::run, one_run);
  return group.done();
}

void add_branches(const plan::Job& job, std::size_t row, std::vector<FieldGroup>& groups) {
  const plan::JobConnection& connection = job.connections[row];
  for (std::size_t i = 0; i < connection.branches.size(); ++i) {
    const plan::JobBranch& branch = connection.branches[i];
    Group group(fmt::format("branch '{}' of '{}'", branch.name, connection.name),
                at("connections") / row / "branches" / i);
    group.add("name", words);
    branch.ends_in ? group.add("ends in", words) : group.add("to", choice, all_port_names(job));
    group.needed();
    add_asked(group, AskedOf::branch, true);
    groups.push_back(group.done());
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

bool is_bare(const std::string& text) {
  return text.find_first_of("0123456789") != std::string::npos &&
         text.find_first_not_of("0123456789./- ") == std::string::npos;
}

/// What stands before and after a comma, each changed.
template <class Change>
std::string each_of_two(const std::string& both, Change change) {
  const std::size_t comma = both.find(',');
  if (comma == std::string::npos) return both;
  const std::size_t second = std::min(both.find_first_not_of(' ', comma + 1), both.size());
  return change(both.substr(0, comma)) + ", " + change(both.substr(second));
}

/// The kind of quantity of a field; nullopt: it holds none that has a unit of either system.
std::optional<quantity::Kind> quantity_of(FieldKind kind) {
  switch (kind) {
    case length:
      return quantity::Kind::length;
    case signed_length:
      return quantity::Kind::altitude;
    case volume:
      return quantity::Kind::volume;
    case pressure:
      return quantity::Kind::pressure;
    case air_flow:
      return quantity::Kind::air_flow;
    case stress:
      return quantity::Kind::stress;
    case temperature:
      return quantity::Kind::temperature;
    default:
      return std::nullopt;
  }
}

}  // namespace

std::string_view unit_of_bare(FieldKind kind, UnitSystem units) {
  const std::optional<quantity::Kind> asked = quantity_of(kind);
  const auto meant = asked ? quantity::bare_units(*asked, units) : std::vector<std::string_view>();
  return meant.size() == 1 ? meant.front() : "";
}

std::vector<FieldGroup> fields_of(const plan::Job& job) {
  std::vector<FieldGroup> groups = {reservoir_fields(), support_fields(), table_fields(),
                                    riser_fields(job),  air_fields(),     vent_fields(),
                                    relief_fields(),    wish_fields(),    job_fields()};
  add_ports("reservoir", job.reservoir.ports, groups);
  add_ports("table", job.table.ports, groups);
  add_ports("air", job.air.ports, groups);
  for (std::size_t row = 0; row < job.connections.size(); ++row) {
    groups.push_back(connection_fields(job, row));
    add_branches(job, row, groups);
  }
  return groups;
}

std::string shown_in(FieldKind kind, const std::string& written, UnitSystem units, std::optional<UnitSystem> own) {
  if (kind == lid_place)
    return each_of_two(written, [&](const std::string& one) { return shown_in(length, one, units, own); });
  const bool bare = is_bare(written);
  const std::optional<UnitSystem> system = bare ? own : system_of(kind, written);
  if (!system) return written;
  if (*system == units) return bare ? as_typed_in(kind, written, units, std::nullopt) : written;
  switch (kind) {
    case length:
      return rewritten(quantity::read_length({written, own, {}}), written,
                       [&](Length l) { return write_length(l, units); });
    case signed_length:
      return rewritten(quantity::read_altitude({written, own, {}}), written,
                       [&](Length l) { return write_long_length(l, units); });
    case volume:
      return rewritten(quantity::read_volume({written, own, {}}), written,
                       [&](Volume v) { return write_volume(v, units); });
    case pressure:
      return rewritten(quantity::read_pressure({written, own, {}}), written,
                       [&](GaugePressure p) { return write_pressure_alone(p, units); });
    case air_flow:
      return rewritten(quantity::read_air_flow({written, own, {}}), written,
                       [&](VolumeFlow q) { return write_air_flow(q, units); });
    case stress:
      return rewritten(quantity::read_stress({written, own, {}}), written,
                       [&](Stress s) { return write_stress(s, units); });
    case temperature:
      return rewritten(quantity::read_temperature({written, own, {}}), written,
                       [&](Temperature t) { return write_temperature(t, units); });
    default:
      return written;
  }
}

std::string as_typed_in(FieldKind kind, const std::string& typed, UnitSystem units, std::optional<UnitSystem> own) {
  if (kind == lid_place)
    return each_of_two(typed, [&](const std::string& one) { return as_typed_in(length, one, units, own); });
  const std::string_view unit = own == units || !is_bare(typed) ? "" : unit_of_bare(kind, units);
  return unit.empty() ? typed : fmt::format("{} {}", typed, unit);
}

}  // namespace riserun::gui
