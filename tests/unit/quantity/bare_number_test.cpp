// A number without a unit where the system of units is settled: the one unit that is meant, or all that it could be.
#include "quantity/nearly.h"
#include "quantity/read.h"

#include <gtest/gtest.h>

#include <string>

namespace riserun::quantity {
namespace {

Written in(UnitSystem units, std::string_view text) { return {text, units, "units: inch"}; }
Written inch(std::string_view text) { return in(UnitSystem::inch, text); }
Written metric(std::string_view text) { return in(UnitSystem::metric, text); }

template <class T>
T value(const Reading<T>& reading) {
  if (const auto* error = std::get_if<ReadError>(&reading)) {
    ADD_FAILURE() << error->message;
    return T{};
  }
  return std::get<T>(reading);
}

template <class T>
std::string why_not(const Reading<T>& reading) {
  const auto* error = std::get_if<ReadError>(&reading);
  return error == nullptr ? "it was read" : error->message;
}

TEST(BareNumber, IsInTheSettledUnit) {
  EXPECT_DOUBLE_EQ(in_inches(value(read_length(inch("48")))), 48.0);
  EXPECT_DOUBLE_EQ(in_inches(value(read_length(inch(" 8-1/2 ")))), 8.5);
  EXPECT_DOUBLE_EQ(in_inches(value(read_signed_length(inch("-3/4")))), -0.75);
  EXPECT_DOUBLE_EQ(in_millimetres(value(read_length(metric("1220")))), 1220.0);
  EXPECT_NEAR(in_feet(value(read_altitude(inch("600")))), 600.0, 1e-6);
  EXPECT_DOUBLE_EQ(in_metres(value(read_altitude(metric("180")))), 180.0);
  EXPECT_NEAR(in_psi(value(read_pressure(inch("1.6")))), 1.6, 1e-8);
  EXPECT_NEAR(in_pascals(value(read_pressure(metric("0.11")))), 11000.0, 1e-6);
  EXPECT_NEAR(in_psi(value(read_pressure(inch("1.29 (36 in water)")))), 1.29, 1e-8);
  EXPECT_NEAR(in_litres(value(read_volume(metric("30")))), 30.0, 1e-9);
  EXPECT_NEAR(in_us_gallons(value(read_volume(inch("8")))), 8.0, 1e-8);
  EXPECT_EQ(value(read_air_flow(inch("3.2"))), value(read_air_flow("3.2 scfm")));
  EXPECT_EQ(value(read_volume_flow(inch("10"))), value(read_volume_flow("10 gpm")));
  EXPECT_EQ(value(read_temperature(inch("62"))), value(read_temperature("62 degF")));
  EXPECT_EQ(value(read_temperature(metric("-5"))), value(read_temperature("-5 degC")));
}

TEST(BareNumber, WithAUnitIsWhatItSays) {
  EXPECT_EQ(value(read_length(metric("48 in"))), value(read_length("48 in")));
  EXPECT_EQ(value(read_length(inch("4' 6"))), value(read_length("54 in")));
  EXPECT_EQ(why_not(read_length(metric("4' 6"))), "'4' 6': after ft comes a number below 12 in");
}

TEST(BareNumber, ThatCanBeReadTwoWaysNamesBoth) {
  EXPECT_EQ(why_not(read_time(inch("3"))), "'3': no unit; it can be 3 s or 3 min");
  EXPECT_EQ(why_not(read_stress(inch("36"))), "'36': no unit; it can be 36 psi or 36 ksi");
  EXPECT_EQ(why_not(read_length(metric("3/16"))), "'3/16': no unit; it can be 3/16 in or 3/16 mm");
  EXPECT_EQ(why_not(read_sheet(inch("11 steel"))), "'11 steel': no unit; it can be 11 ga or 11 in");
  EXPECT_DOUBLE_EQ(in_millimetres(value(read_sheet(metric("3 steel")))), 3.0);
  EXPECT_NEAR(in_inches(value(read_sheet(inch("0.1875 steel")))), 0.1875, 1e-12);
}

TEST(BareNumber, WithoutUnitsSaysWhatWouldSettleIt) {
  const Written open("48", std::nullopt, "units: inch");
  EXPECT_EQ(why_not(read_length(open)),
            "'48': no unit; length takes in, ft, mm, cm, m, um, mil; 'units: inch' would make it 48 in");
  EXPECT_EQ(why_not(read_length("48")), "'48': no unit; length takes in, ft, mm, cm, m, um, mil");
  EXPECT_EQ(why_not(read_time(Written("3", std::nullopt, "units: inch"))), "'3': no unit; time takes s, min, h, day");
}

TEST(BareNumber, OutOfRangeNamesTheRangeInItsUnit) {
  const Written text = metric("9");
  EXPECT_EQ(why_not(within(read_length(text), {inches(2.0), feet(40.0)}, text)),
            "'9': out of range; allowed is 50.8 mm to 12192 mm");
}

/// What is one measure is one number, however it is written, nearly always to the last bit.
TEST(WrittenInTwoUnits, IsTheSameNumber) {
  EXPECT_EQ(value(read_pressure("1.6 psi")), value(read_pressure("0.11031611669 bar")));
  EXPECT_EQ(value(read_length("17-3/8 in")), value(read_length("441.325 mm")));
  EXPECT_EQ(value(read_volume("8 gal")), value(read_volume("30.283294272 L")));
}

TEST(Nearly, HoldsNoThresholdOnTheLastBits) {
  EXPECT_TRUE(at_most(0.1 + 0.2, 0.3));
  EXPECT_TRUE(at_most(psig(2.0), gauge_pascals(in_pascals(psig(1.6)) * 1.25)));
  EXPECT_TRUE(more_than(psig(2.001), psig(2.0)));
  EXPECT_FALSE(more_than(inches(1.0), millimetres(25.4)));
}

}  // namespace
}  // namespace riserun::quantity
