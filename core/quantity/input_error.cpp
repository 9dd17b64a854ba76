#include "quantity/input_error.h"

#include "quantity/printable.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string_view>

namespace riserun::quantity {

namespace {

constexpr std::size_t kWidestLine = 100;   // characters of a source line that are shown
constexpr std::size_t kBeforeColumn = 60;  // of them, so many before the column at most
constexpr std::string_view kCut = "...";

std::string all_texts(const std::vector<Problem>& problems) {
  std::string text;
  for (const Problem& problem : problems) {
    if (!text.empty()) text += '\n';
    text += problem.text();
  }
  return text;
}

bool continues_character(char byte) { return (static_cast<unsigned char>(byte) & 0xc0) == 0x80; }

/// The line character by character, as it is shown; what may not be printed stands as `?`.
std::vector<std::string> glyphs_of(std::string_view line) {
  std::vector<std::string> glyphs;
  for (std::size_t at = 0; at < line.size();) {
    std::size_t end = at + 1;
    while (end < line.size() && continues_character(line[end])) ++end;
    const std::string_view glyph = line.substr(at, end - at);
    glyphs.emplace_back(glyph != "\t" && first_unprintable(glyph) ? "?" : glyph);
    at = end;
  }
  return glyphs;
}

/// The source line, cut around the column if it is long, and under it a caret. The caret's line repeats the tabs above
/// it and has one space for each other character, so that it stands right whatever a tab is wide.
std::string line_and_caret(std::string_view line, int column) {
  while (!line.empty() && (line.back() == '\n' || line.back() == '\r')) line.remove_suffix(1);
  const std::vector<std::string> glyphs = glyphs_of(line);
  // A column past the end stands right after the last character.
  const std::size_t place = std::min(static_cast<std::size_t>(std::max(column, 1) - 1), glyphs.size());
  const bool long_line = glyphs.size() > kWidestLine;
  const std::size_t first = long_line && place > kBeforeColumn ? place - kBeforeColumn : 0;
  const std::size_t last = std::min(glyphs.size(), first + kWidestLine);
  std::string shown(first > 0 ? kCut : "");
  std::string caret(shown.size(), ' ');
  for (std::size_t i = first; i < last; ++i) {
    shown += glyphs[i];
    if (i < place) caret += glyphs[i] == "\t" ? '\t' : ' ';
  }
  if (last < glyphs.size()) shown += kCut;
  return column > 0 ? fmt::format("\n  {}\n  {}^", shown, caret) : fmt::format("\n  {}", shown);
}

}  // namespace

std::string Problem::text() const {
  std::string place = printable(file);
  if (line > 0) place += fmt::format(":{}:{}", line, column);
  std::string result = (place.empty() ? "error: " : place + ": error: ") + printable(message);
  if (!code.empty()) result += fmt::format(" [{}]", code);
  if (source_line.empty()) return result;
  return result + line_and_caret(source_line, column);
}

InputError::InputError(std::vector<Problem> problems)
    : std::runtime_error(all_texts(problems)), problems_(std::move(problems)) {}

}  // namespace riserun::quantity
