// What is read, and as what. Expected values are worked out from the definitions of the units (inch 25.4 mm, pound
// 0.45359237 kg, US gallon 231 in3, standard gravity 9.80665 m/s2), written here as numbers so that a wrong factor in
// the program shows; those of derived units are the figures of NIST SP 811 appendix B.
#include "unit/quantity/any_reader.h"

#include <gtest/gtest.h>

#include <ostream>
#include <vector>

namespace riserun::quantity {
namespace {

struct Row {
  const char* text;
  AnyReader reader;
  double expected;
};

void PrintTo(const Row& row, std::ostream* out) { *out << row.text; }

class Read : public testing::TestWithParam<Row> {};

TEST_P(Read, GivesTheValueThatIsWritten) {
  const Reading<double> reading = GetParam().reader(GetParam().text);
  ASSERT_TRUE(std::holds_alternative<double>(reading)) << std::get<ReadError>(reading).message;
  // NIST SP 811 prints seven digits.
  EXPECT_NEAR(std::get<double>(reading), GetParam().expected, 1.0e-6 * std::abs(GetParam().expected));
}

constexpr AnyReader kSignedLength = any<&read_signed_length>;

INSTANTIATE_TEST_SUITE_P(Lengths, Read,
                         testing::ValuesIn(std::vector<Row>{
                             {"5-1/2 in", kLength, 0.1397},
                             {"5 1/2\"", kLength, 0.1397},
                             {"5 1/2 in.", kLength, 0.1397},
                             {"1'1-11/16\"", kLength, 0.3476625},
                             {"1' 1 11/16\"", kLength, 0.3476625},
                             {"1 ft 1-11/16 in", kLength, 0.3476625},
                             {"6'-2\"", kLength, 1.8796},
                             {"6'", kLength, 1.8288},
                             {"6''", kLength, 0.1524},
                             {"5.5in", kLength, 0.1397},
                             {".5 in", kLength, 0.0127},
                             {"0.14 m", kLength, 0.14},
                             {"14 cm", kLength, 0.14},
                             {"348 mm", kLength, 0.348},
                             {"3/4 in", kLength, 0.01905},
                             {"3/4-in", kLength, 0.01905},
                             {"17/16 in", kLength, 0.0269875},
                             {"2 inches", kLength, 0.0508},
                             {"0 mm", kLength, 0.0},
                             {"1.5e-2 m", kLength, 0.015},
                             {"+3 mm", kLength, 0.003},
                             {"45 micron", kLength, 45.0e-6},
                             {"  12\tft ", kLength, 3.6576},
                             {"-1 ft 6 in", kSignedLength, -0.4572},
                             {"-1/2 in", kSignedLength, -0.0127},
                         }));

INSTANTIATE_TEST_SUITE_P(TypographicSigns, Read,
                         testing::ValuesIn(std::vector<Row>{
                             {"5\u00bd\u2033", kLength, 0.1397},  // fraction sign, double prime
                             {"5 \u00bd in", kLength, 0.1397},    // space before the fraction sign
                             {"5-\u00bd in", kLength, 0.1397},    // hyphen before it
                             {"\u215d in", kLength, 0.015875},    // five eighths alone
                             {"1\u2032\u20091\u201311\u204416\u2033", kLength,
                              0.3476625},                            // prime, thin space, en dash, slash
                             {"1\u20191\u201d", kLength, 0.3302},    // curly quotation marks
                             {"348\u00a0mm", kLength, 0.348},        // no-break space
                             {"348\u202fmm", kLength, 0.348},        // narrow no-break space
                             {"\u22125 mm", kSignedLength, -0.005},  // minus sign
                             {"21.5 \u00b0C", any<&read_temperature>, 294.65},
                             {"21.5 \u2103", any<&read_temperature>, 294.65},
                             {"40 in\u00b2", any<&read_area>, 0.0258064},
                             {"28 inH\u2082O", any<&read_pressure>, 6974.49},
                             {"45\u00a2", any<&read_price>, 45},
                         }));

INSTANTIATE_TEST_SUITE_P(Pressures, Read,
                         testing::ValuesIn(std::vector<Row>{
                             {"25 psi", any<&read_pressure>, 172368.93},
                             {"25 psig", any<&read_pressure>, 172368.93},
                             {"28 inH2O", any<&read_pressure>, 6974.4895},
                             {"28 in water", any<&read_pressure>, 6974.4895},
                             {"28 in. of water", any<&read_pressure>, 6974.4895},
                             {"28\" wc", any<&read_pressure>, 6974.4895},
                             {"2 ftH2O", any<&read_pressure>, 5978.134},
                             {"1.7 bar", any<&read_pressure>, 170000},
                             {"20 kPa", any<&read_pressure>, 20000},
                             {"0.2 MPa", any<&read_pressure>, 200000},
                             {"826 mm water", any<&read_pressure>, 8100.2929},
                             {"-3 psi", any<&read_pressure>, -20684.272},
                             {"-14.7 psi", any<&read_pressure>, -101352.93},
                             {"1.29 psi (36 in water)", any<&read_pressure>, 8894.2369},
                             {"14.7 psia", any<&read_absolute_pressure>, 101352.93},
                             {"1.013 bar abs", any<&read_absolute_pressure>, 101300},
                             {"1 atm", any<&read_absolute_pressure>, 101325},
                             {"3 psi", any<&read_pressure_difference>, 20684.272},
                             {"24 in", any<&read_head>, 0.6096},
                             {"2 ft 6 in", any<&read_head>, 0.762},
                             {"36 ksi", any<&read_stress>, 248.211262e6},
                             {"250 MPa", any<&read_stress>, 250.0e6},
                             {"250 mpa", any<&read_stress>, 250.0e6},
                             {"29 GPa", any<&read_stress>, 29.0e9},
                         }));

INSTANTIATE_TEST_SUITE_P(Flows, Read,
                         testing::ValuesIn(std::vector<Row>{
                             {"12 gpm", any<&read_volume_flow>, 7.570824e-4},
                             {"12 gal/min", any<&read_volume_flow>, 7.570824e-4},
                             {"12 gal per min", any<&read_volume_flow>, 7.570824e-4},
                             {"45 L/min", any<&read_volume_flow>, 7.5e-4},
                             {"45 l / min", any<&read_volume_flow>, 7.5e-4},
                             {"3 m3/h", any<&read_volume_flow>, 8.3333333e-4},
                             {"3.5 scfm", any<&read_air_flow>, 1.6518161e-3},
                             {"3.5 CFM", any<&read_air_flow>, 1.6518161e-3},
                             {"150 l/min", any<&read_air_flow>, 2.5e-3},
                             {"6 ft/s", any<&read_velocity>, 1.8288},
                         }));

INSTANTIATE_TEST_SUITE_P(Others, Read,
                         testing::ValuesIn(std::vector<Row>{
                             {"70 degF", any<&read_temperature>, 294.261111},
                             {"70 F", any<&read_temperature>, 294.261111},
                             {"-40 degF", any<&read_temperature>, 233.15},
                             {"20 degC", any<&read_temperature>, 293.15},
                             {"294 K", any<&read_temperature>, 294},
                             {"18 degF", any<&read_temperature_difference>, 10},
                             {"40 gal", any<&read_volume>, 0.15141647},
                             {"150 L", any<&read_volume>, 0.15},
                             {"2 cu ft", any<&read_volume>, 0.056633693},
                             {"2 min", any<&read_time>, 120},
                             {"90 s", any<&read_time>, 90},
                             {"1.5 h", any<&read_time>, 5400},
                             {"1 h 20 min 30 s", any<&read_time>, 4830},
                             {"1h30m", any<&read_time>, 5400},
                             {"13 lb", any<&read_mass>, 5.8967008},
                             {"13 lb 4 oz", any<&read_mass>, 6.0100989},
                             {"4.5 kW", any<&read_power>, 4500},
                             {"1 hp", any<&read_power>, 745.69987},
                             {"300 ft-lb", any<&read_energy>, 406.74538},
                             {"300 ft\u00b7lb", any<&read_energy>, 406.74538},
                             {"250 lbf", any<&read_force>, 1112.0554},
                             {"0.284 lb/in3", any<&read_density>, 7861.0922},
                             {"$2.10", any<&read_price>, 210},
                             {"2.10 usd", any<&read_price>, 210},
                             {"$ 2.1", any<&read_price>, 210},
                             {"3 dollars", any<&read_price>, 300},
                             {"$.45", any<&read_price>, 45},
                             {"$0", any<&read_price>, 0},
                             {"0.6", any<&read_number>, 0.6},
                             {"3/4", any<&read_number>, 0.75},
                             {"60 %", any<&read_number>, 0.6},
                             {"-2.5", any<&read_number>, -2.5},
                             {"3", any<&read_count>, 3},
                         }));

struct SizeRow {
  const char* text;
  const char* name;
};

void PrintTo(const SizeRow& row, std::ostream* out) { *out << row.text; }

class ReadSizeName : public testing::TestWithParam<SizeRow> {};

TEST_P(ReadSizeName, GivesTheOneWayInWhichASizeIsWritten) {
  const auto reading = read_size_name(GetParam().text);
  ASSERT_TRUE(std::holds_alternative<std::string>(reading)) << std::get<ReadError>(reading).message;
  EXPECT_EQ(std::get<std::string>(reading), GetParam().name);
}

INSTANTIATE_TEST_SUITE_P(Sizes, ReadSizeName,
                         testing::ValuesIn(std::vector<SizeRow>{
                             {"1", "1"},         {"1 in", "1"},      {"1\"", "1"},           {"1.0", "1"},
                             {"1 1/4", "1-1/4"}, {"1-1/4", "1-1/4"}, {"1.25", "1-1/4"},      {"1\u00bc", "1-1/4"},
                             {"5/4", "1-1/4"},   {"3/4\"", "3/4"},   {"3/4-in.", "3/4"},     {"6/8", "3/4"},
                             {"0.5", "1/2"},     {".5", "1/2"},      {"NPS 2-1/2", "2-1/2"}, {"-8", "1/2"},
                             {"-20", "1-1/4"},   {"DN 32", "1-1/4"}, {"dn15", "1/2"},        {"12", "12"},
                         }));

// The pairs that pipe is sold by: ISO 6708 beside ASME B36.10M, from memory.
INSTANTIATE_TEST_SUITE_P(MetricSizes, ReadSizeName,
                         testing::ValuesIn(std::vector<SizeRow>{
                             {"DN 6", "1/8"},
                             {"DN 8", "1/4"},
                             {"DN 10", "3/8"},
                             {"DN 15", "1/2"},
                             {"DN 20", "3/4"},
                             {"DN 25", "1"},
                             {"DN 40", "1-1/2"},
                             {"DN 50", "2"},
                             {"DN 65", "2-1/2"},
                             {"DN 80", "3"},
                             {"DN 90", "3-1/2"},
                             {"DN 100", "4"},
                             {"DN 125", "5"},
                             {"DN 150", "6"},
                             {"DN 200", "8"},
                             {"DN 250", "10"},
                             {"DN 300", "12"},
                         }));

}  // namespace
}  // namespace riserun::quantity
