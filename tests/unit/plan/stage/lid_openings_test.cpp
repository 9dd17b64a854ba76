// What is cut in the lid over stays and baffles, and where each piece of a row stands.
#include "report/words/say.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

#include <string>
#include <vector>

namespace riserun::plan {
namespace {

TEST(Openings, AreNoWiderThanWhatStandsUnderThem) {
  const Plan plan = ready_with("supports: {baffles across: 2, baffles along: 1}",
                               "supports: {lid bays: 4 x 2, lid stays: posts, long side bays: 4 x 1}");
  for (const LidOpenings& each : plan.lid_map.openings)
    for (const reservoir::StayBars& bars : plan.walls.bars) {
      if ((bars.wall == reservoir::kTies) != (each.over == LidOpenings::Over::posts)) continue;
      EXPECT_LE(in_inches(each.width), in_inches(bars.thickness) + 1e-9) << bars.wall;
    }
}

// Baffles are welded through slots as bars are. By hand of 10 ga: ten times 0.1345 is 1-1/4 in, 24 times 3 in; of 20 in
// seven slots each, of three times 13.3 in five each.
TEST(Openings, OverBafflesHaveTheirMeasures) {
  int count = 0;
  for (const LidOpenings& each : ready().lid_map.openings) {
    count += each.count;
    EXPECT_DOUBLE_EQ(in_inches(each.length), 1.25);
    EXPECT_DOUBLE_EQ(in_inches(each.apart), 3.0);
    EXPECT_DOUBLE_EQ(in_inches(each.width), 0.125);
  }
  EXPECT_EQ(count, 2 * 7 + 3 * 5);
}

// Where the sheet is thinner than a slot can be, the baffles are not: by hand of 12 ga, 3/16 in plate.
TEST(Openings, OverBafflesOfThinSheetCanBeCutAndFilled) {
  const Plan plan = ready_with("10 ga steel", "12 ga steel");
  ASSERT_FALSE(plan.lid_map.openings.empty());
  for (const LidOpenings& each : plan.lid_map.openings) EXPECT_DOUBLE_EQ(in_inches(each.width), 0.1875);
  int baffles = 0;
  for (const CutItem& cut : plan.list.cut)
    if (cut.used_for.starts_with("baffles")) {
      ++baffles;
      EXPECT_EQ(cut.stock.name, "3/16 in (5 mm) steel plate");
    }
  EXPECT_EQ(baffles, 2);
  EXPECT_DOUBLE_EQ(in_inches(plan.lid_map.plate), 0.1875);
  EXPECT_DOUBLE_EQ(in_inches(ready().lid_map.plate), 0.1345);
}

// Stayed surfaces: t^2 S C / pitch^2 of the National Board inspection code (C 2.1, from memory) stands the walls'
// limit.
TEST(Openings, OfARowHoldTheLidBetweenThem) {
  const Plan plan = plan_of_text(
      with(with(kReady, "10 ga steel", "1/2 in steel"), "{baffles across: 2, baffles along: 1}", "{lid bays: 6 x 3}"));
  ASSERT_EQ(plan.lid_map.openings.size(), 3u);
  for (const LidOpenings& each : plan.lid_map.openings) {
    EXPECT_LE(in_inches(each.apart), 40.0 / 6.0 + 1e-9);
    EXPECT_GE(reservoir::stayed_plate_limit(inches(0.5), each.apart, plan.walls.at_set.design_stress),
              plan.walls.limit - psig(0.0));
  }
}

// Three bars across at 10, 20 and 30 in; the one along is in four pieces between them, which stand in the bays that its
// own row has.
TEST(StayPlaces, AreThoseOfEachPiece) {
  const Plan plan = ready_with("supports: {baffles across: 2, baffles along: 1}", "supports: {lid bays: 4 x 2}");
  std::vector<std::string> notes;
  for (const CutItem& cut : plan.list.cut)
    if (cut.used_for == "stays, lid") notes.push_back(report::say(*cut.note, UnitSystem::inch));
  ASSERT_EQ(notes.size(), 3u);
  EXPECT_THAT(notes[0], testing::AllOf(testing::HasSubstr("10 in, 20 in and 30 in from the left end"),
                                       testing::Not(testing::HasSubstr("from the front"))));
  EXPECT_THAT(notes[1], testing::AllOf(testing::HasSubstr("10 in from the front"),
                                       testing::HasSubstr("in bays 1 and 4 of their row from the left end"),
                                       testing::Not(testing::HasSubstr("20 in"))));
  EXPECT_THAT(notes[2], testing::HasSubstr("in bays 2 and 3 of their row from the left end"));
}

}  // namespace
}  // namespace riserun::plan
