// `riserun chain`: what each option does to the answer, and what is wrong with a wrong one.
#include "unit/cli/asked_command.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>

namespace riserun::cli {
namespace {

using testing::Contains;
using testing::ContainsRegex;
using testing::Each;
using testing::ElementsAre;
using testing::IsEmpty;

const Words kBenchPair{"1 FNPT", "3/4 MGHT"};
const Words kOneToOne{"1 FNPT", "1 FNPT"};

std::vector<std::string> conflict(const json& answer) { return each(answer.at("why_none").at("conflict"), "rule"); }

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

TEST(Alternatives, StandBehindTheBestEachWithItsReason) {
  const json alone = chain(kBenchPair).answer;
  const auto [status, answer] = chain(kBenchPair + Words{"--alternatives", "5"});
  EXPECT_EQ(status, kDone);
  ASSERT_EQ(answer["chains"].size(), 5U);
  EXPECT_THAT(each(answer["chains"], "reason"), Each(Not("")));
  EXPECT_THAT(each<bool>(answer["chains"], "buildable"), Each(true));
  json best = answer["chains"][0];
  EXPECT_EQ(best["reason"], "the best by the order asked for");
  best.erase("reason");
  best.erase("same_in");
  EXPECT_EQ(best, alone["chains"][0]);
}

TEST(Alternatives, NoneIsAtLeastAsGoodAsAnotherInAllMeasures) {
  const json chains = chain(kBenchPair + Words{"--alternatives", "5"}).answer["chains"];
  const auto as_good = [](const json& a, const json& b) {
    for (const char* key : {"part_count", "price_usd", "length_m", "head_m", "buy_count"})
      if (a[key].get<double>() > b[key].get<double>()) return false;
    return true;
  };
  for (std::size_t a = 0; a < chains.size(); ++a)
    for (std::size_t b = 0; b < chains.size(); ++b) EXPECT_FALSE(a != b && as_good(chains[a], chains[b])) << a << b;
}

TEST(Alternatives, HaveAnAnswerToAnEmptyShelfForEachBoughtPart) {
  const json answer = chain(kBenchPair + Words{"--alternatives", "1"}).answer;
  std::vector<std::string> bought;
  for (const json& part : answer["chains"][0]["parts"])
    if (part["from_bin"] == false) bought.push_back(part["id"]);
  EXPECT_EQ(each(answer["shelf_empty"], "instead_of"), bought);
  for (const json& substitute : answer["shelf_empty"]) {
    EXPECT_THAT(each(substitute["chain"]["parts"], "id"), Not(Contains(substitute["instead_of"].get<std::string>())));
    EXPECT_EQ(substitute["chain"]["buildable"], true);
  }
}

TEST(Alternatives, ArePrintedSideBySide) {
  const Answered done = ask(Words{"chain"} + kBenchPair + Words{"--alternatives", "3"});
  EXPECT_EQ(done.status, kDone);
  EXPECT_THAT(done.out, HasSubstr("beside the first"));
  EXPECT_THAT(done.out, HasSubstr("or, if the shelf is empty: "));
  std::istringstream lines(done.out);
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 100U) << line;
}

TEST(Alternatives, TellWhatEachStands) {
  const std::string text = ask(Words{"chain"} + kOneToOne + Words{"--alternatives", "4"}).out;
  EXPECT_THAT(text, ContainsRegex("weakest +air"));
}

TEST(Alternatives, OfNoneAreNoNumber) {
  EXPECT_THAT(complaint(Words{"chain"} + kBenchPair + Words{"--alternatives", "0"}), HasSubstr("at least 1 is wanted"));
}

// A run in a span cannot draw in what a last screwed joint takes: it is closed by a union.
TEST(Span, IsNotSprung) {
  const auto spun = chain({"1 FNPT", "1 FNPT", "--span", "12 in", "--last-end", "spinning"});
  EXPECT_THAT(families(spun.answer), Contains("union"));
}

// A fitter moves a port before he necks a 2 in line down to 1/2 in garden hose thread.
TEST(Span, IsNotMadeByNeckingTheLine) {
  const Words pair{"2 FNPT", "2 FNPT", "--need", "ball valve", "--span"};
  for (const char* distance : {"5 in", "6 in", "7 in"}) {
    const auto refused = chain(pair + Words{distance});
    EXPECT_EQ(refused.status, kNoSolution) << distance;
    EXPECT_GT(refused.answer.at("why_none").at("nearest_above_m").get<double>(), 8.5 * 0.0254) << distance;
  }
  EXPECT_EQ(chain(pair + Words{"9-1/2 in"}).status, kDone);
  EXPECT_THAT(ask(Words{"chain"} + pair + Words{"6 in"}).out, HasSubstr("let it narrow the line"));
}

TEST(Span, TakesOneUnion) {
  const auto found = chain({"1 MNPT", "1 MNPT", "--span", "14 in"});
  const std::vector<std::string> names = families(found.answer);
  EXPECT_EQ(std::count(names.begin(), names.end(), "union"), 1);
}

// Two joints more are more to leak than a thread to cut.
TEST(Span, CutsAPieceBeforeTwoCouplingsMakeIt) {
  const auto found = chain({"3/4 MNPT", "3/4 FNPT", "--span", "10 in"});
  EXPECT_EQ(found.answer.at("chains").at(0).at("part_count"), 2);
}

TEST(Span, ThatARuleForbidsNamesTheRule) {
  const json answer = json::parse(
      ask(Words{"chain"} + kOneToOne + Words{"--span", "20 in", "--offset", "0.3 in", "--hottest", "200 F", "--json"})
          .out);
  EXPECT_THAT(conflict(answer), ElementsAre("hottest", "distance"));
  EXPECT_THAT(answer["why_none"]["mends"], Contains("keep it cooler than 200 degF"));
}

/// `1.25 in`, the last two words of the mend that begins so.
std::string figure_of(const json& mends, const std::string& begin) {
  for (const json& one : mends) {
    const auto mend = one.get<std::string>();
    if (mend.starts_with(begin)) return mend.substr(mend.rfind(' ', mend.rfind(' ') - 1) + 1);
  }
  return "no such mend";
}

// Typed in as it is printed, the figure of a mend mends.
TEST(Refusal, TellsTheFigureThatMends) {
  const std::vector<std::pair<std::string, Words>> refused = {{"--room", {"--room", "0.5 in"}},
                                                              {"--room", {"--room", "1/4 in", "--need", "ball valve"}},
                                                              {"--room", {"--room", "1 in", "--need", "drain sleeve"}},
                                                              {"--bore", {"--bore", "3 in"}},
                                                              {"--bore", {"--bore", "1.2 in"}},
                                                              {"--bore", {"--bore", "2 in", "--need", "drain sleeve"}}};
  for (const char* units : {"inch", "metric"})
    for (const auto& [option, words] : refused) {
      const auto asked = kOneToOne + words + Words{"--units", units};
      const auto [status, answer] = chain(asked);
      ASSERT_EQ(status, kNoSolution) << testing::PrintToString(asked);
      const std::string figure =
          figure_of(answer["why_none"]["mends"], option == "--room" ? "make more room" : "accept a bore");
      Words again = asked;
      *(std::find(again.begin(), again.end(), option) + 1) = figure;
      EXPECT_EQ(chain(again).status, kDone) << figure << ' ' << testing::PrintToString(again);
    }
}

TEST(Refusal, NamesNoPartThatItsOwnRuleKeepsOut) {
  for (const Words& rule : {Words{"--air"}, Words{"--hottest", "200 F"}, Words{"--bore", "3 in"}}) {
    const json why = chain(Words{"1 FNPT", "1 socket"} + rule).answer["why_none"];
    EXPECT_TRUE(why["missing_part"].is_null()) << why["missing_part"];
  }
  EXPECT_EQ(chain({"3/4 FBSPP", "3/4 MGHT"}).answer["why_none"]["special_order"].is_null(), false);
}

// An order that joins the two ports, but not at that distance, mends nothing.
TEST(Refusal, OfADistanceOrdersNoPartThatDoesNotMakeIt) {
  for (const char* span : {"0 in", "1/4 in", "1 in"}) {
    const json why = chain({"G 1 male", "1 FNPT", "--span", span}).answer["why_none"];
    EXPECT_TRUE(why["special_order"].is_null()) << span;
    EXPECT_THAT(why["mends"], testing::Each(testing::Not(testing::ResultOf(
                                  [](const json& mend) { return mend.get<std::string>(); }, HasSubstr("order the")))));
  }
}

TEST(Need, OnlyNearIsRefusedAndSaidOtherwiseIsTold) {
  EXPECT_THAT(complaint(Words{"chain"} + kOneToOne + Words{"--need", "unicorn"}), HasSubstr("did you mean union"));
  EXPECT_THAT(ask(Words{"chain"} + kOneToOne + Words{"--need", "petcock"}).out,
              HasSubstr("'petcock' is taken for: ball valve."));
  EXPECT_THAT(ask(Words{"chain"} + kOneToOne + Words{"--need", "ball valve"}).out, Not(HasSubstr("is taken for")));
}

TEST(Refusal, IsInTheUnitsAskedForWithItsFactsBeside) {
  const Words words{"chain", "1 FNPT", "1/2 FNPT", "--bore", "3/4 in", "--units", "metric"};
  const Answered text = ask(words);
  EXPECT_EQ(text.status, 1);
  EXPECT_THAT(text.out, HasSubstr("every chain narrows below 19"));
  EXPECT_THAT(text.out, Not(HasSubstr(" in everywhere")));
  const json why = json::parse(ask(words + Words{"--json"}).out)["why_none"];
  EXPECT_EQ(why["conflict"][0]["rule"], "smallest_bore");
  EXPECT_NEAR(why["conflict"][0]["values"][0]["value"].get<double>(), 0.75 * 0.0254, 1e-9);
  EXPECT_EQ(why["why"]["code"], "smallest_bore_alone");
  EXPECT_EQ(why["lifts"][0]["what"][0]["code"], "smallest_bore_relief");
}

TEST(SpecialOrder, SaysOfNothingThatItIsNotStocked) {
  const Words words = Words{"chain"} + kOneToOne + Words{"--need", "ball valve"};
  EXPECT_THAT(ask(words + Words{"--rating", "3000 psi"}).out, HasSubstr("no ball valve is stocked"));
  EXPECT_THAT(ask(words + Words{"--rating", "3000 psi", "--special-order"}).out, HasSubstr("no ball valve can be had"));
  EXPECT_THAT(ask(words + Words{"--avoid", "valve"}).out, HasSubstr("every ball valve that may be had is avoided by"));
}

TEST(WrongWords, OfAPortAreNamed) {
  EXPECT_THAT(complaint({"chain", "1 FTP", "3/4 MGHT"}), testing::AllOf(HasSubstr("FTP"), HasSubstr("fpt")));
  complaint({"chain", "1 FNPT"});
}

TEST(WrongWords, AllComeAtOnce) {
  const std::string error = complaint({"chain", "1 QQ", "3/4 XX", "--rating", "100", "--order", "cheap"});
  for (const char* word : {"QQ", "XX", "--rating", "cheap"}) EXPECT_THAT(error, HasSubstr(word));
}

TEST(WrongWords, ThatAJobRefusesAreRefusedHereToo) {
  Words nine;
  for (int i = 0; i < 9; ++i) nine = nine + Words{"--need", "union"};
  const std::vector<std::pair<Words, std::string>> rows = {
      {nine, "9 things are asked for; allowed are at most 8"},
      {{"--rating", "-10 psi"}, "'-10 psi'"},
      {{"--rating", "4000 psi"}, "3000 psi"},
      {{"--bore", "1000 ft"}, "out of range"},
      {{"--room", "0 in"}, "out of range"},
      {{"--most-parts", "41"}, "out of range"},
      {{"--hottest", "600 F"}, "500"},
      {{"--need", "/2 union"}, "'/2' is no size"},
      {{"--avoid", "3/ nipple"}, "'3/' is no size"},
      {{"1 FNPT", "--branch-bore", "1=1000 ft"}, "out of range"},
  };
  for (const auto& [words, message] : rows)
    EXPECT_THAT(complaint(Words{"chain", "1 FNPT", "1 FNPT"} + words), HasSubstr(message));
  nine.resize(16);
  EXPECT_THAT(complaint(Words{"chain", "1 FNPT", "1 FNPT", "1 FNPT", "--branch-need", "1=gauge"} + nine),
              HasSubstr("at most 8 needs, those of single branches included, not 9"));
}

TEST(WrongWords, OfLimitsAreSaid) {
  EXPECT_THAT(complaint(Words{"chain"} + kOneToOne + Words{"--hottest", "900 F"}), HasSubstr("--hottest"));
  const std::string error = complaint({"chain", "1 FNPT", "1 FNPT", "1 FNPT", "--in-order", "--most-bushings", "1"});
  EXPECT_THAT(error,
              HasSubstr("is for a chain between two ports: an assembly branches, so its needs have no one order; "
                        "--branch-in-order puts those of one branch in order"));
  EXPECT_THAT(error, Not(HasSubstr("--most-bushings")));
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
