// `riserun chain`: what else would do, and runs of a given length.
#include "unit/cli/asked_chain.h"

#include <algorithm>

namespace riserun::cli {
namespace {

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

}  // namespace
}  // namespace riserun::cli
