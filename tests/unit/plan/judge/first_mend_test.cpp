// The first mend is the one that a fitter would take, and followed it leads out: no gauge for a gauge, no test that
// proves what should never come.
#include "plan/advice/change.h"
#include "plan/job/starter_job.h"
#include "plan/stage/riser_bushing.h"
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <regex>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

const Finding* finding_of(const Plan& plan, std::string_view code) {
  const auto found = std::find_if(plan.findings.begin(), plan.findings.end(),
                                  [&](const Finding& finding) { return finding.reason.code == code; });
  return found == plan.findings.end() ? nullptr : &*found;
}

/// What is open once the finding's one way has been followed.
std::vector<std::string> open_after(const Plan& plan, std::string_view code) {
  std::vector<std::string> open;
  const Finding* finding = finding_of(plan, code);
  if (finding == nullptr) return {"no finding"};
  std::vector<Changes> ways = finding->ways_to_mend;
  ways.insert(ways.end(), finding->ways_to_try.begin(), finding->ways_to_try.end());
  if (ways.size() != 1) return {"no one way"};
  for (const Finding& left : findings_of(plan.catalog, changed(*plan.catalog, plan.job, ways.front())))
    open.emplace_back(left.reason.code);
  return open;
}

/// What stays open where the first finding that has one way is followed again and again.
std::vector<std::string_view> open_at_the_end(Plan plan) {
  constexpr int kMostSteps = 4;
  for (int step = 0; step < kMostSteps && !plan.findings.empty(); ++step) {
    const auto next = std::find_if(plan.findings.begin(), plan.findings.end(), [](const Finding& finding) {
      return finding.ways_to_mend.size() + finding.ways_to_try.size() == 1;
    });
    if (next == plan.findings.end()) break;
    const Changes way = next->ways_to_mend.empty() ? next->ways_to_try.front() : next->ways_to_mend.front();
    plan = make_plan(plan.catalog, changed(*plan.catalog, plan.job, way));
  }
  return open_in(plan);
}

// ---- A relief valve or a regulator that is set too high.

/// Down to the walls' limit alone, relief valve, gauge and factor would each ask for less again.
TEST(FirstMend, OfASettingOverTheWallsGoesAllTheWayDown) {
  const Plan plan = ready_with("set pressure: 1.6 psi", "set pressure: 14 psi");
  ASSERT_EQ(plan.verdict, Verdict::refused);
  EXPECT_THAT(open_after(plan, "setting_is_more_than_walls_may_see"), IsEmpty());
}

Plan relieved_at(const char* opens) { return plan_of_text(with(kStiff, "set 2 psi", opens)); }

TEST(FirstMend, OfAReliefValveTooHighForTheTestIsALowerOne) {
  for (const char* opens : {"set 4 psi", "set 5 psi"}) {
    const Plan plan = relieved_at(opens);
    EXPECT_THAT(said_of(plan, "test_below_what_may_be_seen"),
                AllOf(HasSubstr("a relief valve set at 2 psi"), Not(HasSubstr("'test pressure'"))))
        << opens;
    EXPECT_THAT(open_after(plan, "test_below_what_may_be_seen"), IsEmpty()) << opens;
  }
  EXPECT_THAT(open_in(relieved_at("set 2 psi")), IsEmpty());
}

/// Far over the walls, and the job has no set pressure that could go down.
TEST(FirstMend, OfAReliefValveOverTheWallsIsALowerOne) {
  const std::string unset = with(kReady, "  set pressure: 1.6 psi\n", "");
  const Plan plan = plan_of_text(with(unset, "set 2 psi", "set 8 psi"));
  ASSERT_TRUE(has(plan, "relief_valve_opens_above_limit")) << testing::PrintToString(open_in(plan));
  for (const char* code : {"relief_valve_opens_above_limit", "no_relief_sold_for_the_test"}) {
    EXPECT_THAT(said_of(plan, code), AllOf(HasSubstr("a relief valve set at 2 psi"), Not(HasSubstr("set pressure'")),
                                           Not(HasSubstr("test pressure'"))))
        << code;
    EXPECT_THAT(open_after(plan, code), IsEmpty()) << code;
  }
}

TEST(FirstMend, OfAnOversetRegulatorIsToTurnItDown) {
  const Plan plan = plan_of_text(with(kStiff, "set pressure: 1.6 psi", "set pressure: 4 psi"));
  for (const char* code : {"relief_valve_blows_in_use", "test_below_what_may_be_seen", "gauge_cannot_show"}) {
    EXPECT_THAT(said_of(plan, code), HasSubstr("turn 'air.set pressure' down to")) << code;
    EXPECT_THAT(open_after(plan, code), IsEmpty()) << code;
  }
  for (const ListItem& item : plan.list.buy) EXPECT_THAT(item.name, Not(HasSubstr("10 psi gauge")));
}

