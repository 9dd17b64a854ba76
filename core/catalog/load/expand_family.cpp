// From a family's rule and a row of its table to parts.
#include "catalog/load/family_rule.h"
#include "catalog/load/row_reading.h"
#include "catalog/load/table_rows.h"
#include "quantity/read.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace riserun::catalog {

namespace {

struct PortRule {
  Value where;
  Pick kind, end, size;
  BoreRule bore;
  std::optional<Measure> reach;
  double heading_degrees = 0.0;
};

// Of a catalog with the user's own: some ten times what a counter has, and little enough to load in a second.
constexpr std::size_t kMostParts = 100'000;

/// A pressure that stands in the rule itself or in a column.
struct PressureRule {
  std::optional<std::size_t> column;
  GaugePressure fixed{};
};

struct MaterialRule {
  const FamilyMaterial* from = nullptr;
  std::string name;
  std::optional<PressureRule> rating;
  std::optional<std::size_t> price_column;
  BoreRule bore;
  Pick far_material;
  RowChoice only, stocked_only;
};

class TableExpansion {
 public:
  TableExpansion(Loading& loading, const FamilyRule& family, const FamilyTable& table)
      : loading_(loading), family_(family), table_(table), heads_(table.heads) {}

  void run() {
    const std::size_t before = loading_.problems.size();
    compile();
    rows_ = read_rows(loading_, table_);
    if (loading_.problems.size() > before) return;
    for (const MaterialRule& material : materials_) {
      material.only.report_unused(loading_, rows_);
      material.stocked_only.report_unused(loading_, rows_);
    }
    straight_tapped_.report_unused(loading_, rows_);
    if (rows_.size() * materials_.size() > kMostParts - std::min(kMostParts, loading_.so_far().parts().size()))
      return report(table_.where, fmt::format("with {} rows in {} materials the catalog has more than {} parts",
                                              rows_.size(), materials_.size(), kMostParts));
    for (const Row& row : rows_) expand(row);
  }

 private:
  void report(const Value& where, const std::string& message) {
    loading_.problems.add(where, where.path() + ": " + message);
  }

  // --- once for a table ---

  void compile() {
    title_ = Template::make(loading_, family_.title, heads_);
    size_ = Template::make(loading_, family_.size, heads_);
    part_id_ = Template::make(loading_, family_.part_id.exists() ? family_.part_id : family_.size, heads_);
    bore_ = make_bore_rule(loading_, family_.bore, heads_);
    loss_ = make_pick(loading_, family_.loss, heads_);
    branch_loss_ = make_pick(loading_, family_.branch_loss, heads_);
    far_material_ = make_pick(loading_, family_.far_material, heads_);
    opens_at_ = pressure_rule(family_.opens_at, "set pressure");
    range_ = pressure_rule(family_.range, "range");
    if (family_.across_flats.exists()) across_flats_ = Measure::make(loading_, family_.across_flats, heads_);
    if (family_.outside.exists()) outside_ = Measure::make(loading_, family_.outside, heads_);
    if (family_.hose_bore.exists()) hose_bore_ = Measure::make(loading_, family_.hose_bore, heads_);
    straight_tapped_ = RowChoice::make(loading_, family_.straight_tapped, heads_);
    price_ = priced("price", "usd");
    price_per_inch_ = priced("price per inch", "usd");
    price_per_foot_ = priced("price per foot", "usd");
    length_ = column_of(heads_, "length");
    stocked_ = column_of(heads_, kStocked);
    made_in_ = column_of(heads_, kMadeIn);
    if ((price_per_inch_ || price_per_foot_) && !length_)
      report(table_.where["columns"], "a price per inch or foot needs a column 'length'");
    for (const Value& port : family_.ports) compile_port(port);
    for (const FamilyMaterial& material : family_.materials)
      if (in_table(material.id)) compile_material(material);
  }

  std::optional<std::size_t> priced(std::string_view name, std::string_view unit) {
    const std::optional<std::size_t> column = column_of(heads_, name);
    if (column && heads_[*column].unit != unit)
      report(heads_[*column].where, "the head is '" + std::string(name) + " (usd)'");
    return column;
  }

  bool in_table(MaterialId id) const {
    return table_.materials.empty() ||
           std::find(table_.materials.begin(), table_.materials.end(), id) != table_.materials.end();
  }

