// Slips of the pen, and what stands where it gets too hot, too wet or stays full: each case just under and just over.
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;

std::vector<std::string> said_of_all(const Plan& plan, std::string_view code) {
  std::vector<std::string> said;
  for (const Finding& finding : plan.findings)
    if (finding.reason.code == code) said.push_back(report::sentences_of(finding, UnitSystem::inch));
  return said;
}

// ---- Heat at the lid. Regulator to 125 degF, gauge to 140 (catalog/duty.yaml).

constexpr const char* kBehindRegulator = "0 to 15 psi air regulator, light spring check valve]";

Plan hot_lid(int fahrenheit, const std::string& job = kReady) {
  return plan_of_text(job + fmt::format("hottest: {} degF\nagainst heat: guarded\n", fahrenheit));
}

TEST(HotLid, IsHeldAgainstWhatTheAirsPartsStand) {
  EXPECT_FALSE(has(hot_lid(125), "air_part_too_hot"));
  const Plan warm = hot_lid(126);
  EXPECT_THAT(said_of_all(warm, "air_part_too_hot"),
              testing::ElementsAre(AllOf(HasSubstr("air regulator"), HasSubstr("125 degF"), HasSubstr("12 in"))));
  EXPECT_EQ(said_of_all(hot_lid(140), "air_part_too_hot").size(), 1u);
  EXPECT_THAT(said_of_all(hot_lid(141), "air_part_too_hot"), testing::Contains(HasSubstr("gauge")));
}

TEST(HotLid, WarmsNothingAFootOfPipeAway) {
  const auto behind = [](const char* nipple) {
    return with(kReady, kBehindRegulator,
                std::string("0 to 15 psi air regulator, light spring check valve, ") + nipple + "]");
  };
  EXPECT_FALSE(has(hot_lid(126, behind("1/2 x 12 nipple black iron")), "air_part_too_hot"));
  EXPECT_TRUE(has(hot_lid(126, behind("1/2 x 4 nipple black iron")), "air_part_too_hot"));
}

TEST(HotLid, AHoseBibbIsChangedForAValveOfItsBung) {
  const std::string drained =
      with(with(kReady, "    vent bung: 1/2 FNPT\n",
                "    vent bung: 1/2 FNPT\n    drain bung: {port: 1 FNPT, where: side, face height: 2 in}\n"),
           "water temperature",
           "  - {name: drain, from: drain bung, ends in: hose bibb, carries: water}\nwater temperature");
  EXPECT_THAT(said_of(hot_lid(150, drained), "part_too_hot"),
              HasSubstr("the 1 full-bore ball valve in place of the 1/2 MNPT x 3/4 MGHT hose bibb"));
}

// ---- What is reckoned from a run that does not exist.

TEST(MissingFeed, TellsNothingOfWhatComesThroughIt) {
  const std::string unrestricted = with(kReady, "1/16 in hole restrictor, ", "");
  EXPECT_TRUE(has(plan_of_text(unrestricted), "relief_valve_too_narrow"));
  EXPECT_TRUE(warns_of(plan_of_text(unrestricted), "riser_is_not_relief_enough"));
  const Plan missing = plan_of_text(with(unrestricted, "light spring check valve", "swing check valve"));
  ASSERT_TRUE(has(missing, "connection_has_no_chain", Severity::refused));
  EXPECT_FALSE(has(missing, "relief_valve_too_narrow"));
  EXPECT_FALSE(warns_of(missing, "riser_is_not_relief_enough"));
}

TEST(TableTooLarge, IsNothingToSetTheRegulatorFor) {
  const Plan plan =
      plan_of_text(with(kReady, "inside: {length: 44 in, width: 22 in}", "inside: {length: 96 in, width: 48 in}"));
  EXPECT_FALSE(plan.levels.enough);
  EXPECT_FALSE(has(plan, "setting_does_not_lift_the_water", Severity::refused));
}

// ---- A key against the part that stands in the run.

