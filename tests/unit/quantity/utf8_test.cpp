// Both sides of every limit of the well-formed byte sequences (The Unicode Standard 15.0, table 3-7).
#include "quantity/utf8.h"

#include <gtest/gtest.h>

#include <string>

namespace riserun::quantity {
namespace {

TEST(Utf8, KnowsEachWellFormedLength) {
  for (const std::string character : {"\x7f", "\xc2\x80", "\xdf\xbf", "\xe0\xa0\x80", "\xed\x9f\xbf", "\xee\x80\x80",
                                      "\xef\xbf\xbf", "\xf0\x90\x80\x80", "\xf4\x8f\xbf\xbf"}) {
    EXPECT_EQ(utf8_length(character), character.size());
  }
}

TEST(Utf8, RefusesOverlongFormsSurrogatesAndWhatLiesBeyond) {
  for (const std::string bytes : {"\x80", "\xbf", "\xc0\x80", "\xc1\xbf", "\xe0\x9f\xbf", "\xed\xa0\x80",
                                  "\xf0\x8f\xbf\xbf", "\xf4\x90\x80\x80", "\xf5\x80\x80\x80", "\xff"}) {
    EXPECT_EQ(utf8_length(bytes), 0U);
  }
}

TEST(Utf8, RefusesWhatIsCutOff) {
  for (const std::string bytes : {"\xc2", "\xe2\x82", "\xf0\x9f\x98", "\xe2x\x82"}) EXPECT_EQ(utf8_length(bytes), 0U);
  EXPECT_EQ(utf8_length(""), 0U);
  EXPECT_EQ(utf8_length("\xc3\xa9", 1), 0U);
}

}  // namespace
}  // namespace riserun::quantity
