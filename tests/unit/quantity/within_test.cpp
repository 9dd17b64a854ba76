#include "quantity/read.h"

#include <gtest/gtest.h>

namespace riserun::quantity {
namespace {

template <class T>
std::string message(const Reading<T>& reading) {
  const auto* error = std::get_if<ReadError>(&reading);
  return error == nullptr ? "no error" : error->message;
}

TEST(Within, KeepsBothEndsOfTheRange) {
  const Range<Length> range{inches(1), inches(120)};
  for (const char* text : {"1 in", "10 ft", "50 cm"}) {
    EXPECT_TRUE(std::holds_alternative<Length>(within(read_length(text), range, text))) << text;
  }
}

TEST(Within, NamesTheRangeInTheUnitThatWasWritten) {
  const Range<Length> range{inches(1), inches(120)};
  EXPECT_EQ(message(within(read_length("900 cm"), range, "900 cm")),
            "'900 cm': out of range; allowed is 2.54 cm to 304.8 cm");
  EXPECT_EQ(message(within(read_length("1/2\""), range, "1/2\"")), "'1/2\"': out of range; allowed is 1 in to 120 in");
  EXPECT_EQ(message(within(read_length("20' 1\""), range, "20' 1\"")),
            "'20' 1\"': out of range; allowed is 1 in to 120 in");
  EXPECT_EQ(message(within(read_sheet("7 ga steel"), Range<Length>{inches(0.01), inches(0.1)}, "7 ga steel")),
            "'7 ga steel': out of range; allowed is 0.01 in to 0.1 in");
  EXPECT_EQ(message(within(read_pressure("200 psi"), Range<GaugePressure>{psig(0), psig(150)}, "200 psi")),
            "'200 psi': out of range; allowed is 0 psi to 150 psi");
  EXPECT_EQ(message(within(read_pressure("2 psi (55 in water)"), Range<GaugePressure>{psig(0), psig(1)},
                           "2 psi (55 in water)")),
            "'2 psi (55 in water)': out of range; allowed is 0 psi to 1 psi");
  EXPECT_EQ(message(within(read_temperature("200 degC"), Range<Temperature>{degrees_celsius(0), degrees_celsius(99)},
                           "200 degC")),
            "'200 degC': out of range; allowed is 0 degC to 99 degC");
  EXPECT_EQ(message(within(read_air_flow("500 scfm"),
                           Range<VolumeFlow>{cubic_feet_per_minute(0.1), cubic_feet_per_minute(100)}, "500 scfm")),
            "'500 scfm': out of range; allowed is 0.1 scfm to 100 scfm");
  EXPECT_EQ(message(within(read_price("$5"), Range<Price>{cents(1), cents(300)}, "$5")),
            "'$5': out of range; allowed is $0.01 to $3.00");
  EXPECT_EQ(message(within(read_number("1.5"), Range<double>{0.0, 1.0}, "1.5")),
            "'1.5': out of range; allowed is 0 to 1");
  EXPECT_EQ(message(within(read_count("9"), Range<int>{1, 8}, "9")), "'9': out of range; allowed is 1 to 8");
}

TEST(Within, LeavesAnErrorAsItIs) {
  EXPECT_EQ(message(within(read_length("5"), Range<Length>{inches(1), inches(2)}, "5")), message(read_length("5")));
}

}  // namespace
}  // namespace riserun::quantity
