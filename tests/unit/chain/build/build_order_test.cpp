// Which ends need a closing joint, and the sentences that a fitter follows.
#include "report/words/say.h"
#include "unit/chain/small_world.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace riserun::chain::testing::build_order_test {
namespace {

const char* const kShop = R"(
  coupling: 1 A female, 1 A female, 200c
  nipple: 1 A male, 1 A male, 100c
  union: 1 A female, 1 A female, 900c, union
  barb: 1 A male, 1 H male, 300c
  hose: 1 H female, 1 H female, 500c
  cup adapter: 1 A female, 1 C female, 250c
  tube: 1 C male, 1 C male, 100c
)";

struct FreedomRow {
  const char* name;
  Freedom from;
  Freedom to;
  const char* chain;
};

class ClosingJoint : public ::testing::TestWithParam<FreedomRow> {};

TEST_P(ClosingJoint, IsPutInWhereNoEndTurnsAndMovesUp) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.from.freedom = GetParam().from;
  request.to.freedom = GetParam().to;
  EXPECT_EQ(shop.chain(request), GetParam().chain);
}

INSTANTIATE_TEST_SUITE_P(Freedoms, ClosingJoint,
                         ::testing::Values(FreedomRow{"FixedFixed", Freedom::fixed, Freedom::fixed, "union"},
                                           FreedomRow{"FixedSliding", Freedom::fixed, Freedom::sliding, "union"},
                                           FreedomRow{"SlidingSliding", Freedom::sliding, Freedom::sliding, "union"},
                                           FreedomRow{"FixedSpinning", Freedom::fixed, Freedom::spinning, "union"},
                                           FreedomRow{"SpinningFixed", Freedom::spinning, Freedom::fixed, "union"},
                                           FreedomRow{"SlidingSpinning", Freedom::sliding, Freedom::spinning,
                                                      "coupling"},
                                           FreedomRow{"LooseFixed", Freedom::loose, Freedom::fixed, "coupling"},
                                           FreedomRow{"LooseLoose", Freedom::loose, Freedom::loose, "coupling"}),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(ClosingJoints, HoseOnABarbClosesBetweenHeldEnds) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("1 A female", "1 A female");
  request.from.freedom = request.to.freedom = Freedom::fixed;
  EXPECT_EQ(shop.chain(request), "barb, hose, barb");
}

TEST(ClosingJoints, SolderClosesWhereAnEndSlidesAndNotBetweenFixedEnds) {
  const SmallWorld shop(R"(
    cup adapter: 1 A female, 1 C female, 250c
    tube: 1 C male, 1 C male, 100c
  )");
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.from.freedom = Freedom::fixed;
  request.to.freedom = Freedom::sliding;
  EXPECT_EQ(shop.chain(request), "cup adapter, tube, cup adapter");
  request.to.freedom = Freedom::fixed;
  EXPECT_THAT(shop.chain(request), ::testing::StartsWith("none: neither end turns"));
}

// A cam coupling slides together by two inches: between ends that stay where they are it closes nothing.
TEST(ClosingJoints, WhatSlidesTogetherClosesOnlyOnAHose) {
  const char* const cams = R"(
    cam adapter: 1 A male, 1 K male, 1c
    cam coupler: 1 K female, 1 A male, 1c
    nipple: 1 A male, 1 A male, 900c
    union: 1 A female, 1 A female, 900c, union
  )";
  const auto chosen = [](const std::string& text) {
    const SmallWorld shop(text);
    ChainRequest request = shop.ask("1 A female", "1 A female", Order::parts);
    request.from.freedom = request.to.freedom = Freedom::fixed;
    return shop.chain(request);
  };
  EXPECT_EQ(chosen(cams), "nipple, union, nipple");
  EXPECT_EQ(chosen(std::string(cams) + "cam hose: 1 K female, 1 K female, 1c, flexible\n"),
            "cam adapter, cam hose, cam adapter");
}

TEST(ClosingJoints, FixedEndsThatGoTogetherByTurningCannotBeJoined) {
  const SmallWorld shop("coupling: 1 A female, 1 A female, 200c");
  ChainRequest request = shop.ask("1 A male", "1 A female");
  request.from.freedom = request.to.freedom = Freedom::fixed;
  const Answer answer = shop.find(request);
  const auto& none = std::get<NoChain>(answer);
  EXPECT_EQ(
      said(none.reason),
      "1 MA and 1 FA would go straight together, but neither end turns, and no chain has a union, a swivel, a hose "
      "or another joint that closes without turning");
  EXPECT_THAT(said(none.mends), ::testing::ElementsAre("let the first port (1 MA) turn and move",
                                                       "let the last port (1 FA) turn and move"));
}

