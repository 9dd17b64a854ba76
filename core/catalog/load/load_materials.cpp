// catalog/materials.yaml, catalog/losses.yaml and catalog/pipe.yaml.
#include "catalog/load/loading.h"
#include "quantity/read.h"

#include <algorithm>
#include <limits>

namespace riserun::catalog {

namespace {

using quantity::ReadError;
using quantity::Reading;

/// `0.85 V`
Reading<double> read_volts(std::string_view text) {
  if (!text.ends_with(" V")) return ReadError{"'" + std::string(text) + "' is not a voltage; allowed: 0.85 V", 0};
  const Reading<double> reading = quantity::read_number(text.substr(0, text.size() - 2));
  // From gold, 0 V, to beryllium, 1.85 V (MIL-STD-889, from memory), with room for what is not in that list.
  return quantity::within(reading, quantity::Range<double>{0.0, 3.0}, text);
}

Reading<Length> read_roughness(std::string_view text) {
  return quantity::within(quantity::read_length(text), quantity::Range<Length>{millimetres(0.0), millimetres(5.0)},
                          text);
}

Reading<double> read_scatter(std::string_view text) {
  return quantity::within(quantity::read_number(text), quantity::Range<double>{0.0, 1.0}, text);
}

Reading<double> read_dirty(std::string_view text) {
  return quantity::within(quantity::read_number(text), quantity::Range<double>{1.0, 100.0}, text);
}

Reading<double> read_coefficient(std::string_view text) {
  return quantity::within(quantity::read_number(text), quantity::Range<double>{0.0, 10000.0}, text);
}

/// K1 of the three-K form; a filter's cartridge, whose loss goes as the flow, has some hundred thousand.
Reading<double> read_slow_coefficient(std::string_view text) {
  return quantity::within(quantity::read_number(text), quantity::Range<double>{0.0, 1.0e7}, text);
}

void load_limits(Loading& loading, const Value& value) {
  Fields fields(value, {"watch above", "keep apart above", "source"}, loading.problems);
  GalvanicLimits limits;
  const auto watch = fields.need_with("watch above", read_volts);
  const auto apart = fields.need_with("keep apart above", read_volts);
  limits.source = fields.need_text("source");
  if (!watch || !apart) return;
  if (*apart < *watch)
    loading.problems.add(value["keep apart above"], "galvanic: 'keep apart above' is below 'watch above'");
  limits.watch_above_volts = *watch;
  limits.keep_apart_above_volts = *apart;
  loading.builder.set(std::move(limits));
}

/// The words that name a material must name no other.
void check_material_is_new(Loading& loading, const Value& where, std::string_view word) {
  if (!loading.so_far().find_material(word)) return;
  loading.problems.add(where, where.path() + ": the material '" + std::string(word) + "' is already there");
}

void read_anodic_index(Loading& loading, Fields& fields, Material& material) {
  const Value value = fields.find("anodic index");
  // Not zero, which is gold's: a comparison with it then says no, whichever way it is asked.
  material.anodic_index_volts = std::numeric_limits<double>::quiet_NaN();
  if (material.metal) {
    material.anodic_index_volts = fields.need_with("anodic index", read_volts).value_or(0.0);
  } else if (value.exists()) {
    loading.problems.add(value, value.path() + ": only a metal has an anodic index");
  }
}

void load_material(Loading& loading, const Value& value) {
  Fields fields(value,
                {"id", "name", "aliases", "sort", "metal", "anodic index", "compressed air", "roughness", "welds to",
                 "not welded", "galls", "pits", "coat on", "threads", "hottest", "source"},
                loading.problems);
  if (!fields.valid()) return;
  Material material;
  material.id = fields.need_text("id");
  material.name = fields.need_text("name");
  material.aliases = fields.texts("aliases");
  material.metal = fields.flag_or("metal", true);
  material.sort = fields.text_or("sort", material.metal ? "metal" : "");
  read_anodic_index(loading, fields, material);
  material.compressed_air = fields.flag_or("compressed air", true);
  material.roughness = fields.need_with("roughness", read_roughness).value_or(Length{});
  material.welds_to = fields.text_or("welds to", "");
  material.not_welded = fields.text_or("not welded", "");
  if (fields.find("hottest").exists()) material.hottest = fields.need_with("hottest", quantity::read_temperature);
  material.galls = fields.flag_or("galls", false);
  material.pits = fields.flag_or("pits", false);
  material.coat_on = fields.text_or("coat on", "");
  if (!material.coat_on.empty() && !loading.so_far().find_material(material.coat_on))
    loading.problems.add(value["coat on"], value["coat on"].path() + ": unknown material '" + material.coat_on +
                                               "'; it must stand before");
  material.threads = fields.flag_or("threads", material.metal);
  material.source = fields.need_text("source");
  if (as_id_text(material.id) != material.id)
    loading.problems.add(value["id"], value["id"].path() + ": an id is lower case, its words joined by '-'");
  check_material_is_new(loading, value["id"], material.id);
  if (material.name != material.id) check_material_is_new(loading, value["name"], material.name);
  for (const std::string& alias : material.aliases) check_material_is_new(loading, value["aliases"], alias);
  loading.builder.add(std::move(material));
}

void read_three_k(Loading& loading, const Value& value, LossItem& item) {
  if (!value.exists()) return;
  const std::vector<Value> numbers = read_list(value, loading.problems);
  if (numbers.size() != 3) {
    if (value.is_list()) loading.problems.add(value, value.path() + ": three numbers are expected: K1, Ki, Kd");
    return;
  }
  item.darby_k1 = read_with(numbers[0], read_slow_coefficient, loading.problems).value_or(0.0);
  item.darby_ki = read_with(numbers[1], read_coefficient, loading.problems).value_or(0.0);
  item.darby_kd = read_with(numbers[2], read_coefficient, loading.problems).value_or(0.0);
}

void load_loss(Loading& loading, const Value& value) {
  Fields fields(value, {"name", "crane n", "three-k", "scatter", "dirty", "source"}, loading.problems);
  if (!fields.valid()) return;
  LossItem item;
  item.name = fields.need_text("name");
  item.crane_n = fields.find_with("crane n", read_coefficient).value_or(0.0);
  read_three_k(loading, fields.find("three-k"), item);
  item.scatter = fields.need_with("scatter", read_scatter).value_or(0.0);
  item.dirty = fields.find_with("dirty", read_dirty).value_or(1.0);
  item.source = fields.need_text("source");
  if (!value["crane n"].exists() && !value["three-k"].exists())
    loading.problems.add(value, value.path() + ": a loss item needs 'crane n', 'three-k' or both");
  for (const LossItem& other : loading.so_far().loss_items())
    if (other.name == item.name)
      loading.problems.add(value["name"],
                           value["name"].path() + ": the loss item '" + item.name + "' is already there");
  loading.builder.add(std::move(item));
}

void load_bore_row(Loading& loading, const Value& row, std::span<const Head> heads, BoreTable& table) {
  const std::vector<Value> cells = read_row(loading, row, heads.size());
  if (cells.empty()) return;
  std::string size;
  std::optional<Length> bore;
  for (std::size_t i = 0; i < heads.size(); ++i) {
    if (!read_text(cells[i], loading.problems)) return;
    if (heads[i].name == "size") size = cells[i].text();
    if (heads[i].name == "bore") bore = length_cell(loading, cells[i], heads[i].unit);
  }
  if (!bore) return;
  if (*bore <= millimetres(0.5) || *bore > metres(1.0))
    loading.problems.add(row, row.path() + ": a bore lies between 0.5 mm and 1 m");
  // Twice the same is a slip too: one of the two was meant for another size.
  if (!table.emplace(size, *bore).second)
    loading.problems.add(row, row.path() + ": the size '" + size + "' stands in this table twice");
}

bool bore_heads_fit(Loading& loading, const Value& where, std::span<const Head> heads) {
  const bool fits = heads.size() == 2 && heads[0].name == "size" && heads[0].unit.empty() && heads[1].name == "bore" &&
                    (heads[1].unit == "in" || heads[1].unit == "mm");
  if (!fits) loading.problems.add(where, where.path() + ": the columns are 'size' and 'bore (in)' or 'bore (mm)'");
  return fits;
}

void load_bore_table(Loading& loading, const Value& value) {
  Fields fields(value, {"name", "source", "columns", "rows"}, loading.problems);
  if (!fields.valid()) return;
  const std::string name = fields.need_text("name");
  fields.need_text("source");
  const Value columns = fields.need("columns");
  const std::vector<Head> heads = read_heads(loading, columns);
  const std::vector<Value> rows = fields.need_list("rows");
  if (!columns.is_list() || !bore_heads_fit(loading, columns, heads)) return;
  BoreTable table;
  for (const Value& row : rows) load_bore_row(loading, row, heads, table);
  if (!loading.bores.emplace(name, std::move(table)).second)
    loading.problems.add(value["name"], value["name"].path() + ": the bores '" + name + "' are already there");
}

}  // namespace

void load_materials(Loading& loading, const Value& root) {
  Fields fields(root, {"galvanic", "materials"}, loading.problems);
  if (!fields.valid()) return;
  if (const Value limits = fields.need("galvanic"); limits.exists()) load_limits(loading, limits);
  for (const Value& material : fields.need_list("materials")) load_material(loading, material);
}

void load_losses(Loading& loading, const Value& root) {
  Fields fields(root, {"items"}, loading.problems);
  for (const Value& item : fields.need_list("items")) load_loss(loading, item);
}

void load_bores(Loading& loading, const Value& root) {
  Fields fields(root, {"bores"}, loading.problems);
  for (const Value& table : fields.need_list("bores")) load_bore_table(loading, table);
}

}  // namespace riserun::catalog
