// The sheet metals that a reservoir is welded from, with the strengths that its walls are judged by.
#pragma once

#include "quantity/fact.h"
#include "quantity/quantities.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::reservoir {

/// What a metal is to a welder: a bung is of the same one as the wall.
enum class WeldMetal : std::uint8_t { steel, stainless_steel, aluminium };

/// "stainless steel", as `welds to` of catalog/materials.yaml says it.
std::string_view weld_metal_name(WeldMetal metal);

struct SheetMetal {
  std::string name;  // "mild steel"
  Stress yield;      // as-welded where welding softens it (aluminium)
  Stress ultimate;
  Stress elastic_modulus;
  double poisson_ratio = 0.3;
  Density density{};
  std::string source;
  WeldMetal weld_metal = WeldMetal::steel;
};

/// All metals that are known by name.
const std::vector<SheetMetal>& sheet_metals();

/// A metal by its name or a trade name of it ("304", "galvanized", "5052"), upper or lower case alike.
std::optional<SheetMetal> find_sheet_metal(std::string_view name);

/// The same as it is sold in that thickness: plain steel that no grade is named of ("steel", "mild steel") is
/// commercial sheet below 3/16 in, which promises less than plate. 0.180 in is where ASTM A6 begins to call it plate
/// (from memory).
std::optional<SheetMetal> find_sheet_metal(std::string_view name, Length thickness);

/// Share of yield that a wall may be stressed to unless the job says otherwise. A screening choice: public
/// rectangular-tank calculation sheets use 0.6 to 0.66 (common practice).
inline constexpr double kDesignShareOfYield = 0.6;

struct DesignStress {
  Stress stress;
  quantity::Fact basis;  // "0.6 of mild steel's yield, 36 ksi (248 MPa)"
};

/// @param share_of_yield over 0, at most 1
DesignStress design_stress(const SheetMetal& metal, double share_of_yield = kDesignShareOfYield);

}  // namespace riserun::reservoir