std::vector<std::string> steps_of(const SmallWorld& shop, const ChainRequest& request) {
  const Answer answer = shop.find(request);
  std::vector<std::string> texts;
  for (const BuildStep& step : std::get<Chain>(answer).steps) texts.push_back(report::say(step.what, UnitSystem::inch));
  return texts;
}

TEST(BuildOrder, StartsAtTheHeldEndAndTurnsTheFreeOneLast) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.from.freedom = Freedom::fixed;
  EXPECT_THAT(
      steps_of(shop, request),
      ::testing::ElementsAre(
          "Screw part 1 (coupling) onto the first port (1 MA): turn part 1 hand-tight, then 1-1/2 to 3 turns more; "
          "the first port stays still by itself. Tape on the male thread.",
          "Last, screw the last port (1 MA) into part 1 (coupling): turn the last port hand-tight, then 1-1/2 to 3 "
          "turns "
          "more; hold part 1 with a second wrench. Seal as in step 1."));
  std::swap(request.from.freedom, request.to.freedom);
  EXPECT_THAT(
      steps_of(shop, request),
      ::testing::ElementsAre(::testing::StartsWith("Screw part 1 (coupling) onto the last port (1 MA)"),
                             ::testing::StartsWith("Last, screw the first port (1 MA) into part 1 (coupling)")));
}

TEST(BuildOrder, AUnionIsTakenApartAndItsNutComesLast) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.from.freedom = request.to.freedom = Freedom::fixed;
  EXPECT_THAT(
      steps_of(shop, request),
      ::testing::ElementsAre(
          "Screw the first half of part 1 (union) onto the first port (1 MA): turn that half hand-tight, then 1-1/2 "
          "to 3 turns more; the first port stays still by itself. Tape on the male thread.",
          "Screw the second half of part 1 (union) onto the last port (1 MA): turn that half hand-tight, then 1-1/2 to "
          "3 turns more; the last port stays still by itself. Seal as in step 1.",
          "Last, close part 1 (union): bring its halves together face to face, seat clean and without sealant; "
          "hold the half beside the nut with one wrench and tighten the nut with another; nothing else turns."));
}

TEST(BuildOrder, HoseIsPushedOnAfterBothBarbsAreScrewedIn) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("1 A female", "1 A female");
  request.from.freedom = Freedom::fixed;
  request.to.freedom = Freedom::sliding;
  request.needs = {shop.need("hose", {"hose"})};
  EXPECT_THAT(
      steps_of(shop, request),
      ::testing::ElementsAre(
          ::testing::StartsWith("Screw part 1 (barb) into the first port (1 FA)"),
          "Bring part 1 (barb) and part 2 (hose) together; neither side turns. Slide the clamp on, push the hose "
          "home, tighten the clamp.",
          ::testing::StartsWith("Screw part 3 (barb) into the last port (1 FA)"),
          "Last, bring part 2 (hose) and part 3 (barb) together; the last port moves up to it; neither side turns. "
          "Seal as "
          "in step 2."));
}

// Heat chars tape and spoils seats: what is soldered comes before what is screwed (common practice).
TEST(BuildOrder, SoldersBeforeAnythingIsScrewedUp) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("1 A male", "1 C male");
  request.from.freedom = Freedom::fixed;
  EXPECT_THAT(
      steps_of(shop, request),
      ::testing::ElementsAre(
          "Bring part 1 (cup adapter) and the last port (1 tube) together; neither side turns. Clean, flux, heat and "
          "solder. Let it cool before anything is screwed up with tape.",
          ::testing::StartsWith("Last, screw part 1 (cup adapter), with what is made up on it, onto the first port")));
  request = shop.ask("1 A male", "1 A male");
  request.from.freedom = Freedom::fixed;
  request.needs = {shop.need("tube", {"tube"})};
  EXPECT_THAT(steps_of(shop, request),
              ::testing::ElementsAre(
                  ::testing::StartsWith("Bring part 1 (cup adapter) and part 2 (tube) together"),
                  ::testing::StartsWith("Bring part 2 (tube) and part 3 (cup adapter) together"),
                  ::testing::StartsWith("Screw part 1 (cup adapter), with what is made up on it, onto the first port"),
                  ::testing::StartsWith("Last, screw the last port")));
}