  void compile_port(const Value& value) {
    Fields fields(value, {"kind", "end", "size", "bore", "reach", "heading"}, loading_.problems);
    if (!fields.valid()) return;
    PortRule rule;
    rule.where = value;
    rule.kind = make_pick(loading_, fields.need("kind"), heads_);
    rule.end = make_pick(loading_, fields.need("end"), heads_);
    rule.size = make_pick(loading_, fields.need("size"), heads_);
    rule.bore = make_bore_rule(loading_, fields.find("bore"), heads_);
    if (const Value reach = fields.need("reach"); reach.exists()) rule.reach = Measure::make(loading_, reach, heads_);
    constexpr double kUsualHeadings[] = {180.0, 0.0, 90.0, 270.0};
    const std::size_t place = ports_.size();
    rule.heading_degrees =
        fields.find_with("heading", quantity::read_number).value_or(place < 4 ? kUsualHeadings[place] : 0.0);
    if (place >= 4 && !value["heading"].exists()) report(value, "from the fifth port on, the heading must be stated");
    if (std::abs(rule.heading_degrees) > 360.0) report(value["heading"], "a heading lies between -360 and 360 degrees");
    check_fixed(rule);
    ports_.push_back(std::move(rule));
  }

  // What stands in the rule itself is wrong once, not once a row.
  void check_fixed(const PortRule& rule) {
    std::optional<KindId> kind;
    std::optional<End> end;
    if (rule.kind.given() && !rule.kind.column) kind = named_kind(loading_, rule.kind.rule, rule.kind.rule.text());
    if (rule.end.given() && !rule.end.column) end = named_end(loading_, rule.end.rule, rule.end.rule.text());
    if (kind && end) check_end(loading_, rule.end.rule, *kind, *end);
    if (!rule.size.given() || rule.size.column || loading_.so_far().find_size(rule.size.rule.text())) return;
    std::vector<std::string_view> names;
    for (const Head& head : heads_) names.push_back(head.name);
    const std::string_view text = rule.size.rule.text();
    report(rule.size.rule,
           "'" + std::string(text) + "' is neither a column of the table nor a size" + did_you_mean(text, names));
  }

  void compile_material(const FamilyMaterial& from) {
    MaterialRule rule;
    rule.from = &from;
    rule.name = loading_.so_far().material(from.id).name;
    rule.bore = make_bore_rule(loading_, from.bore, heads_);
    rule.far_material = make_pick(loading_, from.far_material, heads_);
    rule.only = RowChoice::make(loading_, from.only, heads_);
    rule.stocked_only = RowChoice::make(loading_, from.stocked_only, heads_);
    rule.price_column = price_;
    if (from.price.exists()) rule.price_column = unit_column(from.price, "usd", "price");
    rule.rating = pressure_rule(from.rating, "rating");
    if (!rule.price_column && !price_per_inch_ && !price_per_foot_)
      report(table_.where["columns"], "there is no column 'price (usd)'");
    materials_.push_back(std::move(rule));
  }

  /// Nothing where the rule says none.
  std::optional<PressureRule> pressure_rule(const Value& value, std::string_view what) {
    if (!value.exists()) return std::nullopt;
    const std::optional<std::string_view> text = read_text(value, loading_.problems);
    if (!text) return std::nullopt;
    PressureRule rule{column_of(heads_, *text), {}};
    if (rule.column) {
      const std::string& unit = heads_[*rule.column].unit;
      if (unit != "psi" && unit != "bar")
        report(value, "the column '" + std::string(*text) + "' has no unit of pressure");
    } else {
      rule.fixed = read_with(value, quantity::read_pressure, loading_.problems).value_or(psig(1.0));
      check_pressure(loading_, value, rule.fixed, what);
    }
    return rule;
  }

  std::optional<std::size_t> unit_column(const Value& rule, std::string_view unit, std::string_view what) {
    const std::string_view text = read_text(rule, loading_.problems).value_or("");
    const std::optional<std::size_t> column = column_of(heads_, text);
    if (column && heads_[*column].unit == unit) return column;
    std::vector<std::string_view> names;
    for (const Head& head : heads_)
      if (head.unit == unit) names.push_back(head.name);
    report(rule, "'" + std::string(text) + "' is not a " + std::string(what) + " column" + did_you_mean(text, names));
    return std::nullopt;
  }

  // --- once for a row ---

  /// Whether a cell of `stocked` or `made in` says yes for the material. Reports what is no material of the family.
  bool cell_says(const Value& cell, MaterialId material) {
    if (cell.is_text() && (cell.text() == "yes" || cell.text() == "no")) return cell.text() == "yes";
    bool says = false;
    for (const Value& name : read_texts(cell, loading_.problems)) {
      const std::optional<MaterialId> id = named_material(loading_, name);
      if (id && !is_of_family(*id)) report(name, "the family states no material '" + std::string(name.text()) + "'");
      says = says || id == material;
    }
    return says;
  }

