// The families of a catalog file: everything about a family but the expansion of its tables.
//
// A family states its name, aliases, standard, shelf, title, size, ports, materials, tables and source. What else its
// parts are is said by keys, never read out of a name; where it differs from row to row, the key names a column:
//
//     role           connector (the usual), plug, device, gauge, relief valve, check valve, regulator, restrictor, hose
//                    clamp; must be said of parts with one port: a plug closes an open end, all but these two are only
//                    put in when they are asked for
//     set pressure   of a relief valve: `set`, a column in psi or bar, or `2 psi`
//     check          of a check valve: spring or swing, what closes it; it is one way
//     opening pressure  of a check valve: the pressure before it that opens it, as a set pressure
//     arrow          yes: marked to be passed from the first port to the second, as all is that is one way
//     range          of a gauge or a regulator: the end of its scale, likewise
//     close          yes: threaded over its whole length, so that no wrench holds it
//     weld bung      half coupling, full coupling or other: made to be welded into a wall
//     shape          ball valve, gate valve, needle valve, bibb, strainer, bowl, muffler, bulkhead or pipe: what it is
//                    drawn as where ports and role do not tell
//     can shut, one way, closing, dielectric, flexible, bushing, air      yes or no
//     for vacuum     yes: put in unasked only where vacuum may come about, and not meant there alone by a common name
//     cut to length, straight tapped, far material, loss, branch loss, across flats, bore
//     outside diameter     of a round body: the hole that a weld bung is set into is bored for it
//     hose bore            of a made-up hose, whose end fittings are narrower
//
// `{material}` in the title stands for the material's name; lists then do not say it a second time.
#include "catalog/load/family_rule.h"
#include "quantity/read.h"

#include <algorithm>

