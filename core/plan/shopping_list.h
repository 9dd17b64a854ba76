// What is bought, taken from the bins and cut, as rows of a list.
#pragma once

#include "catalog/catalog.h"
#include "quantity/fact.h"
#include "quantity/quantities.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::plan {

using catalog::PartId;
using quantity::Fact;

/// So many of an item lie in the bin of that name.
struct BinPlace {
  std::string bin;
  int count = 0;
};

/// In ListItem::used_for, of what plugs a port or makes the rig.
inline const std::string kLeakTestUse = "leak test";

struct ListItem {
  std::optional<PartId> part;  // none: a thing that the catalog has no part for
  std::string id;
  std::string name;             // without how it is sold, or which piece it is
  std::string sold_as;          // "by the foot"; of a piece empty
  std::optional<Length> piece;  // of what the bin has a piece of: so long
  int sawn_ends = 0;            // of that, as in catalog::Part
  std::string size;
  std::optional<Fact> measure;  // of a thing that the catalog has no part for, in place of a size
  std::string material;
  std::string shelf;
  int quantity = 0;
  Price each;                                // unknown where the catalog has no price for it
  std::string priced_by;                     // the shop's own file that says it; empty: the catalog's
  std::vector<catalog::BeatenPrice> beaten;  // prices of one that it stands in place of, the catalog's own first
  bool special_order = false;
  bool measured = false;
  bool by_the_foot = false;           // so many feet in one piece
  std::vector<std::string> used_for;  // names of connections or uses
  std::vector<int> count_for;         // of each of these; 0: it serves there, too
  std::vector<std::string> instead;   // what to take when the shelf is empty
  std::vector<BinPlace> lies_in;      // of several bins, in the order in which they are named; empty: there is one

  Price price() const { return each * quantity; }
};

/// What a piece is cut from.
struct Stock {
  std::string name;             // "1-1/4 x 36 pipe"; of plate what the job calls it
  std::string sold_as;          // "threaded both ends", "by the foot"; of a piece empty
  std::optional<Length> piece;  // what the bin has a piece of: so long
  int sawn_ends = 0;            // of that, as in catalog::Part
  std::string material;         // empty: the name says it
};

struct CutItem {
  Stock stock;
  Length length{};
  std::optional<Length> width;      // of a plate or a bar
  std::optional<Length> thickness;  // of a bar
  Length offcut{};
  int quantity = 1;
  std::string used_for;
  std::string datum;         // "from the threaded end"
  std::optional<Fact> note;  // what else is cut of it
};

struct Consumable {
  std::string name;
  std::string quantity;           // "1 roll", "3 m", with its unit
  std::string why;                // "14 taper joints"
  std::vector<Length> section{};  // of a bar: its height and thickness, or twice its side; else empty
  std::string metal_of{};         // off the rack or from the steel yard: what it is cut for, "stays"; else empty
};

struct ShoppingList {
  std::vector<ListItem> buy;  // in the order in which a store is walked: by shelf, then name
  std::vector<ListItem> from_bin;
  std::vector<CutItem> cut;
  std::vector<Consumable> consumables;
  Price total;  // of what must be bought, indicative; and how many rows have no price
};

}  // namespace riserun::plan
