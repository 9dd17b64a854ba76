#include "quantity/input_error.h"

#include <gtest/gtest.h>

namespace riserun::quantity {
namespace {

TEST(ProblemText, IsPlaceMessageLineAndCaret) {
  const Problem problem{"job.yaml", 3, 9, "reservoir.length: no unit", "length: 24"};
  EXPECT_EQ(problem.text(), "job.yaml:3:9: error: reservoir.length: no unit\n  length: 24\n          ^");
}

TEST(ProblemText, LeavesOutWhatIsNotKnown) {
  EXPECT_EQ((Problem{"job.yaml", 0, 0, "cannot be read", ""}).text(), "job.yaml: error: cannot be read");
  EXPECT_EQ((Problem{"", 0, 0, "no verb", ""}).text(), "error: no verb");
  EXPECT_EQ((Problem{"", 0, 3, "unknown word 'XPT'", "1 XPT"}).text(), "error: unknown word 'XPT'\n  1 XPT\n    ^");
  EXPECT_EQ((Problem{"job.yaml", 2, 0, "odd", "a: b"}).text(), "job.yaml:2:0: error: odd\n  a: b");
}

TEST(ProblemText, KeepsTheCaretUnderTabs) {
  const Problem problem{"a.yaml", 1, 5, "m", "\ta\tbc"};
  EXPECT_EQ(problem.text(), "a.yaml:1:5: error: m\n  \ta\tbc\n  \t \t ^");
}

TEST(ProblemText, CountsCharactersAndNotBytes) {
  const Problem problem{"a.yaml", 1, 9, "m", "l: 5\u00bd\u2033 x y"};
  EXPECT_EQ(problem.text(), "a.yaml:1:9: error: m\n  l: 5\u00bd\u2033 x y\n          ^");
}

TEST(ProblemText, PutsAColumnPastTheEndRightAfterTheLine) {
  EXPECT_EQ((Problem{"a.yaml", 1, 99, "m", "abc\r\n"}).text(), "a.yaml:1:99: error: m\n  abc\n     ^");
}

TEST(ProblemText, ShowsNothingThatATerminalWouldActOn) {
  EXPECT_EQ((Problem{"a.yaml", 1, 3, "m", "a\x1b[2Jb"}).text(), "a.yaml:1:3: error: m\n  a?[2Jb\n    ^");
}

TEST(ProblemText, CutsALongLineAroundItsColumn) {
  const std::string line = std::string(200, 'a') + "X" + std::string(200, 'b');
  const Problem problem{"a.yaml", 1, 201, "m", line};
  const std::string shown = "..." + std::string(60, 'a') + "X" + std::string(39, 'b') + "...";
  EXPECT_EQ(problem.text(), "a.yaml:1:201: error: m\n  " + shown + "\n  " + std::string(63, ' ') + "^");
}

TEST(ProblemText, CutsALongLineAtItsEndOnlyWhenTheColumnIsNearItsBeginning) {
  const Problem problem{"a.yaml", 1, 2, "m", std::string(150, 'a')};
  EXPECT_EQ(problem.text(), "a.yaml:1:2: error: m\n  " + std::string(100, 'a') + "...\n   ^");
}

TEST(InputErrorWhat, HoldsEveryProblem) {
  const InputError error({{"a.yaml", 1, 1, "first", ""}, {"a.yaml", 2, 1, "second", ""}});
  EXPECT_STREQ(error.what(), "a.yaml:1:1: error: first\na.yaml:2:1: error: second");
  EXPECT_EQ(error.problems().size(), 2u);
}

}  // namespace
}  // namespace riserun::quantity
