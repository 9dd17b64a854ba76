// Bungs on the lid: how near they may come to each other and to what else is welded there, just under and just over it.
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <map>
#include <string>

namespace riserun::plan {
namespace {

using testing::HasSubstr;

// Of the ready job with the gauge's bung at that place in a lid that two baffles across and one along divide.
std::string with_gauge_at(const std::string& from_left, const std::string& from_front) {
  return with(kReady, "gauge bung: 1/4 FNPT",
              "gauge bung: {port: 1/4 FNPT, where: lid, at: [" + from_left + ", " + from_front + "]}");
}

TEST(Lid, OfTheReadyJobHasAPlaceForEachBung) {
  for (const LidBung& bung : ready().lid_map.bungs) {
    ASSERT_TRUE(bung.at) << bung.port;
    EXPECT_TRUE(bung.proposed);
  }
  EXPECT_EQ(ready().lid_map.seams.size(), 3U);
  EXPECT_TRUE(ready().lid_map.without_place.empty());
}

TEST(Lid, AsksForRoomBesideAWall) {
  // Half of a boss of 3/4 in, and 2 in.
  EXPECT_TRUE(has(plan_of_text(with_gauge_at("2.3 in", "5 in")), "bung_near_wall", Severity::not_yet));
  EXPECT_FALSE(has(plan_of_text(with_gauge_at("2.4 in", "5 in")), "bung_near_wall"));
  EXPECT_TRUE(has(plan_of_text(with_gauge_at("5 in", "17.7 in")), "bung_near_wall"));
}

TEST(Lid, AsksForRoomBesideABaffle) {
  // The middle one along has its face half a sheet off the middle of 20 in; then 1 in and half of the boss.
  const Plan plan = plan_of_text(with_gauge_at("5 in", "8.5 in"));
  const double face = 10.0 - in_inches(plan.lid_map.plate) / 2.0;
  const auto at = [&](double off) { return plan_of_text(with_gauge_at("5 in", std::to_string(face - off) + " in")); };
  EXPECT_TRUE(has(at(1.37), "bung_near_baffle", Severity::not_yet));
  EXPECT_FALSE(has(at(1.38), "bung_near_baffle"));
}

TEST(Lid, AsksForRoomBetweenTwoBungsAndSaysWhereElse) {
  const std::string one = with(kReady, "air bung: {port: 1/2 FNPT, where: lid}",
                               "air bung: {port: 1/2 FNPT, where: lid, at: [5 in, 4 in]}");
  const auto at = [&](const std::string& left) {
    return plan_of_text(with(one, "gauge bung: 1/4 FNPT", "gauge bung: {port: 1/4 FNPT, at: [" + left + ", 4 in]}"));
  };
  const Plan near = at("6.9 in");
  EXPECT_TRUE(has(near, "bungs_too_near", Severity::not_yet));
  EXPECT_THAT(said_of(near, "bungs_too_near"), HasSubstr("move 'air bung' to "));
  EXPECT_FALSE(has(at("8.9 in"), "bungs_too_near"));
}

// Two that stand on a baffle and too near to each other: the spots that are named for both are free together.
TEST(Lid, NamesSpotsThatMayBeTakenTogether) {
  const auto job = [](const std::string& riser, const std::string& gauge) {
    return with(with(kReady, "where: lid}\n    air bung", "where: lid, at: [" + riser + "]}\n    air bung"),
                "gauge bung: 1/4 FNPT", "gauge bung: {port: 1/4 FNPT, where: lid, at: [" + gauge + "]}");
  };
  const Plan plan = plan_of_text(job("20 in, 10 in", "22 in, 10 in"));
  std::map<std::string, std::string> spots;
  for (const Finding& finding : plan.findings) {
    if (!finding.mend || finding.mend->code != "move_bung_to") continue;
    const auto& values = finding.mend->values;
    ASSERT_FALSE(finding.ways_to_mend.empty());
    EXPECT_EQ(finding.ways_to_mend.front().front().spot->from_left, std::get<Length>(values[1]));
    spots[std::get<std::string>(values[0])] = fmt::format(
        "{:.4f} in, {:.4f} in", in_inches(std::get<Length>(values[1])), in_inches(std::get<Length>(values[2])));
  }
  ASSERT_EQ(spots.size(), 2U);
  for (const Finding& finding : plan_of_text(job(spots.at("riser bung"), spots.at("gauge bung"))).findings)
    EXPECT_NE(finding.mend.value_or(Fact{}).code, "move_bung_to") << finding.reason.code;
}

TEST(Lid, LeavesBungsThatAreWeldedInAlone) {
  const std::string there = with(kReady, "gauge bung: 1/4 FNPT",
                                 "gauge bung: {port: 1/4 FNPT, where: lid, welded in: yes, at: [1 in, 5 in]}");
  EXPECT_FALSE(has(plan_of_text(there), "bung_near_wall"));
  const std::string unknown =
      with(kReady, "gauge bung: 1/4 FNPT", "gauge bung: {port: 1/4 FNPT, where: lid, welded in: yes}");
  EXPECT_FALSE(plan_of_text(unknown).lid_map.bungs[2].at);
}

TEST(Lid, WrenchRoomGrowsWithThePipe) {
  EXPECT_EQ(behind_jaw(inches(0.54)), inches(0.8));
  EXPECT_EQ(behind_jaw(inches(1.315)), inches(1.4));
  EXPECT_EQ(behind_jaw(inches(4.5)), inches(2.6));
}

}  // namespace
}  // namespace riserun::plan
