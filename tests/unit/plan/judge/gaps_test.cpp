// Runs that do not reach, hoses that do not bend, bungs and baffles that do not go in.
#include "plan/advice/change.h"
#include "quantity/write.h"
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

#include <cmath>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

// Of the ready job with that in place of its measured gap and its union.
std::string with_up(const std::string& words) {
  return with(with(kReady, "gap: 14-3/8 in, ", ""), "need: [union], held: {from: fixed, to: fixed}",
              words + ", held: {from: fixed, to: fixed}");
}

const ConnectionPlan& up(const Plan& plan) { return plan.connections.front(); }

Length hose_of(const std::string& words) { return up(plan_of_text(with_up(words))).hose_length.value_or(Length{}); }

TEST(AssumedGap, IsMissedByWhatEndsFarFromIt) {
  const Plan plan = plan_of_text(with_up("need: [union]"));
  EXPECT_TRUE(has(plan, "run_short_of_its_assumed_gap", Severity::not_yet));
  EXPECT_THAT(said_of(plan, "run_short_of_its_assumed_gap"), HasSubstr("'face height' of riser bung and inlet"));
  EXPECT_THAT(open_in(plan_of_text(with_up("need: [hose]"))), testing::IsEmpty());
}

// Who leaves the hose out is told of it: it takes up the gap.
TEST(AssumedGap, ThatNothingMakesIsTakenUpByAHose) {
  const Plan plan = plan_of_text(with_up("need: []"));
  ASSERT_THAT(open_in(plan), testing::ElementsAre("run_short_of_its_assumed_gap"));
  EXPECT_THAT(said_of(plan, "run_short_of_its_assumed_gap"),
              testing::AllOf(HasSubstr("'need: [hose]'"), HasSubstr("measure and give 'gap'")));
  const Finding& finding = plan.findings.front();
  ASSERT_EQ(finding.ways_to_try.size(), 1u);
  EXPECT_THAT(findings_of(plan.catalog, changed(*plan.catalog, plan.job, finding.ways_to_try.front())),
              testing::IsEmpty());
}

// A piece that is there is as short as it is: its joints alone give a little.
TEST(AssumedGap, IsMissedByAHoseThatIsShortOfIt) {
  EXPECT_TRUE(has(plan_of_text(with_up("need: [hose], hose length: 6 in")), "hose_short_of_its_assumed_gap"));
  const Length enough = hose_of("need: [hose]");
  const auto of_length = [](Length length) {
    return plan_of_text(with_up("need: [hose], hose length: " + std::to_string(in_inches(length)) + " in"));
  };
  EXPECT_TRUE(has(of_length(enough - inches(1.75)), "hose_short_of_its_assumed_gap"));
  EXPECT_FALSE(has(of_length(enough - inches(0.25)), "hose_short_of_its_assumed_gap"));
}

TEST(AssumedGap, TakesNoPieceOfTheBinThatIsTooShort) {
  const Plan plan =
      plan_of_text(with_up("need: [hose]") + "bin: [{part: 1 rubber hose, length: 12 in}]\nwishes: {order: bin}\n");
  EXPECT_THAT(open_in(plan), testing::IsEmpty());
  EXPECT_GT(up(plan).hose_length, inches(13.0));
}

TEST(AssumedGap, IsFilledByTheHoseThatTheWrittenOneTakes) {
  const Plan assumed = plan_of_text(with_up("need: [hose]"));
  ASSERT_TRUE(up(assumed).gap_assumed);
  const std::string written = std::to_string(in_inches(*up(assumed).gap)) + " in";
  EXPECT_NEAR(in_inches(*up(assumed).hose_length), in_inches(hose_of("need: [hose], gap: " + written)), 1e-4);
}

// The bung's face is 14 + 2-3/8 - 3/4 = 15-5/8 in over the floor, a 1 in full coupling being 2-3/8 in long (ASME
// B16.11); close nipple, union and close nipple take 2-11/16 in.
Plan over_a_gap(const char* floor, const std::string& words, const std::string& inlet = "") {
  const std::string job = with(with(with_up(words), "floor height: 30 in", std::string("floor height: ") + floor),
                               "bung: full coupling, where: lid", "bung: full coupling, where: lid, projects: 3/4 in");
  return plan_of_text(
      with(job, "inlet: {port: 1 FNPT, where: floor}", "inlet: {port: 1 FNPT, where: floor" + inlet + "}"));
}

TEST(AssumedGap, WithoutRoomForARigidRunIsNotReadyAndAHigherTableMendsIt) {
  for (const char* inlet : {"", ", face height: 16-7/8 in"}) {
    const Plan plan = over_a_gap("17 in", "need: [union]", inlet);
    ASSERT_TRUE(has(plan, "run_beyond_its_assumed_gap", Severity::not_yet)) << inlet;
    const std::string said = said_of(plan, "run_beyond_its_assumed_gap");
    EXPECT_THAT(said, AllOf(HasSubstr("in higher: 'floor height: "), Not(HasSubstr("order: length")),
                            Not(HasSubstr("'hose'"))));
    EXPECT_EQ(said.find("'face height: ") != std::string::npos, *inlet != '\0') << said;
    const auto finding = std::find_if(plan.findings.begin(), plan.findings.end(), [](const Finding& one) {
      return one.reason.code == "run_beyond_its_assumed_gap";
    });
    ASSERT_EQ(finding->ways_to_try.size(), 1u);
    for (const Finding& left :
         findings_of(plan.catalog, changed(*plan.catalog, plan.job, finding->ways_to_try.front())))
      EXPECT_NE(left.reason.code, "run_beyond_its_assumed_gap");
  }
  EXPECT_FALSE(has(over_a_gap("18-3/8 in", "need: [union]"), "run_beyond_its_assumed_gap"));
}

