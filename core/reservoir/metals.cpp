#include "reservoir/metals.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cctype>
#include <utility>

namespace riserun::reservoir {
namespace {

Stress ksi(double v) { return stress_pascals(v * 1000.0 * kPascalsPerPsi); }
Stress gigapascals(double v) { return megapascals(v * 1000.0); }

struct NamedMetal {
  SheetMetal metal;
  std::vector<std::string_view> trade_names;
};

/// ASTM A1011 and A1008 SS: the grade is the yield in ksi.
NamedMetal structural_sheet(const char* name, double yield, double ultimate,
                            std::vector<std::string_view> trade_names) {
  return {{name, ksi(yield), ksi(ultimate), gigapascals(200), 0.3, kilograms_per_cubic_metre(7850),
           "ASTM A1011 and A1008 SS: the grade is the least yield in ksi, from memory"},
          std::move(trade_names)};
}

/// EN 10025-2: the number is the least yield in MPa, to 16 mm.
NamedMetal european_structural(const char* name, double yield, double ultimate,
                               std::vector<std::string_view> trade_names) {
  return {{name, megapascals(yield), megapascals(ultimate), gigapascals(200), 0.3, kilograms_per_cubic_metre(7850),
           "EN 10025-2: the number is the least yield in MPa to 16 mm; ultimate of 3 mm and more; from memory"},
          std::move(trade_names)};
}

// The moduli and densities are handbook values, from memory: steel 200 GPa and 7850 kg/m3, austenitic stainless 193 GPa
// and 8000 kg/m3, aluminium alloys 69 to 70 GPa and 2680 to 2730 kg/m3.
const std::vector<NamedMetal>& named_metals() {
  static const std::vector<NamedMetal> metals = {
      {{"mild steel", ksi(36), ksi(58), gigapascals(200), 0.3, kilograms_per_cubic_metre(7850),
        "ASTM A36: yield 36 ksi, ultimate 58 ksi at least, from memory; uncertified plate may be weaker"},
       {"steel", "mild", "carbon steel", "black steel", "a36", "mild steel plate"}},
      {{"commercial steel sheet", ksi(30), ksi(45), gigapascals(200), 0.3, kilograms_per_cubic_metre(7850),
        "ASTM A1011 CS Type B: the low end of its typical yield, 30 to 50 ksi, which the standard does not promise; "
        "ultimate 45 ksi assumed; from memory"},
       {"sheet steel", "commercial steel", "hot rolled sheet", "hot rolled steel", "hot rolled", "hr", "hrs", "hrpo",
        "p&o", "hot rolled pickled and oiled", "pickled and oiled", "a1011"}},
      {{"cold-rolled steel sheet", ksi(20), ksi(40), gigapascals(200), 0.3, kilograms_per_cubic_metre(7850),
        "ASTM A1008 CS Type B: the low end of its typical yield, 20 to 40 ksi, which the standard does not promise; "
        "ultimate 40 ksi assumed; from memory"},
       {"cold rolled sheet", "cold rolled", "cr", "cold rolled steel", "cold-rolled steel", "crs", "a1008"}},
      european_structural("structural steel S235", 235, 360, {"s235", "s235jr", "s235 steel", "st37"}),
      european_structural("structural steel S275", 275, 410, {"s275", "s275jr", "s275 steel"}),
      european_structural("structural steel S355", 355, 470, {"s355", "s355jr", "s355j2", "s355 steel"}),
      structural_sheet("structural steel sheet grade 33", 33, 52, {"a1011 grade 33", "a1008 grade 33"}),
      structural_sheet("structural steel sheet grade 36", 36, 53, {"a1011 grade 36"}),
      structural_sheet("structural steel sheet grade 40", 40, 55, {"a1011 grade 40", "a1008 grade 40"}),
      structural_sheet("structural steel sheet grade 50", 50, 65, {"a1011 grade 50", "a1008 grade 50"}),
      {{"galvanized steel", ksi(30), ksi(45), gigapascals(200), 0.3, kilograms_per_cubic_metre(7850),
        "ASTM A653 CS Type B: the low end of its typical yield, 30 to 55 ksi, which the standard does not promise; "
        "ultimate 45 ksi assumed; from memory"},
       {"galvanized", "galv", "galvanised", "galvanised steel", "galvanized sheet", "a653"}},
      {{"stainless steel 304", ksi(30), ksi(75), gigapascals(193), 0.3, kilograms_per_cubic_metre(8000),
        "ASTM A240 type 304, annealed: yield 30 ksi, ultimate 75 ksi at least, from memory",
        WeldMetal::stainless_steel},
       {"stainless", "stainless steel", "304", "stainless 304", "304 stainless"}},
      {{"stainless steel 316", ksi(30), ksi(75), gigapascals(193), 0.3, kilograms_per_cubic_metre(8000),
        "ASTM A240 type 316, annealed: yield 30 ksi, ultimate 75 ksi at least, from memory",
        WeldMetal::stainless_steel},
       {"316", "stainless 316", "316 stainless"}},
      {{"aluminium 5052, as welded", ksi(9.5), ksi(25), gigapascals(70), 0.33, kilograms_per_cubic_metre(2680),
        "5052-H32 within an inch of a weld, where it is soft as 5052-O: yield 9.5 ksi, Aluminum Design Manual table "
        "3.3-1M; ultimate 25 ksi, from memory",
        WeldMetal::aluminium},
       {"aluminium", "aluminum", "5052", "5052-h32", "aluminium 5052", "aluminum 5052", "aluminum 5052, as welded"}},
      {{"aluminium 6061, as welded", ksi(15), ksi(24), gigapascals(69), 0.33, kilograms_per_cubic_metre(2700),
        "6061-T6 within an inch of a weld: yield 15 ksi, ultimate 24 ksi, Aluminum Design Manual, from memory",
        WeldMetal::aluminium},
       {"6061", "6061-t6", "aluminium 6061", "aluminum 6061", "aluminum 6061, as welded"}},
      {{"aluminium 3003, as welded", ksi(5), ksi(14), gigapascals(69), 0.33, kilograms_per_cubic_metre(2730),
        "3003-H14 within an inch of a weld: yield 5 ksi, ultimate 14 ksi, Aluminum Design Manual, from memory",
        WeldMetal::aluminium},
       {"3003", "3003-h14", "aluminium 3003", "aluminum 3003", "aluminum 3003, as welded"}},
  };
  return metals;
}

std::string lower_case(std::string_view text) {
  std::string lower(text);
  std::transform(lower.begin(), lower.end(), lower.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return lower;
}

}  // namespace

std::string_view weld_metal_name(WeldMetal metal) {
  switch (metal) {
    case WeldMetal::steel:
      return "steel";
    case WeldMetal::stainless_steel:
      return "stainless steel";
    case WeldMetal::aluminium:
      return "aluminium";
  }
  return "";
}

const std::vector<SheetMetal>& sheet_metals() {
  static const std::vector<SheetMetal> metals = [] {
    std::vector<SheetMetal> list;
    for (const NamedMetal& named : named_metals()) list.push_back(named.metal);
    return list;
  }();
  return metals;
}

std::optional<SheetMetal> find_sheet_metal(std::string_view name) {
  const std::string wanted = lower_case(name);
  for (const NamedMetal& named : named_metals()) {
    const auto& trade = named.trade_names;
    if (named.metal.name == wanted || std::find(trade.begin(), trade.end(), wanted) != trade.end()) return named.metal;
  }
  return std::nullopt;
}

std::optional<SheetMetal> find_sheet_metal(std::string_view name, Length thickness) {
  constexpr std::array<std::string_view, 5> kNoGrade = {"steel", "mild steel", "mild", "carbon steel", "black steel"};
  const bool sheet = thickness < inches(0.180);
  const bool no_grade = std::find(kNoGrade.begin(), kNoGrade.end(), lower_case(name)) != kNoGrade.end();
  return find_sheet_metal(sheet && no_grade ? "commercial steel sheet" : name);
}

DesignStress design_stress(const SheetMetal& metal, double share_of_yield) {
  assert(share_of_yield > 0.0 && share_of_yield <= 1.0);
  return {metal.yield * share_of_yield, quantity::fact("share_of_yield", share_of_yield, metal.name, metal.yield)};
}

}  // namespace riserun::reservoir
