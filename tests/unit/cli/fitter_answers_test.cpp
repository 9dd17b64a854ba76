// `riserun chain` as a fitter judges it: what can be made up at the bench, what goes where, and whether it says why.
// Expectations are common practice where no source is named.
#include "unit/cli/asked_command.h"

#include <algorithm>

namespace riserun::cli {
namespace {

using testing::Contains;
using testing::Each;
using testing::ElementsAre;
using testing::Ge;

/// Inches that the pieces of that family are cut to, in their order.
std::vector<double> cut_lengths(const json& answer, const std::string& family) {
  std::vector<double> inches;
  const json& chain = answer.at("chains").at(0);
  for (const json& piece : chain.at("span").at("pieces")) {
    const std::string id = chain.at("parts").at(piece.at("part").get<std::size_t>()).at("id");
    if (piece.at("cut") && id.substr(0, id.find('/')) == family)
      inches.push_back(piece.at("length_m").get<double>() / 0.0254);
  }
  return inches;
}

// 5/8 compression takes in 0.6 in, a 5/8 flare nut 0.9 in (catalog/joints.yaml), and each half an inch of bare tube.
TEST(FittersChain, AStubHoldsBothJointsAndWhatTurnsThem) {
  const auto [status, answer] = chain({"5/8 compression", "5/8 compression", "--span", "6 in"});
  ASSERT_EQ(status, kDone);
  const std::vector<double> cut = cut_lengths(answer, "copper-tube");
  EXPECT_GE(cut.size(), 2U);
  EXPECT_THAT(cut, Each(Ge(2 * 0.5 + 0.6 + 0.9)));
}

// 48 in + 72 in of stock and a union come 5/16 in short of 10 ft, near a turn in every joint: pipe is cut instead.
TEST(FittersChain, StockThatOnlyJustLandsIsLeftForACut) {
  const Answered answered = ask({"chain", "1 FNPT", "1 FNPT", "--span", "10 ft"});
  EXPECT_EQ(answered.status, kDone);
  EXPECT_THAT(answered.out, HasSubstr("lands on the mark")) << answered.out;
  EXPECT_THAT(answered.out, Not(HasSubstr("Stock pieces make it"))) << answered.out;
}

TEST(FittersChain, AHoseThatCannotBeBowedOntoItsSecondBarbIsNone) {
  for (const Words& words :
       {Words{"1/2 barb", "1/2 barb", "--span", "1/2 in"}, Words{"2 barb", "2 barb", "--span", "2 in"},
        Words{"1/2 push-on", "1/2 push-on", "--span", "1/2 in"}}) {
    const Answered answered = ask(Words{"chain"} + words);
    EXPECT_EQ(answered.status, kNoSolution) << answered.out;
    EXPECT_THAT(answered.out, HasSubstr("no room to bow")) << testing::PrintToString(words);
  }
  for (const Words& words :
       {Words{"1/4 push-in", "1/4 push-in", "--span", "1.5 in", "--air"}, Words{"1 barb", "1 barb", "--span", "6 in"}})
    EXPECT_EQ(ask(Words{"chain"} + words).status, kNoSolution) << testing::PrintToString(words);
  // Where a union closes the run, the hose goes onto its barbs at the bench and needs no such room.
  EXPECT_THAT(ask({"chain", "1 FNPT", "1 FNPT", "--span", "9 in", "--need", "hose"}).out, HasSubstr("union"));
  // 6 in of rubber hose of 1/2 in bow by the 0.9 in of a barb; so does any where an end moves out of the way.
  EXPECT_EQ(ask({"chain", "1/2 barb", "1/2 barb", "--span", "6 in"}).status, kDone);
  EXPECT_EQ(ask({"chain", "1/2 barb", "1/2 barb", "--span", "1 in", "--last-end", "sliding"}).status, kDone);
}

TEST(FittersChain, ARegulatorForTheWholeManifoldStandsBeforeTheTee) {
  for (const std::string need : {"regulator", "ball valve", "check valve"}) {
    const Answered answered = ask({"chain", "3/4 FNPT", "1/2 FNPT", "1/4 FNPT", "--air", "--need", need});
    EXPECT_EQ(answered.status, kDone);
    EXPECT_LT(answered.out.find(" " + need.substr(need.find(' ') + 1)), answered.out.find(" tee")) << answered.out;
    EXPECT_THAT(answered.out, Not(HasSubstr("not behind"))) << answered.out;
  }
}

// Where a branch feeds the others, what is asked for all stands in it, before the base and every other branch.
TEST(FittersChain, ARegulatorStandsInTheBranchThatFeeds) {
  for (const std::string feeding : {"1", "2"}) {
    const Words ports = {"chain", "1/4 FNPT", "1/4 FNPT", "1/4 FNPT", "--air", "--branch-feeds", feeding};
    const Answered whole = ask(ports + Words{"--need", "regulator"});
    EXPECT_EQ(whole.status, kDone) << whole.err;
    EXPECT_THAT(whole.out, Not(HasSubstr("not behind"))) << whole.out;
    EXPECT_EQ(whole.out, ask(ports + Words{"--branch-need", feeding + "=regulator"}).out);
  }
}

// Nothing that shuts may stand before a relief valve, so the valve cannot be in the trunk.
TEST(FittersChain, WhatOnlyABranchCanHoldIsSaidOfTheOthers) {
  const Answered answered =
      ask({"chain", "1/2 FNPT", "1/2 FNPT", "1/4 MNPT", "--need", "ball valve", "--branch-relief", "2"});
  EXPECT_EQ(answered.status, kDone) << answered.err;
  EXPECT_THAT(answered.out, HasSubstr("not behind the 1/2 full-bore ball valve: target 2")) << answered.out;
}

TEST(FittersChain, CopperGoesOntoIronByOneDielectricUnion) {
  for (const std::string size : {"1/2", "3/4", "1"}) {
    const auto [status, answer] = chain({size + " copper tube", size + " MNPT", "--held"});
    ASSERT_EQ(status, kDone);
    EXPECT_THAT(families(answer), ElementsAre("dielectric-union")) << size;
  }
  const auto galvanized =
      chain({"3/4 MNPT black iron", "3/4 copper tube", "--galvanic", "avoid", "--hottest", "180 F"});
  ASSERT_EQ(galvanized.status, kDone);
  EXPECT_THAT(families(galvanized.answer), ElementsAre("dielectric-union"));
}

// Into a solder cup goes copper tube alone (ASME B16.22), which iron in the same water is to be kept apart from.
TEST(FittersChain, NoIronStandsBetweenBrassAndASolderCup) {
  const auto [status, answer] = chain({"3/4 hose", "1/2 solder cup", "--need", "tee"});
  ASSERT_EQ(status, kDone);
  for (const json& part : answer.at("chains").at(0).at("parts")) {
    EXPECT_THAT(part.at("id").get<std::string>(), Not(HasSubstr("/black-iron/")));
    for (const json& plug : part.at("plugs")) EXPECT_THAT(plug.at("id").get<std::string>(), HasSubstr("/brass/"));
  }
  EXPECT_THAT(ask({"chain", "3/4 hose", "1/2 solder cup", "--need", "tee"}).out, Not(HasSubstr("kept apart")));
}

// No hose is of copper: whether it is called rubber or, for its nuts, brass, is no reason for the dear one.
TEST(FittersChain, AHoseIsNotChosenByItsMetal) {
  const auto [status, answer] = chain({"3/4 MGHT", "1-1/2 copper tube", "--span", "22 in", "--offset", "2 in"});
  ASSERT_EQ(status, kDone);
  EXPECT_THAT(families(answer), Contains("hose"));
  EXPECT_THAT(families(answer), Not(Contains("flexible-connector")));
}

// Two copper reducers and a plug of 3/8 keep more to the tube's own kind than one bushing does, and nobody buys them.
TEST(FittersChain, OneBushingComesBeforeATrainOfReducers) {
  const auto [status, answer] = chain({"3/4 copper tube", "1/4 air coupler", "--air"});
  ASSERT_EQ(status, kDone);
  EXPECT_EQ(families(answer).size(), 3U);
  EXPECT_THAT(families(answer), Contains("hex-bushing"));
}

// Air filters are of aluminium and their fittings of brass, half a volt apart, which dry metals may be (MIL-STD-889
// practice, from memory). Zinc on brass is further apart.
TEST(FittersChain, ABrassFittingInAnAirFilterIsNotWarnedOf) {
  const Words air = {"chain", "1/2 FNPT brass", "1/2 FNPT brass", "--need", "air filter", "--air"};
  const Answered brass = ask(air);
  EXPECT_EQ(brass.status, kDone);
  EXPECT_THAT(brass.out, HasSubstr("aluminium"));
  EXPECT_THAT(brass.out, Not(HasSubstr("kept apart"))) << brass.out;
  EXPECT_EQ(ask(air + Words{"--galvanic", "avoid"}).out, brass.out);
  const Answered zinc = ask({"chain", "1/2 FNPT galvanized", "1/2 MNPT brass", "--air"});
  EXPECT_THAT(zinc.out, HasSubstr("kept apart")) << zinc.out;
}

TEST(FittersChain, CopperGoesOntoBrassWithoutADielectricUnion) {
  const auto [status, answer] = chain({"1 copper tube", "1 MNPT brass", "--held"});
  ASSERT_EQ(status, kDone);
  EXPECT_THAT(families(answer), Not(Contains("dielectric-union")));
}

// ASTM B88: 1/2 copper tube is 5/8 in outside, so it is what a 5/8 compression fitting takes.
TEST(FittersChain, ANameByOutsideDiameterIsTheLineThatTheTubeIs) {
  const auto [status, answer] = chain({"3/4 FNPT", "5/8 compression"});
  ASSERT_EQ(status, kDone);
  EXPECT_THAT(families(answer), Each(Not(HasSubstr("flare"))));
  EXPECT_THAT(families(answer), Contains("copper-tube"));
  const Answered small = ask({"chain", "3/8 compression", "1/2 MNPT"});
  EXPECT_THAT(small.out, Not(HasSubstr("Narrows"))) << small.out;
  EXPECT_THAT(small.out, Not(HasSubstr("solder"))) << small.out;
}

TEST(FittersChain, AHoseWyeServesTwoHoses) {
  const Answered answered = ask({"chain", "3/4 MGHT", "3/4 FGHT", "3/4 FGHT"});
  EXPECT_EQ(answered.status, kDone);
  EXPECT_THAT(answered.out, HasSubstr("wye")) << answered.out;
  EXPECT_THAT(answered.out, HasSubstr("1 part, 1 to buy")) << answered.out;
}

TEST(FittersChain, APlugTakesItsCoupler) {
  const auto [status, answer] = chain({"1/4 air plug", "1/4 FNPT", "--air"});
  ASSERT_EQ(status, kDone);
  EXPECT_THAT(families(answer), ElementsAre("air-coupler"));
  const auto pair = chain({"1/4 FNPT", "1/4 FNPT", "--need", "quick disconnect", "--air"});
  ASSERT_EQ(pair.status, kDone);
  EXPECT_THAT(families(pair.answer), testing::IsSupersetOf({"air-coupler", "air-plug"}));
}

TEST(FittersChain, ASmoothReducerIsNoThreadedBushing) {
  EXPECT_THAT(ask({"chain", "1 solder cup", "3/4 copper tube"}).out, Not(HasSubstr("a bushing leaves a ledge")));
}

TEST(FittersChain, WhatTheJointsUseUpIsListedAndPriced) {
  const Answered hose = ask({"chain", "1/4 barb", "1/4 barb", "--span", "24 in"});
  EXPECT_THAT(hose.out, HasSubstr("2 x 1/4 hose clamp, $2.00; in all about\n  $5.15")) << hose.out;
  EXPECT_THAT(ask({"chain", "1/2 PEX", "1/2 FNPT"}).out, HasSubstr("1 x 1/2 PEX crimp ring"));
  EXPECT_THAT(ask({"chain", "1 FNPT", "3/4 FNPT"}).out, Not(HasSubstr("take besides")));
}

TEST(FittersChain, AClampAndAFootValveAreSentWhereTheyBelong) {
  const Answered clamp = ask({"chain", "1/2 barb", "1/2 barb", "--need", "hose clamp"});
  EXPECT_THAT(clamp.out, HasSubstr("goes over the end of a\n  hose")) << clamp.out;
  const Answered foot = ask({"chain", "1 FNPT", "1 FNPT", "--need", "foot valve"});
  EXPECT_THAT(foot.out, HasSubstr("ends a suction line under\n  water")) << foot.out;
  EXPECT_THAT(foot.out, HasSubstr("its own port, 1 FNPT"));
  EXPECT_THAT(foot.out, Not(HasSubstr("tee")));
}

}  // namespace
}  // namespace riserun::cli
