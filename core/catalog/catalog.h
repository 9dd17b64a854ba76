// The whole catalog as one immutable value: kinds of joint, mating rules, materials, families and the parts that they
// expand to. Made by a CatalogBuilder (from files, or in a test from a few lines of code) and then never changed.
#pragma once

#include "catalog/duty.h"
#include "catalog/ids.h"
#include "catalog/joint.h"
#include "catalog/part.h"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace riserun::catalog {

/// One way in which two open ends go together.
struct Mate {
  PortTypeId other;
  std::uint32_t rule = 0;  // row of Catalog::mating_rules
};

/// A port of a part, as seen from the port's type.
struct PortUse {
  PartId part;
  std::uint8_t port = 0;
  bool operator==(const PortUse&) const = default;
};

/// Lets a table keyed by strings be asked with a string_view.
struct TextHash {
  using is_transparent = void;
  std::size_t operator()(std::string_view text) const noexcept { return std::hash<std::string_view>()(text); }
};

class Catalog {
 public:
  std::span<const JointKind> kinds() const { return kinds_; }
  std::span<const MatingRule> mating_rules() const { return rules_; }
  std::span<const Seal> seals() const { return seals_; }
  std::span<const LookAlike> look_alikes() const { return look_alikes_; }
  std::span<const ForeignThread> foreign_threads() const { return foreign_threads_; }
  std::span<const Material> materials() const { return materials_; }
  const GalvanicLimits& galvanic_limits() const { return galvanic_; }
  std::span<const Family> families() const { return families_; }
  std::span<const LossItem> loss_items() const { return loss_items_; }
  std::span<const Part> parts() const { return parts_; }
  std::span<const Duty> duties() const { return duties_; }
  std::span<const PortType> port_types() const { return port_types_; }

  const JointKind& kind(KindId id) const { return kinds_[id.row]; }
  const std::string& size_name(SizeId id) const { return sizes_[id.row]; }
  /// The number that a nominal size is called by, 1.25 of `1-1/4`: a name that can be compared and that formulas over
  /// nominal pipe sizes ask for, never a length of anything. 0: its name is no number.
  double nominal_inches(SizeId id) const { return nominal_inches_[id.row]; }
  /// Inches of the line that a port is of: its nominal size; of a kind that names the outside diameter of its tube 1/8
  /// in less, as copper tube is named (ASTM B88), and half of it at least. 0 where its size is no number.
  double line_inches(PortTypeId type) const;
  std::size_t size_count() const { return sizes_.size(); }
  const Material& material(MaterialId id) const { return materials_[id.row]; }
  const Family& family(FamilyId id) const { return families_[id.row]; }
  const LossItem& loss_item(LossItemId id) const { return loss_items_[id.row]; }
  const Part& part(PartId id) const { return parts_[id.row]; }
  const PortType& port_type(PortTypeId id) const { return port_types_[id.row]; }

  std::optional<KindId> find_kind(std::string_view id) const;
  std::optional<SizeId> find_size(std::string_view name) const;
  /// Of a finished catalog: whether a part has a port of that size; the 45 of an elbow is none, though a metric thread
  /// is called so.
  bool a_part_has_size(std::string_view name) const;
  std::optional<MaterialId> find_material(std::string_view id_or_alias) const;
  std::optional<FamilyId> find_family(std::string_view name_or_alias) const;
  std::optional<PartId> find_part(std::string_view id) const;
  std::optional<PortTypeId> find_port_type(const PortType& type) const;

  /// Two catalogs made of one, by adding parts and by replacing them, in which that came to the same.
  bool same_parts(const Catalog& other) const {
    return parts_ == other.parts_ && sizes_ == other.sizes_ && port_types_ == other.port_types_;
  }

  /// What the kind's table says of that size; nullptr when the kind has no such size.
  const JointSize* joint_size(const PortType& type) const;
  /// All open ends that go onto this one, in a fixed order.
  std::span<const Mate> mates(PortTypeId type) const { return mates_[type.row]; }
  /// The rule by which a goes together with b; nullptr: they do not.
  const MatingRule* mating_rule(PortTypeId a, PortTypeId b) const;
  /// Why a and b must not be joined although they look alike; nullptr: no such trap.
  const LookAlike* look_alike(const PortType& a, const PortType& b) const;
  /// All ports of parts with that type, in part order.
  std::span<const PortUse> uses(PortTypeId type) const { return uses_[type.row]; }
  const Seal* seal(std::string_view name) const;
  /// What the part stands: the duty that names its family goes before one that names its material only, both before
  /// either; of equals the last one stated. nullptr: nothing is proved.
  const Duty* duty(PartId part) const;