  bool is_of_family(MaterialId id) const {
    return std::any_of(family_.materials.begin(), family_.materials.end(),
                       [&](const FamilyMaterial& m) { return m.id == id; });
  }

  void expand(const Row& row) {
    const std::size_t before = loading_.problems.size();
    Part part;
    part.family = family_.id;
    part.closing = family_.closing;
    part.dielectric = family_.dielectric;
    part.one_way = family_.one_way;
    part.arrow = family_.arrow;
    part.cut_to_length = family_.cut_to_length;
    part.straight_tapped = family_.straight_tapped.exists() && straight_tapped_.fits(row);
    part.threaded_when_cut = family_.threaded_when_cut;
    part.flexible = family_.flexible;
    part.close = family_.close;
    part.names_material = title_.names_material();
    if (opens_at_) part.opens_at = pressure_of(*opens_at_, row, "the pressure that opens it");
    if (range_) part.full_scale = pressure_of(*range_, row, "the end of its range");
    part.source = table_.source;
    if (loss_.given()) part.loss = named_loss(loading_, loss_.where(row), loss_.text(row)).value_or(LossItemId{});
    if (branch_loss_.given())
      part.branch_loss = named_loss(loading_, branch_loss_.where(row), branch_loss_.text(row)).value_or(LossItemId{});
    if (across_flats_) part.across_flats = across_flats_->of(row).value_or(Length{});
    if (outside_) part.outside_diameter = outside_->of(row).value_or(Length{});
    if (hose_bore_) part.hose_bore = hose_bore_->of(row).value_or(Length{});
    for (const PortRule& rule : ports_) part.ports.push_back(make_port(rule, row));
    if (loading_.problems.size() > before) return;
    bool made = false;
    for (const MaterialRule& material : materials_) {
      if (made_in_ && !cell_says(row.cells[*made_in_], material.from->id)) continue;
      if (!material.only.fits(row)) continue;
      made = true;
      add_part(part, material, row);
      if (loading_.problems.size() > before) return;
    }
    if (!made) report(row.where, "the row is made in no material");
  }

  Port make_port(const PortRule& rule, const Row& row) {
    Port port;
    port.heading_degrees = rule.heading_degrees;
    const std::optional<KindId> kind = named_kind(loading_, rule.kind.where(row), rule.kind.text(row));
    const std::optional<End> end = named_end(loading_, rule.end.where(row), rule.end.text(row));
    if (!kind || !end || !check_end(loading_, rule.end.where(row), *kind, *end)) return port;
    const std::optional<SizeId> size = size_of_kind(loading_, rule.size.where(row), *kind, rule.size.text(row));
    if (!size) return port;
    port.type = loading_.builder.port_type({*kind, *size, *end});
    const std::optional<Length> reach = rule.reach->of(row);
    if (!reach) report(row.where, "the reach needs a cell that says 'none'");
    port.reach = reach.value_or(Length{});
    if (port.reach < Length{}) report(row.where, "the reach of a port comes out negative");
    return port;
  }

  /// The port's own rule, else the material's, else the family's, else what the kind fixes.
  std::optional<Length> bore_of(const PortRule& port, const MaterialRule& material, const Row& row,
                                const PortType& type) {
    for (const BoreRule* rule : std::initializer_list<const BoreRule*>{&port.bore, &material.bore, &bore_}) {
      if (!rule->given()) continue;
      if (rule->table == nullptr) {
        const std::optional<Length> bore = rule->measure->of(row);
        if (!bore) report(row.where, "the bore needs a cell that says 'none'");
        return bore;
      }
      const std::string& size = loading_.so_far().size_name(type.size);
      const auto found = rule->table->find(size);
      if (found != rule->table->end()) return found->second;
      report(port.size.where(row), "the bores '" + std::string(rule->table_name) + "' have no size '" + size + "'");
      return std::nullopt;
    }
    const JointSize* joint = loading_.so_far().joint_size(type);
    if (joint != nullptr && joint->bore > Length{}) return joint->bore;
    report(port.where, "the port needs a 'bore'; neither the family, the material nor the kind gives one");
    return std::nullopt;
  }

