// A table of a spreadsheet: RFC 4180 (records, quotes, doubled quotes), and what spreadsheets write besides.
#include "catalog/yaml/document.h"

#include <gmock/gmock.h>

#include <string>
#include <vector>

namespace riserun::catalog {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

using Row = std::vector<std::string>;

std::vector<Row> rows_of(const std::string& text, Problems& problems) {
  const Document document = Document::parse(text, "list.CSV", problems);
  EXPECT_TRUE(document.is_table());
  std::vector<Row> rows;
  for (const Value& row : document.root().items()) {
    Row& cells = rows.emplace_back();
    for (const auto& [head, cell] : row.entries())
      cells.push_back(std::string(head.text()) + "=" + std::string(cell.text()));
  }
  return rows;
}

std::vector<Row> good_rows_of(const std::string& text) {
  Problems problems;
  std::vector<Row> rows = rows_of(text, problems);
  EXPECT_TRUE(problems.empty()) << problems.all().front().text();
  return rows;
}

quantity::Problem mistake_of(const std::string& text) {
  Problems problems;
  rows_of(text, problems);
  EXPECT_EQ(problems.size(), 1U);
  return problems.empty() ? quantity::Problem{} : problems.all().front();
}

TEST(Table, CellsAreUnderTheirHeads) {
  EXPECT_THAT(good_rows_of("Part, Price\r\n1 union,4.20\r\n\"1 x 3/4, bushing\",\"2.10\"\r\n"),
              ElementsAre(Row{"part=1 union", "price=4.20"}, Row{"part=1 x 3/4, bushing", "price=2.10"}));
}

TEST(Table, SemicolonsTabsAndAByteOrderMarkAreWhatSpreadsheetsWrite) {
  EXPECT_THAT(good_rows_of("\xEF\xBB\xBFpart;price\n1 union;4,20"), ElementsAre(Row{"part=1 union", "price=4,20"}));
  EXPECT_THAT(good_rows_of("part\tprice\r1 union\t4.20\r"), ElementsAre(Row{"part=1 union", "price=4.20"}));
}

TEST(Table, AQuoteInQuotesIsDoubled) {
  EXPECT_THAT(good_rows_of("part\n\"3\"\" pipe\"\n"), ElementsAre(Row{"part=3\" pipe"}));
}

TEST(Table, WhatIsEmptyIsNotThere) {
  EXPECT_THAT(good_rows_of("\n,part,,price\nx,1 union,y,\n,,,\n\n"), ElementsAre(Row{"part=1 union"}));
}

TEST(Table, EachMistakeHasItsPlace) {
  const quantity::Problem open = mistake_of("part,price\n\"1 union,4.20\n");
  EXPECT_EQ(open.line, 2);
  EXPECT_EQ(open.column, 1);
  EXPECT_THAT(open.message, HasSubstr("never closed"));
  const quantity::Problem behind = mistake_of("part,price\n\"1\" union,4.20\n");
  EXPECT_EQ(behind.column, 5);
  EXPECT_THAT(behind.message, HasSubstr("after the closing quote"));
  const quantity::Problem twice = mistake_of("part,Part\n");
  EXPECT_EQ(twice.column, 6);
  EXPECT_THAT(twice.message, HasSubstr("two columns have the head 'part'"));
  const quantity::Problem many = mistake_of("part\n1 union,4.20\n");
  EXPECT_EQ(many.line, 2);
  EXPECT_EQ(many.column, 9);
  EXPECT_THAT(many.message, HasSubstr("more cells than the 1 heads"));
  EXPECT_THAT(mistake_of("part\n\"1\nunion\"\n").message, HasSubstr("a text is one line"));
}

}  // namespace
}  // namespace riserun::catalog
