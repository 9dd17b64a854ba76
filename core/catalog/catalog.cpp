#include "catalog/catalog.h"

#include "quantity/read.h"

#include <algorithm>
#include <cmath>

namespace riserun::catalog {

namespace {

// The indexes are given to 0.05 V: a difference of 0.45 V must not become more by the rounding of its last bit.
constexpr double kVoltsRounding = 1e-9;

std::uint64_t key_of(const PortType& type) {
  return (static_cast<std::uint64_t>(type.kind.row) << 34) | (static_cast<std::uint64_t>(type.size.row) << 2) |
         static_cast<std::uint64_t>(type.end);
}

template <class Table, class Matches>
auto find_row(const Table& table, Matches matches) -> std::optional<std::uint32_t> {
  const auto found = std::find_if(table.begin(), table.end(), matches);
  if (found == table.end()) return std::nullopt;
  return static_cast<std::uint32_t>(found - table.begin());
}

template <class IdType>
std::optional<IdType> as_id(std::optional<std::uint32_t> row) {
  if (!row) return std::nullopt;
  return IdType{*row};
}

const std::string& notation_of(const JointKind& kind, End end) {
  switch (end) {
    case End::male:
      return kind.male_notation;
    case End::female:
      return kind.female_notation;
    case End::neither:
      return kind.neither_notation;
  }
  return kind.neither_notation;
}

bool sizes_listed(const std::vector<std::pair<SizeId, SizeId>>& sizes, SizeId a, SizeId b) {
  return std::find(sizes.begin(), sizes.end(), std::pair(a, b)) != sizes.end();
}

bool sides_match(const LookAlike& pair, const PortType& a, const PortType& b) {
  if (pair.kind_a != a.kind || pair.kind_b != b.kind) return false;
  if (pair.end_a.value_or(a.end) != a.end || pair.end_b.value_or(b.end) != b.end) return false;
  return pair.sizes.empty() ? a.size == b.size : sizes_listed(pair.sizes, a.size, b.size);
}

}  // namespace

std::optional<KindId> Catalog::find_kind(std::string_view id) const {
  return as_id<KindId>(find_row(kinds_, [&](const JointKind& kind) { return kind.id == id; }));
}

bool Catalog::a_part_has_size(std::string_view name) const {
  const std::optional<SizeId> size = find_size(name);
  for (std::uint32_t row = 0; size && row < port_types_.size(); ++row)
    if (port_types_[row].size == *size && !uses_[row].empty()) return true;
  return false;
}

std::optional<SizeId> Catalog::find_size(std::string_view name) const {
  const auto found = size_by_name_.find(name);
  if (found == size_by_name_.end()) return std::nullopt;
  return found->second;
}

std::optional<MaterialId> Catalog::find_material(std::string_view id_or_alias) const {
  return as_id<MaterialId>(find_row(materials_, [&](const Material& material) {
    return material.id == id_or_alias || material.name == id_or_alias ||
           std::find(material.aliases.begin(), material.aliases.end(), id_or_alias) != material.aliases.end();
  }));
}

std::optional<FamilyId> Catalog::find_family(std::string_view name_or_alias) const {
  const auto found = family_by_name_.find(name_or_alias);
  if (found == family_by_name_.end()) return std::nullopt;
  return found->second;
}

std::optional<PartId> Catalog::find_part(std::string_view id) const {
  const auto found = part_by_id_.find(id);
  if (found == part_by_id_.end()) return std::nullopt;
  return found->second;
}

std::optional<PortTypeId> Catalog::find_port_type(const PortType& type) const {
  const auto found = port_type_by_key_.find(key_of(type));
  if (found == port_type_by_key_.end()) return std::nullopt;
  return found->second;
}

const JointSize* Catalog::joint_size(const PortType& type) const {
  const std::vector<JointSize>& sizes = kinds_[type.kind.row].sizes;
  const auto found = std::find_if(sizes.begin(), sizes.end(), [&](const JointSize& s) { return s.size == type.size; });
  return found == sizes.end() ? nullptr : &*found;
}

const MatingRule* Catalog::mating_rule(PortTypeId a, PortTypeId b) const {
  for (const Mate& mate : mates_[a.row])
    if (mate.other == b) return &rules_[mate.rule];
  return nullptr;
}

const LookAlike* Catalog::look_alike(const PortType& a, const PortType& b) const {
  for (const LookAlike& pair : look_alikes_)
    if (sides_match(pair, a, b) || sides_match(pair, b, a)) return &pair;
  return nullptr;
}

const Duty* Catalog::duty(PartId part) const {
  const std::uint32_t row = duty_of_part_[part.row];
  return row == UINT32_MAX ? nullptr : &duties_[row];
}

const Seal* Catalog::seal(std::string_view name) const {
  const auto found = std::find_if(seals_.begin(), seals_.end(), [&](const Seal& seal) { return seal.name == name; });
  return found == seals_.end() ? nullptr : &*found;
}

GalvanicVerdict Catalog::galvanic(MaterialId a, MaterialId b) const {
  const Material& first = material(a);
  const Material& second = material(b);
  if (!first.metal || !second.metal) return GalvanicVerdict::fine;
  const double difference = std::abs(first.anodic_index_volts - second.anodic_index_volts);
  const Material& eaten = first.anodic_index_volts > second.anodic_index_volts ? first : second;
  if (difference <= galvanic_.watch_above_volts + kVoltsRounding)
    return eaten.pits && difference > kVoltsRounding ? GalvanicVerdict::watch : GalvanicVerdict::fine;
  return difference <= galvanic_.keep_apart_above_volts + kVoltsRounding ? GalvanicVerdict::watch
                                                                         : GalvanicVerdict::keep_apart;
}

double Catalog::line_inches(PortTypeId type) const {
  const PortType& port = port_type(type);
  const double named = nominal_inches(port.size);
  constexpr double kOverItsName = 0.125;
  return kind(port.kind).by_outside ? std::max(named - kOverItsName, named / 2.0) : named;
}

bool Catalog::same_metal(MaterialId a, MaterialId b) const {
  if (a == b) return true;
  const Material& first = material(a);
  const Material& second = material(b);
  return first.metal && second.metal &&
         std::abs(first.anodic_index_volts - second.anodic_index_volts) <= kVoltsRounding;
}

bool Catalog::is_coat_and_metal(MaterialId a, MaterialId b) const {
  const auto lies_on = [&](MaterialId coat, MaterialId metal) {
    const std::string& under = material(coat).coat_on;
    const std::optional<MaterialId> base = under.empty() ? std::nullopt : find_material(under);
    return base && same_metal(*base, metal);
  };
  return lies_on(a, b) || lies_on(b, a);
}

std::optional<MaterialId> Catalog::metal_of_tube(PortTypeId type) const {
  std::optional<MaterialId> metal;
  bool is_tubes = false;
  /// False: what has such an end is not of one metal.
  const auto look_at = [&](PortTypeId end) {
    for (const PortUse& use : uses(end)) {
      const MaterialId own = part(use.part).material_at(use.port);
      if (!material(own).metal || (metal && *metal != own)) return false;
      metal = own;
      is_tubes = is_tubes || part(use.part).cut_to_length;
    }
    return true;
  };
  if (look_at(type) && is_tubes) return metal;
  metal.reset();
  is_tubes = false;
  for (const Mate& mate : mates(type))
    if (!look_at(mate.other)) return std::nullopt;
  return is_tubes ? metal : std::nullopt;
}

std::string Catalog::written(PortTypeId type) const {
  const PortType& port = port_type(type);
  return size_name(port.size) + " " + notation(port.kind, port.end);
}

std::string Catalog::spelled(PortTypeId type) const {
  const PortType& port = port_type(type);
  return size_name(port.size) + " " + kind(port.kind).id + " " + std::string(end_name(port.end));
}

const std::string& Catalog::notation(KindId kind, End end) const { return notation_of(kinds_[kind.row], end); }

KindId CatalogBuilder::add(JointKind kind) {
  catalog_.kinds_.push_back(std::move(kind));
  return KindId{static_cast<std::uint32_t>(catalog_.kinds_.size() - 1)};
}

MaterialId CatalogBuilder::add(Material material) {
  catalog_.materials_.push_back(std::move(material));
  return MaterialId{static_cast<std::uint32_t>(catalog_.materials_.size() - 1)};
}

FamilyId CatalogBuilder::add(Family family) {
  const FamilyId id{static_cast<std::uint32_t>(catalog_.families_.size())};
  catalog_.family_by_name_.emplace(family.name, id);  // where a name is there already, the first family keeps it
  for (const std::string& alias : family.aliases) catalog_.family_by_name_.emplace(alias, id);
  catalog_.families_.push_back(std::move(family));
  return id;
}

LossItemId CatalogBuilder::add(LossItem item) {
  catalog_.loss_items_.push_back(std::move(item));
  return LossItemId{static_cast<std::uint32_t>(catalog_.loss_items_.size() - 1)};
}

void CatalogBuilder::add(MatingRule rule) { catalog_.rules_.push_back(std::move(rule)); }
void CatalogBuilder::add(Seal seal) { catalog_.seals_.push_back(std::move(seal)); }
void CatalogBuilder::set(GalvanicLimits limits) { catalog_.galvanic_ = std::move(limits); }
void CatalogBuilder::add(LookAlike look_alike) { catalog_.look_alikes_.push_back(std::move(look_alike)); }

void CatalogBuilder::add(ForeignThread thread) { catalog_.foreign_threads_.push_back(std::move(thread)); }

void CatalogBuilder::add(Duty duty) { catalog_.duties_.push_back(std::move(duty)); }

PartId CatalogBuilder::add(Part part) {
  const PartId id{static_cast<std::uint32_t>(catalog_.parts_.size())};
  catalog_.part_by_id_.emplace(part.id, id);
  catalog_.parts_.push_back(std::move(part));
  return id;
}

void CatalogBuilder::replace(PartId id, Part part) {
  catalog_.part_by_id_.erase(catalog_.parts_[id.row].id);
  catalog_.part_by_id_.emplace(part.id, id);
  catalog_.parts_[id.row] = std::move(part);
}

SizeId CatalogBuilder::size(std::string_view name) {
  if (const std::optional<SizeId> known = catalog_.find_size(name)) return *known;
  const SizeId id{static_cast<std::uint32_t>(catalog_.sizes_.size())};
  catalog_.sizes_.emplace_back(name);
  const quantity::Reading<double> number = quantity::read_number(name);
  catalog_.nominal_inches_.push_back(std::holds_alternative<double>(number) ? std::get<double>(number) : 0.0);
  catalog_.size_by_name_.emplace(name, id);
  return id;
}

PortTypeId CatalogBuilder::port_type(const PortType& type) {
  const PortTypeId next{static_cast<std::uint32_t>(catalog_.port_types_.size())};
  const auto [found, is_new] = catalog_.port_type_by_key_.emplace(key_of(type), next);
  if (is_new) catalog_.port_types_.push_back(type);
  return found->second;
}

void CatalogBuilder::add_mates(std::uint32_t rule_row, PortTypeId a, const PortType& other) {
  const std::optional<PortTypeId> b = catalog_.find_port_type(other);
  if (!b) return;
  catalog_.mates_[a.row].push_back({*b, rule_row});
  if (*b != a) catalog_.mates_[b->row].push_back({a, rule_row});
}

// Each rule looks up the few ends that it joins; comparing every pair of ends with every rule would cost far more than
// reading the files.
void CatalogBuilder::index_mates() {
  const std::size_t count = catalog_.port_types_.size();
  catalog_.mates_.assign(count, {});
  for (std::uint32_t row = 0; row < catalog_.rules_.size(); ++row) {
    const MatingRule& rule = catalog_.rules_[row];
    for (std::uint32_t a = 0; a < count; ++a) {
      const PortType& type = catalog_.port_types_[a];
      if (type.kind != rule.kind_a || type.end != rule.end_a) continue;
      if (rule.sizes.empty()) add_mates(row, PortTypeId{a}, {rule.kind_b, type.size, rule.end_b});
      for (const auto& [size_a, size_b] : rule.sizes)
        if (size_a == type.size) add_mates(row, PortTypeId{a}, {rule.kind_b, size_b, rule.end_b});
    }
  }
  for (std::vector<Mate>& mates : catalog_.mates_) {  // in the order of the ends; the first rule for a pair holds
    std::sort(mates.begin(), mates.end(),
              [](const Mate& a, const Mate& b) { return std::pair(a.other, a.rule) < std::pair(b.other, b.rule); });
    const auto same = [](const Mate& a, const Mate& b) { return a.other == b.other; };
    mates.erase(std::unique(mates.begin(), mates.end(), same), mates.end());
  }
}

void CatalogBuilder::index_duties() {
  const auto names = [](const auto& list, auto id) { return std::find(list.begin(), list.end(), id) != list.end(); };
  catalog_.duty_of_part_.assign(catalog_.parts_.size(), UINT32_MAX);
  for (std::size_t row = 0; row < catalog_.parts_.size(); ++row) {
    int closest = -1;
    for (std::uint32_t i = 0; i < catalog_.duties_.size(); ++i) {
      const Duty& duty = catalog_.duties_[i];
      const bool by_family = names(duty.families, catalog_.parts_[row].family);
      const bool by_material = names(duty.materials, catalog_.parts_[row].material);
      if ((!duty.families.empty() && !by_family) || (!duty.materials.empty() && !by_material)) continue;
      const int closeness = (by_family ? 2 : 0) + (by_material ? 1 : 0);
      if (closeness < closest) continue;
      closest = closeness;
      catalog_.duty_of_part_[row] = i;
    }
  }
}

Catalog CatalogBuilder::build() && {
  for (std::uint32_t row = 0; row < catalog_.kinds_.size(); ++row) {
    for (const JointSize& size : catalog_.kinds_[row].sizes)
      for (const End end : {End::male, End::female, End::neither})
        if (!notation_of(catalog_.kinds_[row], end).empty()) port_type({KindId{row}, size.size, end});
  }
  const std::size_t count = catalog_.port_types_.size();
  catalog_.uses_.assign(count, {});
  for (std::uint32_t row = 0; row < catalog_.parts_.size(); ++row) {
    const std::vector<Port>& ports = catalog_.parts_[row].ports;
    for (std::size_t port = 0; port < ports.size(); ++port)
      catalog_.uses_[ports[port].type.row].push_back({PartId{row}, static_cast<std::uint8_t>(port)});
  }
  index_mates();
  index_duties();
  return std::move(catalog_);
}

}  // namespace riserun::catalog
