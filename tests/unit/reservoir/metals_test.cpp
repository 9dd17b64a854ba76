#include "reservoir/metals.h"

#include "unit/report/words/said.h"

#include <gmock/gmock.h>

namespace riserun::reservoir {
namespace {

using ::testing::HasSubstr;

TEST(SheetMetals, AreFoundByNameAndTradeNameInAnyCase) {
  EXPECT_EQ(find_sheet_metal("mild steel")->name, "mild steel");
  EXPECT_EQ(find_sheet_metal("Steel")->name, "mild steel");
  EXPECT_EQ(find_sheet_metal("galvanised")->name, "galvanized steel");
  EXPECT_EQ(find_sheet_metal("304 Stainless")->name, "stainless steel 304");
  EXPECT_EQ(find_sheet_metal("5052-H32")->name, "aluminium 5052, as welded");
  EXPECT_EQ(find_sheet_metal("aluminum 6061")->name, "aluminium 6061, as welded");
  EXPECT_FALSE(find_sheet_metal("unobtainium"));
}

// ASTM A36 and A240: 36 and 58 ksi, 30 and 75 ksi, from memory.
// EN 10025-2 to 16 mm, from memory: S235 has 235 MPa of yield, less than A36's 248. Mild is plain steel, and HRPO hot
// rolled, pickled and oiled commercial sheet (common practice).
TEST(SheetMetals, AreFoundByTheShopsWords) {
  constexpr double kPsiPerMegapascal = 145.0377;
  EXPECT_NEAR(in_psi(find_sheet_metal("S235")->yield), 235.0 * kPsiPerMegapascal, 1.0);
  EXPECT_NEAR(in_psi(find_sheet_metal("s235jr")->ultimate), 360.0 * kPsiPerMegapascal, 1.0);
  EXPECT_EQ(find_sheet_metal("mild", inches(0.1875))->name, "mild steel");
  EXPECT_EQ(find_sheet_metal("mild", inches(0.1345))->name, "commercial steel sheet");
  EXPECT_EQ(find_sheet_metal("HRPO")->name, "commercial steel sheet");
  EXPECT_EQ(find_sheet_metal("S235", inches(0.118))->name, "structural steel S235");
}

TEST(SheetMetals, HaveTheStrengthsOfTheirStandards) {
  const SheetMetal steel = *find_sheet_metal("mild steel");
  EXPECT_NEAR(in_psi(steel.yield), 36000.0, 1.0e-6);
  EXPECT_NEAR(in_psi(steel.ultimate), 58000.0, 1.0e-6);
  const SheetMetal stainless = *find_sheet_metal("304");
  EXPECT_NEAR(in_psi(stainless.yield), 30000.0, 1.0e-6);
  EXPECT_NEAR(in_psi(stainless.ultimate), 75000.0, 1.0e-6);
}

// Below 3/16 in plain steel is commercial sheet, of 30 ksi at best; a named grade stays what it is.
TEST(SheetMetals, PlainSteelBelowThreeSixteenthsIsCommercialSheet) {
  const auto yield = [](const char* name, double thickness) {
    return in_psi(find_sheet_metal(name, inches(thickness))->yield) / 1000.0;
  };
  for (const char* plain : {"steel", "Mild Steel", "carbon steel"}) {
    EXPECT_NEAR(yield(plain, 0.1793), 30.0, 1e-9) << plain;
    EXPECT_NEAR(yield(plain, 0.1875), 36.0, 1e-9) << plain;
  }
  EXPECT_NEAR(yield("a36", 0.1345), 36.0, 1e-9);
  EXPECT_NEAR(yield("A1011 grade 50", 0.1345), 50.0, 1e-9);
  EXPECT_NEAR(yield("304", 0.1), 30.0, 1e-9);
  EXPECT_NEAR(yield("5052", 0.125), 9.5, 1e-9);
  EXPECT_FALSE(find_sheet_metal("unobtainium", inches(0.1)));
}

TEST(SheetMetals, EachIsStrongerInBreakingThanInYieldAndNamesItsSource) {
  for (const SheetMetal& metal : sheet_metals()) {
    SCOPED_TRACE(metal.name);
    EXPECT_GT(metal.ultimate, metal.yield);
    EXPECT_GT(in_pascals(metal.elastic_modulus), 500.0 * in_pascals(metal.ultimate) / 4.0);
    EXPECT_GT(metal.poisson_ratio, 0.25);
    EXPECT_LT(metal.poisson_ratio, 0.36);
    EXPECT_THAT(metal.source, HasSubstr("from memory"));
  }
}

// All from memory. Steel: AISC 360 (29,000 ksi) and EN 1993-1-1, 3.2.6 (0.3, and 7850 kg/m3 of EN 1991-1-1 table A.4);
// austenitic stainless: AISC Design Guide 27 (28,000 ksi, 0.3) and 8000 kg/m3 of mill sheets; aluminium: Aluminum
// Design Manual, part I (10,100 ksi at most, 0.33) and 2.68 to 2.73 g/cm3 of its alloys.
TEST(SheetMetals, AreAsStiffAndAsHeavyAsHandbooksSay) {
  for (const SheetMetal& metal : sheet_metals()) {
    const double modulus = metal.elastic_modulus / megapascals(1000.0);
    const double density = in_kilograms_per_cubic_metre(metal.density);
    switch (metal.weld_metal) {
      case WeldMetal::steel:
        EXPECT_NEAR(modulus, 200.0, 0.5) << metal.name;
        EXPECT_DOUBLE_EQ(metal.poisson_ratio, 0.3) << metal.name;
        EXPECT_DOUBLE_EQ(density, 7850.0) << metal.name;
        break;
      case WeldMetal::stainless_steel:
        EXPECT_NEAR(modulus, 193.0, 0.5) << metal.name;
        EXPECT_DOUBLE_EQ(metal.poisson_ratio, 0.3) << metal.name;
        EXPECT_DOUBLE_EQ(density, 8000.0) << metal.name;
        break;
      case WeldMetal::aluminium:
        EXPECT_NEAR(modulus, 69.5, 0.6) << metal.name;
        EXPECT_DOUBLE_EQ(metal.poisson_ratio, 0.33) << metal.name;
        EXPECT_NEAR(density, 2705.0, 25.1) << metal.name;
    }
  }
}

TEST(DesignStress, SaysWhatItIsAShareOf) {
  const DesignStress design = design_stress(*find_sheet_metal("mild steel"));
  EXPECT_NEAR(in_psi(design.stress), 0.6 * 36000.0, 1.0e-6);
  EXPECT_EQ(report::said(design.basis), "0.6 of the yield of mild steel, 36 ksi (248 MPa)");
}

}  // namespace
}  // namespace riserun::reservoir
