// A family as its file states it, with the names still to be looked up in each table's columns. For core/catalog's own
// files only.
#pragma once

#include "catalog/load/loading.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::catalog {

/// What a family says for one of its materials.
struct FamilyMaterial {
  MaterialId id;
  Value where;  // its map
  double price_factor = 1.0;
  Value rating;        // a pressure, or the name of a pressure column
  Value price;         // missing, or the name of a price column
  Value bore;          // missing, or as for a port
  Value far_material;  // missing, or a material or the name of a column
  bool stocked = true;
  Value only;          // missing, or a map: column to the values it is made for
  Value stocked_only;  // missing, or a map: column to the values it is stocked for
};

struct FamilyRule {
  FamilyId id;
  std::string id_text;
  Value where;
  Value title, size, part_id;
  std::vector<Value> ports;
  Value bore, across_flats, outside, hose_bore, loss, branch_loss, far_material;
  Value opens_at, range;  // each missing, a pressure, or the name of a pressure column
  std::optional<bool> air;
  Value straight_tapped;  // missing, or a map: column to the values for which it is tapped straight
  std::string sold_as;    // as in Part
  bool closing = false;
  bool dielectric = false;
  bool one_way = false;
  bool arrow = false;
  bool cut_to_length = false;
  bool threaded_when_cut = false;
  bool flexible = false;
  bool close = false;
  std::vector<FamilyMaterial> materials;
};

/// A table of a family: columns and rows, and for which of the family's materials.
struct FamilyTable {
  Value where;
  std::vector<Head> heads;
  std::vector<Value> rows;
  std::vector<MaterialId> materials;  // empty: all of the family's
  std::string source;
};

/// Adds the parts that a table of the family yields.
void expand_table(Loading& loading, const FamilyRule& family, const FamilyTable& table);

}  // namespace riserun::catalog