  void check_bore(const Row& row, Length bore, const PortType& type) {
    const JointSize* joint = loading_.so_far().joint_size(type);
    const Length outside = joint == nullptr ? Length{} : joint->outside_diameter;
    if (bore <= Length{} || bore > metres(1.0))
      report(row.where, "the bore of a port comes out at zero, less, or beyond 1 m");
    if (outside > Length{} && bore >= outside && type.end == End::male)
      report(row.where, "the bore of a port comes out wider than the male end that it goes through");
  }

  void add_part(Part part, const MaterialRule& material, const Row& row) {
    part.material = material.from->id;
    part.name = title_.of(row, material.name);
    if (!family_.sold_as.empty()) part.name += ", " + family_.sold_as;
    part.sold_as = family_.sold_as;
    part.size = size_.of(row, material.name);
    part.id = family_.id_text + "/" + loading_.so_far().material(part.material).id + "/" +
              as_id_text(part_id_.of(row, material.name));
    part.stocked = material.from->stocked && material.stocked_only.fits(row) &&
                   (!stocked_ || cell_says(row.cells[*stocked_], part.material));
    if (material.rating) part.rating = pressure_of(*material.rating, row, "its rating");
    part.price = price_of(material, row);
    part.far_material = far_material_of(material, row);
    const auto stands_air = [&](MaterialId id) { return loading_.so_far().material(id).compressed_air; };
    part.air = family_.air.value_or(stands_air(part.material) && stands_air(part.far_material.value_or(part.material)));
    for (std::size_t i = 0; i < ports_.size(); ++i) {
      const PortType type = loading_.so_far().port_type(part.ports[i].type);
      const std::optional<Length> bore = bore_of(ports_[i], material, row, type);
      if (!bore) return;
      check_bore(row, *bore, type);
      part.ports[i].bore = *bore;
    }
    if (const std::optional<PartId> same = loading_.so_far().find_part(part.id)) {
      report(row.where, "the part '" + part.id + "' is already there" + first_place(*same));
      return;
    }
    loading_.builder.add(std::move(part));
    loading_.part_places.push_back(row.where);
  }

  std::string first_place(PartId id) const {
    const Value& first = loading_.part_places[id.row];
    return ", from line " + std::to_string(first.line()) + " of " + first.file();
  }

  GaugePressure pressure_of(const PressureRule& rule, const Row& row, std::string_view what) {
    if (!rule.column) return rule.fixed;
    const std::optional<double> cell = row.numbers[*rule.column];
    if (!cell) report(row.cells[*rule.column], "the part needs " + std::string(what));
    return gauge_pascals(cell.value_or(1.0));
  }

  Price price_of(const MaterialRule& material, const Row& row) {
    const auto cell = [&](std::optional<std::size_t> column) {
      return column ? row.numbers[*column].value_or(0.0) : 0.0;
    };
    const Length length = metres(cell(length_));
    double usd = cell(material.price_column);
    usd += cell(price_per_inch_) * in_inches(length) + cell(price_per_foot_) * in_feet(length);
    const double whole_cents = std::round(usd * material.from->price_factor * 100.0);
    if (whole_cents < 1.0 || whole_cents > kLargestPriceUsd * 100.0)
      report(row.where, "the price comes out below one cent or beyond 100000 usd");
    return cents(static_cast<std::int64_t>(std::clamp(whole_cents, 0.0, kLargestPriceUsd * 100.0)));
  }

  std::optional<MaterialId> far_material_of(const MaterialRule& material, const Row& row) {
    const Pick& pick = material.far_material.given() ? material.far_material : far_material_;
    if (!pick.given() || pick.text(row) == "none") return std::nullopt;
    return named_material(loading_, pick.where(row));
  }

  Loading& loading_;
  const FamilyRule& family_;
  const FamilyTable& table_;
  std::span<const Head> heads_;
  Template title_, size_, part_id_;
  RowChoice straight_tapped_;
  BoreRule bore_;
  Pick loss_, branch_loss_, far_material_;
  std::optional<Measure> across_flats_;
  std::optional<Measure> outside_;
  std::optional<Measure> hose_bore_;
  std::optional<PressureRule> opens_at_, range_;
  std::optional<std::size_t> price_, price_per_inch_, price_per_foot_, length_, stocked_, made_in_;
  std::vector<PortRule> ports_;
  std::vector<MaterialRule> materials_;
  std::vector<Row> rows_;
};

}  // namespace

void expand_table(Loading& loading, const FamilyRule& family, const FamilyTable& table) {
  TableExpansion(loading, family, table).run();
}

}  // namespace riserun::catalog
