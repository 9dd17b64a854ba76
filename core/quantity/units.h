// The units that are read, quantity by quantity: one table each, with the spellings that people use.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::quantity {

/// What can be asked for. Quantities that share a dimension stand apart, as their units or limits differ.
enum class Kind {
  length,
  altitude,
  head,
  area,
  volume,
  pressure,
  absolute_pressure,
  volume_flow,
  air_flow,
  time,
  velocity,
  mass,
  density,
  force,
  temperature,
  temperature_difference,
  power,
  energy,
  stress,
};

struct Unit {
  std::string_view symbol;  // as messages name it
  double factor = 1.0;      // SI value = number * factor + offset
  double offset = 0.0;
  std::string_view spellings;  // in folded form (see folded_unit), separated by spaces
};

/// `1 ft 6 in`: `lead` may be followed by a second number in `follow`, less than `ratio`.
struct Compound {
  std::string_view lead;
  std::string_view follow;
  double ratio = 1.0;
};

struct UnitTable {
  Kind kind = Kind::length;
  std::string_view name;     // "pressure"
  std::string_view example;  // "25 psi"
  double low = 0.0;          // SI, what is accepted at all
  double high = 0.0;
  std::vector<Unit> units;  // the first is the one to name limits in when nothing else was written
  std::vector<Compound> compounds;
};

const UnitTable& unit_table(Kind kind);

/// Lower case, without spaces, dots, carets and hyphens between letters: `in. of H2O` -> `inofh2o`.
std::string folded_unit(std::string_view written);

/// The unit of the table that is spelled so; nullptr: none.
const Unit* find_unit(const UnitTable& table, std::string_view written);
const Unit* find_symbol(const UnitTable& table, std::string_view symbol);

/// Another kind of quantity that has this unit; nullptr: none.
const UnitTable* find_other_kind(Kind asked, std::string_view written);

/// The symbol whose spelling is one slip away; nullopt: none is near.
std::optional<std::string_view> nearest_symbol(const UnitTable& table, std::string_view written);

/// `psi, inH2O, kPa`
std::string symbols(const UnitTable& table);

}  // namespace riserun::quantity
