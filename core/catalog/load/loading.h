// What the files that load the parts of a catalog share. For core/catalog's own files only.
#pragma once

#include "catalog/catalog.h"
#include "catalog/yaml/fields.h"
#include "catalog/yaml/nearest_name.h"
#include "quantity/reading.h"

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace riserun::catalog {

/// A table of bores by size name: `schedule 40`.
using BoreTable = std::unordered_map<std::string, Length, TextHash, std::equal_to<>>;

/// One load: what has been gathered so far, and where it came from.
struct Loading {
  CatalogBuilder& builder;
  Problems& problems;
  std::unordered_map<std::string, BoreTable, TextHash, std::equal_to<>> bores;
  std::vector<Value> part_places;        // by part row, for the parts of this load
  std::vector<Value> rule_places;        // by mating rule
  std::vector<Value> look_alike_places;  // by look-alike

  const Catalog& so_far() const { return builder.so_far(); }
};

void load_materials(Loading& loading, const Value& root);
void load_joints(Loading& loading, const Value& root);
/// How a kind is told by measuring it; a problem where something is missing or makes no sense.
Recognition load_recognition(Loading& loading, const Value& value, bool threaded);
void load_mating_rule(Loading& loading, const Value& value);
void load_look_alike(Loading& loading, const Value& value);
void load_losses(Loading& loading, const Value& root);
void load_bores(Loading& loading, const Value& root);
void load_families(Loading& loading, const Value& list);
/// After the families that they name.
void load_duties(Loading& loading, const Value& list);
void load_own_parts(Loading& loading, const Value& list);
/// What can be seen only when all is there: ends that nothing goes onto, rules that join nothing, look-alikes that a
/// rule joins.
void check_joints_of(const Catalog& catalog, const Loading& loading, Problems& problems);

/// `role` of a family or of an own part; nothing where it is not said.
std::optional<Role> read_role(Fields& fields);
/// What a role asks for: a part with one port has one that says so, a plug has one port, a relief valve its set
/// pressure, a gauge or regulator its range; and no other part has these, nor what only a check valve has.
void check_role(Problems& problems, const Value& map, Role role, std::size_t ports);
/// A family of check valves says what closes them and what opens them. A part of one's own may leave both out.
void check_check_valve(Problems& problems, const Value& map, Role role);
/// `check` of a family or of an own part.
CheckKind read_check(Fields& fields);

// Names of things that must exist; each reports what is wrong, with the nearest name that does.
std::optional<KindId> named_kind(Loading& loading, const Value& where, std::string_view name);
std::optional<End> named_end(Loading& loading, const Value& where, std::string_view name);
std::optional<MaterialId> named_material(Loading& loading, const Value& where);
/// `none` is the invalid id.
std::optional<LossItemId> named_loss(Loading& loading, const Value& where, std::string_view name);
/// A size that the kind's table has.
std::optional<SizeId> size_of_kind(Loading& loading, const Value& where, KindId kind, std::string_view name);
/// The end of a kind, if the kind has such an end.
bool check_end(Loading& loading, const Value& where, KindId kind, End end);

/// From a cent to a hundred thousand dollars.
quantity::Reading<Price> read_positive_price(std::string_view text);
/// A non-negative number of a table whose head gives the unit (inches, feet ...): `1.69`, `3/4`, `1-1/2`.
std::optional<Length> length_cell(Loading& loading, const Value& cell, std::string_view unit);
std::optional<double> number_cell(Loading& loading, const Value& cell);

/// A table's column head, `length (in)`: name and unit (empty: none).
struct Head {
  std::string name;
  std::string unit;
  Value where;
};
std::vector<Head> read_heads(Loading& loading, const Value& list);
/// The cells of a row; a problem, and an empty result, when there are not as many as heads.
std::vector<Value> read_row(Loading& loading, const Value& row, std::size_t heads);

/// Text as it goes into a part id: lower case, `1 x 3/4` to `1x3-4`.
std::string as_id_text(std::string_view text);

}  // namespace riserun::catalog