TEST(BuildOrder, KeepsTheHeatOffTapeWhereSolderMustComeLast) {
  const SmallWorld shop("cup adapter: 1 A female, 1 C female, 250c\ntube: 1 C male, 1 C male, 100c");
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.from.freedom = Freedom::fixed;
  request.to.freedom = Freedom::sliding;
  EXPECT_THAT(steps_of(shop, request).back(),
              ::testing::AllOf(::testing::StartsWith("Last, bring part 2 (tube) and part 3 (cup adapter) together"),
                               ::testing::EndsWith(" Keep the heat off tape and seats beside it: wrap them in a wet "
                                                   "rag.")));
}

TEST(BuildOrder, AnElbowIsSolderedWhereItStands) {  // screwed on as one with its tube it would sweep a circle
  const SmallWorld shop(R"(
    cup adapter: 1 A female, 1 C female, 250c
    cup elbow: 1 C male, 1 C male, 100c, bend
  )");
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.from.freedom = Freedom::fixed;
  EXPECT_THAT(steps_of(shop, request).front(), ::testing::StartsWith("Screw part 1 (cup adapter) onto the first port"));
}

// The nut does not pass a tail once that is soldered on (common practice).
TEST(BuildOrder, AUnionsNutGoesOnBeforeItsTailIsSoldered) {
  const SmallWorld shop("cup union: 1 C female, 1 C female, 900c, union");
  ChainRequest request = shop.ask("1 C male", "1 C male");
  request.from.freedom = request.to.freedom = Freedom::fixed;
  request.needs = {shop.need("union", {"cup union"})};
  EXPECT_THAT(
      steps_of(shop, request),
      ::testing::ElementsAre(
          ::testing::StartsWith("Bring the first port (1 tube) and the first half of part 1 (cup union) together"),
          ::testing::StartsWith(
              "First slide the nut of part 1 over the last port, its thread towards part 1: it does not "
              "pass later. Bring the second half of part 1 (cup union) and the last port (1 tube) "
              "together; neither side turns."),
          ::testing::StartsWith("Last, close part 1 (cup union)")));
}

TEST(BuildOrder, SparePortsArePluggedAtTheBenchFirst) {
  const SmallWorld shop(R"(
    tee: 1 A female, 1 A female, 1/2 A female, 500c
    plug: 1/2 A male, 60c
  )");
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.needs = {shop.need("tee", {"tee"})};
  EXPECT_EQ(
      steps_of(shop, request).front(),
      "At the bench, screw the plug into the spare 1/2 FA port of part 1 (tee), held in the vise. Tape on the male "
      "thread.");
}

const char* const kTrain = R"(
  nipple: 1 A male, 1 A male, 100c
  valve: 1 A female, 1 A female, 900c, device
  close nipple: 1 A male, 1 A male, 50c
  elbow: 1 A female, 1 A female, 200c, bend
  bushing: 1 A male, 1 A female, 10c, bushing
)";

/// Made up of these parts, in this order, on a first port that is held.
std::vector<std::string> steps_of_train(const char* from, const char* to, const std::vector<const char*>& parts) {
  const SmallWorld shop(kTrain);
  ChainRequest request = shop.ask(from, to);
  request.from.freedom = Freedom::fixed;
  request.needs_in_order = true;
  for (const char* part : parts) request.needs.push_back(shop.need(part, {part}));
  return steps_of(shop, request);
}

// The vise holds the part nearer to the tank while the next is screwed up; the whole then goes on by its first part.
TEST(BuildOrder, WhatFollowsInLineIsMadeUpInTheViseAndGoesOnAsOne) {
  EXPECT_THAT(
      steps_of_train("1 A female", "1 A male", {"nipple", "valve"}),
      ::testing::ElementsAre(
          "Screw part 2 (valve) onto part 1 (nipple): turn part 2 hand-tight, then 1-1/2 to 3 turns more; part 1 is "
          "held in the vise. Tape on the male thread.",
          "Screw part 1 (nipple), with what is made up on it, into the first port (1 FA): turn part 1 hand-tight, then "
          "1-1/2 to 3 turns more; the first port stays still by itself. Seal as in step 1.",
          ::testing::StartsWith("Last, screw the last port (1 MA) into part 2 (valve)")));
}

