#include "bench/chain/made_catalog.h"

#include <fmt/format.h>

#include <random>

namespace riserun::bench {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

namespace {

// How far apart the two sizes of a reducing part may be.
constexpr int kReducingSteps = 4;

/// One row of a table: what the makes of a part have in common.
struct TableRow {
  FamilyId family;
  std::string name;
  std::vector<PortTypeId> ports;
  double price_usd = 1.0;
  double reach_mm = 20.0;
  bool closing = false;
};

class Maker {
 public:
  explicit Maker(const MadeSizes& sizes) : sizes_(sizes) {}
  Catalog run() &&;

 private:
  void add_kinds();
  void add_families();
  void add_rows_of(std::uint32_t kind);
  void add_row(std::size_t family, std::vector<PortTypeId> ports, int size);
  void add_makes(const TableRow& row, std::size_t count);
  PortTypeId type(std::uint32_t kind, int size, End end) {
    return builder_.port_type({KindId{kind}, builder_.size(size_name(size)), end});
  }
  static std::string size_name(int size) { return fmt::format("DN {}", size + 1); }
  double dice(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_()) / static_cast<double>(std::mt19937_64::max());
  }

  MadeSizes sizes_;
  CatalogBuilder builder_;
  std::mt19937_64 engine_{20};
  std::vector<TableRow> rows_;
};

constexpr const char* kFamilies[] = {"nipple",  "coupling", "elbow",   "street elbow", "union",
                                     "reducer", "bushing",  "adapter", "tee",          "plug"};
enum : std::size_t { nipple, coupling, elbow, street_elbow, a_union, reducer, bushing, adapter, tee, plug };

void Maker::add_kinds() {
  for (int row = 0; row < sizes_.kinds; ++row) {
    JointKind kind;
    kind.id = kind.name = fmt::format("K{}", row + 1);
    kind.male_notation = "M" + kind.id;
    kind.female_notation = "F" + kind.id;
    kind.threaded = kind.tapered = true;
    for (int s = 0; s < sizes_.sizes; ++s) {
      JointSize size;
      size.size = builder_.size(size_name(s));
      size.outside_diameter = millimetres(10.0 + 5.0 * s);
      size.hand_tight_engagement = millimetres(6.0 + 0.5 * s);
      size.wrench_engagement = millimetres(3.0);
      size.make_up_tolerance = millimetres(1.5);
      kind.sizes.push_back(size);
    }
    const KindId id = builder_.add(std::move(kind));
    MatingRule rule;
    rule.kind_a = rule.kind_b = id;
    rule.end_a = End::male;
    rule.end_b = End::female;
    rule.seal = "thread sealant";
    builder_.add(rule);
  }
}

void Maker::add_families() {
  for (const char* id : {"iron", "galvanized", "brass", "stainless", "nylon"}) {
    Material material;
    material.id = material.name = id;
    material.metal = material.id != "nylon";
    material.roughness = millimetres(0.05);
    builder_.add(material);
  }
  for (const char* name : kFamilies) {
    Family family;
    family.name = name;
    family.is_bushing = family.name == "bushing";
    if (family.name == "plug") family.role = Role::plug;
    builder_.add(family);
  }
}

void Maker::add_row(std::size_t family, std::vector<PortTypeId> ports, int size) {
  TableRow row;
  row.family = FamilyId{static_cast<std::uint32_t>(family)};
  row.name = fmt::format("{}/{}", kFamilies[family], rows_.size());
  row.ports = std::move(ports);
  row.price_usd = dice(1.0, 4.0) * (1.0 + 0.4 * size);
  row.reach_mm = dice(20.0, 30.0) + 2.0 * size;
  row.closing = family == a_union;
  rows_.push_back(std::move(row));
}

void Maker::add_rows_of(std::uint32_t kind) {
  for (int s = 0; s < sizes_.sizes; ++s) {
    const PortTypeId male = type(kind, s, End::male);
    const PortTypeId female = type(kind, s, End::female);
    add_row(nipple, {male, male}, s);
    add_row(coupling, {female, female}, s);
    add_row(elbow, {female, female}, s);
    add_row(street_elbow, {male, female}, s);
    add_row(a_union, {female, female}, s);
    add_row(tee, {female, female, female}, s);
    add_row(plug, {male}, s);
    for (int smaller = std::max(0, s - kReducingSteps); smaller < s; ++smaller) {
      add_row(reducer, {female, type(kind, smaller, End::female)}, s);
      add_row(bushing, {male, type(kind, smaller, End::female)}, s);
    }
    for (std::uint32_t other = kind + 1; other < static_cast<std::uint32_t>(sizes_.kinds) && other <= kind + 2; ++other)
      add_row(adapter, {male, type(other, s, End::female)}, s);
  }
}

// Materials, lengths and classes of one row: a make more is a little dearer and longer than the one before it.
void Maker::add_makes(const TableRow& row, std::size_t count) {
  for (std::size_t make = 0; make < count; ++make) {
    Part part;
    part.id = fmt::format("{}/{}", row.name, make);
    part.name = part.size = part.id;
    part.family = row.family;
    part.material = MaterialId{static_cast<std::uint32_t>(make % 5)};
    for (const PortTypeId& port : row.ports) {
      Port& made = part.ports.emplace_back();
      made.type = port;
      made.bore = millimetres(8.0 + 0.1 * row.reach_mm);
      made.reach = millimetres(row.reach_mm + 5.0 * static_cast<double>(make / 5));
      made.heading_degrees = part.ports.size() == 1 ? 180.0 : 0.0;
    }
    part.price = cents(std::llround(100.0 * row.price_usd * dice(0.8, 2.5)) + static_cast<std::int64_t>(make));
    part.rating = psig(150.0 + 150.0 * static_cast<double>(make % 3));
    part.stocked = make % 4 != 3;
    part.closing = row.closing;
    part.source = "invented";
    builder_.add(std::move(part));
  }
}

Catalog Maker::run() && {
  add_kinds();
  add_families();
  for (std::uint32_t kind = 0; kind < static_cast<std::uint32_t>(sizes_.kinds); ++kind) add_rows_of(kind);
  for (std::size_t row = 0; row < rows_.size(); ++row)
    add_makes(rows_[row], sizes_.parts * (row + 1) / rows_.size() - sizes_.parts * row / rows_.size());
  return std::move(builder_).build();
}

}  // namespace

