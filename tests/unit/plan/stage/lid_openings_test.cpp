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