// Nothing grips a close nipple, so it cannot screw on what it carries: it draws up in both.
TEST(BuildOrder, ACloseNippleCarriesNothingIntoItsPort) {
  EXPECT_THAT(steps_of_train("1 A female", "1 A female", {"close nipple", "valve", "nipple"}),
              ::testing::ElementsAre(
                  ::testing::AllOf(::testing::StartsWith("Screw part 3 (nipple) into part 2 (valve)"),
                                   ::testing::HasSubstr("part 2 is held in the vise")),
                  ::testing::StartsWith("Screw part 1 (close nipple) into the first port (1 FA)"),
                  ::testing::StartsWith("Screw part 2 (valve), with what is made up on it, onto part 1 (close nipple)"),
                  ::testing::StartsWith("Last, screw the last port")));
}

// What draws a close nipple up would turn the part behind it, too.
TEST(BuildOrder, WhatACloseNippleStandsInIsHeldBack) {
  EXPECT_THAT(steps_of_train("1 A female", "1 A female", {"nipple", "elbow", "close nipple", "valve"})[3],
              ::testing::AllOf(::testing::StartsWith("Screw part 4 (valve) onto part 3 (close nipple)"),
                               ::testing::HasSubstr("part 3 draws up in both, so no wrench touches its threads, and "
                                                    "hold part 2 with a second wrench. ")));
}

TEST(BuildOrder, ABushingGoesIntoItsPortByItself) {
  EXPECT_THAT(steps_of_train("1 A female", "1 A male", {"bushing", "nipple", "valve"}),
              ::testing::ElementsAre(::testing::StartsWith("Screw part 3 (valve) onto part 2 (nipple)"),
                                     ::testing::StartsWith("Screw part 1 (bushing) into the first port"),
                                     ::testing::StartsWith("Screw part 2 (nipple), with what is made up on it, into"),
                                     ::testing::StartsWith("Last, screw the last port")));
}

TEST(BuildOrder, ABendIsNotMadeUpInTheVise) {
  EXPECT_THAT(steps_of_train("1 A female", "1 A male", {"nipple", "elbow"}),
              ::testing::Each(::testing::Not(::testing::HasSubstr("vise"))));
}

TEST(BuildOrder, PlasticTakesFewerTurns) {  // 1 to 2 turns past hand-tight, common practice
  const SmallWorld shop("coupling: 1 A female, 1 A female, 200c, nylon");
  EXPECT_THAT(steps_of(shop, shop.ask("1 A male", "1 A male")).front(), ::testing::HasSubstr("then 1 to 2 turns more"));
}

// What is screwed up draws in: an end that turns where it stands is not turned last.
TEST(BuildOrder, TurnsNoEndWhereNoneMovesUp) {
  const SmallWorld shop(kShop);
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.from.freedom = Freedom::fixed;
  request.to.freedom = Freedom::spinning;
  const std::vector<std::string> steps = steps_of(shop, request);
  EXPECT_THAT(steps, ::testing::Each(::testing::Not(::testing::HasSubstr("turn the last port"))));
  EXPECT_THAT(steps.back(), ::testing::StartsWith("Last, close part 1 (union)"));
}

TEST(Cautions, NameMetalsValvesBushingsAndPlastic) {
  const SmallWorld shop(R"(
    check valve: 1 A female, 1 A female, 900c, device, one way, stainless
    bushing: 1 A male, 3/4 A female, 100c, bushing, iron
    close nipple: 3/4 A male, 1/2 A male, 100c, brass
    pvc cap end: 1/2 A female, 1/2 A female, 50c, pvc
  )");
  ChainRequest request = shop.ask("1 A male", "1/2 A male");
  request.needs = {shop.need("check valve", {"check valve"})};
  ASSERT_EQ(shop.chain(request), "check valve, bushing, close nipple, pvc cap end");
  const Answer answer = shop.find(request);
  EXPECT_THAT(
      report::say_all(std::get<Chain>(answer).cautions, UnitSystem::inch),
      ::testing::UnorderedElementsAre(
          "iron against stainless: the iron corrodes; watch it where the check valve meets the bushing",
          "the bushing (iron) and the close nipple (brass) should be kept apart: in water the iron corrodes; "
          "put "
          "a dielectric joint or plastic between them",
          "the pvc cap end is plastic and takes a metal taper thread from the close nipple: it may split; start by "
          "hand, "
          "turn little",
          "water passes one way only, towards the last port, so it does not drain back, through the check valve",
          "can burst under compressed air, so keep them out of an air test: the pvc cap end",
          "plastic, rated at room temperature, so no heat and few turns of the wrench: the pvc cap end",
          "no bare pipe to grip, so use a nipple chuck, or a longer nipple where there is room: the close nipple",
          "a bushing leaves a ledge that holds water, and its wall is thin between near sizes: a reducing coupling is "
          "kinder where there is room"));
  EXPECT_FALSE(std::get<Chain>(answer).air);
}

