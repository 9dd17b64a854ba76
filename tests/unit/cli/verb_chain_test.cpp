// `riserun chain`: what each option does to the answer, and what is wrong with a wrong one.
#include "unit/cli/asked_chain.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>

namespace riserun::cli {
namespace {

TEST(Chain, OfTheBenchPairNeedsTwoParts) {
  const auto [status, answer] = chain(kBenchPair);
  EXPECT_EQ(status, kDone);
  EXPECT_EQ(answer["ports"], json({"1 npt female", "3/4 ght male"}));
  const json& best = answer["chains"][0];
  EXPECT_EQ(best["part_count"], 2);
  EXPECT_EQ(best["joints"].size(), 3U);
  EXPECT_EQ(best["buildable"], true);
  EXPECT_TRUE(answer["why_none"].is_null());
  for (const char* key : {"id", "name", "size", "material", "enter", "leave", "from_bin"})
    EXPECT_TRUE(best["parts"][0].contains(key)) << key;
}

/// What `--picture` writes for these words, line by line; none: there is no such file.
std::vector<std::string> picture(const Words& words, int expected_status) {
  const std::string file = testing::TempDir() + "riserun-picture.dot";
  std::filesystem::remove(file);
  EXPECT_EQ(ask(Words{"chain"} + words + Words{"--picture", file}).status, expected_status);
  std::ifstream in(file);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  std::filesystem::remove(file);
  return lines;
}

std::vector<std::string> lines_with(const std::vector<std::string>& lines, const std::string& text) {
  std::vector<std::string> found;
  std::copy_if(lines.begin(), lines.end(), std::back_inserter(found),
               [&](const std::string& line) { return line.find(text) != std::string::npos; });
  return found;
}

TEST(Chain, PictureShowsTheAnswerBoldAmongWhatWasSearchedNearIt) {
  const Words words{"1-1/2 FNPT", "1-1/2 FNPT", "--held", "--need", "ball valve"};
  const std::vector<std::string> names = parts(chain(words).answer, "name");
  const std::vector<std::string> lines = picture(words, kDone);
  ASSERT_GT(lines.size(), 2U);
  EXPECT_EQ(lines.front(), "digraph G {");
  EXPECT_EQ(lines.back(), "}");
  const std::vector<std::string> bold = lines_with(lines, "style=bold");
  // Each part and the last joint, what the run passes twice in the same way (a nipple of each side) drawn once.
  EXPECT_EQ(bold.size(), std::set<std::string>(names.begin(), names.end()).size() + 1);
  for (const std::string& name : names) EXPECT_THAT(bold, Contains(HasSubstr(name)));
  EXPECT_EQ(lines_with(lines, "shape=box").size(), 2U);
  EXPECT_GT(lines_with(lines, "->").size(), bold.size());
}

TEST(Chain, PictureWithoutAnAnswerShowsWhatGoesOntoEitherPort) {
  const std::vector<std::string> lines = picture(kOneToOne + Words{"--held", "--most-parts", "2"}, kNoSolution);
  EXPECT_THAT(lines_with(lines, "->"), Not(IsEmpty()));
  EXPECT_THAT(lines_with(lines, "style=bold"), IsEmpty());
}

TEST(Chain, PictureThatCannotBeWrittenOrDrawnIsBadInput) {
  EXPECT_THAT(complaint(Words{"chain"} + kBenchPair + Words{"--picture", "/nowhere/chain.dot"}),
              HasSubstr("/nowhere/chain.dot"));
  EXPECT_THAT(complaint({"chain", "3/4 FNPT", "1/2 MNPT", "1/4 MNPT", "--picture", "chain.dot"}),
              HasSubstr("--picture"));
}

TEST(Chain, ReadsEveryPortAsJsonSpellsIt) {
  const json answer = chain(kBenchPair).answer;
  const auto [status, again] = chain(answer["ports"].get<Words>());
  EXPECT_EQ(status, kDone);
  EXPECT_EQ(again["chains"], answer["chains"]);
}

TEST(Chain, RefusedNamesALeastSetOfRulesAndWhatEachChangeCosts) {
  const auto [status, answer] = chain({"1 FNPT", "1/2 FNPT", "--bore", "3/4 in", "--most-parts", "1"});
  EXPECT_EQ(status, kNoSolution);
  EXPECT_THAT(conflict(answer), ElementsAre("smallest_bore"));
  const json& why = answer["why_none"];
  EXPECT_EQ(json(each(why["lifts"], "text")), why["mends"]);
  EXPECT_THAT(each<int>(why["lifts"], "part_count"), Each(testing::Ge(1)));
}

TEST(Chain, NoneSaysWhyAndExitsOne) {
  const Answered none = ask({"chain", "1 FNPT", "1 FNPT", "--most-parts", "1", "--held"});
  EXPECT_EQ(none.status, kNoSolution);
  EXPECT_THAT(none.out, HasSubstr("No chain"));
}

TEST(Chain, OfNoPartCountsNone) {
  const std::string text = ask({"chain", "1 FNPT", "1 MNPT"}).out;
  EXPECT_THAT(text, HasSubstr("go straight together"));
  EXPECT_THAT(text, Not(HasSubstr("to buy")));
}

TEST(Chain, TellsNoHeadOfWaterForAir) {
  EXPECT_THAT(ask({"chain", "1 FNPT", "1/2 FNPT"}).out, ContainsRegex("Head\\s+lost"));
  EXPECT_THAT(ask({"chain", "1 FNPT", "1/2 FNPT", "--air"}).out, Not(ContainsRegex("Head\\s+lost")));
}

TEST(Need, ComesInTheOrderGiven) {
  const std::pair<std::string, std::string> orders[] = {{"ball valve", "check valve"}, {"check valve", "ball valve"}};
  for (const auto& [first, second] : orders) {
    const auto [status, answer] = chain(kOneToOne + Words{"--need", first, "--need", second, "--in-order"});
    EXPECT_EQ(status, kDone);
    std::vector<std::string> names = parts(answer, "name");
    std::erase_if(names, [](const std::string& name) { return name.find("valve") == std::string::npos; });
    EXPECT_THAT(names, ElementsAre(HasSubstr(first), HasSubstr(second)));
  }
}

TEST(Need, IsInTheChain) {
  EXPECT_THAT(parts(chain({"1 FNPT", "1 MNPT", "--need", "ball valve"}).answer, "name"),
              Contains(HasSubstr("ball valve")));
}

/// The families of the first chain that matter to a valve that stays.
std::vector<std::string> valve_and_unions(const json& answer) {
  std::vector<std::string> result = families(answer);
  std::erase_if(result, [](const std::string& family) { return family != "ball-valve" && family != "union"; });
  return result;
}

TEST(ValveStays, WithTheUnionBeyondIt) {
  const Words asked = kOneToOne + Words{"--held", "--need", "ball valve", "--valve-stays"};
  EXPECT_THAT(valve_and_unions(chain(asked + Words{"first"}).answer), ElementsAre("ball-valve", "union"));
  EXPECT_THAT(valve_and_unions(chain(asked + Words{"last"}).answer), ElementsAre("union", "ball-valve"));
  EXPECT_THAT(valve_and_unions(chain(kOneToOne + Words{"--held", "--need", "union", "--need", "ball valve",
                                                       "--in-order", "--valve-stays", "first"})
                                   .answer),
              ElementsAre("union", "ball-valve", "union"));
}

TEST(ValveStays, SaysWhatItCannotWeigh) {
  const std::string unweighed =
      "cannot be weighed where one part may meet two needs, or a need and the union's, or where both fittings and "
      "devices may meet a need: name them more closely, or give their order, the union among them, with --in-order "
      "[wrong_value]";
  const std::string no_valve = "asks for a valve that shuts: --need \"ball valve\" [wrong_value]";
  const std::pair<Words, std::string> cases[] = {
      {{"--need", "ball valve", "--need", "brass", "--valve-stays", "first"}, unweighed},
      {{"--valve-stays", "first"}, no_valve},
      {{"--need", "check valve", "--valve-stays", "first"}, no_valve},
      {{"--need", "ball valve", "--valve-stays", "middle"},
       "'middle' is not known here; allowed: first, last [not_one_of]"},
      {{"--need", "ball valve", "--valve-stays", "first", "--span", "20 in"}, "does not go with --span [wrong_value]"}};
  for (const auto& [words, message] : cases)
    EXPECT_THAT(complaint(Words{"chain"} + kOneToOne + words), HasSubstr("--valve-stays: error: " + message + "\n"));
}

TEST(MostBushings, IsOneUnlessMoreAreAllowed) {
  const std::vector<std::string> names = parts(chain({"2 FNPT", "1/4 MNPT"}).answer, "name");
  EXPECT_LE(std::count_if(names.begin(), names.end(),
                          [](const std::string& name) { return name.find("bushing") != std::string::npos; }),
            1);
  const auto [status, none] = chain({"1 FNPT", "3/4 MNPT", "--most-bushings", "0", "--most-parts", "1"});
  ASSERT_EQ(status, kNoSolution);
  EXPECT_THAT(conflict(none), Contains("most_bushings"));
}

TEST(HeatAndVacuum, LeaveOutWhatIsNotProved) {
  const Words barbs{"3/4 barb", "3/4 barb", "--held"};
  EXPECT_EQ(chain(barbs).answer["chains"][0]["proved"]["vacuum"], "collapses");
  const auto [status, none] = chain(barbs + Words{"--vacuum"});
  EXPECT_EQ(status, kNoSolution);
  EXPECT_THAT(conflict(none), ElementsAre("vacuum"));
  EXPECT_EQ(chain({"1 PVC male", "1 PVC male", "--need", "PVC coupling", "--hottest", "150 F"}).status, kNoSolution);
}

// Plain hose collapses: wound hose is the one that a fitter buys for it (common practice).
TEST(HeatAndVacuum, TakeSuctionHoseWhereAHoseIsAskedFor) {
  const auto asked = chain({"1-1/4 FNPT", "1-1/4 FNPT", "--vacuum", "--need", "hose"});
  ASSERT_EQ(asked.status, kDone);
  EXPECT_THAT(families(asked.answer), Contains("suction-hose"));
  const auto unasked = chain({"1-1/2 barb", "1-1/2 barb", "--vacuum"});
  ASSERT_EQ(unasked.status, kDone);
  EXPECT_THAT(families(unasked.answer), ElementsAre("suction-hose"));
  const auto without = chain({"1-1/2 barb", "1-1/2 barb", "--need", "hose"});
  EXPECT_THAT(families(without.answer), ElementsAre("hose"));
  EXPECT_EQ(chain({"1-1/2 barb", "1-1/2 barb", "--avoid", "just hose"}).status, kNoSolution)
      << "no vacuum, no such hose";
  const auto branched = ask({"chain", "1 FNPT", "1 FNPT", "1 FNPT", "--branch-need", "1=suction hose"});
  EXPECT_THAT(branched.out, HasSubstr("suction hose"));
}

// ASME B16.3 class 150, from memory: 300 psi cold, 185 at 300 degF.
TEST(HeatAndVacuum, TellTheRatingAtTheHeatAskedFor) {
  const std::string hot = ask({"chain", "1 FNPT", "1 FNPT", "--hottest", "300 F"}).out;
  EXPECT_THAT(hot, ContainsRegex("Weakest part: 183 psi\\s+of water at 300 degF, 300 psi at room temperature"));
  EXPECT_THAT(hot, HasSubstr("compressed air to 183 psi"));
  const std::string cold = ask({"chain", "1 FNPT", "1 FNPT"}).out;
  EXPECT_THAT(cold, ContainsRegex("300\\s+degF\\s+inside\\s+at\\s+183\\s+psi"));
}

TEST(Room, LeavesOutABendThatCannotSwing) {
  const Words elbow = kOneToOne + Words{"--need", "90 elbow", "--room"};
  EXPECT_EQ(chain(elbow + Words{"2 in"}).status, kDone);
  const auto [status, none] = chain(elbow + Words{"1 in"});
  EXPECT_EQ(status, kNoSolution);
  EXPECT_THAT(none["why_none"]["mends"].get<Words>(),
              Contains("make more room round the run than 1 in, at least 2.05 in"));
  complaint(Words{"chain"} + elbow + Words{"wide"});
}

TEST(Held, EndsGetAClosingJoint) {
  EXPECT_EQ(chain(kOneToOne).answer["chains"][0]["part_count"], 1);  // a nipple
  const json held = chain(kOneToOne + Words{"--held"}).answer["chains"][0];
  std::vector<bool> closing = each<bool>(held["joints"], "closing");
  for (const bool part : each<bool>(held["parts"], "closing")) closing.push_back(part);
  EXPECT_THAT(closing, Contains(true));
}

TEST(Avoid, LeavesOutTheMaterial) {
  EXPECT_THAT(parts(chain(kBenchPair + Words{"--avoid", "black iron"}).answer, "material"),
              Not(Contains("black iron")));
}

TEST(Avoid, IsAllThatIsCalledSo) {
  const auto nipples = [](const Words& avoided) {
    std::vector<std::string> result = families(chain(kOneToOne + avoided).answer);
    std::erase_if(result, [](const std::string& family) { return family.find("nipple") == std::string::npos; });
    return result;
  };
  EXPECT_THAT(nipples({}), Not(IsEmpty()));
  EXPECT_THAT(nipples({"--avoid", "nipple"}), IsEmpty());
  EXPECT_THAT(nipples({"--avoid", "nipples"}), IsEmpty());
  EXPECT_THAT(nipples({"--avoid", "just nipple"}), ElementsAre("close-nipple"));
  EXPECT_THAT(nipples({"--avoid", "close nipple"}), Not(Contains("close-nipple")));
  EXPECT_THAT(complaint(Words{"chain"} + kOneToOne + Words{"--avoid", "just capacitor"}),
              HasSubstr("--avoid: error: no part knows the word 'capacitor'"));
}

TEST(Air, NeverGetsPlastic) {
  EXPECT_EQ(chain({"1/2 FNPT", "1/2 MNPT", "--air", "--order", "price"}).answer["chains"][0]["air"], true);
}

TEST(Order, KeepsItsPromise) {
  const std::map<std::string, std::string> keys{{"parts", "part_count"},
                                                {"price", "price_usd"},
                                                {"loss", "head_m"},
                                                {"length", "length_m"},
                                                {"bin", "buy_count"}};
  std::map<std::string, json> best;
  for (const auto& [order, key] : keys) best[order] = chain(kBenchPair + Words{"--order", order}).answer["chains"][0];
  for (const auto& [order, key] : keys)
    for (const auto& [other, answer] : best)
      EXPECT_LE(best[order][key].get<double>(), answer[key].get<double>()) << order << " against " << other;
}

/// How many parts of the answer are called so.
int count_of(const Words& needs, const std::string& called) {
  Words words{"chain", "1 FNPT", "1 FNPT", "--json"};
  for (const std::string& need : needs) words = words + Words{"--need", need};
  const Answered answer = ask(words);
  EXPECT_EQ(answer.status, kDone) << answer.err;
  const json made = json::parse(answer.out);
  int count = 0;
  for (const json& part : made["chains"][0]["parts"])
    if (part["name"].get<std::string>().find(called) != std::string::npos) ++count;
  return count;
}

TEST(Needs, ThatNameTwoPartsAreMetByTwo) {
  EXPECT_EQ(count_of({"valve", "ball valve"}, "valve"), 2);
  EXPECT_EQ(count_of({"ball valve", "valve"}, "valve"), 2);
  EXPECT_EQ(count_of({"valve", "check valve"}, "valve"), 2);
  EXPECT_EQ(count_of({"ball valve"}, "valve"), 1);
  EXPECT_EQ(count_of({"brass", "ball valve"}, "valve"), 1);  // one part is both
}

// ISO 7-1: R seals in Rp, on the thread; G does not. (published)
TEST(Chain, ScrewsATaperMaleIntoAParallelFemaleOfIso7) {
  const auto [status, answer] = chain({"3/4 Rp", "3/4 Rc", "--special-order"});
  EXPECT_EQ(status, kDone);
  for (const json& joint : answer["chains"][0]["joints"]) EXPECT_EQ(joint["seal"], "thread sealant");
  const Answered straight = ask({"chain", "3/4 Rp", "G 3/4 male"});
  EXPECT_EQ(straight.status, kNoSolution);
  EXPECT_THAT(straight.out, HasSubstr("never join 3/4 Rp and 3/4 MBSPP"));
}

// What is watched as a joint of brass and steel is avoided under water, and what is bought is the ends' own metal.
TEST(Chain, AvoidsMetalsThatEatEachOther) {
  const Words ends{"1-1/2 FNPT steel", "1-1/4 barb", "--held", "--special-order"};
  for (const char* galvanic : {"warn", "avoid"}) {
    const auto [status, answer] = chain(ends + Words{"--galvanic", galvanic});
    if (status != kDone) {
      EXPECT_EQ(std::string(galvanic), "avoid");
      EXPECT_THAT(answer["why_none"]["reason"].get<std::string>(), HasSubstr("kept"));
      continue;
    }
    const std::vector<std::string> materials = parts(answer, "material");
    for (std::size_t part = 0; std::string(galvanic) == "avoid" && part < materials.size(); ++part)
      EXPECT_NE(materials[part], "brass") << galvanic;
  }
  // A steel port takes steel though brass is stocked beside it.
  EXPECT_THAT(parts(chain({"1-1/2 FNPT steel", "1-1/4 MNPT"}).answer, "material"), Each(Not(HasSubstr("brass"))));
}

// Each of its words keeps a part of what is needed out, and is named.
// A galvanized nipple on its brass half undoes it.
TEST(Chain, KeepsMetalsApartWhereADielectricUnionIsAskedFor) {
  const auto unknown = ask({"chain", "3/4 FNPT", "3/4 FNPT", "--held", "--need", "dielectric union"}).out;
  EXPECT_THAT(unknown, Not(HasSubstr("be kept apart")));  // "should" may stand in the line before
  EXPECT_THAT(unknown, HasSubstr("dielectric union"));
  EXPECT_THAT(unknown, Not(HasSubstr("PVC")));
  const auto known = ask({"chain", "3/4 FNPT brass", "3/4 FNPT black iron", "--need", "dielectric union"}).out;
  EXPECT_THAT(known, HasSubstr("dielectric union"));
  EXPECT_THAT(known, Not(HasSubstr("PVC")));  // which would part them by itself
}

// Where nothing is known of the metals a dielectric union is for nothing, and its steel half may meet brass.
TEST(Chain, TakesNoDielectricUnionForItsSize) {
  const auto unknown = chain({"1/2 copper tube", "3/4 FNPT", "--held"});
  EXPECT_THAT(families(unknown.answer), Not(Contains("dielectric-union")));
  const auto known = chain({"1/2 copper tube", "1/2 FNPT galvanized", "--held"});
  EXPECT_THAT(families(known.answer), Contains("dielectric-union"));
}

// One metal all the way avoids bad pairs as well.
TEST(Chain, PutsNoPlasticBetweenEndsThatNeedNoParting) {
  const auto found = chain({"1 FNPT", "1 FNPT", "--galvanic", "avoid", "--need", "ball valve"});
  EXPECT_THAT(parts(found.answer, "material"), Not(Contains("PVC")));
}

TEST(Chain, TakesShortTubeAndFlareNutsThatCountersHave) {
  for (const Words& pair : {Words{"1/4 FNPT", "1/4 male 45 flare"}, Words{"3/8 compression", "1/2 FNPT"}})
    EXPECT_EQ(chain(pair).status, kDone) << pair.front();
}

TEST(FromBin, NeedsABin) {
  EXPECT_THAT(complaint({"chain", "1 FNPT", "1 FNPT", "--from-bin"}), HasSubstr("nothing in the bin"));
}

TEST(Need, OfAGaugeNamesTheTee) {
  EXPECT_THAT(ask({"chain", "1 FNPT", "1 FNPT", "--need", "gauge"}).out, HasSubstr("as a third end, and a tee"));
}

TEST(Chain, NamesTheWordThatAvoidsWhatIsNeeded) {
  const Answered asked = ask({"chain", "1 FNPT", "1 FNPT", "--need", "gate valve", "--avoid", "brass"});
  EXPECT_EQ(asked.status, kNoSolution);
  EXPECT_THAT(asked.out, HasSubstr("avoided by the word brass"));
}

}  // namespace
}  // namespace riserun::cli
