// The cards of a run and the shopping list are the same money.
#include "gui/model/canvas/draft.h"
#include "plan/job/read_job.h"
#include "plan/job/starter_job.h"
#include "plan/run_cost.h"
#include "window/model/bench.h"

#include <gtest/gtest.h>

#include <set>

namespace riserun::gui {
namespace {

/// Runs with hose given by the foot, with one hose from the bin, and with pieces of which the bin has too few.
std::vector<std::string> jobs_with_hose() {
  const std::string bench = testing::example("bevel-bench");
  return {bench,
          testing::example("air-too-weak"),
          testing::example("one-air-bung"),
          testing::example("one-part-short"),
          testing::example("walls-too-thin"),
          plan::starter_job(),
          testing::with(bench, "    offset: 1-1/4 in\n", "    offset: 1-1/4 in\n    hose length: 40 in\n"),
          testing::with(plan::starter_job(), "    need: [hose]  ", "    hose length: 5 ft\n    need: [hose]  ")};
}

plan::Plan planned(const std::string& text) {
  return plan::make_plan(testing::shipped_catalog(), plan::read_job(*testing::shipped_catalog(), text, "job.yaml"));
}

TEST(NodePrices, OfTheCardsOfARunAddUpToWhatTheListBuysForIt) {
  int clamped = 0;
  for (const std::string& job : jobs_with_hose()) {
    const plan::Plan plan = planned(job);
    const Sketch sketch = sketch_of(plan);
    for (std::size_t row = 0; row < plan.connections.size(); ++row) {
      Price cards;
      for (const Node& node : sketch.nodes)
        if (node.connection == row) {
          cards += node.price + node.clamps_price;
          clamped += node.clamps;
        }
      const Price list = plan::cost_of(plan.list, plan.connections[row].name);
      EXPECT_EQ(cards.cents(), list.cents()) << plan.job.name << ": " << plan.connections[row].name;
      EXPECT_EQ(cards.known(), list.known()) << plan.job.name << ": " << plan.connections[row].name;
    }
  }
  EXPECT_GT(clamped, 8) << "there are clamps in these jobs";
}

TEST(NodePrices, EachOfTwoHosesHasItsOwnClamps) {
  const plan::Plan plan =
      planned(testing::with(plan::starter_job(), "    need: [hose]  ", "    need: [hose, ball valve, hose]  "));
  const Sketch sketch = sketch_of(plan);
  std::vector<int> clamps;
  for (const Node& node : sketch.nodes)
    if (node.part && plan.catalog->part(*node.part).cut_to_length) clamps.push_back(node.clamps);
  ASSERT_EQ(clamps.size(), 2U);
  EXPECT_GT(clamps[0], 0);
  EXPECT_EQ(clamps[0], clamps[1]);
}

TEST(NodePrices, OfAllUsesAddUpToTheListsTotal) {
  for (const std::string& job : jobs_with_hose()) {
    const plan::Plan plan = planned(job);
    std::set<std::string> uses;
    for (const plan::ListItem& item : plan.list.buy) {
      ASSERT_EQ(item.used_for.size(), item.count_for.size());
      int count = 0;
      for (const int each : item.count_for) count += each;
      EXPECT_EQ(count, item.quantity) << plan.job.name << ": " << item.name;
      uses.insert(item.used_for.begin(), item.used_for.end());
    }
    Price sum;
    for (const std::string& use : uses) sum += plan::cost_of(plan.list, use);
    EXPECT_EQ(sum.cents(), plan.list.total.cents()) << plan.job.name;
  }
}

TEST(NodePrices, OfAHoseFollowItsLength) {
  const auto price_of_hose = [](const std::string& length) {
    const plan::Plan plan = planned(testing::with(plan::starter_job(), "    need: [hose]  ",
                                                  "    hose length: " + length + "\n    need: [hose]  "));
    Price price;
    for (const Node& node : sketch_of(plan).nodes)
      if (node.part && plan.catalog->part(*node.part).cut_to_length) price += node.price;
    return price;
  };
  EXPECT_GT(price_of_hose("6 ft").cents(), price_of_hose("2 ft").cents());
}

}  // namespace
}  // namespace riserun::gui
