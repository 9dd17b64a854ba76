// One list of figures: the text of a plan, its JSON and the window are written from it.
#include "report/figures/figures.h"

#include "quantity/write.h"
#include "report/card/make_card.h"
#include "report/json/plan_json.h"
#include "report/text/plan_text.h"
#include "report/words/list_words.h"
#include "report/words/say.h"
#include "unit/plan/shipped.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <limits>
#include <set>

namespace riserun::report {
namespace {

using testing::HasSubstr;

const char* const kExamples[] = {"bevel-bench", "one-air-bung", "air-too-weak", "one-part-short", "walls-too-thin"};

TEST(Figures, EachHasAKeyOfItsOwnAValueAndASource) {
  for (const char* name : kExamples) {
    std::set<std::string> keys;
    for (const FigureGroup& group : figures_of(plan::plan_of_example(name)))
      for (const Figure& figure : group.figures) {
        EXPECT_TRUE(keys.insert(std::string(group.key) + "." + std::string(figure.key)).second) << figure.key;
        EXPECT_FALSE(written(figure, UnitSystem::metric).empty()) << name << ": " << figure.key;
        EXPECT_GT(said(figure.source, UnitSystem::inch).size(), 10u) << name << ": " << figure.key;
        EXPECT_EQ(figure.low.has_value(), figure.high.has_value()) << figure.key;
        if (std::holds_alternative<GaugePressure>(figure.value) && group.key == "filling") {
          EXPECT_TRUE(figure.limit) << figure.key;
        }
      }
  }
}

TEST(Figures, OfOneLabelStandOnlyOnceInAGroup) {
  for (const FigureGroup& group : figures_of(plan::bevel_bench())) {
    std::set<std::string_view> labels;
    for (const Figure& figure : group.figures) EXPECT_TRUE(labels.insert(figure.label).second) << figure.label;
  }
}

// The man who reads the largest type would fill by a line that nobody has built.
TEST(Figures, TimesOfALineThatIsAssumedSaySo) {
  const auto beside = [](const char* name, std::size_t row) {
    return written_beside(headline_of(plan::plan_of_example(name))[row], UnitSystem::inch);
  };
  for (const std::size_t row : {1U, 2U}) {
    EXPECT_EQ(beside("walls-too-thin", row), "by a line that is assumed");
    EXPECT_THAT(beside("bevel-bench", row), HasSubstr(" to "));
  }
}

// Bars of the steel yard have no price: the sum stands for itself, and beside it how many rows it leaves out.
TEST(Figures, TheSumLeavesOutWhatHasNoPriceAndSaysSo) {
  std::string text = plan::example_text("bevel-bench");
  text = plan::with(text, "baffles across: 2",
                    "lid bays: 5 x 3\n    floor bays: 5 x 3\n    long side bays: 5 x 1\n"
                    "    short side bays: 3 x 1\n    lid stays: posts");
  const plan::Plan plan = plan::plan_of_text(text);
  const auto bars = std::count_if(plan.list.consumables.begin(), plan.list.consumables.end(),
                                  [](const plan::Consumable& item) { return !item.metal_of.empty(); });
  ASSERT_GT(bars, 0);
  const Figure buy = headline_of(plan)[4];
  EXPECT_EQ(written(buy, UnitSystem::inch), write_price(plan.list.total));
  EXPECT_THAT(written_beside(buy, UnitSystem::inch), HasSubstr(fmt::format(", {} without price", bars)));
  EXPECT_THAT(sum_words(plan.list), HasSubstr(fmt::format("and {} without price in all", bars)));
}

/// The bench's inlet elsewhere, so that most of the water stays in the table.
std::string bench_with_inlet(const std::string& place) {
  return plan::with(plan::example_text("bevel-bench"), "where: floor, opens at: 0 in, face height: 29-3/4 in", place);
}

// The water stands still at once, and that is no time in which the table drains.
TEST(Figures, OfATableThatDoesNotDrainHaveNoTimeForThat) {
  for (const char* place : {"where: over rim", "where: side, opens at: 3 in"}) {
    const plan::Plan plan = plan::plan_of_text(bench_with_inlet(place));
    const std::string stays = fill("{0} stays", {plan.transfer.left_in_table}, UnitSystem::inch);
    const Figure drain = headline_of(plan)[2];
    EXPECT_EQ(written(drain, UnitSystem::inch), "never") << place;
    EXPECT_EQ(written_beside(drain, UnitSystem::inch), stays) << place;
    const nlohmann::json draining = nlohmann::json::parse(plan_json(plan, UnitSystem::inch))["transfer"]["drain"];
    EXPECT_EQ(draining["drains"], false);
    for (const char* time : {"time_s", "time_low_s", "time_high_s"}) EXPECT_TRUE(draining[time].is_null()) << time;
    EXPECT_THAT(plan_text(plan, Style{UnitSystem::inch, false}), HasSubstr("never: " + stays));
    const auto& running = card_of(plan, UnitSystem::inch).running;
    const auto down = std::find_if(running.begin(), running.end(), [](const auto& row) { return row.name == "down"; });
    ASSERT_NE(down, running.end());
    EXPECT_THAT(down->value, HasSubstr("open vent: never drains"));
  }
  const nlohmann::json draining =
      nlohmann::json::parse(plan_json(plan::bevel_bench(), UnitSystem::inch))["transfer"]["drain"];
  EXPECT_EQ(draining["drains"], true);
  EXPECT_TRUE(draining["time_s"].is_number());
}

TEST(Figures, AreTheNumbersOfTheText) {
  for (const char* name : kExamples) {
    const plan::Plan plan = plan::plan_of_example(name);
    for (const UnitSystem units : {UnitSystem::inch, UnitSystem::metric}) {
      const std::string text = plan_text(plan, Style{units, false});
      for (const Figure& figure : {riser_figures(plan.riser)["cut_length"], levels_figures(plan)["usable"],
                                   filling_figures(plan)["hold_pressure"], draining_figures(plan)["moved"],
                                   walls_figures(plan)["factor_at_set"], relief_figures(plan)["must_pass"],
                                   leak_test_figures(plan)["energy_in_use"]})
        EXPECT_THAT(text, HasSubstr(written(figure, units))) << name << ": " << figure.key;
    }
  }
}

TEST(Figures, StandInTheJsonWithTheNumbersOfItsOtherKeys) {
  const nlohmann::json plan = nlohmann::json::parse(plan_json(plan::bevel_bench(), UnitSystem::inch));
  const auto value = [&](const std::string& group, const std::string& key) {
    for (const nlohmann::json& each : plan["figures"])
      for (const nlohmann::json& figure : each["figures"])
        if (each["key"] == group && figure["key"] == key) return figure;
    return nlohmann::json();
  };
  EXPECT_EQ(value("riser", "cut_length")["value"], plan["riser"]["cut_length_m"]);
  EXPECT_EQ(value("riser", "cut_length")["unit"], "m");
  EXPECT_EQ(value("riser", "clearance")["low"], plan["riser"]["clearance_low_m"]);
  EXPECT_EQ(value("levels", "charge_depth")["also"]["value"], plan["levels"]["charge_m3"]);
  EXPECT_EQ(value("filling", "time")["high"], plan["transfer"]["fill"]["time_high_s"]);
  EXPECT_EQ(value("filling", "set_pressure")["limit"], plan["walls"]["limit_pa"]);
  EXPECT_EQ(value("draining", "mean_flow")["value"], plan["transfer"]["drain"]["mean_flow_m3_s"]);
  EXPECT_EQ(value("walls", "factor_at_set")["value"], plan["walls"]["factor_at_set"]);
  EXPECT_TRUE(value("walls", "factor_at_set")["unit"].is_null());
  EXPECT_EQ(value("leak_test", "energy")["value"], plan["walls"]["stored_energy_j"]);
}

TEST(Figures, OfATankTooWeakForATestWithAirSayThatOnce) {
  const plan::Plan thin = plan::plan_of_example("walls-too-thin");
  if (thin.leak_test.possible) GTEST_SKIP();
  const std::vector<FigureGroup> groups = figures_of(thin);
  const auto test =
      std::find_if(groups.begin(), groups.end(), [](const FigureGroup& group) { return group.key == "leak_test"; });
  ASSERT_NE(test, groups.end());
  ASSERT_EQ(test->figures.size(), 1u);
  EXPECT_EQ(written((*test)["test_with_air"], UnitSystem::inch), "none");
}

TEST(Figures, AValveThatNobodySellsHasNoSetting) {
  plan::Plan plan = plan::bevel_bench();
  EXPECT_THAT(written(leak_test_figures(plan)["relief"], UnitSystem::inch), HasSubstr("psi"));
  plan.leak_test.relief_opens.reset();
  EXPECT_EQ(written(leak_test_figures(plan)["relief"], UnitSystem::inch), "none that is sold");
}

TEST(Figures, ARangeWithoutAnEndIsSaid) {
  const Figure time{.key = "time",
                    .label = "time",
                    .value = seconds(90.0),
                    .low = seconds(60.0),
                    .high = seconds(std::numeric_limits<double>::infinity()),
                    .source = {"none", {}}};
  EXPECT_EQ(written_with_range(time, UnitSystem::inch), "1.5 min (at worst it never gets there)");
  EXPECT_EQ(written_beside(time, UnitSystem::inch), "at worst it never gets there");
}

}  // namespace
}  // namespace riserun::report
