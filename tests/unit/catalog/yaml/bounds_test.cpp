// What a file may hold: texts that may be printed, and no more of anything than the limits say.
#include "catalog/yaml/document.h"
#include "catalog/yaml/limits.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::catalog {
namespace {

using ::testing::HasSubstr;
using ::testing::StartsWith;

std::string first_mistake(const std::string& text) {
  Problems problems;
  Document::parse(text, "a.yaml", problems);
  return problems.empty() ? "" : problems.all().front().text();
}

std::string repeated(const std::string& text, std::size_t times) {
  std::string result;
  result.reserve(text.size() * times);
  for (std::size_t i = 0; i < times; ++i) result += text;
  return result;
}

TEST(TextOfAFile, ThatMayNotBePrintedIsRefusedWhereItStands) {
  EXPECT_THAT(first_mistake("a: 1\nname: \"te\\ne\"\n"),
              StartsWith("a.yaml:2:10: error: a line break (U+000A) in a text: a text is one line of letters, digits, "
                         "signs and blanks [not_yaml]\n"));
  EXPECT_THAT(first_mistake("name: \"\\\\n \\x1b[31m\""),
              StartsWith("a.yaml:1:12: error: a control character (U+001B)"));
  EXPECT_THAT(first_mistake("name: \"x\\u202Ey\""), HasSubstr("1:9: error: a character that cannot be seen (U+202E)"));
  EXPECT_THAT(first_mistake("\"k\\ty\": 1"), HasSubstr("1:3: error: a tab (U+0009)"));
  EXPECT_THAT(first_mistake("name: x\ty"), HasSubstr("1:8: error: a tab (U+0009)"));
  EXPECT_THAT(first_mistake("name: |\n  x\n  y\n"), HasSubstr("1:7: error: a line break (U+000A)"));
  EXPECT_THAT(first_mistake("name: x \u202e y"), HasSubstr("1:9: error: a character that cannot be seen (U+202E)"));
  EXPECT_THAT(first_mistake("# \u0085\n"), HasSubstr("1:3: error: a control character (U+0085)"));
}

TEST(TextOfAFile, MayHaveTabsAndLineBreaksAroundItAndEscapesOfWhatIsPrinted) {
  EXPECT_EQ(first_mistake("a:\tb\t# c\r\nd: >-\n  e\n  f\ng: \"\\u00bd \\\" \\\\n\"\n"), "");
}

TEST(FileThatIsTooMuch, IsRefusedWithTheLimit) {
  EXPECT_THAT(first_mistake(std::string(kLargestFile + 1, ' ')), HasSubstr("larger than 4 MB"));
  EXPECT_THAT(first_mistake("a: " + std::string(kLargestPiece * 2, 'x')), HasSubstr("longer than 256 KB in one piece"));
  EXPECT_THAT(first_mistake("a: [" + repeated("[", kLargestPiece * 2)), HasSubstr("longer than 256 KB in one piece"));
  EXPECT_THAT(first_mistake("a:\n" + repeated("- 1\n", kMostValues)), HasSubstr("more than 250000 values in one file"));
  std::string keys;
  for (std::uint32_t i = 0; i <= kMostKeys; ++i) keys += "k" + std::to_string(i) + ": 1\n";
  EXPECT_THAT(first_mistake(keys), HasSubstr("more than 1000 keys in one map"));
}

TEST(FileThatIsTooMuch, IsNotWhatIsJustWithinTheLimits) {
  EXPECT_EQ(first_mistake("a: " + std::string(kLargestPiece - 8192, 'x')), "");
  EXPECT_EQ(first_mistake("a:\n" + repeated("- 1\n", kMostValues - 3)), "");
}

TEST(KeyThatStandsTwice, IsFoundInALargeMapToo) {
  std::string keys;
  for (int i = 0; i < 900; ++i) keys += "k" + std::to_string(i) + ": 1\n";
  EXPECT_THAT(first_mistake(keys + "k7: 2\n"),
              StartsWith("a.yaml:901:1: error: 'k7' stands here twice, first in line 8"));
  EXPECT_THAT(first_mistake(keys + "l: 1\nl: 2\n"), HasSubstr("'l' stands here twice, first in line 901"));
}

TEST(Mistakes, AreToldUpToALimit) {
  Problems problems;
  try {
    for (int line = 1;; ++line) problems.add({"a.yaml", line, 1, "wrong", {}});
  } catch (const quantity::InputError& error) {
    ASSERT_EQ(error.problems().size(), kMostMistakes + 1);
    EXPECT_EQ(error.problems().back().text(), "a.yaml: error: more than 100 mistakes; the rest is not looked at");
  }
}

}  // namespace
}  // namespace riserun::catalog
