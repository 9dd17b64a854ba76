// Plain text for a terminal and a wall sheet: headings, wrapped sentences, columns. No color but bold headings, and
// those only when asked for, so that a printed page loses nothing. What may not be printed (quantity/printable.h) is
// escaped here, whoever made the words.
#pragma once

#include "quantity/write.h"

#include <string>
#include <vector>

namespace riserun::report {

inline constexpr std::size_t kPageWidth = 100;  // characters: a page in a legible size

inline constexpr std::size_t kAnyWidth = static_cast<std::size_t>(-1);

/// How a report is written.
struct Style {
  UnitSystem units = UnitSystem::inch;
  bool bold_headings = false;
  std::size_t width = kPageWidth;  // characters in a line of sentences
};

/// The title, underlined.
std::string heading(const std::string& title, const Style& style);
/// The sentences broken at blanks to that width: the first line after `first`, the others indented to match it.
std::string wrapped(const std::string& first, const std::string& text, std::size_t width);
/// The same line by line, without their line breaks; at least one.
std::vector<std::string> wrapped_lines(const std::string& first, const std::string& text, std::size_t width);
/// A named value: the name in a column of its own, the value wrapped beside it.
std::string named(const std::string& name, const std::string& value, std::size_t width);
/// Rows of cells in columns as wide as their widest cell, two blanks apart; short rows are allowed. Cells are right
/// aligned in the columns named in `right_aligned`. One line a row, without its line break; where a row does not go
/// into `width` characters, the widest columns of words are made narrower, and a row whose cell is broken has line
/// breaks.
std::vector<std::string> column_lines(std::vector<std::vector<std::string>> rows, const std::string& indent,
                                      const std::vector<std::size_t>& right_aligned = {},
                                      std::size_t width = kAnyWidth);
/// The same as one text.
std::string table(std::vector<std::vector<std::string>> rows, const std::string& indent,
                  const std::vector<std::size_t>& right_aligned, std::size_t width);
/// Such columns of a list: a row that does not go into `width` characters is broken before the first cell that would
/// pass it: that cell and the rest of the row stand beneath, further in.
std::string columns(std::vector<std::vector<std::string>> rows, const std::string& indent,
                    const std::vector<std::size_t>& right_aligned = {}, std::size_t width = kAnyWidth);
/// With blanks behind it up to so many characters; what is longer stays as it is.
std::string padded(const std::string& text, std::size_t width);
/// At most so many characters, the last one a dot where something was left out.
std::string clipped(const std::string& text, std::size_t width);
/// `1 part`, `2 parts`.
std::string counted(long count, const std::string& one, const std::string& many);

}  // namespace riserun::report