TEST(RestrictorKey, SaysTheHoleOfTheRestrictor) {
  const auto keyed = [](const char* hole) {
    return plan_of_text(with(kReady, "  set pressure", fmt::format("  restrictor: {}\n  set pressure", hole)));
  };
  EXPECT_FALSE(has(keyed("0.06 in"), "restrictor_of_another_hole"));
  for (const char* other : {"0.058 in", "0.067 in", "1/8 in", "1/32 in"}) {
    const Plan plan = keyed(other);
    EXPECT_TRUE(has(plan, "restrictor_of_another_hole")) << other;
    EXPECT_FALSE(has(plan, "restrictor_in_no_run")) << other;
  }
}

TEST(Delivery, IsThatOfACompressor) {
  const auto giving = [](const std::string& flow) {
    return plan_of_text(with(kReady, "delivery: 3 scfm", "delivery: " + flow));
  };
  EXPECT_FALSE(has(giving("0.31 scfm"), "delivery_of_no_compressor"));
  EXPECT_TRUE(has(giving("0.29 scfm"), "delivery_of_no_compressor"));
  EXPECT_TRUE(has(giving("3 L/min"), "delivery_of_no_compressor"));
  // 8 gal are 1.07 cubic feet, which 42.8 cfm fill in 1.5 s.
  EXPECT_FALSE(has(giving("42 scfm"), "delivery_too_much_for_receiver"));
  EXPECT_TRUE(has(giving("43.5 scfm"), "delivery_too_much_for_receiver"));
}

// 40 x 20 in: 2 in apart are 19 + 9 bars, 1.8 in 21 + 10.
TEST(BarePanel, IsNoSmallerThanStaysLeave) {
  const auto bare = [](const char* inches) {
    return plan_of_text(with(kReady, "{baffles across: 2, baffles along: 1}",
                             fmt::format("{{widest bare panel: {{length: {0} in, width: {0} in}}}}", inches)));
  };
  EXPECT_FALSE(has(bare("2"), "bare_panel_of_a_forest"));
  EXPECT_TRUE(has(bare("1.8"), "bare_panel_of_a_forest"));
  EXPECT_TRUE(has(bare("1"), "bare_panel_of_a_forest"));
}

// ---- Too near to the water, and water that stays.

// 14 in high with 9 in of water.
TEST(ReliefBung, EndsWellOverTheWater) {
  const auto projecting = [](const char* inches) {
    return plan_of_text(
        with(kReady, "relief bung: 3/4 FNPT",
             fmt::format("relief bung: {{port: 3/4 FNPT, bung: full coupling, bung length: 8 in, projects: {} in}}",
                         inches)));
  };
  EXPECT_THAT(open_in(projecting("3.9")), IsEmpty());
  EXPECT_TRUE(has(projecting("4.1"), "bung_ends_close_over_the_water"));
  EXPECT_FALSE(has(projecting("5.1"), "bung_ends_close_over_the_water"));
  EXPECT_TRUE(has(projecting("5.1"), "relief_valve_under_water"));
}

// Of 4 in; a film stays besides.
TEST(StandPipe, ThatKeepsATenthInTheTableIsWarnedOf) {
  const auto opening = [](const char* inches) {
    return plan_of_text(with(kReady, "inlet: {port: 1 FNPT, where: floor}",
                             fmt::format("inlet: {{port: 1 FNPT, where: floor, opens at: {} in}}", inches)));
  };
  EXPECT_FALSE(warns_of(opening("0.3"), "much_stays_in_table"));
  EXPECT_TRUE(warns_of(opening("0.5"), "much_stays_in_table"));
}

// ---- Beside the tank.

TEST(Rim, StandsHalfAnInchOverTheWater) {
  const auto rim = [](const char* inches) {
    return plan_of_text(
        with(with(kReady, "rim: 5 in", fmt::format("rim: {} in", inches)), "opens at: 5 in", "opens at: 4.1 in"));
  };
  EXPECT_FALSE(has(rim("4.5"), "table_stands_at_its_brim"));
  EXPECT_TRUE(has(rim("4.49"), "table_stands_at_its_brim"));
}

}  // namespace
}  // namespace riserun::plan
