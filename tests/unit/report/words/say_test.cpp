// How a sentence of the tables of words is filled, in either system of units; and that every sentence of the tables can
// be told by its code.
#include "report/words/say.h"

#include "report/words/remark_words.h"

#include <gtest/gtest.h>

#include <set>

namespace riserun::report {
namespace {

using quantity::fact;
using quantity::Texts;
using quantity::Value;
using quantity::value_of;

std::string in_inch(std::string_view text, std::vector<Value> values) { return fill(text, values, UnitSystem::inch); }
std::string in_metric(std::string_view text, std::vector<Value> values) {
  return fill(text, values, UnitSystem::metric);
}

TEST(Say, WritesLengthsInTheUnitsAskedFor) {
  EXPECT_EQ(in_inch("narrows below {0}", {inches(1.5)}), "narrows below 1-1/2 in");
  EXPECT_EQ(in_metric("narrows below {0}", {inches(1.5)}), "narrows below 38 mm");
  EXPECT_EQ(in_inch("{0:both}", {inches(1.5)}), "1-1/2 in (38 mm)");
  EXPECT_EQ(in_inch("{0:thickness3}", {inches(0.1345)}), "0.135 in");
  EXPECT_EQ(in_inch("{0:decimal3}", {inches(1.25)}), "1.25 in");
  EXPECT_EQ(in_metric("{0:decimal3}", {inches(1.25)}), "31.8 mm");
  EXPECT_EQ(in_inch("{0:long}", {feet(6.5)}), "6 ft 6 in");
}

TEST(Say, WritesPressuresWithAndWithoutTheColumn) {
  EXPECT_EQ(in_inch("{0}", {psig(1.0)}), write_pressure(psig(1.0), UnitSystem::inch));
  EXPECT_EQ(in_inch("{0:alone}", {psig(1.25)}), "1.25 psi");
  EXPECT_EQ(in_inch("{0:alone4}", {psig(1.2345)}), write_pressure_alone(psig(1.2345), UnitSystem::inch, 4));
}

TEST(Say, TellsAirFromWater) {
  EXPECT_EQ(in_inch("{0:air}", {cubic_feet_per_minute(12.0)}), "12 scfm");
  EXPECT_EQ(in_inch("{0}", {us_gallons_per_minute(12.0)}), "12 gpm");
}

TEST(Say, CountsOneAndMany) {
  EXPECT_EQ(in_inch("{0:#part|parts}", {value_of(1)}), "1 part");
  EXPECT_EQ(in_inch("{0:#part|parts}", {value_of(2u)}), "2 parts");
  EXPECT_EQ(in_inch("more than {0} part{0:?|s}", {value_of(3)}), "more than 3 parts");
  EXPECT_EQ(in_inch("more than {0} part{0:?|s}", {value_of(1)}), "more than 1 part");
}

TEST(Say, PutsNamesAndRowsInTheirPlaces) {
  EXPECT_EQ(in_inch("{1} meets {0}", {value_of("brass"), value_of(std::string("steel"))}), "steel meets brass");
  EXPECT_EQ(in_inch("{0}", {Texts{"a", "b"}}), "a, b");
  EXPECT_EQ(in_inch("{0:; }", {Texts{"a", "b", "c"}}), "a; b; c");
}

TEST(Say, EverySentenceOfTheTablesHasACodeOfItsOwn) {
  std::set<std::string_view> codes;
  for (const auto table : word_tables())
    for (const Words& words : table) {
      EXPECT_TRUE(codes.insert(words.code).second) << words.code << " stands twice";
      EXPECT_FALSE(words.text.empty()) << words.code;
    }
}

TEST(SaidFinding, TellsTwoNumbersApart) {
  const auto said = [](const Value& asked, const Value& allowed, UnitSystem units) {
    plan::Finding finding;
    finding.reason = fact("fill_needs_more_than_walls_may_see");
    finding.numbers = plan::Against{asked, allowed};
    const SaidFinding words = say(finding, units);
    return words.asked + " and " + words.allowed;
  };
  EXPECT_EQ(said(psig(1.6), psig(1.4), UnitSystem::inch), "1.6 psi (44 in water) and 1.4 psi (39 in water)");
  EXPECT_EQ(said(psig(1.4024), psig(1.4011), UnitSystem::inch),
            "1.402 psi (38.8 in water) and 1.401 psi (38.8 in water)");
  EXPECT_EQ(said(inches(0.1271), inches(0.1267), UnitSystem::inch), "0.1271 in and 0.1267 in");
  EXPECT_EQ(said(psig(1.4), psig(1.4), UnitSystem::inch), "1.4 psi (39 in water) and 1.4 psi (39 in water)");
}

}  // namespace
}  // namespace riserun::report