TEST(FirstMend, OfAGaugeIsNoOtherThatIsNotRated) {
  const auto with_gauge = [](const char* gauge) {
    return plan_of_text(with(with(kStiff, "set 2 psi", "set 5 psi"), "5 psi gauge", gauge) +
                        "test pressure: 5.4 psi\n");
  };
  EXPECT_THAT(said_of(with_gauge("5 psi gauge"), "device_not_rated"),
              AllOf(HasSubstr("a relief valve set at 2 psi"), Not(HasSubstr("a 0 to"))));
  for (const char* gauge : {"0 to 10 psi gauge", "0 to 15 psi gauge"}) {
    const Plan plan = with_gauge(gauge);
    EXPECT_THAT(said_of(plan, "gauge_cannot_show"),
                AllOf(HasSubstr("a 0 to 5 psi gauge"), HasSubstr("a relief valve set at 2 psi")))
        << gauge;
    EXPECT_THAT(open_at_the_end(plan), IsEmpty()) << gauge;
  }
}

TEST(FirstMend, OfAGaugeThatNoneStandsSaysWhatItReadsAndStands) {
  const Plan plan =
      plan_of_text(with(kStiff, "tolerance: 0.1 psi, rise: 0.2 psi", "tolerance: 0.1 psi, rise: 3.1 psi"));
  EXPECT_THAT(said_of(plan, "device_not_rated"),
              AllOf(HasSubstr("2.4 psi"), HasSubstr("6.4 psi"), HasSubstr("5.2 psi")));
}

TEST(FirstMend, OfAReliefValveWithoutFiguresIsToWriteThem) {
  const std::string bare = with(kStiff, "relief valve: {tolerance: 0.1 psi, rise: 0.2 psi}\n", "");
  for (const std::string& job : {bare, with(bare, "  set pressure: 1.6 psi\n", "")}) {
    const Plan plan = plan_of_text(job);
    int said = 0;
    for (const char* code : {"test_below_what_may_be_seen", "device_not_rated", "full_flow_passes_four_to_one"}) {
      if (finding_of(plan, code) == nullptr) continue;
      ++said;
      EXPECT_THAT(said_of(plan, code), AllOf(HasSubstr("'relief valve: {tolerance: ..., rise: ...}'"), HasSubstr("tag"),
                                             Not(HasSubstr("stays every"))));
    }
    EXPECT_GE(said, 2);
  }
  EXPECT_THAT(open_after(plan_of_text(bare), "test_below_what_may_be_seen"), IsEmpty());
}

// The cheaper mend alone: no stays where the valve's own figures do it.
TEST(FirstMend, OfATestThatNoValveIsSoldForIsTheFiguresAlone) {
  const Plan plan = plan_of_text(
      with(with(kReady, "relief valve: {tolerance: 0.1 psi, rise: 0.2 psi}\n", ""), "  set pressure: 1.6 psi\n", ""));
  ASSERT_TRUE(has(plan, "no_relief_sold_for_the_test")) << testing::PrintToString(open_in(plan));
  EXPECT_THAT(said_of(plan, "no_relief_sold_for_the_test"), AllOf(HasSubstr("tag"), Not(HasSubstr("stays every"))));
}

// ---- Thicker sheet.

/// Of the job with two baffles, its sheet changed.
Plan two_baffles_of(const std::string& sheet) {
  return plan_of_text(
      with(with(kReady, "10 ga steel", sheet), "{baffles across: 2, baffles along: 1}", "{baffles across: 2}"));
}

// 1/8 in, printed as 3 mm and typed so, asked for 3 mm again.
TEST(FirstMend, OfSheetInMillimetresIsEnoughAsItIsPrinted) {
  const auto of = [](const std::string& sheet) {
    return plan_of_text(with(with(with(kReady, "units: inch", "units: metric"), "10 ga steel", sheet),
                             "{baffles across: 2, baffles along: 1}", "{baffles across: 2}"));
  };
  for (const char* thin : {"1 mm steel", "1.5 mm steel", "2 mm steel"}) {
    const Plan plan = of(thin);
    const Finding* weak = finding_of(plan, "fill_needs_more_than_walls_may_see");
    ASSERT_NE(weak, nullptr) << thin;
    std::smatch printed;
    const std::string said = report::say(*weak, UnitSystem::metric).mend;
    ASSERT_TRUE(std::regex_search(said, printed, std::regex("sheet at least ([0-9.]+ mm) thick"))) << said;
    EXPECT_EQ(finding_of(of(printed[1].str() + " steel"), "fill_needs_more_than_walls_may_see"), nullptr) << said;
  }
}

