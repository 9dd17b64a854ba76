// What is refused, where the mistake stands, and the exact words: what was read, what is wrong, what is allowed.
#include "quantity/number_text.h"
#include "unit/quantity/any_reader.h"

#include <gtest/gtest.h>

#include <ostream>
#include <string>
#include <vector>

namespace riserun::quantity {
namespace {

struct RefusedRow {
  std::string text;
  AnyReader reader;
  std::size_t offset;
  const char* message;
};

void PrintTo(const RefusedRow& row, std::ostream* out) { *out << quoted(row.text); }

class Refused : public testing::TestWithParam<RefusedRow> {};

TEST_P(Refused, SaysWhatIsWrongWhereAndWhatIsAllowed) {
  const Reading<double> reading = GetParam().reader(GetParam().text);
  ASSERT_TRUE(std::holds_alternative<ReadError>(reading)) << std::get<double>(reading);
  EXPECT_EQ(std::get<ReadError>(reading).message, GetParam().message);
  EXPECT_EQ(std::get<ReadError>(reading).offset, GetParam().offset);
}

constexpr AnyReader kPressure = any<&read_pressure>;

INSTANTIATE_TEST_SUITE_P(
    Numbers, Refused,
    testing::ValuesIn(std::vector<RefusedRow>{
        {"", kLength, 0, "nothing written; length is a number and a unit, like 5-1/2 in"},
        {"   ", kLength, 0, "nothing written; length is a number and a unit, like 5-1/2 in"},
        {"abc", kLength, 0, "'abc': does not begin with a number; length is a number and a unit, like 5-1/2 in"},
        {"5-1/0 in", kLength, 4, "'5-1/0 in': the fraction 1/0 has a zero denominator"},
        {"0/0 in", kLength, 2, "'0/0 in': the fraction 0/0 has a zero denominator"},
        {"3/ in", kLength, 1, "'3/ in': the fraction has no denominator; write it like 3/4"},
        {"3/4/5 in", kLength, 3, "'3/4/5 in': a fraction is one whole number over another, like 3/4"},
        {"3/4.5 in", kLength, 3, "'3/4.5 in': a fraction is one whole number over another, like 3/4"},
        {"5-17/16 in", kLength, 2,
         "'5-17/16 in': after a whole number the fraction must lie between 0 and 1, like 5-1/2"},
        {"5-0/4 in", kLength, 2, "'5-0/4 in': after a whole number the fraction must lie between 0 and 1, like 5-1/2"},
        {"5.5-1/2 in", kLength, 3,
         "'5.5-1/2 in': a decimal point and a fraction do not go together; write 5.5 or 5-1/2"},
        {"5.5 1/2 in", kLength, 3,
         "'5.5 1/2 in': a decimal point and a fraction do not go together; write 5.5 or 5-1/2"},
        {"5.5/2 in", kLength, 3, "'5.5/2 in': a decimal point and a fraction do not go together; write 5.5 or 5-1/2"},
        {"1,5 in", kLength, 1, "'1,5 in': a comma is not read in a number; write 1000 or 5.5"},
        {"1,000 mm", kLength, 1, "'1,000 mm': a comma is not read in a number; write 1000 or 5.5"},
        {"1 000 mm", kLength, 2, "'1 000 mm': '000 mm' follows the number; write one number and a unit, like 5-1/2 in"},
        {"5 -1/2 in", kLength, 2,
         "'5 -1/2 in': '-1/2 in' follows the number; write one number and a unit, like 5-1/2 in"},
        {"5 1/2 1/2 in", kLength, 6,
         "'5 1/2 1/2 in': '1/2 in' follows the number; write one number and a unit, like 5-1/2 in"},
        {"5-1/2-1/2 in", kLength, 5,
         "'5-1/2-1/2 in': '-1/2 in' follows the number; write one number and a unit, like 5-1/2 in"},
        {"--5 in", kLength, 1, "'--5 in': does not begin with a number; length is a number and a unit, like 5-1/2 in"},
        {". in", kLength, 0, "'. in': does not begin with a number; length is a number and a unit, like 5-1/2 in"},
        {"-0 in", kLength, 0, "'-0 in': zero has no sign; write 0"},
        {"-0.0 in", kLength, 0, "'-0.0 in': zero has no sign; write 0"},
        {"nan in", kLength, 0, "'nan in': does not begin with a number; length is a number and a unit, like 5-1/2 in"},
        {"inf in", kLength, 0, "'inf in': does not begin with a number; length is a number and a unit, like 5-1/2 in"},
        {"-inf in", kLength, 1,
         "'-inf in': does not begin with a number; length is a number and a unit, like 5-1/2 in"},
        {"NaN mm", kLength, 0, "'NaN mm': does not begin with a number; length is a number and a unit, like 5-1/2 in"},
        {"1e400 in", kLength, 0, "'1e400 in': the number is too large or too small to work with"},
        {"-1e400 in", kLength, 1, "'-1e400 in': the number is too large or too small to work with"},
        {"1e-400 in", kLength, 0, "'1e-400 in': the number is too large or too small to work with"},
        {"1/99999999999 in", kLength, 0, "'1/99999999999 in': the fraction has too many digits"},
        {"0x10 in", kLength, 1, "'0x10 in': unknown unit 'x10 in'; length takes in, ft, mm, cm, m, um, mil"},
        {"-5 in", kLength, 0, "'-5 in': length cannot be negative"},
        {"-1'6\"", kLength, 0, "'-1'6\"': length cannot be negative"},
        {"99999999 in", kLength, 0, "'99999999 in': out of range; length is allowed from 0 in to 393701 in"},
        {std::string(400, '9') + " in", kLength, 0,
         "'9999999999999999999999999999999999999999...': the number is too large or too small to work with"},
        {"-99999999 in", any<&read_signed_length>, 0,
         "'-99999999 in': out of range; length is allowed from -393701 in to 393701 in"},
    }));

INSTANTIATE_TEST_SUITE_P(
    Units, Refused,
    testing::ValuesIn(std::vector<RefusedRow>{
        {"25", kLength, 2, "'25': no unit; length takes in, ft, mm, cm, m, um, mil"},
        {"5-1/2", kLength, 5, "'5-1/2': no unit; length takes in, ft, mm, cm, m, um, mil"},
        {"25 psi", kLength, 3, "'25 psi': 'psi' is a unit of pressure; length takes in, ft, mm, cm, m, um, mil"},
        {"25 psy", kLength, 3, "'25 psy': unknown unit 'psy'; length takes in, ft, mm, cm, m, um, mil"},
        {"5 inn", kLength, 2,
         "'5 inn': unknown unit 'inn'; length takes in, ft, mm, cm, m, um, mil; did you mean 'in'?"},
        {"5 furlongs", kLength, 2, "'5 furlongs': unknown unit 'furlongs'; length takes in, ft, mm, cm, m, um, mil"},
        {"5 in 6", kLength, 2,
         "'5 in 6': unknown unit 'in 6'; length takes in, ft, mm, cm, m, um, mil; did you mean 'in'?"},
        {"5 in2", kLength, 2, "'5 in2': 'in2' is a unit of area; length takes in, ft, mm, cm, m, um, mil"},
        {"5 m 2 cm", kLength, 2, "'5 m 2 cm': unknown unit 'm 2 cm'; length takes in, ft, mm, cm, m, um, mil"},
        {"1'13\"", kLength, 2, "'1'13\"': after ft comes a number below 12 in"},
        {"1'12\"", kLength, 2, "'1'12\"': after ft comes a number below 12 in"},
        {"1.5' 2\"", kLength, 0, "'1.5' 2\"': ft before in is a whole number"},
        {"1'1-11/16", kLength, 9, "'1'1-11/16': no unit; length takes in, ft, mm, cm, m, um, mil"},
        {"1' 2 cm", kLength, 3, "'1' 2 cm': after ft comes a number below 12 in"},
        {"5 in\x07", kLength, 2,
         "'5 in?': unknown unit 'in?'; length takes in, ft, mm, cm, m, um, mil; did you mean 'in'?"},
        {"\xff\xff", kLength, 0, "'?\?': does not begin with a number; length is a number and a unit, like 5-1/2 in"},
        {"5 \xc2", kLength, 2, "'5 ?': '?' is not understood here; length takes in, ft, mm, cm, m, um, mil"},
        {"½5 in", kLength, 0, "'½5 in': '½5 in' is not understood here; length takes in, ft, mm, cm, m, um, mil"},
        {"5² in", kLength, 1, "'5² in': '² in' is not understood here; length takes in, ft, mm, cm, m, um, mil"},
        {"5 caf\u00e9", kLength, 2, "'5 café': unknown unit 'café'; length takes in, ft, mm, cm, m, um, mil"},
        {"25", kPressure, 2,
         "'25': no unit; pressure takes psi, inH2O, ftH2O, inHg, bar, mbar, Pa, kPa, MPa, mmH2O, mH2O, oz/in2"},
        {"28 in", kPressure, 3,
         "'28 in': 'in' is a unit of length; pressure takes psi, inH2O, ftH2O, inHg, bar, mbar, Pa, kPa, MPa, mmH2O, "
         "mH2O, oz/in2"},
        {"25 psia", kPressure, 3,
         "'25 psia': 'psia' is a unit of absolute pressure; pressure takes psi, inH2O, ftH2O, inHg, bar, mbar, Pa, "
         "kPa, MPa, mmH2O, mH2O, oz/in2"},
        {"250 mPa", kPressure, 4,
         "'250 mPa': unknown unit 'mPa'; pressure takes psi, inH2O, ftH2O, inHg, bar, mbar, Pa, kPa, MPa, mmH2O, mH2O, "
         "oz/in2; "
         "did you mean 'MPa'?"},
        {"20000 bar", kPressure, 0, "'20000 bar': out of range; pressure is allowed from -1.02 bar to 1000 bar"},
        {"-15 psi", kPressure, 0, "'-15 psi': out of range; pressure is allowed from -14.7938 psi to 14503.8 psi"},
        {"1.29 psi (30 in water)", kPressure, 9, "'1.29 psi (30 in water)': the two pressures differ; write one"},
        {"1 psi (", kPressure, 2,
         "'1 psi (': unknown unit 'psi ('; pressure takes psi, inH2O, ftH2O, inHg, bar, mbar, Pa, kPa, MPa, mmH2O, "
         "mH2O, oz/in2; did you mean 'psi'?"},
        {"1 psi (2)", kPressure, 8,
         "'2': no unit; pressure takes psi, inH2O, ftH2O, inHg, bar, mbar, Pa, kPa, MPa, mmH2O, mH2O, oz/in2"},
        {"70 degF", kPressure, 3,
         "'70 degF': 'degF' is a unit of temperature; pressure takes psi, inH2O, ftH2O, inHg, bar, mbar, Pa, kPa, MPa, "
         "mmH2O, mH2O, oz/in2"},
        {"1 atm", kPressure, 2,
         "'1 atm': 'atm' is a unit of absolute pressure; pressure takes psi, inH2O, ftH2O, inHg, bar, mbar, Pa, kPa, "
         "MPa, mmH2O, mH2O, oz/in2"},
        {"14.7 psi", any<&read_absolute_pressure>, 5,
         "'14.7 psi': 'psi' is a unit of pressure; absolute pressure takes psia, inHg abs, bar abs, mbar abs, kPa abs, "
         "Pa abs, atm"},
        {"3", any<&read_pressure_difference>, 1,
         "'3': no unit; pressure takes psi, inH2O, ftH2O, inHg, bar, mbar, Pa, kPa, MPa, mmH2O, mH2O, oz/in2"},
        {"3 psi", any<&read_head>, 2, "'3 psi': 'psi' is a unit of pressure; head takes in, ft, mm, cm, m"},
        {"5 in", any<&read_area>, 2, "'5 in': 'in' is a unit of length; area takes in2, ft2, mm2, cm2, m2"},
        {"40", any<&read_volume>, 2, "'40': no unit; volume takes gal, qt, in3, ft3, L, mL, m3"},
        {"40 gals.x", any<&read_volume>, 3,
         "'40 gals.x': unknown unit 'gals.x'; volume takes gal, qt, in3, ft3, L, mL, m3; did you mean 'gal'?"},
        {"40 galon", any<&read_volume>, 3,
         "'40 galon': unknown unit 'galon'; volume takes gal, qt, in3, ft3, L, mL, m3; did you mean 'gal'?"},
        {"-3 gal", any<&read_volume>, 0, "'-3 gal': volume cannot be negative"},
        {"12", any<&read_volume_flow>, 2,
         "'12': no unit; flow takes gpm, gph, ft3/min, L/min, L/s, L/h, m3/h, m3/min, m3/s"},
        {"3.5 scfm", any<&read_volume_flow>, 4,
         "'3.5 scfm': 'scfm' is a unit of air flow; flow takes gpm, gph, ft3/min, L/min, L/s, L/h, m3/h, m3/min, m3/s"},
        {"12 gmp", any<&read_volume_flow>, 3,
         "'12 gmp': unknown unit 'gmp'; flow takes gpm, gph, ft3/min, L/min, L/s, L/h, m3/h, m3/min, m3/s; did you "
         "mean 'gpm'?"},
        {"12 gpm", any<&read_air_flow>, 3,
         "'12 gpm': 'gpm' is a unit of flow; air flow takes scfm, scfh, L/min, L/s, L/h, m3/h, m3/min, m3/s"},
        {"90", any<&read_time>, 2, "'90': no unit; time takes s, min, h, day"},
        {"1h 70 min", any<&read_time>, 3, "'1h 70 min': after h comes a number below 60 min"},
        {"-2 min", any<&read_time>, 0, "'-2 min': time cannot be negative"},
        {"6 ft", any<&read_velocity>, 2, "'6 ft': 'ft' is a unit of length; velocity takes ft/s, ft/min, m/s"},
        {"13", any<&read_mass>, 2, "'13': no unit; mass takes lb, oz, kg, g, t"},
        {"13 lb 17 oz", any<&read_mass>, 6, "'13 lb 17 oz': after lb comes a number below 16 oz"},
        {"1 ton", any<&read_mass>, 2, "'1 ton': unknown unit 'ton'; mass takes lb, oz, kg, g, t"},
        {"7850", any<&read_density>, 4, "'7850': no unit; density takes kg/m3, lb/ft3, lb/in3, g/cm3"},
        {"5", any<&read_force>, 1, "'5': no unit; force takes lbf, N, kN"},
        {"70", any<&read_temperature>, 2, "'70': no unit; temperature takes degF, degC, K"},
        {"-500 degF", any<&read_temperature>, 0,
         "'-500 degF': out of range; temperature is allowed from -459.67 degF to 3632 degF"},
        {"5000 degC", any<&read_temperature>, 0,
         "'5000 degC': out of range; temperature is allowed from -273.15 degC to 2000 degC"},
        {"10", any<&read_temperature_difference>, 2, "'10': no unit; temperature difference takes degF, degC, K"},
        {"4.5 kwh", any<&read_power>, 4, "'4.5 kwh': 'kwh' is a unit of energy; power takes W, kW, hp, BTU/h"},
        {"5 kv", any<&read_power>, 2, "'5 kv': unknown unit 'kv'; power takes W, kW, hp, BTU/h; did you mean 'kW'?"},
        {"5", any<&read_energy>, 1, "'5': no unit; energy takes ft-lb, J, kJ, MJ, BTU, kWh"},
        {"36", any<&read_stress>, 2, "'36': no unit; stress takes psi, ksi, kPa, MPa, GPa"},
        {"250 mPa", any<&read_stress>, 4,
         "'250 mPa': unknown unit 'mPa'; stress takes psi, ksi, kPa, MPa, GPa; did you mean 'MPa'?"},
    }));

INSTANTIATE_TEST_SUITE_P(
    PricesSheetsCountsAndSizes, Refused,
    testing::ValuesIn(std::vector<RefusedRow>{
        {"", any<&read_price>, 0, "nothing written; a price is dollars and cents, like $2.10 or 2.10 usd"},
        {"2.10", any<&read_price>, 4, "'2.10': no currency; a price is dollars and cents, like $2.10 or 2.10 usd"},
        {"$2.105", any<&read_price>, 1, "'$2.105': a price is in whole cents, like $2.10"},
        {"45.5 cents", any<&read_price>, 0, "'45.5 cents': a price is in whole cents, like $2.10"},
        {"-$2", any<&read_price>, 0, "'-$2': a price cannot be negative"},
        {"$", any<&read_price>, 1, "'$': not a price; a price is dollars and cents, like $2.10 or 2.10 usd"},
        {"$.", any<&read_price>, 1, "'$.': not a price; a price is dollars and cents, like $2.10 or 2.10 usd"},
        {"$1,000.00", any<&read_price>, 2,
         "'$1,000.00': ',000.00' after the amount is not understood; a price is dollars and cents, like $2.10 or 2.10 "
         "usd"},
        {"$99999999999999999999", any<&read_price>, 1,
         "'$99999999999999999999': out of range; a price is allowed from $0 to $10000000"},
        {"$3 usd", any<&read_price>, 3,
         "'$3 usd': 'usd' after the amount is not understood; a price is dollars and cents, like $2.10 or 2.10 usd"},
        {"2.10 eur", any<&read_price>, 5,
         "'2.10 eur': 'eur' after the amount is not understood; a price is dollars and cents, like $2.10 or 2.10 usd"},
        {"$2.1.0", any<&read_price>, 1, "'$2.1.0': not a price; a price is dollars and cents, like $2.10 or 2.10 usd"},
        {"", any<&read_sheet>, 0, "nothing written; length is a number and a unit, like 5-1/2 in"},
        {"10", any<&read_sheet>, 2,
         "'10': no unit; a sheet is a thickness (in, ft, mm, cm, m, um, mil) or a gauge with its metal, like 10 ga "
         "steel"},
        {"10 ga", any<&read_sheet>, 5,
         "'10 ga': a gauge number needs its metal, as it means another thickness in each: 0.1345 in for steel, 0.1382 "
         "in for galvanized, 0.1406 in for stainless, 0.1019 in for aluminium, like 10 ga steel"},
        {"10 ga brass", any<&read_sheet>, 6,
         "'10 ga brass': no gauge table for 'brass'; allowed: steel, galvanized, stainless or aluminium"},
        {"7 ga galv", any<&read_sheet>, 0,
         "'7 ga galv': no such gauge; galvanized gauges are whole numbers from 8 to 30"},
        {"31 ga steel", any<&read_sheet>, 0,
         "'31 ga steel': no such gauge; steel gauges are whole numbers from 7 to 30"},
        {"10.5 ga steel", any<&read_sheet>, 0,
         "'10.5 ga steel': no such gauge; steel gauges are whole numbers from 7 to 30"},
        {"-10 ga steel", any<&read_sheet>, 0,
         "'-10 ga steel': no such gauge; steel gauges are whole numbers from 7 to 30"},
        {"40 gal", any<&read_sheet>, 3, "'40 gal': 'gal' is a unit of volume; length takes in, ft, mm, cm, m, um, mil"},
        {"3/0 in", any<&read_sheet>, 2, "'3/0 in': the fraction 3/0 has a zero denominator"},
        {"99999999999999999999 ga steel", any<&read_sheet>, 0,
         "'99999999999999999999 ga steel': no such gauge; steel gauges are whole numbers from 7 to 30"},
        {"", any<&read_number>, 0, "nothing written; a number is written like 0.6, 3/4 or 60 %"},
        {"x", any<&read_number>, 0, "'x': does not begin with a number; a number is written like 0.6, 3/4 or 60 %"},
        {"5 in", any<&read_number>, 2,
         "'5 in': 'in' after the number; a number is written like 0.6, 3/4 or 60 %, without a unit"},
        {"3/0", any<&read_number>, 2, "'3/0': the fraction 3/0 has a zero denominator"},
        {"", any<&read_count>, 0, "nothing written; a whole number from 0 to 1000000 is wanted"},
        {"3.0", any<&read_count>, 0, "'3.0': a whole number from 0 to 1000000 is wanted"},
        {"-1", any<&read_count>, 0, "'-1': a whole number from 0 to 1000000 is wanted"},
        {"1000001", any<&read_count>, 0, "'1000001': a whole number from 0 to 1000000 is wanted"},
        {"3 x", any<&read_count>, 0, "'3 x': a whole number from 0 to 1000000 is wanted"},
        {"99999999999999999999", any<&read_count>, 0,
         "'99999999999999999999': a whole number from 0 to 1000000 is wanted"},
        {"", any_size_name, 0, "nothing written; sizes are whole inches and fractions up to 48, like 3/4 or 1-1/4"},
        {"abc", any_size_name, 0,
         "'abc': does not begin with a number; sizes are whole inches and fractions up to 48, like 3/4 or 1-1/4"},
        {"1.3", any_size_name, 0,
         "'1.3': no such size; sizes are whole inches and fractions up to 48, like 3/4 or 1-1/4"},
        {"1/3", any_size_name, 0,
         "'1/3': no such size; sizes are whole inches and fractions up to 48, like 3/4 or 1-1/4"},
        {"0", any_size_name, 0, "'0': no such size; sizes are whole inches and fractions up to 48, like 3/4 or 1-1/4"},
        {"100", any_size_name, 0,
         "'100': no such size; sizes are whole inches and fractions up to 48, like 3/4 or 1-1/4"},
        {"-0", any_size_name, 0, "'-0': no such dash size; dash sizes are sixteenths of an inch from -1 to -64"},
        {"-65", any_size_name, 0, "'-65': no such dash size; dash sizes are sixteenths of an inch from -1 to -64"},
        {"-8x", any_size_name, 0, "'-8x': no such dash size; dash sizes are sixteenths of an inch from -1 to -64"},
        {"DN 33", any_size_name, 3,
         "'DN 33': no such DN; DN is one of 6 8 10 15 20 25 32 40 50 65 80 90 100 125 150 200 250 300"},
        {"DN", any_size_name, 2,
         "'DN': no such DN; DN is one of 6 8 10 15 20 25 32 40 50 65 80 90 100 125 150 200 250 300"},
        {"1 1/4 NPT", any_size_name, 6,
         "'1 1/4 NPT': 'NPT' is no part of a size; sizes are whole inches and fractions up to 48, like 3/4 or 1-1/4"},
        {"5/0", any_size_name, 2, "'5/0': the fraction 5/0 has a zero denominator"},
    }));

}  // namespace
}  // namespace riserun::quantity