  /// Two metals in the same water: by the difference of their anodic index. Non-metals are always fine.
  GalvanicVerdict galvanic(MaterialId a, MaterialId b) const;
  /// One and the same, or two metals at one place of the galvanic series: black iron, forged and mild steel are all
  /// iron.
  bool same_metal(MaterialId a, MaterialId b) const;
  /// One of the two is a coat on the other, or on what is the same metal (galvanized and black iron).
  bool is_coat_and_metal(MaterialId a, MaterialId b) const;
  /// The metal of a tube's end: that of every part which has such an end, where some are cut from the length; of what
  /// such ends alone go into (a solder cup) theirs. nullopt: its kind does not tell it.
  std::optional<MaterialId> metal_of_tube(PortTypeId type) const;

  /// `1-1/4 FNPT`: size, then the kind's notation for that end.
  std::string written(PortTypeId type) const;
  /// `1-1/4 npt female`: size, kind id, end, as JSON gives them.
  std::string spelled(PortTypeId type) const;
  /// How that end of that kind is written after its size; empty: the kind has no such end.
  const std::string& notation(KindId kind, End end) const;

 private:
  friend class CatalogBuilder;
  std::vector<JointKind> kinds_;
  std::vector<std::string> sizes_;
  std::vector<double> nominal_inches_;  // by size row
  std::vector<MatingRule> rules_;
  std::vector<Seal> seals_;
  std::vector<LookAlike> look_alikes_;
  std::vector<ForeignThread> foreign_threads_;
  std::vector<Material> materials_;
  GalvanicLimits galvanic_;
  std::vector<Family> families_;
  std::vector<LossItem> loss_items_;
  std::vector<Part> parts_;
  std::vector<Duty> duties_;
  std::vector<std::uint32_t> duty_of_part_;  // row of duties_; UINT32_MAX: none
  std::vector<PortType> port_types_;
  std::vector<std::vector<Mate>> mates_;
  std::vector<std::vector<PortUse>> uses_;
  std::unordered_map<std::string, SizeId, TextHash, std::equal_to<>> size_by_name_;
  std::unordered_map<std::string, PartId, TextHash, std::equal_to<>> part_by_id_;
  std::unordered_map<std::string, FamilyId, TextHash, std::equal_to<>> family_by_name_;  // by its aliases, too
  std::unordered_map<std::uint64_t, PortTypeId> port_type_by_key_;
};

/// Gathers the tables and then yields the catalog with its indexes. Adding to a table returns the row it got.
class CatalogBuilder {
 public:
  CatalogBuilder() = default;
  /// Starts from a finished catalog, to add a user's own parts to it.
  explicit CatalogBuilder(const Catalog& base) : catalog_(base) {}
  explicit CatalogBuilder(Catalog&& base) : catalog_(std::move(base)) {}

  KindId add(JointKind kind);
  MaterialId add(Material material);
  FamilyId add(Family family);
  LossItemId add(LossItem item);
  void add(MatingRule rule);
  void add(Seal seal);
  void add(LookAlike look_alike);
  void add(ForeignThread thread);
  void add(Duty duty);
  void set(GalvanicLimits limits);
  /// The part's id must not have been used before.
  PartId add(Part part);
  void replace(PartId id, Part part);

  /// The row of that size name, made when it is new.
  SizeId size(std::string_view name);
  /// The row of that port type, made when it is new.
  PortTypeId port_type(const PortType& type);

  const Catalog& so_far() const { return catalog_; }
  /// The finished catalog. Every size of every kind has a port type for each end that the kind has, so that a port can
  /// be named although no part has it.
  Catalog build() &&;

 private:
  void index_mates();
  void index_duties();
  void add_mates(std::uint32_t rule_row, PortTypeId a, const PortType& other);

  Catalog catalog_;
};

}  // namespace riserun::catalog