// From 3/16 in on steel promises the 36 ksi of plate, below the 30 ksi of sheet.
TEST(FirstMend, OfThinSheetIsTheThinnestPlateThatDoes) {
  const auto plate = [](Length thickness) {
    return two_baffles_of(fmt::format("{:.4f} in steel", in_inches(thickness)));
  };
  for (const char* thin : {"14 ga steel", "16 ga steel", "20 ga steel"}) {
    const Plan plan = two_baffles_of(thin);
    const Finding* weak = finding_of(plan, "fill_needs_more_than_walls_may_see");
    ASSERT_NE(weak, nullptr) << thin;
    ASSERT_EQ(weak->mend->code, "sheet_at_least") << thin;
    const auto thickness = std::get<Length>(weak->mend->values[0]);
    const Plan typed = plate(thickness);
    const double load = in_psi(plan.transfer.in_use);
    EXPECT_GE(in_psi(typed.walls.four_to_one), load) << thin;
    EXPECT_LT(in_psi(plate(thickness - inches(1.0 / 16.0)).walls.four_to_one), load) << thin;
    EXPECT_NEAR(in_psi(std::get<GaugePressure>(weak->mend->values[1])), in_psi(typed.walls.limit), 1e-6) << thin;
  }
}

TEST(FirstMend, OfAnEmptyBoxIsBafflesAndTheLimitThatTheyGive) {
  const auto of = [](int across, int along) {
    return plan_of_text(with(kReady, "{baffles across: 2, baffles along: 1}",
                             fmt::format("{{baffles across: {}, baffles along: {}}}", across, along)));
  };
  const Plan plan = of(0, 0);
  ASSERT_FALSE(plan.findings.empty());
  const Finding& weak = plan.findings.front();
  ASSERT_TRUE(weak.mend) << weak.reason.code;
  const quantity::Fact* baffles = &*weak.mend;
  if (baffles->code != "baffles_in_all") baffles = &std::get<quantity::Facts>(baffles->values[0]).front();
  ASSERT_EQ(baffles->code, "baffles_in_all") << weak.reason.code;
  const Plan stayed = of(static_cast<int>(std::get<std::int64_t>(baffles->values[0])),
                         static_cast<int>(std::get<std::int64_t>(baffles->values[1])));
  EXPECT_NEAR(in_psi(std::get<GaugePressure>(baffles->values[2])), in_psi(stayed.walls.limit), 1e-6);
}

// ---- A riser under a closed lid.

const std::string kClosed = with(kReady, "  charge: 9 in", "  lid: welded\n  charge: 9 in");

TEST(ClosedLid, IsMendedByABushingInAWiderCoupling) {
  const Plan plan = plan_of_text(kClosed);
  EXPECT_THAT(said_of(plan, "pipe_never_passes_its_thread"), HasSubstr("a 1-1/2 x 1 double-tapped bushing"));
  EXPECT_THAT(open_after(plan, "pipe_never_passes_its_thread"), IsEmpty());
  const Plan typed = plan_of_text(with(kClosed, "bung: full coupling", "bung: double-tapped bushing"));
  EXPECT_THAT(open_in(typed), IsEmpty());
  EXPECT_EQ(typed.riser.riser.insertion, reservoir::Insertion::through_the_bung);
}

TEST(ClosedLid, OverWhichThereIsNoRoomAsksForThat) {
  const Plan plan =
      plan_of_text(with(kClosed, "riser: {bung: riser bung}", "riser: {bung: riser bung, headroom: 10 in}"));
  EXPECT_THAT(said_of(plan, "pipe_never_passes_its_thread"), HasSubstr("of free height over it ('headroom')"));
  EXPECT_THAT(open_after(plan, "pipe_never_passes_its_thread"), IsEmpty());
}

TEST(RiserBushing, IsTheSmallestWhoseCouplingThePipePasses) {
  const Catalog& catalog = *shipped_catalog();
  const PortTypeId inner =
      *catalog.find_port_type({*catalog.find_kind("npt"), *catalog.find_size("1"), catalog::End::female});
  const auto bushing = riser_bushing(catalog, inner, inches(1.315), {}, "steel");
  ASSERT_TRUE(bushing);
  EXPECT_EQ(bushing->large, "1-1/2");
  const auto wider = riser_bushing(catalog, inner, opening_of(catalog, *bushing), {}, "steel");
  ASSERT_TRUE(wider);
  EXPECT_EQ(wider->large, "2");
  EXPECT_FALSE(riser_bushing(catalog, inner, opening_of(catalog, *wider), {}, "steel"));
}

