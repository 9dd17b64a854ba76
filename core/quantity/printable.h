// What may stand in a printed line. Names, words and file names come from people and files; what a terminal acts on,
// what turns the order of letters round, and what cannot be seen would let one of them pass for something that it is
// not.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace riserun::quantity {

/// A character that may not be printed, and where it stands.
struct Unprintable {
  std::size_t offset = 0;  // byte
  std::size_t length = 1;  // in bytes
  char32_t code = 0;       // of bytes that are not UTF-8 the first byte
  bool utf8 = true;

  /// `a control character (U+001B)`, `bytes that are not UTF-8 text`.
  std::string words() const;
};

/// No: controls (C0 with tab and line feed, DEL, C1), separators of lines and paragraphs, marks and overrides of
/// direction (The Unicode Standard 15.0, property Bidi_Control), and what is never to be seen: U+200B, U+FEFF, tags.
bool is_printable(char32_t code);

/// The first that may not be printed, if any: such a character, or bytes that are not UTF-8.
std::optional<Unprintable> first_unprintable(std::string_view text);

/// The text with each of these written as an escape: `\n`, `\t`, `\u202E`, `\xFF`. Others, a backslash too, stay.
std::string printable(std::string_view text);

/// Characters of a printable text; a terminal gives each a column (those of twice the width are not told from others).
std::size_t count_characters(std::string_view text);

}  // namespace riserun::quantity
