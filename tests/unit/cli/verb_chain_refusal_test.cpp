// `riserun chain` without an answer: why there is none, what would mend it, and words that it does not know.
#include "unit/cli/asked_chain.h"

#include <algorithm>

namespace riserun::cli {
namespace {

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

}  // namespace
}  // namespace riserun::cli