// ---- A table that stands too low for its hose.

std::string with_faces(const std::string& floor, const std::string& face, const std::string& offset) {
  std::string job = with(kReady, "riser bung: {port: 1 FNPT, bung: full coupling, where: lid}",
                         "riser bung: {port: 1 FNPT, bung: full coupling, where: lid, face height: 15-5/8 in}");
  job = with(job, "inlet: {port: 1 FNPT, where: floor}",
             "inlet: {port: 1 FNPT, where: floor, face height: " + face + "}");
  job = with(job, "floor height: 30 in", "floor height: " + floor);
  return with(job, "gap: 14-3/8 in, from: riser bung, to: inlet, carries: water, need: [union]",
              "from: riser bung, to: inlet, carries: water, need: [hose], offset: " + offset);
}

TEST(LowTable, IsMendedByTheHeightsThatTheJobGives) {
  const Plan plan = plan_of_text(with_faces("24 in", "22-3/4 in", "2 in"));
  ASSERT_TRUE(has(plan, "connection_has_no_chain", Severity::refused)) << testing::PrintToString(open_in(plan));
  const Finding* finding = finding_of(plan, "connection_has_no_chain");
  const std::string said = said_of(plan, "connection_has_no_chain");
  EXPECT_THAT(said, AllOf(HasSubstr("'floor height: "), HasSubstr("'face height: "), Not(HasSubstr("a gap of"))));
  ASSERT_EQ(finding->ways_to_try.size(), 1u) << said;
  const double higher = in_inches(std::get<Length>(finding->ways_to_try.front().front().value));
  const auto raised = [&](double by) {
    return plan_of_text(with_faces(fmt::format("{} in", 24.0 + by), fmt::format("{} in", 22.75 + by), "2 in"));
  };
  EXPECT_FALSE(has(raised(higher), "connection_has_no_chain", Severity::refused)) << said;
  // Lower there is but a run that is necked down.
  EXPECT_THAT(open_in(raised(higher - 0.25)), testing::Contains("line_below_the_least_bore")) << said;
  EXPECT_THAT(open_in(raised(higher)), Not(testing::Contains("line_below_the_least_bore"))) << said;
}

// ---- A foot valve.

TEST(FootValve, IsLeftOutRatherThanTheRegulatorSetHigher) {
  const Plan plan =
      plan_of_text(with(with(kStiff, "riser: {bung: riser bung}", "riser: {bung: riser bung, foot valve: yes}"),
                        "set pressure: 1.6 psi", "set pressure: 1.5 psi"));
  EXPECT_THAT(said_of(plan, "setting_does_not_lift_the_water"), HasSubstr("leave the foot valve out"));
  EXPECT_THAT(open_after(plan, "foot_valve_against_drain"), IsEmpty());
}

// What opens the valve is what the setting rises by: no steel and no other relief valve for a valve that must go.
TEST(FootValve, IsLeftOutRatherThanTheWallsMadeStiffer) {
  const std::string starter = with(starter_job(UnitSystem::inch), "3/4 relief valve,", "3/4 relief valve set 2 psi,");
  const auto said = [](const std::string& text) { return said_of(plan_of_text(text), "relief_valve_blows_in_use"); };
  EXPECT_THAT(said(starter + "riser: {foot valve: yes}\n"), HasSubstr("Mend: leave the foot valve out."));
  EXPECT_THAT(said(with(starter, "need: [hose]", "need: [hose, check valve]")),
              HasSubstr("Mend: leave the 1 spring check valve out."));
}

// Without its air the job is told of a regulator twice; one is bought.
TEST(FirstMend, ThatTwoFindingsAskForIsBoughtOnce) {
  const std::string without = with(
      kReady,
      "  - {name: air in, from: shop air, to: air bung, carries: air, in order: yes, special order: yes,\n     need: "
      "[1/16 in hole restrictor, 0 to 15 psi air regulator, light spring check valve]}\n",
      "");
  const Plan plan = plan_of_text(with(without, "regulator range: 15 psi", "regulator range: 30 psi"));
  ASSERT_TRUE(has(plan, "no_air_line") && has(plan, "regulator_range_too_wide"));
  EXPECT_THAT(said_of(plan, "port_closed_by_nothing"), testing::HasSubstr("the air goes there, as said of it"));
  int regulators = 0;
  for (const ListItem& item : plan.list.buy)
    if (item.name.find("regulator") != std::string::npos) regulators += item.quantity;
  EXPECT_EQ(regulators, 1);
}

}  // namespace
}  // namespace riserun::plan
