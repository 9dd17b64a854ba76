#include "report/text/text_layout.h"

#include <gtest/gtest.h>

namespace riserun::report {
namespace {

TEST(Columns, HaveOneLineForEachRowWhateverACellHolds) {
  EXPECT_EQ(columns({{"a\nb", "c"}, {"d\x1b[2J", "e"}}, ""), "a\\nb      c\nd\\x1B[2J  e\n");
  EXPECT_EQ(column_lines({{"a\nb"}, {"\n\n"}, {""}}, "").size(), 3U);
}

TEST(Columns, AreAsWideAsTheirCharacters) {
  EXPECT_EQ(columns({{"\u00bd\u2033", "x"}, {"abc", "y"}}, ""), "\u00bd\u2033   x\nabc  y\n");
}

TEST(Columns, BreakARowThatIsTooLongAndNoOther) {
  EXPECT_EQ(columns({{"[ ]", "1 nipple", "for the vent"}, {"[ ]", "1 tee", "here", "or two elbows"}}, "", {}, 27),
            "[ ]  1 nipple  for the vent\n[ ]  1 tee     here\n        or two elbows\n");
  EXPECT_EQ(columns({{"[ ]", "1 nipple", "for the vent"}}, "", {}, 26), "[ ]  1 nipple\n        for the vent\n");
  EXPECT_EQ(columns({{"a", "10"}, {"b", "7"}}, "", {1}, 4), "a\n        10\nb\n        7\n");
}

// Figures stay whole and in their column; a cell of words is broken at its blanks, further in where it was.
TEST(Table, BreaksTheWordsOfItsWidestColumn) {
  const std::vector<std::vector<std::string>> rows = {{"entry into riser", "2.1 ft/s"}, {"exit", "4"}};
  EXPECT_EQ(table(rows, "  ", {1}, 28), "  entry into riser  2.1 ft/s\n  exit                     4\n");
  EXPECT_EQ(table(rows, "  ", {1}, 24), "  entry into    2.1 ft/s\n  riser\n  exit                 4\n");
  EXPECT_EQ(column_lines(rows, "  ", {1}, 24).size(), 2U);
  EXPECT_EQ(table({{"   1 hex nipple, brass", "buy"}}, "", {}, 22), "   1 hex nipple,   buy\n   brass\n");
  // What cannot be narrower stays as it is.
  EXPECT_EQ(table({{"entry", "2.1 ft/s"}}, "", {1}, 5), "entry  2.1 ft/s\n");
}

TEST(Wrapped, AndHeadingsShowNothingThatATerminalWouldActOn) {
  EXPECT_EQ(wrapped("\x1b", "a\u202e\nb", kPageWidth), "\\x1Ba\\u202E b\n");
  EXPECT_EQ(heading("\u00bd\n", {}), "\u00bd\\n\n---\n");
}

}  // namespace
}  // namespace riserun::report
