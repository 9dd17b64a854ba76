// A user's own parts.
#include "catalog/load/load.h"
#include "catalog/load/loading.h"
#include "catalog/load/part_bounds.h"
#include "catalog/words/part_search.h"
#include "quantity/read.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace riserun::catalog {

namespace {

using quantity::Range;

quantity::Reading<GaugePressure> read_rating(std::string_view text) {
  return quantity::within(quantity::read_pressure(text), Range<GaugePressure>{psig(0.1), psig(20000.0)}, text);
}

quantity::Reading<Length> read_bore(std::string_view text) {
  return quantity::within(quantity::read_length(text), Range<Length>{millimetres(0.5), metres(1.0)}, text);
}

quantity::Reading<Length> read_reach(std::string_view text) {
  return quantity::within(quantity::read_length(text), Range<Length>{millimetres(0.5), metres(10.0)}, text);
}

quantity::Reading<double> read_heading(std::string_view text) {
  return quantity::within(quantity::read_number(text), Range<double>{-360.0, 360.0}, text);
}

/// The port types that files and users may name although no part has them yet are made by CatalogBuilder::build, so a
/// port is read here against a catalog that has them.
std::optional<Port> load_port(Loading& loading, const Catalog& known, const PortNotation& ports, const Value& value,
                              std::size_t place) {
  Fields fields(value, {"port", "bore", "reach", "heading"}, loading.problems);
  if (!fields.valid()) return std::nullopt;
  const auto type = fields.need_with("port", [&](std::string_view text) { return ports.read(text); });
  const auto bore = fields.need_with("bore", read_bore);
  const auto reach = fields.need_with("reach", read_reach);
  constexpr double kUsualHeadings[] = {180.0, 0.0, 90.0, 270.0};
  const double usual = place < 4 ? kUsualHeadings[place] : 0.0;
  const double heading = fields.find_with("heading", read_heading).value_or(usual);
  if (!type || !bore || !reach) return std::nullopt;
  if (const auto below = bore_below(known, *type); below && *bore >= *below) {
    loading.problems.add(
        value["bore"],
        fmt::format("{}: a port {} has no bore of {}; allowed is less than {}, its outside", value["bore"].path(),
                    known.spelled(*type), quantity::write_length(*bore, quantity::UnitSystem::inch),
                    quantity::write_length(*below, quantity::UnitSystem::inch)));
    return std::nullopt;
  }
  Port port;
  port.type = loading.builder.port_type(known.port_type(*type));
  port.bore = *bore;
  port.reach = *reach;
  port.heading_degrees = heading;
  return port;
}

/// What a person's own part belongs to: a family that is there, or one made for what is said of the part.
struct OwnFamily {
  std::string name;
  Role role = Role::connector;
  bool can_shut = false;
  CheckKind check = CheckKind::none;
};

OwnFamily read_own_family(Loading& loading, Fields& fields) {
  const Value& map = fields.map();
  OwnFamily own;
  const std::optional<Role> said = read_role(fields);
  own.check = read_check(fields);
  own.can_shut = fields.flag_or("can shut", own.check != CheckKind::none);
  const std::string usual = said && *said != Role::connector
                                ? fmt::format("own {}{}", role_name(*said), own.can_shut ? " that can shut" : "")
                            : own.can_shut ? "own valve"
                                           : "own part";
  own.name = fields.text_or("family", usual);
  const std::optional<FamilyId> known = loading.so_far().find_family(own.name);
  const Family* family = known ? &loading.so_far().family(*known) : nullptr;
  own.role = family != nullptr ? family->role : said.value_or(Role::connector);
  if (family != nullptr && own.can_shut && !family->can_shut)
    loading.problems.add(map["can shut"], fmt::format("{}: the family '{}' holds nothing that can shut; name another "
                                                      "family",
                                                      map["can shut"].path(), own.name));
  if (said && *said != own.role)
    loading.problems.add(map["role"], fmt::format("{}: the family '{}' is a {}; name another family",
                                                  map["role"].path(), own.name, role_name(own.role)));
  return own;
}

/// The family of that name, made when it is new.
FamilyId own_family(Loading& loading, const OwnFamily& own) {
  if (const std::optional<FamilyId> known = loading.so_far().find_family(own.name)) return *known;
  Family family;
  family.name = own.name;
  family.standard = "none";
  family.shelf = "own parts";
  family.source = "own part";
  family.role = own.role;
  family.can_shut = own.can_shut;
  family.check = own.check;
  return loading.builder.add(std::move(family));
}

void load_ports(Loading& loading, const Catalog& known, const PortNotation& notation, const Value& list, Part& part) {
  const std::vector<Value> ports = read_list(list, loading.problems);
  constexpr std::size_t kMostPorts = 8;
  if (list.is_list() && (ports.empty() || ports.size() > kMostPorts))
    loading.problems.add(list, list.path() + ": a part has 1 to 8 ports, not " + std::to_string(ports.size()));
  for (const Value& value : ports)
    if (std::optional<Port> port = load_port(loading, known, notation, value, part.ports.size()))
      part.ports.push_back(*port);
}

void load_own_part(Loading& loading, const Catalog& known, const PortNotation& notation, const Value& value) {
  const std::size_t before = loading.problems.size();
  Fields fields(value, {"id",           "name",    "size",  "family",         "material", "rating",
                        "price",        "source",  "ports", "across flats",   "stocked",  "closing",
                        "dielectric",   "one way", "air",   "loss",           "can shut", "role",
                        "set pressure", "range",   "close", "names material", "check",    "opening pressure",
                        "arrow"},
                loading.problems);
  if (!fields.valid()) return;
  Part part;
  part.id = fields.need_text("id");
  part.name = fields.need_text("name");
  part.size = fields.need_text("size");
  const OwnFamily family = read_own_family(loading, fields);
  const Value material = fields.need("material");
  const std::optional<MaterialId> material_id = material.exists() ? named_material(loading, material) : std::nullopt;
  part.rating = fields.need_with("rating", read_rating).value_or(GaugePressure{});
  part.price = fields.find_with("price", read_positive_price).value_or(Price::unknown());
  part.source = fields.need_text("source");
  part.across_flats = fields.find_with("across flats", quantity::read_length).value_or(Length{});
  part.stocked = fields.flag_or("stocked", true);
  part.closing = fields.flag_or("closing", false);
  part.dielectric = fields.flag_or("dielectric", false);
  part.one_way = fields.flag_or("one way", value["check"].exists());
  part.arrow = fields.flag_or("arrow", part.one_way);
  part.close = fields.flag_or("close", false);
  part.names_material = fields.flag_or("names material", false);
  for (const char* key : {"set pressure", "opening pressure"})
    if (value[key].exists()) part.opens_at = fields.find_with(key, read_rating);
  if (value["range"].exists()) part.full_scale = fields.find_with("range", read_rating);
  if (material_id) part.air = fields.flag_or("air", loading.so_far().material(*material_id).compressed_air);
  if (const Value loss = fields.find("loss"); read_text(loss, loading.problems))
    part.loss = named_loss(loading, loss, loss.text()).value_or(LossItemId{});
  const Value ports = fields.need("ports");
  load_ports(loading, known, notation, ports, part);
  // A port that could not be read has its own message.
  if (part.ports.size() == ports.size()) check_role(loading.problems, value, family.role, part.ports.size());
  if (loading.so_far().find_part(part.id))
    loading.problems.add(value["id"], value["id"].path() + ": the part '" + part.id + "' is already there");
  if (loading.problems.size() > before) return;
  part.material = *material_id;
  part.family = own_family(loading, family);
  loading.builder.add(std::move(part));
  loading.part_places.push_back(value);
}

}  // namespace

void load_own_parts(Loading& loading, const Value& list) {
  const Catalog known = CatalogBuilder(loading.so_far()).build();
  const PortNotation notation(known);
  for (const Value& part : read_list(list, loading.problems)) load_own_part(loading, known, notation, part);
}

}  // namespace riserun::catalog
