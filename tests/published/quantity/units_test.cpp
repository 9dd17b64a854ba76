// Every unit that is read, against the factor that is printed for it.
//
// Source: NIST Special Publication 811 (2008), appendix B.8, seven digits as printed there (from memory).
// "Conventional" columns of water and mercury, International Table BTU, avoirdupois ounce, US liquid gallon and quart,
// horsepower of 550 ft-lbf/s. Multiples by SI prefix and the minute, hour and day are exact.
#include "quantity/units.h"

#include "quantity/number_text.h"
#include "quantity/unit_text.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>
#include <string>
#include <utility>

namespace riserun::quantity {
namespace {

constexpr Kind kKinds[] = {Kind::length,      Kind::head,        Kind::area,
                           Kind::volume,      Kind::pressure,    Kind::absolute_pressure,
                           Kind::volume_flow, Kind::air_flow,    Kind::time,
                           Kind::velocity,    Kind::mass,        Kind::density,
                           Kind::force,       Kind::temperature, Kind::temperature_difference,
                           Kind::power,       Kind::energy,      Kind::stress};

// What one of a unit is in SI. A symbol means the same in every table but for temperatures.
const std::map<std::string, double, std::less<>> kFactors = {
    // length
    {"in", 2.54e-2},
    {"ft", 3.048e-1},
    {"mm", 1e-3},
    {"cm", 1e-2},
    {"m", 1},
    {"um", 1e-6},
    {"mil", 2.54e-5},
    // area, volume
    {"in2", 6.4516e-4},
    {"ft2", 9.290304e-2},
    {"mm2", 1e-6},
    {"cm2", 1e-4},
    {"m2", 1},
    {"gal", 3.785412e-3},
    {"qt", 9.463529e-4},
    {"in3", 1.638706e-5},
    {"ft3", 2.831685e-2},
    {"L", 1e-3},
    {"mL", 1e-6},
    {"m3", 1},
    // pressure, stress
    {"psi", 6.894757e3},
    {"ksi", 6.894757e6},
    {"inH2O", 2.490889e2},
    {"ftH2O", 2.989067e3},
    {"inHg", 3.386389e3},
    {"bar", 1e5},
    {"mbar", 1e2},
    {"Pa", 1},
    {"kPa", 1e3},
    {"MPa", 1e6},
    {"GPa", 1e9},
    {"mmH2O", 9.80665},
    {"mH2O", 9.80665e3},
    {"oz/in2", 4.309223e2},  // a sixteenth of a pound on the square inch
    {"psia", 6.894757e3},
    {"inHg abs", 3.386389e3},
    {"bar abs", 1e5},
    {"mbar abs", 1e2},
    {"kPa abs", 1e3},
    {"Pa abs", 1},
    {"atm", 1.01325e5},
    // flow
    {"gpm", 6.309020e-5},
    {"gph", 1.051503e-6},
    {"ft3/min", 4.719474e-4},
    {"scfm", 4.719474e-4},
    {"scfh", 7.865791e-6},
    {"L/min", 1.666667e-5},
    {"L/s", 1e-3},
    {"L/h", 2.777778e-7},
    {"m3/h", 2.777778e-4},
    {"m3/min", 1.666667e-2},
    {"m3/s", 1},
    // time, velocity
    {"s", 1},
    {"min", 60},
    {"h", 3600},
    {"day", 86400},
    {"ft/s", 3.048e-1},
    {"ft/min", 5.08e-3},
    {"m/s", 1},
    // mass, density, force
    {"lb", 4.535924e-1},
    {"oz", 2.834952e-2},
    {"kg", 1},
    {"g", 1e-3},
    {"t", 1e3},
    {"kg/m3", 1},
    {"lb/ft3", 1.601846e1},
    {"lb/in3", 2.767990e4},
    {"g/cm3", 1e3},
    {"lbf", 4.448222},
    {"N", 1},
    {"kN", 1e3},
    // power, energy
    {"W", 1},
    {"kW", 1e3},
    {"hp", 7.456999e2},
    {"BTU/h", 2.930711e-1},
    {"ft-lb", 1.355818},
    {"J", 1},
    {"kJ", 1e3},
    {"MJ", 1e6},
    {"BTU", 1.055056e3},
    {"kWh", 3.6e6},
};

double one_of(const std::string& symbol, Kind kind) {
  const std::string text = "1 " + symbol;
  const PlainText plain = plain_text(text);
  const auto reading = read_measured(plain, unit_table(kind));
  return std::holds_alternative<Measured>(reading) ? std::get<Measured>(reading).in_si : std::nan("");
}

TEST(UnitFactors, AreThosePrintedInNistSp811) {
  std::set<std::string, std::less<>> tried;
  for (const Kind kind : kKinds) {
    if (kind == Kind::temperature || kind == Kind::temperature_difference) continue;
    for (const Unit& unit : unit_table(kind).units) {
      const auto row = kFactors.find(unit.symbol);
      ASSERT_NE(row, kFactors.end()) << unit.symbol << " has no printed factor here";
      // Seven digits: half a unit of the last one is at most 5e-7 of the value.
      EXPECT_NEAR(one_of(row->first, kind), row->second, 5.01e-7 * row->second) << row->first;
      tried.insert(row->first);
    }
  }
  EXPECT_EQ(tried.size(), kFactors.size());
}

TEST(UnitFactors, OfTemperaturesMeetAtTheFixedPoints) {
  EXPECT_NEAR(one_of("degF", Kind::temperature), 255.9278, 5e-5);  // SP 811: T/K = (t/degF + 459.67)/1.8
  EXPECT_NEAR(one_of("degC", Kind::temperature), 274.15, 1e-9);
  EXPECT_NEAR(one_of("K", Kind::temperature), 1.0, 1e-12);
  EXPECT_NEAR(one_of("degF", Kind::temperature_difference), 5.555556e-1, 5e-8);
  EXPECT_NEAR(one_of("degC", Kind::temperature_difference), 1.0, 1e-12);
  EXPECT_NEAR(one_of("K", Kind::temperature_difference), 1.0, 1e-12);
}

TEST(UnitSpellings, AreFoldedAndMeanOneThingInATable) {
  for (const Kind kind : kKinds) {
    std::map<std::string, std::string_view> owners;
    for (const Unit& unit : unit_table(kind).units) {
      EXPECT_EQ(find_unit(unit_table(kind), unit.symbol), &unit) << unit.symbol << " does not read as itself";
      std::string spellings(unit.spellings);
      for (std::size_t at = 0; at < spellings.size();) {
        const std::size_t end = std::min(spellings.find(' ', at), spellings.size());
        const std::string spelling = spellings.substr(at, end - at);
        EXPECT_EQ(folded_unit(spelling), spelling) << "would never be found";
        const auto [owner, is_new] = owners.emplace(spelling, unit.symbol);
        EXPECT_TRUE(is_new) << spelling << " is spelled for " << owner->second << " and " << unit.symbol;
        at = end + 1;
      }
    }
  }
}

TEST(UnitTables, HaveLimitsAndAnExampleThatReads) {
  for (const Kind kind : kKinds) {
    const UnitTable& table = unit_table(kind);
    EXPECT_LT(table.low, table.high) << table.name;
    EXPECT_TRUE(std::holds_alternative<Measured>(read_limited(table.example, table))) << table.name;
  }
}

}  // namespace
}  // namespace riserun::quantity
