#include "quantity/printable.h"

#include <gtest/gtest.h>

namespace riserun::quantity {
namespace {

TEST(Printable, IsWhatATerminalShowsAsItStands) {
  for (const char* text : {"", "1-1/4 x 4 nipple", "\u00bd\u2033 Rohr, \u8def", "quote \" and \\ back", "\u200d"}) {
    EXPECT_FALSE(first_unprintable(text)) << text;
    EXPECT_EQ(printable(text), text);
  }
}

TEST(Printable, IsNoControlNoTurnOfDirectionNoSeparatorAndNothingUnseen) {
  for (const char32_t code : {0x00,   0x09,   0x0A,   0x1B,   0x1F,   0x7F,   0x80,   0x9B,   0x9F,   0x061C,  0x200B,
                              0x200E, 0x200F, 0x2028, 0x2029, 0x202A, 0x202E, 0x2066, 0x2069, 0xFEFF, 0xE0001, 0xE007F})
    EXPECT_FALSE(is_printable(code)) << std::hex << static_cast<unsigned>(code);
  for (const char32_t code : {0x20, 0x7E, 0xA0, 0x200A, 0x200C, 0x2010, 0x2027, 0x202F, 0x2065, 0x206A, 0xE0080})
    EXPECT_TRUE(is_printable(code)) << std::hex << static_cast<unsigned>(code);
}

TEST(Printable, TellsTheFirstThatIsNotByPlaceAndName) {
  const auto escape = first_unprintable("\u00e9a\u202ebc\x1b");
  ASSERT_TRUE(escape);
  EXPECT_EQ(escape->offset, 3U);
  EXPECT_EQ(escape->length, 3U);
  EXPECT_EQ(escape->words(), "a character that cannot be seen (U+202E)");
  EXPECT_EQ(first_unprintable("a\x1b")->words(), "a control character (U+001B)");
  EXPECT_EQ(first_unprintable("a\n")->words(), "a line break (U+000A)");
  EXPECT_EQ(first_unprintable("a\xff")->words(), "bytes that are not UTF-8 text");
}

TEST(Printable, EscapesWhatIsNot) {
  EXPECT_EQ(printable("a\nb\tc\x1b[31m\x7f"), "a\\nb\\tc\\x1B[31m\\x7F");
  EXPECT_EQ(printable("\u009b\u202e\u2028"), "\\u009B\\u202E\\u2028");
  EXPECT_EQ(printable("j\xff\xc3"), "j\\xFF\\xC3");
}

TEST(Printable, CharactersAreCountedNotBytes) { EXPECT_EQ(count_characters("\u00bd\u2033 x"), 4U); }

}  // namespace
}  // namespace riserun::quantity
