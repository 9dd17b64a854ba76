// `riserun riser` without a job: the cut length from a few measures.
#include "unit/cli/asked_command.h"

namespace riserun::cli {
namespace {

const Words kTank{"riser", "--length", "44 in", "--width", "22 in", "--height"};

TEST(Riser, IsCutAsReckonedByHand) {
  // Inside 14 in, bung 1/2 in below the lid, clearance 1/2 in, make-up of 1 in NPT L1 + L3 = 0.661 in (ASME B1.20.1):
  // 14 - 1/2 - 1/2 + 0.661 = 13.661, to the tape 13-11/16 in.
  const Answered done =
      ask(kTank + Words{"14 in", "--bung", "1 FNPT", "--projects", "1/2 in", "--clearance", "1/2 in"});
  EXPECT_EQ(done.status, kDone) << done.err;
  EXPECT_THAT(done.out, HasSubstr("13-11/16 in (347 mm)"));
}

TEST(Riser, IsRefusedInAHalfCoupling) {
  const Answered refused = ask(kTank + Words{"14 in", "--bung-kind", "half coupling"});
  EXPECT_EQ(refused.status, kNoSolution);
  EXPECT_THAT(refused.out, HasSubstr("full coupling"));
}

TEST(Riser, ScrewsIntoAFemaleBung) {
  for (const char* kind : {"full coupling", "half coupling", "double-tapped bushing"})
    EXPECT_THAT(complaint(kTank + Words{"14 in", "--bung", "1 MNPT", "--bung-kind", kind}), HasSubstr("is female"));
  EXPECT_THAT(complaint(kTank + Words{"14 in", "--bung", "1 MNPT"}), HasSubstr("--bung: error"));
}

TEST(Riser, OfABushingsOwnThreadIsHeld) {
  const Words bushing{"14 in", "--bung-kind", "double-tapped bushing"};
  EXPECT_THAT(complaint(kTank + bushing + Words{"--bung", "1-1/2 FNPT", "--pipe", "1"}),
              HasSubstr("--bung \"1 FNPT\""));
  EXPECT_THAT(complaint(kTank + bushing + Words{"--bung", "1 FNPT", "--pipe", "3/4"}), HasSubstr("--pipe: error"));
  EXPECT_EQ(ask(kTank + bushing + Words{"--bung", "1 FNPT", "--pipe", "1"}).status, kDone);
}

TEST(Riser, AsksForAllMeasuresAtOnce) {
  EXPECT_THAT(complaint({"riser", "--height", "14 in"}), HasSubstr("--length and --width are required"));
  EXPECT_THAT(complaint({"riser", "--height", "14 in", "--length", "40 in"}), HasSubstr("--width is required"));
}

TEST(Riser, ThatHasNoRoomIsCutToNothing) {
  const Answered refused = ask(kTank + Words{"1 in"});
  EXPECT_EQ(refused.status, kNoSolution);
  EXPECT_THAT(refused.out, Not(HasSubstr("cut length")));
}

// Nothing of the catalog holds so wide a pipe in so small a bung.
TEST(Riser, WiderThanItsBungIsToldThatItDoesNotGoIn) {
  const Words tank = {"riser", "--height", "14 in", "--length", "48 in", "--width", "20 in", "--pipe"};
  const Answered wide = ask(tank + Words{"3"});
  EXPECT_EQ(wide.status, kNoSolution);
  EXPECT_THAT(wide.out, HasSubstr("3 in riser is wider than"));
  EXPECT_EQ(ask(tank + Words{"1"}).status, kDone);
}

// ISO 7-1: a riser in an Rc bung is cut R, which a shop that is not told cuts NPT.
TEST(Riser, IsToldItsThread) {
  EXPECT_THAT(ask({"riser", "--height", "14 in", "--length", "48 in", "--width", "20 in", "--bung", "1 FBSPT"}).out,
              HasSubstr("thread one end, 1 MBSPT"));
}

TEST(Riser, NeedsAUnit) { EXPECT_THAT(complaint(kTank + Words{"14"}), HasSubstr("--height")); }

}  // namespace
}  // namespace riserun::cli
