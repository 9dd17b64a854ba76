// The verbs that read a job: `plan`, `transfer`, `walls`, `leak-test`, `list`, `riser`.
#include "unit/cli/asked_command.h"

#include <regex>

namespace riserun::cli {
namespace {

TEST(Plan, OfTheExamplesEndsAsTheySay) {
  const std::pair<std::string, int> examples[] = {{"bevel-bench", kDone},
                                                  {"air-too-weak", kNoSolution},
                                                  {"one-air-bung", kDone},
                                                  {"one-part-short", kNoSolution},
                                                  {"walls-too-thin", kNoSolution}};
  for (const auto& [name, status] : examples) EXPECT_EQ(ask({"plan", example(name)}).status, status) << name;
}

TEST(Plan, InJsonHasThePromisedKeys) {
  const json plan = ask_json({"plan", example("bevel-bench")}).answer;
  const auto expect_keys = [](const json& object, const Words& keys) {
    for (const std::string& key : keys) EXPECT_TRUE(object.contains(key)) << key;
  };
  expect_keys(plan["riser"], {"cut_length_m", "clearance_m", "make_up_m", "heel_m3", "curtain_to_bore", "inlet_k",
                              "stock", "offcut_m"});
  expect_keys(plan["transfer"]["fill"],
              {"stop", "time_s", "time_low_s", "time_high_s", "volume_m3", "mean_flow_m3_s", "peak_flow_m3_s",
               "pressure_to_start_pa", "pressure_to_finish_pa", "free_air_m3", "table_depth_m", "reservoir_depth_m"});
  expect_keys(plan["transfer"]["drain"], {"stop", "time_s", "left_in_table_m3"});
  expect_keys(plan["walls"], {"panels", "limit_pa", "relief", "stored_energy_j", "tnt_kg", "standoff_m"});
  expect_keys(plan["list"], {"buy", "bin", "cut", "consumables"});
  expect_keys(plan["leak_test"],
              {"pressure_pa", "ports", "rig", "steps", "welds", "readings", "stored_energy_j", "standoff_m"});
  json test = ask_json({"leak-test", example("bevel-bench")}).answer;
  EXPECT_EQ(test["verdict"], "ready");
  test.erase("verdict");
  EXPECT_EQ(plan["leak_test"], test);
  ASSERT_FALSE(plan["work"].empty());
  expect_keys(plan["work"][0], {"phase", "for", "text"});
  EXPECT_EQ(ask_json({"leak-test", example("walls-too-thin")}).answer, json({{"verdict", "refused"}}));
  for (const char* verb : {"riser", "transfer", "walls", "list"})
    EXPECT_EQ(ask_json({verb, example("walls-too-thin")}).answer["verdict"], "refused") << verb;
}

TEST(List, OfARefusedJobIsNotToBeBoughtYet) {
  EXPECT_THAT(ask({"list", example("walls-too-thin")}).out, testing::HasSubstr("Buy and cut nothing of it yet"));
  EXPECT_THAT(ask({"list", example("bevel-bench")}).out, testing::Not(testing::HasSubstr("nothing of it yet")));
}

TEST(Plan, ShowsTheWallsLimitBesideEveryPressureOfTheFilling) {
  const std::regex limit("psi .*\\(walls' limit [0-9.]+ psi");
  for (const char* name : {"bevel-bench", "air-too-weak", "walls-too-thin"}) {
    const std::string text = ask({"plan", example(name), "--all"}).out;
    const std::size_t begin = text.find("\nFilling\n");
    ASSERT_NE(begin, std::string::npos) << name;
    std::istringstream filling(text.substr(begin + 1, text.find("\n\n", begin) - begin));
    int rows = 0;
    for (std::string row; std::getline(filling, row);) {
      // Rows of figures are indented by two; what is indented further, refusals and cautions are sentences.
      if (!row.starts_with("  ") || row.size() < 3 || std::string(" RC").find(row[2]) != std::string::npos) continue;
      if (row.starts_with("  air, at its")) break;  // what stands before the reservoir
      if (row.find(" psi") == std::string::npos) continue;
      if (row.starts_with("  0.1 psi more")) continue;  // a step of the setting
      ++rows;
      EXPECT_TRUE(std::regex_search(row, limit)) << name << ": " << row;
    }
    EXPECT_GT(rows, 3) << name;
  }
}

TEST(Plan, IsTheSameInOtherUnits) {
  const std::string metric = ask({"plan", example("bevel-bench"), "--all", "--units", "metric"}).out;
  EXPECT_THAT(ask({"plan", example("bevel-bench"), "--all", "--units", "inch"}).out, HasSubstr(" psi ("));
  EXPECT_THAT(metric, HasSubstr(" bar ("));
  const std::string head = std::regex_replace(metric.substr(0, metric.find("Connections")), std::regex("psig"), "");
  EXPECT_THAT(head, Not(HasSubstr(" psi")));
}

TEST(Plan, HasAVerbForEachSection) {
  const std::pair<std::string, std::string> sections[] = {{"transfer", "Filling"},
                                                          {"walls", "Walls' limit"},
                                                          {"leak-test", "Brush in this order"},
                                                          {"list", "Shopping list"},
                                                          {"riser", "cut length"}};
  for (const auto& [verb, words] : sections)
    EXPECT_THAT(ask({verb, example("bevel-bench")}).out, HasSubstr(words)) << verb;
}

TEST(Job, ThatIsNotThereIsNamed) { EXPECT_THAT(complaint({"plan", "nowhere.yaml"}), HasSubstr("nowhere.yaml")); }

}  // namespace
}  // namespace riserun::cli
