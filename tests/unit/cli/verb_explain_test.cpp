// `riserun explain`: one table for the verb, the manual page and what completes words.
#include "report/words/explanations.h"
#include "report/words/say.h"
#include "unit/cli/asked_command.h"

#include <gmock/gmock.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>

namespace riserun::cli {
namespace {

TEST(Explain, SaysWhatItMeansWhyAndWhatMendsIt) {
  const Answered asked = ask({"explain", "no_gauge"});
  EXPECT_EQ(asked.status, kDone);
  for (const char* piece : {"no_gauge\n", "  means   No gauge shows", "  why     ", "  mend    ", "  source  ASME"})
    EXPECT_THAT(asked.out, HasSubstr(piece));
}

TEST(Explain, NamesCodesLikeOneThatIsNone) {
  const Answered asked = ask({"explain", "gauge", "zzz"});
  EXPECT_EQ(asked.status, kBadInput);
  EXPECT_THAT(asked.err, HasSubstr("'gauge' is no code of a finding or an error; like it: "
                                   "gauge_too_coarse_for_setting, gauge_of_test_too_coarse_for_setting, no_gauge, "
                                   "gauge_cannot_show"));
  EXPECT_THAT(asked.err, HasSubstr("'zzz' is no code of a finding or an error; riserun explain lists them"));
}

TEST(Explain, KnowsCautionsAndNamesAFewNearestToASlip) {
  for (const char* code : {"riser_is_not_relief_enough", "reservoir_has_no_drain", "water_runs_fast",
                           "panel_bulges_beyond_theory", "never_screw_together"})
    EXPECT_EQ(ask({"explain", code}).status, kDone) << code;
  EXPECT_THAT(ask({"explain", "water_runs_fst"}).err, HasSubstr("; like it: water_runs_fast"));
  const std::string many = ask({"explain", "water"}).err;
  EXPECT_THAT(many, HasSubstr("like it: "));
  EXPECT_EQ(std::count(many.begin(), many.end(), ','), 3);
}

TEST(Explain, EachRowIsWholeAndItsCodeIsOne) {
  std::set<std::string_view> codes;
  for (const report::Explanation& row : report::explanations()) {
    EXPECT_TRUE(codes.insert(row.code).second) << row.code;
    for (const std::string_view text : {row.means, row.why, row.mend})
      EXPECT_TRUE(text.size() > 5 && text.ends_with('.')) << row.code << ": " << text;
    EXPECT_FALSE(row.source.empty()) << row.code;
  }
  EXPECT_GT(codes.size(), 150u);
}

TEST(Explain, VerbManualAndCompletionAreOfOneTable) {
  const auto listed = nlohmann::json::parse(ask({"explain", "--json"}).out);
  ASSERT_EQ(listed.size(), report::explanations().size());
  const std::string manual = ask({"help", "--man"}).out;
  const std::string all = ask({"explain"}).out;
  std::vector<std::string> completions;
  for (const char* shell : {"bash", "zsh", "fish"}) completions.push_back(ask({"help", "--completion", shell}).out);
  for (std::size_t row = 0; row < listed.size(); ++row) {
    const std::string code(report::explanations()[row].code);
    EXPECT_EQ(listed[row]["code"], code);
    EXPECT_EQ(listed[row]["why"], report::explanations()[row].why);
    EXPECT_THAT(manual, HasSubstr(".B " + code + "\n"));
    EXPECT_THAT(all, HasSubstr("  " + code + "  "));
    for (const std::string& completion : completions) EXPECT_THAT(completion, HasSubstr(code)) << code;
  }
}

}  // namespace
}  // namespace riserun::cli
