#include "quantity/write.h"

#include <gtest/gtest.h>

namespace riserun::quantity {
namespace {

constexpr UnitSystem kInch = UnitSystem::inch;
constexpr UnitSystem kMetric = UnitSystem::metric;

TEST(WriteLength, ReducesTheFraction) {
  EXPECT_EQ(write_length(inches(13.6875), kInch), "13-11/16 in");
  EXPECT_EQ(write_length(inches(5.5), kInch), "5-1/2 in");
  EXPECT_EQ(write_length(inches(0.75), kInch), "3/4 in");
  EXPECT_EQ(write_length(inches(2), kInch), "2 in");
  EXPECT_EQ(write_length(inches(0), kInch), "0 in");
  EXPECT_EQ(write_length(inches(-0.5), kInch), "-1/2 in");
  EXPECT_EQ(write_length(inches(-0.01), kInch), "0 in");
}

TEST(WriteLength, RoundsToTheTapesMark) {
  EXPECT_EQ(write_length(inches(13.70), kInch), "13-11/16 in");
  EXPECT_EQ(write_length(inches(13.70), kInch, TapeMark::thirty_second), "13-11/16 in");
  EXPECT_EQ(write_length(inches(13.72), kInch, TapeMark::thirty_second), "13-23/32 in");
  EXPECT_EQ(write_length(inches(1.99), kInch), "2 in");
}

TEST(WriteLength, WritesMillimetresFromTheSameValue) {
  EXPECT_EQ(write_length(inches(13.6875), kMetric), "348 mm");
  EXPECT_EQ(write_length(inches(0.75), kMetric), "19 mm");
  EXPECT_EQ(write_length(metres(1.892), kMetric), "1892 mm");
  EXPECT_EQ(write_length(millimetres(-0.2), kMetric), "0 mm");
}

TEST(WriteLength, RoundsASumOnceAndNotItsTerms) {
  const Length third = inches(1.0 / 3.0);
  EXPECT_EQ(write_length(third, kInch), "5/16 in");
  EXPECT_EQ(write_length(third + third + third, kInch), "1 in");
}

TEST(WriteLongLength, UsesFeetFromTwoFeetOn) {
  EXPECT_EQ(write_long_length(inches(23.9), kInch), "23-7/8 in");
  EXPECT_EQ(write_long_length(inches(24), kInch), "2 ft");
  EXPECT_EQ(write_long_length(inches(23.99), kInch), "2 ft");
  EXPECT_EQ(write_long_length(inches(74.5), kInch), "6 ft 2-1/2 in");
  EXPECT_EQ(write_long_length(inches(71.99), kInch), "6 ft");
  EXPECT_EQ(write_long_length(inches(-74.5), kInch), "-6 ft 2-1/2 in");
  EXPECT_EQ(write_long_length(inches(74.5), kMetric), "1.892 m");
  EXPECT_EQ(write_long_length(millimetres(999.6), kMetric), "1.000 m");
  EXPECT_EQ(write_long_length(millimetres(999), kMetric), "999 mm");
}

TEST(WriteThickness, KeepsDecimals) {
  EXPECT_EQ(write_thickness(inches(0.1345), kInch), "0.1345 in");
  EXPECT_EQ(write_thickness(inches(0.1345), kMetric), "3.42 mm");
  EXPECT_EQ(write_thickness(inches(1.049), kInch), "1.049 in");
  EXPECT_EQ(write_bore(inches(0.046875), kInch), "3/64 in");
  EXPECT_EQ(write_bore(inches(0.125), kInch), "1/8 in");
  EXPECT_EQ(write_bore(inches(0.247), kInch), "0.247 in");
  EXPECT_EQ(write_bore(inches(0.003), kInch), "0.003 in");
  EXPECT_EQ(write_bore(inches(0.125), kMetric), "3.2 mm");
}

TEST(WritePressure, SaysTheColumnOfWaterBesideIt) {
  EXPECT_EQ(write_pressure(psig(1.29), kInch), "1.29 psi (36 in water)");
  EXPECT_EQ(write_pressure(bar_gauge(0.081), kMetric), "0.081 bar (826 mm water)");
  EXPECT_EQ(write_pressure(psi(1.29), kInch), "1.29 psi (36 in water)");
  EXPECT_EQ(write_pressure(psig(0), kInch), "0 psi (0 in water)");
  EXPECT_EQ(write_pressure(psig(-0.5), kInch), "-0.5 psi (-14 in water)");
  EXPECT_EQ(write_pressure_alone(psig(1.29), kInch), "1.29 psi");
}

TEST(WritePressure, LeavesTheColumnOutFromFifteenPsiOn) {
  EXPECT_EQ(write_pressure(psig(14.9), kInch), "14.9 psi (412 in water)");
  EXPECT_EQ(write_pressure(psig(14.97), kInch), "15 psi");
  EXPECT_EQ(write_pressure(psig(125), kInch), "125 psi");
  EXPECT_EQ(write_pressure(bar_gauge(8.6), kMetric), "8.6 bar");
}

TEST(Write, EveryQuantityHasItsUnits) {
  EXPECT_EQ(write_area(square_metres(0.0258064), kInch), "40 in2");
  EXPECT_EQ(write_area(square_metres(0.0258064), kMetric), "258 cm2");
  EXPECT_EQ(write_area(square_metres(2.5), kInch), "26.9 ft2");
  EXPECT_EQ(write_volume(us_gallons(40), kInch), "40 gal");
  EXPECT_EQ(write_volume(us_gallons(40), kMetric), "151 L");
  EXPECT_EQ(write_absolute_pressure(absolute_pascals(101325), kInch), "14.7 psia");
  EXPECT_EQ(write_absolute_pressure(absolute_pascals(101325), kMetric), "1.01 bar abs");
  EXPECT_EQ(write_head(metres_of_head(0.5), kInch), "19.7 in");
  EXPECT_EQ(write_head(metres_of_head(0.5), kMetric), "500 mm");
  EXPECT_EQ(write_head(metres_of_head(2), kInch), "6.56 ft");
  EXPECT_EQ(write_head(metres_of_head(2), kMetric), "2 m");
  EXPECT_EQ(write_volume_flow(us_gallons_per_minute(12), kInch), "12 gpm");
  EXPECT_EQ(write_volume_flow(us_gallons_per_minute(12), kMetric), "45.4 L/min");
  EXPECT_EQ(write_air_flow(cubic_feet_per_minute(3.5), kInch), "3.5 scfm");
  EXPECT_EQ(write_air_flow(cubic_feet_per_minute(3.5), kMetric), "99.1 L/min");
  EXPECT_EQ(write_free_air(cubic_feet(7), kInch), "7 ft3");
  EXPECT_EQ(write_free_air(cubic_feet(7), kMetric), "198 L");
  EXPECT_EQ(write_velocity(metres_per_second(1.5), kInch), "4.92 ft/s");
  EXPECT_EQ(write_velocity(metres_per_second(1.5), kMetric), "1.5 m/s");
  EXPECT_EQ(write_mass(pounds(350.4), kInch), "350 lb");
  EXPECT_EQ(write_mass(pounds(1234), kInch), "1234 lb");
  EXPECT_EQ(write_mass(pounds(350), kMetric), "159 kg");
  EXPECT_EQ(write_force(newtons(1112.0554), kInch), "250 lbf");
  EXPECT_EQ(write_force(newtons(1112.0554), kMetric), "1112 N");
  EXPECT_EQ(write_density(kilograms_per_cubic_metre(7850), kInch), "490 lb/ft3");
  EXPECT_EQ(write_density(kilograms_per_cubic_metre(7850), kMetric), "7850 kg/m3");
  EXPECT_EQ(write_temperature(degrees_fahrenheit(70), kInch), "70 degF");
  EXPECT_EQ(write_temperature(degrees_fahrenheit(70), kMetric), "21.1 degC");
  EXPECT_EQ(write_temperature_difference(TemperatureDifference::from_si(10), kInch), "18 degF");
  EXPECT_EQ(write_temperature_difference(TemperatureDifference::from_si(10), kMetric), "10 degC");
  EXPECT_EQ(write_power(watts(450), kInch), "450 W");
  EXPECT_EQ(write_power(watts(4500), kMetric), "4.5 kW");
  EXPECT_EQ(write_energy(joules(406.745), kInch), "300 ft-lb");
  EXPECT_EQ(write_energy(joules(406.745), kMetric), "407 J");
  EXPECT_EQ(write_energy(joules(25000), kMetric), "25 kJ");
  EXPECT_EQ(write_stress(megapascals(250), kInch), "36.3 ksi");
  EXPECT_EQ(write_stress(megapascals(40), kInch), "5802 psi");
  EXPECT_EQ(write_stress(megapascals(250), kMetric), "250 MPa");
  EXPECT_EQ(write_price(cents(210)), "$2.10");
  EXPECT_EQ(write_price(cents(5)), "$0.05");
  EXPECT_EQ(write_price(cents(-1234)), "-$12.34");
  EXPECT_EQ(write_price(cents(4100) + Price::unknown() * 3), "$41.00 and 3 without price");
  EXPECT_EQ(write_price(Price::unknown()), "no price");
  EXPECT_EQ(write_price(Price::unknown() * 2), "2 without price");
  EXPECT_EQ(write_about(cents(4100) + Price::unknown()), "about $41.00 and 1 without price");
  EXPECT_EQ(write_about(Price::unknown()), "no price");
}

TEST(APriceThatIsNotKnown, IsDearerThanAnyAndAddsUp) {
  EXPECT_LT(cents(10'000'000), Price::unknown());
  EXPECT_LT(Price::unknown() + cents(5), Price::unknown() * 2);
  const Price sum = cents(4100) + Price::unknown() * 3;
  EXPECT_EQ(Price::of_weight(sum.weight()), sum);
  EXPECT_LT(cents(10'000'000).weight(), Price::unknown().weight());
}

TEST(Write, TakesTheUnitByWhatIsPrinted) {
  EXPECT_EQ(write_power(watts(999.4), kInch), "999 W");
  EXPECT_EQ(write_power(watts(999.7), kInch), "1 kW");
  EXPECT_EQ(write_area(square_metres(143.7 * 0.0254 * 0.0254), kInch), "0.998 ft2");
  EXPECT_EQ(write_head(metres_of_head(0.9996), kMetric), "1 m");
  EXPECT_EQ(write_time(seconds(89.7)), "1.5 min");
}

TEST(WriteTime, TakesTheUnitThatReadsBest) {
  EXPECT_EQ(write_time(seconds(45)), "45 s");
  EXPECT_EQ(write_time(seconds(85)), "85 s");
  EXPECT_EQ(write_time(minutes(1.53)), "1.5 min");
  EXPECT_EQ(write_time(minutes(75)), "75 min");
  EXPECT_EQ(write_time(hours(1.58)), "1.6 h");
  EXPECT_EQ(write_time(hours(72)), "3 days");
}

TEST(WriteNumber, NeverPrintsAMinusZeroNorRoundsWholeDigitsAway) {
  EXPECT_EQ(write_number(-0.0), "0");
  EXPECT_EQ(write_number(-1.0e-15), "0");
  EXPECT_EQ(write_number(12345.6), "12346");
  EXPECT_EQ(write_number(0.004567), "0.00457");
  EXPECT_EQ(write_number(9.996), "10");
  EXPECT_EQ(write_number(2.5, 1), "2");  // half to even, as the binary value lies exactly between
}

TEST(WriteRange, SaysTheUnitOnceWhereItIsTheSame) {
  EXPECT_EQ(write_range("1.2 min", "1.7 min"), "1.2 to 1.7 min");
  EXPECT_EQ(write_range("50 s", "1.7 min"), "50 s to 1.7 min");
  EXPECT_EQ(write_range("5-1/2 in", "6 in"), "5-1/2 to 6 in");
  EXPECT_EQ(write_range("6 ft 2 in", "7 ft 2 in"), "6 ft 2 in to 7 ft 2 in");
  EXPECT_EQ(write_range("1 psi (28 in water)", "2 psi (55 in water)"), "1 psi (28 in water) to 2 psi (55 in water)");
  EXPECT_EQ(write_range("$2.10", "$3.00"), "$2.10 to $3.00");
  EXPECT_EQ(write_range("12 gpm", "12 gpm"), "12 gpm");
}

TEST(WriteWithRange, PutsTheRangeBehindTheValue) {
  EXPECT_EQ(write_with_range("1.4 min", "1.2 min", "1.7 min"), "1.4 min (1.2 to 1.7 min)");
  EXPECT_EQ(write_with_range("1.4 min", "1.4 min", "1.4 min"), "1.4 min");
}

}  // namespace
}  // namespace riserun::quantity
