// The gauge tables hold by what they are made from. Sources, all from memory: Manufacturers' Standard Gauge, Galvanized
// Sheet Gauge, United States Standard Gauge (1893), Brown & Sharpe gauge (formula of ASTM B258).
#include "quantity/sheet_gauge.h"

#include <gtest/gtest.h>

#include <cmath>

namespace riserun::quantity {
namespace {

double gauge_inches(SheetMetal metal, int gauge) { return in_inches(gauge_thickness(metal, gauge).value()); }

double read_inches(const char* text) {
  const auto reading = read_sheet(text);
  const auto* length = std::get_if<Length>(&reading);
  return length == nullptr ? -1.0 : in_inches(*length);
}

TEST(SheetGauge, TheSameNumberIsAnotherThicknessInEachMetal) {
  // Half a unit of the last printed digit.
  constexpr double kPrinted = 0.00005 + 1e-9;
  EXPECT_NEAR(read_inches("10 ga steel"), 0.1345, kPrinted);
  EXPECT_NEAR(read_inches("10 ga galvanized"), 0.1382, kPrinted);
  EXPECT_NEAR(read_inches("10 ga stainless"), 0.1406, kPrinted);
  EXPECT_NEAR(read_inches("10 ga aluminium"), 0.1019, kPrinted);
}

TEST(SheetGauge, IsReadInTheWaysItIsWritten) {
  for (const char* text :
       {"16 ga stainless", "16 gauge stainless steel", "16ga SS", "16-gauge stainless", "16 GA. Stainless",
        "16 gage stainless", "1/16 in", "0.0625 in stainless", "1/16\" stainless steel"}) {
    EXPECT_NEAR(read_inches(text), 0.0625, 1e-12) << text;
  }
  EXPECT_NEAR(read_inches("3/16 in steel"), 0.1875, 1e-12);
  EXPECT_NEAR(read_inches("3 mm"), 3 / 25.4, 1e-12);
}

TEST(SheetGauge, SteelIsWeightByArea) {
  // The standard's ounces per square foot; 41.82 lb/ft2 lie in one inch of thickness.
  constexpr int kOunces[] = {120, 110, 100, 90, 80, 70, 60, 50, 45, 40, 36, 32,
                             28,  24,  22,  20, 18, 16, 14, 12, 11, 10, 9,  8};
  for (int gauge = 7; gauge <= 30; ++gauge) {
    const double expected = kOunces[gauge - 7] / 16.0 / 41.82;
    EXPECT_NEAR(gauge_inches(SheetMetal::steel, gauge), expected, 0.0001) << gauge;
  }
}

TEST(SheetGauge, GalvanizedIsSteelWithItsCoating) {
  for (int gauge = 8; gauge <= 30; ++gauge) {
    const double coating = gauge_inches(SheetMetal::galvanized, gauge) - gauge_inches(SheetMetal::steel, gauge);
    EXPECT_NEAR(coating, 0.0037, 0.000151) << gauge;
  }
}

TEST(SheetGauge, StainlessIsWeightByAreaOfWroughtIron) {
  // The 1893 gauge: the same ounces per square foot, of iron of 480 lb/ft3 (40 lb/ft2 in one inch), exactly.
  constexpr int kOunces[] = {120, 110, 100, 90, 80, 70, 60, 50, 45, 40, 36, 32,
                             28,  24,  22,  20, 18, 16, 14, 12, 11, 10, 9,  8};
  for (int gauge = 7; gauge <= 30; ++gauge) {
    EXPECT_NEAR(gauge_inches(SheetMetal::stainless, gauge), kOunces[gauge - 7] / 640.0, 1e-12) << gauge;
  }
}

TEST(SheetGauge, AluminiumFollowsTheWireGauge) {
  // Ten rows of the table as printed, inches.
  constexpr struct {
    int gauge;
    double thickness;
  } kRows[] = {{7, 0.1443},  {8, 0.1285},  {10, 0.1019}, {12, 0.0808}, {14, 0.0641},
               {16, 0.0508}, {18, 0.0403}, {20, 0.0320}, {24, 0.0201}, {30, 0.0100}};
  for (const auto& row : kRows)
    EXPECT_NEAR(gauge_inches(SheetMetal::aluminium, row.gauge), row.thickness, 1e-9) << row.gauge;
}

// The low ends of the ranges of steel-service charts (ASTM A568, A924).
/// What steel-service charts print after ASTM A568 and A924: from the thickest gauge on, the tolerance of each range.
TEST(SheetGauge, LeastIsTheNominalLessTheToleranceOfItsRange) {
  const auto expect = [](SheetMetal metal, int from, int to, double tolerance) {
    for (int gauge = from; gauge <= to; ++gauge)
      EXPECT_NEAR(in_inches(*gauge_thickness(metal, gauge) - *least_gauge_thickness(metal, gauge)), tolerance, 1e-9)
          << gauge;
  };
  expect(SheetMetal::steel, 7, 12, 0.008);
  expect(SheetMetal::steel, 13, 14, 0.007);
  expect(SheetMetal::steel, 15, 17, 0.006);
  expect(SheetMetal::steel, 18, 18, 0.005);
  expect(SheetMetal::steel, 19, 19, 0.004);
  expect(SheetMetal::steel, 20, 20, 0.003);
  expect(SheetMetal::galvanized, 8, 12, 0.009);
  expect(SheetMetal::galvanized, 13, 14, 0.008);
  expect(SheetMetal::galvanized, 15, 16, 0.006);
  expect(SheetMetal::galvanized, 17, 19, 0.005);
  expect(SheetMetal::galvanized, 20, 20, 0.004);
}

TEST(SheetGauge, TheLeastIsTheLowEndOfTheMillsRange) {
  const auto least = [](SheetMetal metal, int gauge) { return in_inches(least_gauge_thickness(metal, gauge).value()); };
  EXPECT_NEAR(least(SheetMetal::steel, 7), 0.1713, 1e-9);
  EXPECT_NEAR(least(SheetMetal::steel, 10), 0.1265, 1e-9);
  EXPECT_NEAR(least(SheetMetal::steel, 16), 0.0538, 1e-9);
  EXPECT_NEAR(least(SheetMetal::steel, 20), 0.0329, 1e-9);
  EXPECT_NEAR(least(SheetMetal::galvanized, 10), 0.1292, 1e-9);
  EXPECT_NEAR(least(SheetMetal::stainless, 10), 0.126, 1e-9);
  EXPECT_NEAR(least(SheetMetal::aluminium, 10), 0.95 * 0.1019, 1e-9);
  for (const SheetMetal metal :
       {SheetMetal::steel, SheetMetal::galvanized, SheetMetal::stainless, SheetMetal::aluminium}) {
    const Range<int> numbers = gauge_numbers(metal);
    for (int gauge = numbers.low; gauge <= 24; ++gauge) {
      const double share = least(metal, gauge) / gauge_inches(metal, gauge);
      EXPECT_LT(share, 0.97) << gauge;
      EXPECT_GT(share, 0.85) << gauge;
      EXPECT_GT(least(metal, gauge), least(metal, gauge + 1)) << gauge;
    }
    EXPECT_FALSE(least_gauge_thickness(metal, numbers.high + 1));
  }
}

TEST(SheetGauge, TheLeastIsReadOffWhatIsWrittenAsAGaugeAlone) {
  for (const char* text : {"10 ga steel", "10 gauge mild steel", "10ga a36", "10 ga A1011 grade 50"})
    EXPECT_NEAR(in_inches(least_of_gauge(text).value_or(Length{})), 0.1265, 1e-9) << text;
  EXPECT_NEAR(in_inches(least_of_gauge("16 ga 304").value_or(Length{})), 0.055, 1e-9);
  for (const char* text : {"3/16 in steel", "3 mm", "10 ga", "10 ga brass", "99 ga steel", ""})
    EXPECT_FALSE(least_of_gauge(text)) << text;
}

TEST(SheetGauge, AHigherNumberIsThinner) {
  for (const SheetMetal metal :
       {SheetMetal::steel, SheetMetal::galvanized, SheetMetal::stainless, SheetMetal::aluminium}) {
    const Range<int> numbers = gauge_numbers(metal);
    for (int gauge = numbers.low; gauge < numbers.high; ++gauge) {
      EXPECT_GT(*gauge_thickness(metal, gauge), *gauge_thickness(metal, gauge + 1)) << gauge;
    }
    EXPECT_FALSE(gauge_thickness(metal, numbers.low - 1));
    EXPECT_FALSE(gauge_thickness(metal, numbers.high + 1));
  }
}

}  // namespace
}  // namespace riserun::quantity
