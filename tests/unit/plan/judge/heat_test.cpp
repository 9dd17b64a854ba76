// Hot water, and frost: what the parts in the water stand, and what is done.
#include "plan/job/read_job.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

#include <filesystem>
#include <fstream>
#include <memory>
#include <vector>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;

std::string refused_words(const std::string& line) {
  try {
    read_job(*shipped_catalog(), std::string(kReady) + line + "\n", "job.yaml");
  } catch (const InputError& error) {
    return error.what();
  }
  return "";
}

TEST(Heat, AHoseStandsTheWaterThatItIsMadeFor) {
  const std::string hose = with(kReady, "need: [union]", "need: [rubber hose]");
  EXPECT_FALSE(has(plan_of_text(hose + "hottest: 158 degF\nagainst heat: fenced off\n"), "part_too_hot"));
  EXPECT_TRUE(has(plan_of_text(hose + "hottest: 159 degF\nagainst heat: fenced off\n"), "part_too_hot"));
}

TEST(Frost, WhatIsDrainedAgainstFrostHasADrain) {
  const std::string frost = "coldest: 20 degF\nagainst frost: drained every evening\n";
  const auto with_port = [&](const char* place, const char* device) {
    const std::string bung = with(kReady, "    vent bung: 1/2 FNPT\n",
                                  std::string("    vent bung: 1/2 FNPT\n    low bung: {port: 1 FNPT, where: ") + place +
                                      ", face height: " + (std::string(place) == "lid" ? "15 in" : "2 in") + "}\n");
    return plan_of_text(with(bung, "water temperature",
                             std::string("  - {name: low, from: low bung, ends in: ") + device +
                                 ", carries: water}\nwater temperature") +
                        frost);
  };
  EXPECT_FALSE(has(with_port("side", "1 brass ball valve"), "drained_by_nothing"));
  EXPECT_TRUE(has(with_port("side", "1 plug black iron"), "drained_by_nothing"));
  EXPECT_TRUE(has(with_port("lid", "1 brass ball valve"), "drained_by_nothing"));
}

// What is drained is drained, whatever else is done besides.
TEST(Frost, WhatIsDrainedBesideAnotherMeasureHasADrainToo) {
  for (const char* words : {"antifreeze, drained when idle", "heated, drained", "antifreeze and drained",
                            "drained every evening, insulated"}) {
    const Plan plan = ready_and(std::string("coldest: 20 degF\nagainst frost: ") + words);
    EXPECT_TRUE(has(plan, "drained_by_nothing")) << words;
    EXPECT_EQ(plan.verdict, Verdict::not_yet) << words;
  }
  EXPECT_TRUE(has(ready_and("against frost: heated, drained"), "drained_by_nothing"));  // how cold is not said
  EXPECT_FALSE(has(ready_and("coldest: 40 degF\nagainst frost: heated, drained"), "drained_by_nothing"));
  for (const char* words : {"antifreeze", "heated, insulated"})
    EXPECT_FALSE(has(ready_and(std::string("coldest: 28 degF\nagainst frost: ") + words), "drained_by_nothing"))
        << words;
}

/// The ready job with a hose bibb low in a side, its water so warm.
std::string with_bibb(const std::string& temperature) {
  const std::string bung =
      with(kReady, "    vent bung: 1/2 FNPT\n",
           "    vent bung: 1/2 FNPT\n    drain bung: {port: 3/4 FNPT, where: side, face height: 2 in}\n");
  return with(bung, "water temperature: 60 degF",
              "  - {name: drain, from: drain bung, ends in: hose bibb, carries: water}\nagainst heat: guarded\n"
              "water temperature: " +
                  temperature);
}

// A hose bibb's washer and seat stand 140 degF (catalog/duty.yaml, common practice).
TEST(Heat, APartWhoseLimitIsBelowTheWaterIsNamed) {
  EXPECT_FALSE(has(plan_of_text(with_bibb("140 degF")), "part_too_hot"));
  const Plan hot = plan_of_text(with_bibb("170 degF"));
  EXPECT_TRUE(has(hot, "part_too_hot")) << testing::PrintToString(open_in(hot));
  EXPECT_THAT(said_of(hot, "part_too_hot"), AllOf(HasSubstr("bibb"), HasSubstr("140 degF")));
  EXPECT_EQ(hot.verdict, Verdict::not_yet);
  for (const Finding& finding : hot.findings) EXPECT_TRUE(finding.mend) << finding.reason.code;
}

// What a catalog says nothing of stands warm water and no hot water.
TEST(Heat, APartOfWhichNothingIsKnownIsNamedFromWarmWaterOn) {
  std::ofstream(testing::TempDir() + "no_heat.yaml")
      << "duties:\n  - {families: [hose bibb], air: not proved, source: test}\n";
  const std::vector<std::filesystem::path> own = {testing::TempDir() + "no_heat.yaml"};
  const auto catalog = std::make_shared<const Catalog>(
      catalog::load_catalog(std::filesystem::path(RISERUN_SOURCE_DIR) / "catalog", own));
  const auto at = [&](const char* temperature) {
    return make_plan(catalog, read_job(*catalog, with_bibb(temperature), "bench.yaml"));
  };
  EXPECT_FALSE(has(at("100 degF"), "part_of_unknown_heat"));
  const Plan warm = at("101 degF");
  EXPECT_TRUE(has(warm, "part_of_unknown_heat")) << testing::PrintToString(open_in(warm));
  EXPECT_THAT(said_of(warm, "part_of_unknown_heat"), HasSubstr("'duties'"));
}

TEST(Frost, TakesNoDenialForAWayToHandleIt) {
  for (const char* words : {"nothing", "no", "\"-\"", "hope", "x", "no frost protection", "we do not care",
                            "maybe drained", "guards, gloves", "lid is thick"})
    EXPECT_THAT(refused_words(std::string("against frost: ") + words), HasSubstr("allowed are drained")) << words;
}

TEST(Frost, IsHandledByWhatStopsIt) {
  EXPECT_FALSE(has(ready_and("coldest: 5 degF\nagainst frost: a heater keeps it at 50 degF"), "water_can_freeze"));
  EXPECT_TRUE(has(ready_and("coldest: 5 degF\nagainst frost: insulated all round"), "insulation_stops_no_frost"));
  EXPECT_TRUE(has(ready_and("coldest: 5 degF"), "water_can_freeze"));
}

TEST(Frost, IsKeptOffByAntifreezeAsFarAsTheWaterMayHoldIt) {
  EXPECT_FALSE(has(ready_and("coldest: -2.9 degC\nagainst frost: antifreeze"), "antifreeze_too_weak"));
  EXPECT_TRUE(has(ready_and("coldest: -3.1 degC\nagainst frost: antifreeze"), "antifreeze_too_weak"));
  EXPECT_FALSE(has(ready_and("coldest: -3.1 degC\nagainst frost: antifreeze, heated"), "antifreeze_too_weak"));
}

TEST(Heat, IsHandledByWhatKeepsHandsFromTheWater) {
  EXPECT_FALSE(
      has(ready_and("hottest: 66 degC\nagainst heat: guards, gloves, no bare hands, mixing valve"), "water_scalds"));
  EXPECT_TRUE(has(ready_and("hottest: 66 degC\nagainst heat: gloves and apron"), "gloves_alone"));
  for (const char* words : {"no guards, no gloves", "heated", "lid is thick", "we are careful"})
    EXPECT_THAT(refused_words(std::string("against heat: ") + words), HasSubstr("allowed are guarded")) << words;
}

}  // namespace
}  // namespace riserun::plan
