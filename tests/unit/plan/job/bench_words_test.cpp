// The words of the bench in a job: bare numbers, plate by its fraction, a regulator's range, stays.
#include "unit/plan/bench_job.h"
#include "unit/plan/shipped.h"

#include <gmock/gmock.h>

#include <regex>

namespace riserun::plan {
namespace {

using testing::HasSubstr;

Job read_bench(const std::string& text) { return read_job(*shipped_catalog(), text, "bench.yaml"); }

std::string mistakes_in(const std::string& text) {
  try {
    read_bench(text);
    return "it loaded";
  } catch (const InputError& error) {
    return error.what();
  }
}

std::string without_units(const std::string& text) {
  return std::regex_replace(text, std::regex(R"((\d) (in|psi|scfm|gal|degF|ft)\b)"), "$1");
}

TEST(BareNumbers, OfAJobAreInItsUnits) {
  const Job job = read_bench(without_units(kBench));
  const Job wanted = read_bench(kBench);
  EXPECT_EQ(job.reservoir.length, wanted.reservoir.length);
  EXPECT_EQ(job.reservoir.charge, wanted.reservoir.charge);
  EXPECT_EQ(job.table.floor_height, wanted.table.floor_height);
  EXPECT_EQ(job.air.delivery, wanted.air.delivery);
  EXPECT_EQ(job.air.receiver, wanted.air.receiver);
  EXPECT_EQ(job.air.regulator_range, wanted.air.regulator_range);
  EXPECT_EQ(job.vent.bore, wanted.vent.bore);
  EXPECT_EQ(job.water_temperature, wanted.water_temperature);
  EXPECT_EQ(job.altitude, wanted.altitude);
}

TEST(BareNumbers, OfAMetricJobAreMillimetresAndBar) {
  std::string metric = with(kBench, "units: inch", "units: metric");
  metric = with(metric, "length: 40 in, width: 20 in", "length: 1000, width: 500");
  metric = with(metric, "regulator range: 15 psi", "regulator range: 1");
  metric = with(metric, "10 ga steel", "3 stainless");
  const Job job = read_bench(metric);
  EXPECT_EQ(job.reservoir.length, millimetres(1000.0));
  EXPECT_NEAR(in_pascals(*job.air.regulator_range), 1e5, 1e-3);
  EXPECT_EQ(job.reservoir.sheet.thickness, millimetres(3.0));
  EXPECT_EQ(job.reservoir.sheet.metal, "stainless");
}

TEST(BareNumbers, MayStandBeforeTheirUnits) {
  const std::string last = with(without_units(kBench), "units: inch\n", "") + "units: inch\n";
  EXPECT_EQ(read_bench(last).reservoir.length, inches(40.0));
}

TEST(BareNumbers, WithoutUnitsAreAMistake) {
  const std::string none = with(kBench, "units: inch\n", "");
  EXPECT_EQ(read_bench(none).reservoir.length, inches(40.0));  // with units in it nothing is missing
  EXPECT_THAT(mistakes_in(with(none, "length: 40 in", "length: 40")),
              HasSubstr("reservoir.inside.length: '40': no unit; length takes in, ft, mm, cm, m, um, mil; "
                        "'units: inch' would make it 40 in"));
}

TEST(BareNumbers, OfTheBinAndOfWhatWasMeasured) {
  const Job job = read_bench(std::string(kBench) +
                             "bin:\n  - {part: 1 rubber hose, length: 36}\nmeasured:\n  - {part: 1 union black iron, "
                             "length: 2-1/4}\n");
  ASSERT_EQ(job.bin.items.size(), 1u);
  EXPECT_THAT(job.own_catalog->part(job.bin.items[0].part).name, HasSubstr("a piece of 36 in"));
}

TEST(BareNumbers, AssumeNothingNew) {
  const auto assumed = [](const std::string& text) { return plan_of_text(text).assumptions.size(); };
  EXPECT_EQ(assumed(without_units(kBench)), assumed(kBench));
}

TEST(BenchWords, OfPlateAreSteelByTheInch) {
  for (const char* words : {"3/16 plate", "3/16 steel", "3/16\" plate", "0.1875 steel", "3/16 A36 plate"})
    EXPECT_NEAR(in_inches(read_bench(with(kBench, "10 ga steel", words)).reservoir.sheet.thickness), 0.1875, 1e-9)
        << words;
  EXPECT_NEAR(in_inches(read_bench(with(kBench, "10 ga steel", "11 ga\n  metal: steel")).reservoir.sheet.thickness),
              0.1196, 1e-9);
  EXPECT_THAT(mistakes_in(with(kBench, "10 ga steel", "11 ga")), HasSubstr("0.1196 in for steel"));
  EXPECT_THAT(mistakes_in(with(kBench, "10 ga steel", "11 steel")), HasSubstr("it can be 11 ga or 11 in"));
}

// Trade names, common practice.
TEST(BenchWords, OfSheetAreItsTradeNames) {
  const auto sheet = [](const char* words) { return read_bench(with(kBench, "10 ga steel", words)).reservoir.sheet; };
  EXPECT_NEAR(in_inches(sheet("3 mm S235").thickness), 3.0 / 25.4, 1e-9);
  EXPECT_EQ(sheet("3 mm S235").metal, "S235");
  EXPECT_NEAR(in_inches(sheet("3/16 mild").thickness), 0.1875, 1e-9);
  for (const char* words : {"10ga HRPO", "10 ga P&O", "10 ga hot rolled pickled and oiled"})
    EXPECT_NEAR(in_inches(sheet(words).thickness), 0.1345, 1e-9) << words;
  EXPECT_THAT(mistakes_in(with(kBench, "10 ga steel", "3 mm S2355")), HasSubstr("did you mean 'S235'?"));
}

TEST(BenchWords, OfARegulatorAreItsDial) {
  for (const char* words : {"0 to 15 psi", "0-15 psi", "0 - 15", "15"})
    EXPECT_NEAR(in_psi(*read_bench(with(kBench, "15 psi", words)).air.regulator_range), 15.0, 1e-6) << words;
  EXPECT_THAT(mistakes_in(with(kBench, "15 psi", "0-15 psy")), HasSubstr("unknown unit 'psy'"));
}

TEST(BenchWords, OfAPortAreItsBung) {
  const Job job = read_bench(with(kBench, "air bung: 1/2 FNPT", "air bung: 1/2 half coupling"));
  EXPECT_EQ(job.reservoir.ports[1].type, read_bench(kBench).reservoir.ports[1].type);
}

TEST(BenchWords, OfNeedsArePartsOrNameBoth) {
  const std::string cam = with(kBench, "need: [union]", "need: [camlock]");
  EXPECT_FALSE(read_bench(cam).connections[0].needs[0].parts.empty());
  const std::string gauge = with(kBench, "need: [union]", "need: [0-30 psi gauge]");
  EXPECT_FALSE(read_bench(gauge).connections[0].needs[0].parts.empty());
  EXPECT_THAT(mistakes_in(with(kBench, "need: [union]", "need: [0-30 psi]")),
              HasSubstr("can be read in several ways, say which: air regulator or pressure gauge"));
}

TEST(BenchWords, OfStaysAreAskedForBothWays) {
  for (const char* words : {"3 stays across", "{stays across: 3}", "{ribs across: 3, passages: yes}"}) {
    const std::string said = mistakes_in(with(kBench, "{baffles across: 2}", words));
    EXPECT_THAT(said,
                HasSubstr("can be read in two ways, say which: 'baffles across: 3', ribs of the box's full height "
                          "from floor to lid, or 'lid bays: 4 x 1', stays on the lid alone"));
    EXPECT_THAT(said, testing::Not(HasSubstr("unknown key")));
  }
  EXPECT_THAT(mistakes_in(with(kBench, "{baffles across: 2}", "2 stays along")), HasSubstr("'lid bays: 1 x 3'"));
}

}  // namespace
}  // namespace riserun::plan