TEST(BuildOrder, SaysWhereAnArrowPointsAndHowAFlapLies) {
  const SmallWorld shop(R"(
    flap valve: 1 A female, 1 A female, 900c, swing check
    strainer: 1 A male, 1 A male, 700c, device, arrow
  )");
  ChainRequest request = shop.ask("1 A male", "1 A female");
  request.from.called = "the tank";
  request.to.called = "the tap";
  request.needs = {shop.need("flap valve", {"flap valve"}), shop.need("strainer", {"strainer"})};
  const Answer answer = shop.find(request);
  ASSERT_TRUE(std::holds_alternative<Chain>(answer));
  std::string steps;
  for (const BuildStep& step : std::get<Chain>(answer).steps) steps += report::say(step.what, UnitSystem::inch) + "\n";
  EXPECT_THAT(steps,
              ::testing::HasSubstr("Its arrow points to the tap. It lies flat with its cap up, or stands upright "
                                   "with the flow upward: never with the flow downward."));
  std::size_t arrows = 0;
  for (std::size_t at = steps.find("Its arrow"); at != std::string::npos; at = steps.find("Its arrow", at + 1))
    ++arrows;
  EXPECT_EQ(arrows, 2U);
  EXPECT_THAT(
      report::say_all(std::get<Chain>(answer).cautions, UnitSystem::inch),
      ::testing::IsSupersetOf(
          {"opens at 0.3 psi (8.3 in water) and stays shut below, so that much less pressure is left behind it: the "
           "flap valve",
           "a flap closes by its weight, so mount it flat with the cap up, or upright with the flow upward, never "
           "with the flow downward: the flap valve"}));
}

TEST(Cautions, WarnOfARunMuchNarrowerThanBothItsPorts) {
  const char* const run = R"(
    wide nipple: 1 A male, 3/4 A male, 100c, bore 26
    coupling: 3/4 A female, 3/4 A female, 100c, bore {}
  )";
  const auto cautions = [&](const char* bore) {
    std::string text = run;
    text.replace(text.find("{}"), 2, bore);
    const SmallWorld shop(text);
    return report::say_all(std::get<Chain>(shop.find(shop.ask("1 A female", "1 A female"))).cautions, UnitSystem::inch);
  };
  const auto names_it = ::testing::Contains(::testing::HasSubstr("much narrower inside than both ports: the coupling"));
  EXPECT_THAT(cautions("15"), names_it);
  EXPECT_THAT(cautions("20"), ::testing::Not(names_it));
}

TEST(Cautions, WarnWhereTheTwoEndsThemselvesLookAlike) {
  const SmallWorld shop("adapter: 1 A female, 1 B male, 200c");
  const Answer answer = shop.find(shop.ask("1 A male", "1 B female"));
  EXPECT_THAT(report::say_all(std::get<Chain>(answer).cautions, UnitSystem::inch),
              ::testing::ElementsAre(
                  "never screw 1 MA and 1 FB straight together: the pitch is the same, the thread form is not"));
}

TEST(Cautions, StainlessOnStainlessGalls) {
  const SmallWorld shop(R"(
    stainless coupling: 1 A female, 1 A female, 200c, stainless
    stainless nipple: 1 A male, 1 A male, 200c, stainless
  )");
  const Answer answer = shop.find(shop.ask("1 A male", "1 A female"));
  ASSERT_TRUE(std::get<Chain>(answer).parts.empty());
  ChainRequest request = shop.ask("1 A male", "1 A female");
  request.needs = {shop.need("coupling", {"stainless coupling"})};
  const Answer with = shop.find(request);
  EXPECT_THAT(
      report::say_all(std::get<Chain>(with).cautions, UnitSystem::inch),
      ::testing::ElementsAre("stainless threads gall on stainless: use an anti-gall sealing paste and turn slowly"));
}

}  // namespace
}  // namespace riserun::chain::testing::build_order_test
