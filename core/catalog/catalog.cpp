#include "catalog/catalog.h"

#include <algorithm>
#include <cmath>

namespace riserun::catalog {

namespace {

// Limits of the difference of anodic indexes: 0.25 V for a normal shop, 0.50 V for a dry, controlled place
// (MIL-STD-889 practice, from memory; reference needs.md C26 gives the 0.25 V). Between them the pair is watched.
constexpr double kFineBelowVolts = 0.25;
constexpr double kKeepApartAboveVolts = 0.50;

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

const std::string& notation(const JointKind& kind, End end) {
  switch (end) {
    case End::male: return kind.male_notation;
    case End::female: return kind.female_notation;
    case End::neither: return kind.neither_notation;
  }
  return kind.neither_notation;
}

std::string_view end_name(End end) {
  return end == End::male ? "male" : end == End::female ? "female" : "neither";
}

bool sizes_listed(const std::vector<std::pair<SizeId, SizeId>>& sizes, SizeId a, SizeId b) {
  return std::find(sizes.begin(), sizes.end(), std::pair(a, b)) != sizes.end();
}

bool sides_match(const MatingRule& rule, const PortType& a, const PortType& b) {
  if (rule.kind_a != a.kind || rule.end_a != a.end || rule.kind_b != b.kind || rule.end_b != b.end) return false;
  return rule.sizes.empty() ? a.size == b.size : sizes_listed(rule.sizes, a.size, b.size);
}

bool sides_match(const LookAlike& pair, const PortType& a, const PortType& b) {
  if (pair.kind_a != a.kind || pair.kind_b != b.kind) return false;
  return pair.sizes.empty() ? a.size == b.size : sizes_listed(pair.sizes, a.size, b.size);
}

}  // namespace

std::optional<KindId> Catalog::find_kind(std::string_view id) const {
  return as_id<KindId>(find_row(kinds_, [&](const JointKind& kind) { return kind.id == id; }));
}

std::optional<SizeId> Catalog::find_size(std::string_view name) const {
  return as_id<SizeId>(find_row(sizes_, [&](const std::string& size) { return size == name; }));
}

std::optional<MaterialId> Catalog::find_material(std::string_view id_or_alias) const {
  return as_id<MaterialId>(find_row(materials_, [&](const Material& material) {
    return material.id == id_or_alias || material.name == id_or_alias ||
           std::find(material.aliases.begin(), material.aliases.end(), id_or_alias) != material.aliases.end();
  }));
}

std::optional<FamilyId> Catalog::find_family(std::string_view name_or_alias) const {
  return as_id<FamilyId>(find_row(families_, [&](const Family& family) {
    return family.name == name_or_alias ||
           std::find(family.aliases.begin(), family.aliases.end(), name_or_alias) != family.aliases.end();
  }));
}

std::optional<PartId> Catalog::find_part(std::string_view id) const {
  const auto found = part_by_id_.find(std::string(id));
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

const Seal* Catalog::seal(std::string_view name) const {
  const auto found = std::find_if(seals_.begin(), seals_.end(), [&](const Seal& seal) { return seal.name == name; });
  return found == seals_.end() ? nullptr : &*found;
}

GalvanicVerdict Catalog::galvanic(MaterialId a, MaterialId b) const {
  const Material& first = material(a);
  const Material& second = material(b);
  if (!first.metal || !second.metal) return GalvanicVerdict::fine;
  const double difference = std::abs(first.anodic_index_volts - second.anodic_index_volts);
  if (difference <= kFineBelowVolts) return GalvanicVerdict::fine;
  return difference <= kKeepApartAboveVolts ? GalvanicVerdict::watch : GalvanicVerdict::keep_apart;
}

std::string Catalog::written(PortTypeId type) const {
  const PortType& port = port_type(type);
  return size_name(port.size) + " " + notation(kind(port.kind), port.end);
}

std::string Catalog::spelled(PortTypeId type) const {
  const PortType& port = port_type(type);
  return size_name(port.size) + " " + kind(port.kind).id + " " + std::string(end_name(port.end));
}

KindId CatalogBuilder::add(JointKind kind) {
  catalog_.kinds_.push_back(std::move(kind));
  return KindId{static_cast<std::uint32_t>(catalog_.kinds_.size() - 1)};
}

MaterialId CatalogBuilder::add(Material material) {
  catalog_.materials_.push_back(std::move(material));
  return MaterialId{static_cast<std::uint32_t>(catalog_.materials_.size() - 1)};
}

FamilyId CatalogBuilder::add(Family family) {
  catalog_.families_.push_back(std::move(family));
  return FamilyId{static_cast<std::uint32_t>(catalog_.families_.size() - 1)};
}

LossItemId CatalogBuilder::add(LossItem item) {
  catalog_.loss_items_.push_back(std::move(item));
  return LossItemId{static_cast<std::uint32_t>(catalog_.loss_items_.size() - 1)};
}

void CatalogBuilder::add(MatingRule rule) { catalog_.rules_.push_back(std::move(rule)); }
void CatalogBuilder::add(Seal seal) { catalog_.seals_.push_back(std::move(seal)); }
void CatalogBuilder::add(LookAlike look_alike) { catalog_.look_alikes_.push_back(std::move(look_alike)); }

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
  catalog_.sizes_.emplace_back(name);
  return SizeId{static_cast<std::uint32_t>(catalog_.sizes_.size() - 1)};
}

PortTypeId CatalogBuilder::port_type(const PortType& type) {
  const PortTypeId next{static_cast<std::uint32_t>(catalog_.port_types_.size())};
  const auto [found, is_new] = catalog_.port_type_by_key_.emplace(key_of(type), next);
  if (is_new) catalog_.port_types_.push_back(type);
  return found->second;
}

Catalog CatalogBuilder::build() && {
  for (std::uint32_t row = 0; row < catalog_.kinds_.size(); ++row) {
    for (const JointSize& size : catalog_.kinds_[row].sizes)
      for (const End end : {End::male, End::female, End::neither})
        if (!notation(catalog_.kinds_[row], end).empty()) port_type({KindId{row}, size.size, end});
  }
  const std::size_t count = catalog_.port_types_.size();
  catalog_.uses_.assign(count, {});
  for (std::uint32_t row = 0; row < catalog_.parts_.size(); ++row) {
    const std::vector<Port>& ports = catalog_.parts_[row].ports;
    for (std::size_t port = 0; port < ports.size(); ++port)
      catalog_.uses_[ports[port].type.row].push_back({PartId{row}, static_cast<std::uint8_t>(port)});
  }
  // A few hundred port types and a few dozen rules: the plain double loop is well under a millisecond.
  catalog_.mates_.assign(count, {});
  for (std::uint32_t a = 0; a < count; ++a) {
    for (std::uint32_t b = 0; b < count; ++b) {
      const PortType& first = catalog_.port_types_[a];
      const PortType& second = catalog_.port_types_[b];
      const auto rule = find_row(catalog_.rules_, [&](const MatingRule& r) {
        return sides_match(r, first, second) || sides_match(r, second, first);
      });
      if (rule) catalog_.mates_[a].push_back({PortTypeId{b}, *rule});
    }
  }
  return std::move(catalog_);
}

}  // namespace riserun::catalog