TEST(AssumedGap, WithoutRoomForAHoseIsMendedByAUnionWhereThatHasRoom) {
  const auto said = [](const char* floor) { return said_of(over_a_gap(floor, "need: [hose]"), "no_room_for_hose"); };
  EXPECT_THAT(said("18-3/8 in"), HasSubstr("a 'union' in 'need' in place of the 'hose'"));
  EXPECT_THAT(said("17-5/8 in"), AllOf(HasSubstr("in higher: 'floor height: "), Not(HasSubstr("'union'"))));
}

// The long nipples lie in the bin, and are free: bought short ones, or a hose, have room.
TEST(AssumedGap, WithRoomForAShorterRunOrAHoseNamesThem) {
  const Plan plan =
      plan_of_text(with(with_up("need: [union], order: bin"), "floor height: 30 in", "floor height: 24 in") +
                   "bin: [{part: 1 x 6 nipple black iron, count: 2}]\n");
  EXPECT_THAT(said_of(plan, "run_beyond_its_assumed_gap"), AllOf(HasSubstr("'order: length'"), HasSubstr("a 'hose'")));
}

// A line in the riser's own width has no room in 4 in; with the figure it is ready.
TEST(GivenGap, ThatIsTooShortForTheBoreSaysWhichIsLongEnough) {
  const auto in_a_gap_of = [](const char* gap) {
    return plan_of_text(
        with(with(kReady, "gap: 14-3/8 in, ", std::string("gap: ") + gap + ", "), "need: [union]", "need: [hose]"));
  };
  const Plan plan = in_a_gap_of("4 in");
  EXPECT_THAT(said_of(plan, "line_below_the_least_bore"), HasSubstr("a gap of 4-1/2 in, in which"));
  EXPECT_FALSE(has(in_a_gap_of("4-1/2 in"), "line_below_the_least_bore"));
}

TEST(AssumedGap, OfAHoseOffersNoUnionThatHasNoRoomEither) {
  EXPECT_THAT(said_of(over_a_gap("17 in", "need: [hose]"), "no_room_for_hose"), Not(HasSubstr("'union'")));
}

TEST(TablePort, UnderTheBungThatLooksUpAtItIsRefused) {
  const auto at = [](const char* height) {
    return plan_of_text(with(with_up("need: [hose]"), "floor height: 30 in", std::string("floor height: ") + height));
  };
  const Plan low = at("15 in");
  EXPECT_TRUE(has(low, "table_port_under_bung", Severity::refused));
  EXPECT_THAT(said_of(low, "table_port_under_bung"), AllOf(HasSubstr("15 in"), HasSubstr("15-3/16 in")));
  EXPECT_FALSE(has(at("16 in"), "table_port_under_bung"));
}

// Two arcs, each turning by twice the angle whose tangent is the offset over the room (geometry), and 4 % of slack.
TEST(Offset, IsTakenByAHoseInTwoBends) {
  const Plan straight = plan_of_text(with_up("need: [hose], gap: 16 in"));
  const Plan bent = plan_of_text(with_up("need: [hose], gap: 16 in, offset: 8 in"));
  ASSERT_TRUE(up(bent).hose_length);
  const double in_line = in_inches(*up(straight).hose_length);
  double taken_in = 0.0;
  for (const chain::RunJoint& joint : up(straight).chain()->joints)
    if (straight.catalog->kind(straight.catalog->port_type(joint.a).kind).id == "hose")
      taken_in += in_inches(joint.make_up);
  const double room = (in_line - taken_in) / 1.04;
  const double radius = (room * room + 64.0) / 32.0;
  EXPECT_NEAR(in_inches(*up(bent).hose_length), taken_in + 1.04 * 4.0 * radius * std::atan2(8.0, room), 0.01);
}