Catalog made_catalog(const MadeSizes& sizes) { return Maker(sizes).run(); }

SourceText made_family_file(std::size_t parts) {
  constexpr const char* kSizes[] = {"1/8", "1/4", "3/8", "1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3", "4"};
  constexpr const char* kEnds[][2] = {{"male", "male"}, {"female", "female"}, {"male", "female"}, {"female", "male"}};
  constexpr std::size_t kLengths = 40;
  constexpr std::size_t kPartsPerFamily = std::size(kSizes) * kLengths * 2;
  std::string text = "families:\n";
  for (std::size_t family = 0; family * kPartsPerFamily < parts; ++family) {
    const auto& [near, far] = kEnds[family % std::size(kEnds)];
    text += fmt::format(
        "  - name: made piece {0}\n    standard: none\n    shelf: pipe fittings\n"
        "    title: \"{{size}} x {{length}} made piece {0}\"\n    size: \"{{size}} x {{length}} in\"\n"
        "    id: \"{{size}}x{{length}}\"\n    ports:\n"
        "      - {{kind: npt, end: {1}, size: size, reach: half of length}}\n"
        "      - {{kind: npt, end: {2}, size: size, reach: half of length}}\n"
        "    materials:\n      black-iron: {{rating: 300 psi, bore: schedule 40}}\n"
        "      galvanized: {{rating: 300 psi, bore: schedule 40, price factor: 1.15}}\n"
        "    source: invented\n    table:\n      columns: [size, length (in), price (usd), stocked]\n      rows:\n",
        family + 1, near, far);
    for (const char* size : kSizes) {
      text += fmt::format("        - [{}, [", size);
      for (std::size_t length = 0; length < kLengths; ++length)
        text += fmt::format("{}{}", length ? ", " : "", length + 4);
      text += fmt::format("], {}.50, yes]\n", family % 7 + 1);
    }
  }
  return {"made.yaml", std::move(text)};
}

}  // namespace riserun::bench