namespace riserun::catalog {

namespace {

quantity::Reading<double> read_factor(std::string_view text) {
  return quantity::within(quantity::read_number(text), quantity::Range<double>{0.01, 1000.0}, text);
}

/// `stocked`: yes, no, or the rows for which it is.
void read_stocked(Loading& loading, const Value& value, FamilyMaterial& material) {
  if (value.is_map()) {
    material.stocked_only = value;
  } else if (value.exists()) {
    material.stocked = read_flag(value, loading.problems).value_or(true);
  }
}

std::optional<FamilyMaterial> load_family_material(Loading& loading, const Value& key, const Value& value) {
  Fields fields(value, {"rating", "price factor", "price", "bore", "far material", "only", "stocked"},
                loading.problems);
  const std::optional<MaterialId> id = named_material(loading, key);
  if (!fields.valid() || !id) return std::nullopt;
  FamilyMaterial material;
  material.id = *id;
  material.where = value;
  material.rating = fields.need("rating");
  material.price_factor = fields.find_with("price factor", read_factor).value_or(1.0);
  material.price = fields.find("price");
  material.bore = fields.find("bore");
  material.far_material = fields.find("far material");
  material.only = fields.find("only");
  if (material.only.exists() && !material.only.is_map())
    loading.problems.add(material.only,
                         material.only.path() + ": a map of columns to lists of values is expected here");
  read_stocked(loading, fields.find("stocked"), material);
  return material;
}

void load_family_materials(Loading& loading, const Value& value, FamilyRule& rule) {
  if (!value.exists()) return;
  if (!value.is_map() || value.size() == 0) {
    loading.problems.add(value,
                         value.path() + ": a map is expected here, from each material to its rating and price factor");
    return;
  }
  for (const auto& [key, entry] : value.entries()) {
    const std::optional<FamilyMaterial> material = load_family_material(loading, key, entry);
    if (!material) continue;
    const auto same = [&](const FamilyMaterial& other) { return other.id == material->id; };
    if (std::any_of(rule.materials.begin(), rule.materials.end(), same))
      loading.problems.add(key, value.path() + ": the material '" + std::string(key.text()) + "' stands here twice");
    rule.materials.push_back(*material);
  }
}

/// The words that name a family must name no other.
void check_unused(Loading& loading, const Value& where, std::string_view word) {
  if (!loading.so_far().find_family(word)) return;
  loading.problems.add(where, where.path() + ": the family '" + std::string(word) + "' is already there");
}

Family read_family(Loading& loading, Fields& fields) {
  const Value& map = fields.map();
  Family family;
  family.name = fields.need_text("name");
  family.aliases = fields.texts("aliases");
  family.standard = fields.text_or("standard", "common practice");
  family.shelf = fields.need_text("shelf");
  family.role = read_role(fields).value_or(Role::connector);
  family.weld_bung = fields
                         .choice<WeldBung>(fields.find("weld bung"), {{"no", WeldBung::none},
                                                                      {"half coupling", WeldBung::half_coupling},
                                                                      {"full coupling", WeldBung::full_coupling},
                                                                      {"other", WeldBung::other}})
                         .value_or(WeldBung::none);
  family.is_bushing = fields.flag_or("bushing", false);
  family.can_shut = fields.flag_or("can shut", false);
  family.flexible = fields.flag_or("flexible", false);
  family.for_vacuum = fields.flag_or("for vacuum", false);
  family.check = read_check(fields);
  family.shape = fields
                     .choice<BodyShape>(fields.find("shape"), {{"usual", BodyShape::usual},
                                                               {"ball valve", BodyShape::ball_valve},
                                                               {"gate valve", BodyShape::gate_valve},
                                                               {"needle valve", BodyShape::needle_valve},
                                                               {"bibb", BodyShape::bibb},
                                                               {"strainer", BodyShape::strainer},
                                                               {"bowl", BodyShape::bowl},
                                                               {"muffler", BodyShape::muffler},
                                                               {"bulkhead", BodyShape::bulkhead},
                                                               {"pipe", BodyShape::pipe}})
                     .value_or(BodyShape::usual);
  family.source = fields.need_text("source");
  check_unused(loading, map["name"], family.name);
  for (const std::string& alias : family.aliases) check_unused(loading, map["aliases"], alias);
  return family;
}

/// `cut to length`: yes for what is sold by the length, threaded for sticks that are threaded again.
void read_cutting(Fields& fields, FamilyRule& rule) {
  enum class Cutting { no, yes, threaded, flexible };
  const Cutting cutting = fields
                              .choice<Cutting>(fields.find("cut to length"), {{"no", Cutting::no},
                                                                              {"yes", Cutting::yes},
                                                                              {"threaded", Cutting::threaded},
                                                                              {"flexible", Cutting::flexible}})
                              .value_or(Cutting::no);
  rule.cut_to_length = cutting == Cutting::yes || cutting == Cutting::flexible;
  rule.threaded_when_cut = cutting == Cutting::threaded;
  rule.flexible = cutting == Cutting::flexible;
}

void read_rule(Loading& loading, Fields& fields, FamilyRule& rule) {
  rule.where = fields.map();
  rule.title = fields.need("title");
  rule.sold_as = fields.text_or("sold as", "");
  rule.size = fields.need("size");
  rule.part_id = fields.find("id");
  rule.ports = fields.need_list("ports");
  rule.bore = fields.find("bore");
  rule.across_flats = fields.find("across flats");
  rule.outside = fields.find("outside diameter");
  rule.hose_bore = fields.find("hose bore");
  rule.loss = fields.find("loss");
  rule.branch_loss = fields.find("branch loss");
  rule.far_material = fields.find("far material");
  const Value opening = fields.find("opening pressure");  // one of the two at most, as the role has it
  rule.opens_at = opening.exists() ? opening : fields.find("set pressure");
  rule.range = fields.find("range");
  rule.close = fields.flag_or("close", false);
  if (const Value air = fields.find("air"); air.exists()) rule.air = read_flag(air, loading.problems);
  rule.straight_tapped = fields.find("straight tapped");
  if (rule.straight_tapped.exists() && !rule.straight_tapped.is_map())
    loading.problems.add(rule.straight_tapped,
                         rule.straight_tapped.path() + ": a map of columns to lists of values is expected here");
  rule.closing = fields.flag_or("closing", false);
  rule.dielectric = fields.flag_or("dielectric", false);
  rule.one_way = fields.flag_or("one way", fields.map()["check"].exists());
  rule.arrow = fields.flag_or("arrow", rule.one_way);
  read_cutting(fields, rule);
  constexpr std::size_t kMostPorts = 8;
  if (const Value ports = fields.map()["ports"]; ports.is_list() && (ports.size() == 0 || ports.size() > kMostPorts))
    loading.problems.add(ports, ports.path() + ": a part has 1 to 8 ports, not " + std::to_string(ports.size()));
  load_family_materials(loading, fields.need("materials"), rule);
}

std::optional<FamilyTable> read_table(Loading& loading, const Value& value, const FamilyRule& rule,
                                      const std::string& family_source) {
  Fields fields(value, {"source", "materials", "columns", "rows"}, loading.problems);
  if (!fields.valid()) return std::nullopt;
  FamilyTable table;
  table.where = value;
  table.source = fields.text_or("source", family_source);
  for (const Value& name : read_texts(fields.find("materials"), loading.problems)) {
    const std::optional<MaterialId> id = named_material(loading, name);
    if (!id) continue;
    const auto same = [&](const FamilyMaterial& material) { return material.id == *id; };
    if (std::none_of(rule.materials.begin(), rule.materials.end(), same))
      loading.problems.add(name, name.path() + ": the family states no material '" + std::string(name.text()) + "'");
    table.materials.push_back(*id);
  }
  const Value columns = fields.need("columns");
  table.heads = read_heads(loading, columns);
  table.rows = fields.need_list("rows");
  if (value["rows"].is_list() && table.rows.empty())
    loading.problems.add(value["rows"], value["rows"].path() + ": a table without rows yields no part");
  if (table.heads.empty()) return std::nullopt;
  return table;
}

std::vector<FamilyTable> read_tables(Loading& loading, Fields& fields, const FamilyRule& rule,
                                     const std::string& source) {
  const Value one = fields.find("table");
  const Value several = fields.find("tables");
  std::vector<Value> values;
  if (one.exists()) values.push_back(one);
  if (several.exists())
    for (const Value& value : read_list(several, loading.problems)) values.push_back(value);
  if (values.empty()) loading.problems.add(fields.map(), fields.map().path() + ": 'table' or 'tables' is missing");
  std::vector<FamilyTable> tables;
  for (const Value& value : values)
    if (std::optional<FamilyTable> table = read_table(loading, value, rule, source))
      tables.push_back(std::move(*table));
  return tables;
}

void load_family(Loading& loading, const Value& value) {
  const std::size_t mistakes_before = loading.problems.size();
  Fields fields(value, {"name",          "aliases",      "standard",
                        "shelf",         "role",         "title",
                        "size",          "id",           "ports",
                        "bore",          "across flats", "loss",
                        "branch loss",   "weld bung",    "straight tapped",
                        "bushing",       "can shut",     "flexible",
                        "closing",       "dielectric",   "one way",
                        "cut to length", "air",          "far material",
                        "materials",     "source",       "table",
                        "tables",        "set pressure", "range",
                        "close",         "check",        "opening pressure",
                        "arrow",         "shape",        "outside diameter",
                        "sold as",       "for vacuum",   "hose bore"},
                loading.problems);
  if (!fields.valid()) return;
  Family family = read_family(loading, fields);
  const std::string source = family.source;
  FamilyRule rule;
  rule.id_text = as_id_text(family.name);
  read_rule(loading, fields, rule);
  check_role(loading.problems, fields.map(), family.role, rule.ports.size());
  check_check_valve(loading.problems, fields.map(), family.role);
  const std::vector<FamilyTable> tables = read_tables(loading, fields, rule, source);
  if (loading.problems.size() > mistakes_before) return;  // its parts would only repeat the mistakes
  rule.id = loading.builder.add(std::move(family));
  const std::size_t parts_before = loading.so_far().parts().size();
  for (const FamilyTable& table : tables) expand_table(loading, rule, table);
  if (loading.problems.size() == mistakes_before && loading.so_far().parts().size() == parts_before)
    loading.problems.add(value, value.path() + ": the family yields no part");
}

}  // namespace

void load_families(Loading& loading, const Value& list) {
  for (const Value& family : read_list(list, loading.problems)) load_family(loading, family);
}

}  // namespace riserun::catalog
