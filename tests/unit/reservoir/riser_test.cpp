#include "reservoir/riser.h"

#include "quantity/input_error.h"
#include "unit/report/words/said.h"

#include <gmock/gmock.h>

#include <string>
#include <vector>

namespace riserun::reservoir {
namespace {

using report::said;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::SizeIs;

// 1 in schedule 40 pipe (ASME B36.10M), make-up 11/16 in with a turn of tolerance (ASME B1.20.1), in the 2-3/8 in full
// coupling of ASME B16.11 class 3000; a box 54 x 22 x 14 in inside.
RiserRequest one_inch() {
  RiserRequest r;
  r.box = {inches(54), inches(22), inches(14)};
  r.bung = BungKind::full_coupling;
  r.bung_length = inches(2.375);
  r.bung_projection = inches(0.5);
  r.bung_opening = inches(1.161);
  r.pipe = {"1 in schedule 40",
            inches(1.049),
            inches(1.315),
            inches(11.0 / 16.0),
            inches(1.0 / 11.5),
            inches(11.0 / 16.0),
            {inches(4), inches(12), inches(14), inches(18), inches(24)},
            {}};
  r.wanted_clearance = inches(0.5);
  return r;
}

double sixteenths(Length v) { return in_inches(v) * 16.0; }

TEST(PlanRiser, CutLengthIsHeightLessProjectionAndClearancePlusMakeUp) {
  const Riser riser = plan_riser(one_inch());
  EXPECT_NEAR(in_inches(riser.cut_length), 13.0 + 11.0 / 16.0, 1e-9);
  EXPECT_NEAR(in_inches(riser.end_height), 0.5, 1e-12);
  EXPECT_NEAR(in_us_gallons(riser.heel), 54.0 * 22.0 * 0.5 / 231.0, 1e-9);
  EXPECT_NEAR(riser.curtain_to_bore, 4.0 * 0.5 / 1.049, 1e-12);
  EXPECT_THAT(said(riser.refusals), IsEmpty());
}

TEST(PlanRiser, AnObstacleUnderTheBungCountsAsTheFloor) {
  RiserRequest r = one_inch();
  r.obstacle_height = inches(1.5);
  const Riser riser = plan_riser(r);
  EXPECT_NEAR(in_inches(riser.cut_length), 12.0 + 3.0 / 16.0, 1e-9);
  EXPECT_NEAR(in_inches(riser.end_height), 2.0, 1e-12);
  EXPECT_NEAR(in_us_gallons(riser.heel), 54.0 * 22.0 * 2.0 / 231.0, 1e-9);
  EXPECT_THAT(said(riser.notes), Contains(HasSubstr("stands 1-1/2 in (38 mm) high and counts as the floor")));
}

TEST(PlanRiser, MakeUpToleranceIsTheBandOfTheClearance) {
  const Riser riser = plan_riser(one_inch());
  EXPECT_NEAR(in_inches(riser.clearance_high - riser.clearance), 1.0 / 11.5, 1e-12);
  EXPECT_NEAR(in_inches(riser.clearance - riser.clearance_low), 1.0 / 11.5, 1e-12);
}

TEST(DefaultClearance, IsTheGreaterOfHalfAnInchAndHalfTheBoreToTheNextSixteenth) {
  EXPECT_NEAR(sixteenths(default_clearance(inches(0.824))), 8.0, 1e-9);
  EXPECT_NEAR(sixteenths(default_clearance(inches(1.0))), 8.0, 1e-9);
  EXPECT_NEAR(sixteenths(default_clearance(inches(1.049))), 9.0, 1e-9);
  EXPECT_NEAR(sixteenths(default_clearance(inches(3.068))), 25.0, 1e-9);
  EXPECT_NEAR(sixteenths(default_clearance(inches(2.0))), 16.0, 1e-9);
}

TEST(PlanRiser, IsCutFromTheShortestStockNippleThatIsLongEnough) {
  RiserRequest r = one_inch();
  const Riser riser = plan_riser(r);
  EXPECT_NEAR(in_inches(*riser.stock), 14.0, 1e-9);
  EXPECT_NEAR(in_inches(riser.offcut), 1.0 / 4.0, 1e-9);  // a saw cut of 1/16 in
  EXPECT_THAT(
      said(riser.notes),
      Contains("From the 14 in (356 mm) stock piece cut 13-11/16 in (348 mm), measured from one threaded end."));
  r.pipe.stock_nipples = {inches(18)};
  EXPECT_THAT(
      said(plan_riser(r).notes),
      Contains("From the 18 in (457 mm) stock piece cut 13-11/16 in (348 mm), measured from one threaded end; the "
               "offcut of 4-1/4 in (108 mm) keeps the other thread."));
}

// What is 1/16 in longer goes in as it is, 1/16 in nearer to the floor; of what is 1/8 in
// longer with a clearance of the person's own, more than the make-up gives, no 1/8 in is sawn off.
TEST(PlanRiser, IsNotSawnByLessThanAQuarterOfAnInch) {
  RiserRequest r = one_inch();
  r.wanted_clearance.reset();
  const Riser sawn = plan_riser(r);
  const Length cut = sawn.cut_length;
  r.pipe.stock_nipples = {cut + inches(1.0 / 16.0), inches(18)};
  const Riser riser = plan_riser(r);
  EXPECT_TRUE(riser.is_stock_uncut);
  EXPECT_NEAR(in_inches(riser.cut_length), in_inches(cut) + 1.0 / 16.0, 1e-9);
  EXPECT_NEAR(in_inches(riser.clearance), in_inches(sawn.clearance) - 1.0 / 16.0, 1e-9);
  EXPECT_NEAR(in_inches(riser.end_height), in_inches(sawn.end_height) - 1.0 / 16.0, 1e-9);
  r.wanted_clearance = sawn.clearance;
  r.pipe.stock_nipples = {cut + inches(1.0 / 8.0), inches(18)};
  const Riser longer = plan_riser(r);
  EXPECT_FALSE(longer.is_stock_uncut);
  EXPECT_NEAR(in_inches(*longer.stock), 18.0, 1e-9);
  EXPECT_NEAR(in_inches(longer.clearance), in_inches(sawn.clearance), 1e-9);
  r.pipe.stock_nipples = {cut - inches(1.0 / 16.0), inches(18)};
  EXPECT_TRUE(plan_riser(r).is_stock_uncut) << "a little short, it ends a little higher";
  r.pipe.stock_nipples = {cut + inches(1.0 / 4.0)};
  EXPECT_NEAR(in_inches(plan_riser(r).cut_length), in_inches(cut), 1e-9) << "enough to saw off";
}

TEST(PlanRiser, LongestStockNippleThatKeepsItsClearanceServesUncut) {
  const Riser riser = plan_riser(one_inch());
  EXPECT_NEAR(in_inches(*riser.stock_uncut), 12.0, 1e-9);
  EXPECT_NEAR(in_inches(riser.stock_uncut_clearance), 2.0 + 3.0 / 16.0, 1e-9);
  EXPECT_THAT(said(riser.notes),
              Contains("The 12 in (305 mm) stock piece serves uncut, with a clearance of 2-3/16 in (56 mm) and a heel "
                       "of 11.3 gal."));
}

TEST(PlanRiser, OneNippleMakesTwoRisersWhereItIsLongEnough) {
  RiserRequest r = one_inch();
  r.box.height = inches(6);
  const Riser riser = plan_riser(r);  // 5-11/16 in
  EXPECT_NEAR(in_inches(*riser.stock_for_two), 12.0, 1e-9);
  EXPECT_THAT(said(riser.notes),
              Contains("One 12 in (305 mm) stock piece cut in two makes two such risers, each with one threaded end."));
}

TEST(PlanRiser, LongerThanAnyStockNippleIsThreadedFromPipe) {
  RiserRequest r = one_inch();
  r.box.height = inches(30);
  const Riser riser = plan_riser(r);
  EXPECT_FALSE(riser.stock);
  EXPECT_THAT(said(riser.notes),
              Contains("No stock nipple is 29-11/16 in (754 mm) long: thread one end of a pipe, or have it cut "
                       "and threaded."));
}

TEST(PlanRiser, AHalfCouplingIsRefused) {
  RiserRequest r = one_inch();
  r.bung = BungKind::half_coupling;
  EXPECT_THAT(
      said(plan_riser(r).refusals),
      Contains("A half coupling is threaded from one end only, so it cannot take the riser from below and a nipple "
               "from above: weld in a full coupling, or weld the riser itself through the lid."));
}

TEST(PlanRiser, EndsThatWouldMeetInsideTheBungAreRefused) {
  RiserRequest r = one_inch();
  r.bung_length = inches(1.25);
  EXPECT_THAT(
      said(plan_riser(r).refusals),
      Contains("The riser goes 11/16 in (17 mm) in from below and the nipple 11/16 in (17 mm) from above, so their "
               "ends would meet inside the 1-1/4 in (32 mm) bung: use one at least 1-9/16 in (40 mm) long."));
  r.bung_length = inches(1.45);  // longer than both make-ups, shorter than both at the tight end
  const Riser close = plan_riser(r);
  EXPECT_THAT(said(close.refusals), IsEmpty());
  EXPECT_THAT(said(close.notes), Contains(HasSubstr("less than the two threads' tolerance")));
}

TEST(PlanRiser, PipeNeverPassesItsOwnThreadOnceTheLidIsClosed) {
  RiserRequest r = one_inch();
  EXPECT_EQ(plan_riser(r).insertion, Insertion::from_inside_before_lid_closes);
  EXPECT_FALSE(plan_riser(r).can_be_drawn_out);
  r.lid_closed = true;
  const Riser riser = plan_riser(r);
  EXPECT_EQ(riser.insertion, Insertion::cannot_go_in);
  EXPECT_THAT(said(riser.refusals),
              Contains("The lid is closed, and the riser's pipe, 1.315 in outside, never passes its "
                       "own size's female thread: use a larger bung that the pipe passes, with a "
                       "double-tapped bushing, or weld the riser itself through the lid."));
}

RiserRequest through_a_larger_bung() {
  RiserRequest r = one_inch();
  r.bung = BungKind::double_tapped_bushing;
  r.bung_opening = inches(1.745);
  r.lid_closed = true;
  return r;
}

TEST(PlanRiser, GoesThroughALargerBungWithADoubleTappedBushing) {
  const Riser riser = plan_riser(through_a_larger_bung());
  EXPECT_EQ(riser.insertion, Insertion::through_the_bung);
  EXPECT_TRUE(riser.can_be_drawn_out);
  EXPECT_THAT(said(riser.refusals), IsEmpty());
}

TEST(PlanRiser, ALargerBungThatThePipeDoesNotPassIsRefused) {
  RiserRequest r = through_a_larger_bung();
  r.bung_opening = inches(1.2);
  EXPECT_THAT(said(plan_riser(r).refusals),
              Contains("The lid is closed, and the riser's pipe, 1.315 in outside, does not pass the bung's opening of "
                       "1.2 in: use a bung that opens wider than the pipe, with a double-tapped bushing to suit."));
}

TEST(PlanRiser, TooLittleHeadroomOverAClosedLidIsRefusedWithWhatIsMissing) {
  RiserRequest r = through_a_larger_bung();
  r.headroom = inches(12);
  const Riser riser = plan_riser(r);
  EXPECT_NEAR(in_inches(riser.headroom_needed), 13.0 + 2.375, 1e-9);
  EXPECT_EQ(riser.insertion, Insertion::cannot_go_in);
  EXPECT_THAT(said(riser.refusals),
              Contains("The lid is closed, and putting the riser in from above takes 15-3/8 in (391 mm) of "
                       "free height over the bung where there are 12 in (305 mm): make 3-3/8 in (86 mm) "
                       "more room, or put the riser in before the table stands over it."));
  r.headroom = inches(15.375);
  EXPECT_THAT(said(plan_riser(r).refusals), IsEmpty());
}

TEST(PlanRiser, OverAnOpenLidTooLittleHeadroomOnlyMeansThatItStaysIn) {
  RiserRequest r = through_a_larger_bung();
  r.lid_closed = false;
  r.headroom = inches(12);
  const Riser riser = plan_riser(r);
  EXPECT_EQ(riser.insertion, Insertion::from_inside_before_lid_closes);
  EXPECT_FALSE(riser.can_be_drawn_out);
  EXPECT_THAT(said(riser.notes), Contains(HasSubstr("there are 12 in (305 mm)")));
}

TEST(PlanRiser, ClearanceInsideTheMakeUpToleranceIsRefused) {
  RiserRequest r = one_inch();
  r.wanted_clearance = inches(1.0 / 16.0);
  EXPECT_THAT(said(plan_riser(r).refusals), Contains(HasSubstr("the riser would stand on the floor")));
}

TEST(PlanRiser, ClearanceUnderAQuarterOfTheBoreIsCautionedAtTheShortEndOfTheBand) {
  RiserRequest r = one_inch();
  r.wanted_clearance = inches(0.3125);
  const Riser riser = plan_riser(r);
  EXPECT_THAT(said(riser.refusals), IsEmpty());
  EXPECT_THAT(said(riser.notes), Contains(HasSubstr("0.2255 in, under a quarter of the bore (0.2622 in)")));
  EXPECT_THAT(said(plan_riser(one_inch()).notes), Not(Contains(HasSubstr("under a quarter of the bore"))));
}

TEST(PlanRiser, NoRoomForARiserIsRefused) {
  RiserRequest r = one_inch();
  r.obstacle_height = inches(13.25);
  const Riser riser = plan_riser(r);
  EXPECT_THAT(said(riser.refusals), Contains(HasSubstr("From the bung down to what lies under it there are 1/4 in")));
  EXPECT_FALSE(riser.stock);
  r.obstacle_height = inches(12.75);
  r.wanted_clearance = inches(0.875);
  EXPECT_THAT(said(plan_riser(r).refusals), Contains(HasSubstr("lower the clearance to 11/16 in (17 mm) or less")));
}

TEST(PlanRiser, AWeldedRiserIsMeasuredFromTheLid) {
  RiserRequest r = one_inch();
  r.bung = BungKind::welded_riser;
  r.lid_closed = true;
  const Riser riser = plan_riser(r);
  EXPECT_NEAR(in_inches(riser.cut_length), 13.5, 1e-9);
  EXPECT_EQ(in_metres(riser.make_up), 0.0);
  EXPECT_EQ(riser.insertion, Insertion::welded_in);
  ASSERT_TRUE(riser.stock);  // its upper end is threaded
  EXPECT_GE(in_inches(*riser.stock), 13.5);
  EXPECT_THAT(said(riser.refusals), IsEmpty());
}

TEST(PlanRiser, SpeaksMetricWhereThatIsAskedFor) {
  const std::vector<std::string> notes = said(plan_riser(one_inch()).notes, UnitSystem::metric);
  for (const std::string& note : notes) EXPECT_THAT(note, Not(HasSubstr(" in ("))) << note;
  EXPECT_THAT(notes, Contains(HasSubstr("From the 356 mm stock piece cut 348 mm, measured from one threaded end")));
}

TEST(PlanRiser, MeasuresThatCannotBeAreAllNamed) {
  RiserRequest r = one_inch();
  r.box.height = inches(0);
  r.pipe.bore = inches(-1);
  r.obstacle_height = inches(-1);
  r.headroom = inches(-2);
  try {
    plan_riser(r);
    FAIL() << "no error";
  } catch (const InputError& error) {
    ASSERT_THAT(error.problems(), SizeIs(4));
    EXPECT_EQ(error.problems()[0].message, "the reservoir's height must be above zero");
    EXPECT_EQ(error.problems()[1].message, "the riser's bore must be above zero");
    EXPECT_EQ(error.problems()[2].message, "the height of what lies under the bung must not be below zero");
    EXPECT_EQ(error.problems()[3].message, "the headroom must not be below zero");
  }
}

}  // namespace
}  // namespace riserun::reservoir