TEST(Offset, ThatNoHoseTakesInItsGapIsOpenAndItsMendMends) {
  const Plan assumed = plan_of_text(with_up("need: [hose], offset: 30 in"));
  EXPECT_TRUE(has(assumed, "hose_bends_do_not_fit", Severity::not_yet));
  const Plan written = plan_of_text(with_up("need: [hose], gap: 14-3/8 in, offset: 30 in"));
  EXPECT_TRUE(has(written, "connection_has_no_chain", Severity::refused));
  ASSERT_TRUE(up(written).tight_hose);
  const std::string said = said_of(written, "connection_has_no_chain");
  EXPECT_THAT(said, AllOf(HasSubstr("a gap of"), HasSubstr("an offset of"), Not(HasSubstr("allowed)"))));
  const std::string gap = quantity::write_length(up(written).tight_hose->least_gap, UnitSystem::inch);
  // A wider gap is a higher table, which asks for more pressure; nothing is open in the run any more.
  const std::string floor =
      "floor height: " + std::to_string(14.0 + in_inches(up(written).tight_hose->least_gap)) + " in";
  EXPECT_THAT(
      open_in(plan_of_text(with(with_up("need: [hose], offset: 30 in, gap: " + gap), "floor height: 30 in", floor))),
      testing::ElementsAre("setting_does_not_lift_the_water"));
  const std::string offset =
      quantity::write_length(std::get<Length>(up(written).tight_hose->mend.values[1]), UnitSystem::inch);
  EXPECT_THAT(open_in(plan_of_text(with_up("need: [hose], gap: 14-3/8 in, offset: " + offset))), testing::IsEmpty());
}

// 40 in inside: eight plates of 10 ga leave bays of 4-3/8 in, nine of 3-7/8 in; a hand and a torch take 4 in.
TEST(Baffles, AreNoNearerThanAWelderReaches) {
  const auto across = [](const char* count) {
    return plan_of_text(
        with(kReady, "{baffles across: 2, baffles along: 1}", std::string("{baffles across: ") + count + "}"));
  };
  EXPECT_FALSE(has(across("8"), "baffles_too_near"));
  const Plan nine = across("9");
  EXPECT_TRUE(has(nine, "baffles_too_near", Severity::not_yet));
  EXPECT_THAT(said_of(nine, "baffles_too_near"), HasSubstr("8 baffles across at most"));
}

bool lists(const Plan& plan, const std::string& words) {
  return std::any_of(plan.list.buy.begin(), plan.list.buy.end(), [&](const ListItem& item) {
    const auto is_for = std::find(item.used_for.begin(), item.used_for.end(), "riser");
    return is_for != item.used_for.end() && (item.name + " " + item.material).find(words) != std::string::npos;
  });
}

TEST(RiserStock, IsOnTheListWhateverItIsMadeOf) {
  const auto of = [](const char* material) {
    return plan_of_text(with(kReady, "riser: {bung: riser bung}",
                             std::string("riser: {bung: riser bung, material: ") + material + "}"));
  };
  EXPECT_TRUE(lists(of("black iron"), "black iron"));
  EXPECT_TRUE(lists(of("stainless"), "stainless"));
  EXPECT_TRUE(lists(of("aluminium"), "aluminium"));
  EXPECT_TRUE(has(of("copper"), "riser_takes_no_thread", Severity::refused));
  EXPECT_FALSE(has(of("aluminium"), "riser_takes_no_thread"));
}

// To an inlet that does not look down at the bung the hose goes up by the heights, and turns.
TEST(HoseToTheSide, IsAtLeastAsLongAsTheInletIsHigh) {
  constexpr const char* kInlet = "inlet: {port: 1 FNPT, where: floor}";
  const std::string hose = with_up("need: [hose]");
  const std::string side = with(hose, kInlet, "inlet: {port: 1 FNPT, where: side, opens at: 1 in}");
  const std::string rim = with(hose, kInlet, "inlet: {port: 1 FNPT, where: over rim, crest: 7 in, opens at: 1 in}");
  const std::string measured = with(hose, kInlet, "inlet: {port: 1 FNPT, where: side, face height: 31 in}");
  for (const auto& [job, opens_at] : {std::pair{side, inches(1.0)}, {rim, inches(7.0)}, {measured, inches(1.0)}}) {
    const Plan plan = plan_of_text(job);
    ASSERT_TRUE(up(plan).hose_rise && up(plan).hose_length);
    // Floor at 30 in, the bung's face over a reservoir of 14 in.
    const Length rise = inches(30.0 - 14.0) + opens_at - plan.riser.bung_face;
    EXPECT_NEAR(in_metres(up(plan).hose_rise->rise), in_metres(rise), 1e-9);
    EXPECT_GT(*up(plan).hose_length, rise);
    // Out past the edge, 11 in from the middle of a table 22 in wide, with twice its bend.
    EXPECT_LT(*up(plan).hose_length, rise + inches(11.0 + 2.0 * 7.5));
    EXPECT_FALSE(has(plan, "hose_short_of_its_rise"));
    const Plan shorter = plan_of_text(with(job, "need: [hose]", "need: [hose], hose length: 6 in"));
    ASSERT_TRUE(has(shorter, "hose_short_of_its_rise")) << testing::PrintToString(open_in(shorter));
    const std::string least = quantity::write_length(up(shorter).hose_rise->least, UnitSystem::inch);
    EXPECT_THAT(said_of(shorter, "hose_short_of_its_rise"), HasSubstr("a 'hose length' of " + least));
    const std::string longer = std::to_string(std::lround(in_inches(up(shorter).hose_rise->least)));
    EXPECT_FALSE(has(plan_of_text(with(job, "need: [hose]", "need: [hose], hose length: " + longer + " in")),
                     "hose_short_of_its_rise"));
  }
}

}  // namespace
}  // namespace riserun::plan
