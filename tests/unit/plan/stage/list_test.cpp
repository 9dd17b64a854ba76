// The list: quantities over the whole job, the bin first, consumables by joint count.
#include "report/words/list_words.h"
#include "unit/plan/bench_job.h"
#include "unit/plan/judge/ready_job.h"
#include "unit/plan/shipped.h"
#include "unit/report/words/said.h"

#include <gmock/gmock.h>

#include <algorithm>

namespace riserun::plan {
namespace {

int quantity_of(const std::vector<ListItem>& list, const std::string& id) {
  int quantity = 0;
  for (const ListItem& item : list)
    if (item.id == id) quantity += item.quantity;
  return quantity;
}

const ListItem* item_of(const std::vector<ListItem>& list, const std::string& id) {
  for (const ListItem& item : list)
    if (item.id == id) return &item;
  return nullptr;
}

const Consumable* consumable(const Plan& plan, const std::string& name) {
  for (const Consumable& row : plan.list.consumables)
    if (row.name == name) return &row;
  return nullptr;
}

TEST(List, TakesFromTheBinWhatIsThereAndBuysTheRest) {
  EXPECT_EQ(quantity_of(bevel_bench().list.from_bin, "barb-to-male-pipe/brass/1-1-4-barbx1-1-4-mnpt"), 2);
  EXPECT_EQ(quantity_of(bevel_bench().list.buy, "barb-to-male-pipe/brass/1-1-4-barbx1-1-4-mnpt"), 0);
  EXPECT_EQ(quantity_of(bevel_bench().list.from_bin, "threaded-pipe/black-iron/1-1-4x18"), 1);
  // Into a steel table, and no dearer than brass.
  EXPECT_EQ(quantity_of(bevel_bench().list.buy, "hex-bushing/brass/1-1-2x1-1-4"), 0);
  EXPECT_EQ(quantity_of(bevel_bench().list.buy, "hex-bushing/black-iron/1-1-2x1-1-4"), 1);
}

// A restrictor that is a key alone is drilled or bought all the same, and the list says with which hole.
TEST(List, HasTheRestrictorThatNoRunHas) {
  const auto listed = [](const char* air) {
    const Plan plan = plan_of_text(with(kBench, "regulator range: 15 psi", air));
    const ListItem* item = item_of(plan.list.buy, "restrictor");
    return item != nullptr ? report::item_name(*item, quantity::UnitSystem::inch) : std::string();
  };
  EXPECT_EQ(listed("regulator range: 15 psi"), "");
  EXPECT_THAT(listed("regulator range: 15 psi\n  restrictor: 1/16 in"), testing::HasSubstr("hole of 0.062"));
}

// Three bars between the long sides of a box 40 in by 20 in, some 19-7/8 in each with their fit-up: 59-5/8 in together.
TEST(List, HasTheBarsOfTheStaysByTheFoot) {
  const auto bars = [](const Plan& plan) {
    const auto& rows = plan.list.consumables;
    const auto row =
        std::find_if(rows.begin(), rows.end(), [](const Consumable& each) { return each.metal_of == "stays"; });
    return row != rows.end() ? report::consumable_name(*row, UnitSystem::inch) + ": " + row->quantity : std::string();
  };
  const std::string baffles = "supports: {baffles across: 2, baffles along: 1}";
  EXPECT_EQ(bars(ready_with(baffles, "supports: {lid bays: 4 x 1}")),
            "steel flat bar, 1-1/4 in x 3/16 in: 5 ft or 2 m");
  EXPECT_EQ(bars(plan_of_text(kReady)), "") << "baffles are cut from sheet";
}

// Brass barbs of that size are on order only.
TEST(List, OrdersNothingThatLiesInTheBin) {
  const ListItem* barbs = item_of(bevel_bench().list.from_bin, "barb-to-male-pipe/brass/1-1-4-barbx1-1-4-mnpt");
  ASSERT_TRUE(barbs);
  EXPECT_FALSE(shipped_catalog()->part(*barbs->part).stocked);
  EXPECT_FALSE(barbs->special_order);
}

// 12-1/8 in of hose is two pieces of a foot.
TEST(List, BuysHoseByTheFoot) { EXPECT_EQ(quantity_of(bevel_bench().list.buy, "hose/rubber/1-1-4"), 2); }

TEST(List, HasThePlugsOfTheLeakTest) {
  EXPECT_EQ(quantity_of(bevel_bench().list.buy, "plug/black-iron/3-4"), 2);  // relief and vent
  EXPECT_EQ(quantity_of(bevel_bench().list.buy, "plug/black-iron/1-1-4"), 1);
  EXPECT_EQ(quantity_of(bevel_bench().list.buy, "plug/black-iron/1-4"), 1);
  EXPECT_EQ(quantity_of(bevel_bench().list.buy, "plug/black-iron/1"), 1);
}

// All taper joints of the connections and of the riser, and the plugs and the rig of the leak test, counted by hand:
// water 3 and the riser's 1, air in 7, vent 2, drain 2, gauge 1, relief 1; 5 plugs, and 6 of the rig.
TEST(List, CountsSealantByTheJointsOfTheWholeJob) {
  const Consumable* tape = consumable(bevel_bench(), "PTFE tape or pipe joint paste");
  ASSERT_NE(tape, nullptr);
  EXPECT_EQ(tape->why, "28 joints with thread sealant");
  EXPECT_EQ(tape->quantity, "1 roll");
  EXPECT_NE(consumable(bevel_bench(), "leak-test solution"), nullptr);
}

// The 1-1/4 in barb is long enough for two bands of 1/2 in with 1/4 in beside each.
TEST(List, CountsTwoClampsAHoseEndWhereTheBarbCarriesThem) {
  int clamps = 0;
  for (const ListItem& item : bevel_bench().list.buy)
    if (item.name.find("clamp") != std::string::npos) clamps += item.quantity;
  EXPECT_EQ(clamps, bevel_bench().connections[0].clamps);
  EXPECT_EQ(clamps, 4);
}

TEST(List, IsInTheOrderOfTheShelves) {
  const auto& buy = bevel_bench().list.buy;
  EXPECT_TRUE(
      std::is_sorted(buy.begin(), buy.end(), [](const ListItem& a, const ListItem& b) { return a.shelf < b.shelf; }));
}

TEST(List, AddsUpToItsTotal) {
  Price total;
  for (const ListItem& item : bevel_bench().list.buy) total += item.each * item.quantity;
  EXPECT_EQ(total, bevel_bench().list.total);
  EXPECT_TRUE(total.known());
}

TEST(List, NamesWhatToTakeInstead) {
  const ListItem* plug = item_of(bevel_bench().list.buy, "plug/black-iron/1");
  ASSERT_NE(plug, nullptr);
  EXPECT_THAT(plug->instead, testing::ElementsAre("1 square head plug, galvanized", "1 square head plug, brass"));
}

TEST(List, CutsRiserAndHose) {
  ASSERT_EQ(bevel_bench().list.cut.size(), 3u);  // and the baffles
  EXPECT_EQ(bevel_bench().list.cut[0].used_for, "riser");
  EXPECT_EQ(bevel_bench().list.cut[0].datum, "from the threaded end");
  EXPECT_NEAR(in_inches(bevel_bench().list.cut[0].length), 14.0559, 1e-4);
  EXPECT_EQ(bevel_bench().list.cut[1].used_for, "water up");
}

TEST(List, SaysWhenItCostsMoreThanWished) {
  const Plan plan = plan_of_text(std::string(kBench) + "wishes: {cost cap: 5 usd}\n");
  const bool said = std::any_of(plan.cautions.begin(), plan.cautions.end(), [](const Caution& caution) {
    return caution.where == Topic::whole_job &&
           report::said(caution.fact).find("more than the $5.00 wished for") != std::string::npos;
  });
  EXPECT_TRUE(said);
  EXPECT_EQ(plan.verdict, Verdict::not_yet);
}

TEST(List, UsesTheJobsOwnPrices) {
  const Plan before = plan_of_text(kBench);
  ASSERT_NE(item_of(before.list.buy, "union/black-iron/1"), nullptr);
  const Plan after = plan_of_text(std::string(kBench) + "prices:\n  - {part: union/black-iron/1, price: $1.23}\n");
  const ListItem* own = item_of(after.list.buy, "union/black-iron/1");
  ASSERT_NE(own, nullptr);
  EXPECT_EQ(own->each, cents(123));
}

// Stainless is asked for in a caustic wash: no other metal stands in for it.
TEST(List, OffersNoOtherMetalForARiserWhoseMetalTheJobNames) {
  const auto others = [](const std::string& riser) {
    const Plan plan = plan_of_text(with(kBench, "riser: {bung: riser bung}", riser));
    for (const ListItem& item : plan.list.buy)
      if (item.used_for.front() == "riser") return item.instead.size();
    return std::size_t{99};
  };
  EXPECT_GT(others("riser: {bung: riser bung}"), 0U);
  EXPECT_EQ(others("riser: {bung: riser bung, material: black iron}"), 0U);
}

}  // namespace
}  // namespace riserun::plan
