#include "report/text/text_layout.h"

#include "quantity/printable.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

namespace riserun::report {

namespace {

using quantity::count_characters;
using quantity::printable;

constexpr std::size_t kLeastOfWords = 6;  // characters that a column of words keeps
constexpr std::size_t kBeneath = 8;       // characters further in than its row is what it has no room for

std::vector<std::size_t> column_widths(const std::vector<std::vector<std::string>>& rows) {
  std::vector<std::size_t> widths;
  for (const auto& row : rows) {
    widths.resize(std::max(widths.size(), row.size()), 0);
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], count_characters(row[i]));
  }
  return widths;
}

/// A word in pieces that fit a line; most words are one.
std::vector<std::string> pieces_of(const std::string& word, std::size_t width) {
  std::vector<std::string> pieces(1);
  std::size_t count = 0;
  for (const char c : word) {
    const bool begins = (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;  // a character of UTF-8
    if (begins && count++ == width) {
      pieces.emplace_back();
      count = 1;
    }
    pieces.back() += c;
  }
  return pieces;
}

bool holds(const std::vector<std::size_t>& columns, std::size_t column) {
  return std::find(columns.begin(), columns.end(), column) != columns.end();
}

std::size_t longest_word(const std::vector<std::vector<std::string>>& rows, std::size_t column) {
  std::size_t longest = 0;
  for (const auto& row : rows) {
    std::istringstream words(column < row.size() ? row[column] : "");
    for (std::string word; words >> word;) longest = std::max(longest, count_characters(word));
  }
  return longest;
}

/// The columns' widths, the widest columns of words so much narrower that a row goes into `width`; no column is
/// narrower than its longest word, and figures are never broken.
std::vector<std::size_t> narrowed(const std::vector<std::vector<std::string>>& rows,
                                  const std::vector<std::size_t>& right_aligned, std::size_t width, std::size_t used) {
  std::vector<std::size_t> widths = column_widths(rows);
  std::vector<std::size_t> least = widths;
  for (std::size_t i = 0; i < widths.size(); ++i) {
    if (!holds(right_aligned, i)) least[i] = std::min(widths[i], std::max(kLeastOfWords, longest_word(rows, i)));
    used += widths[i] + (i > 0 ? 2 : 0);
  }
  for (; used > width; --used) {
    std::size_t widest = widths.size();
    for (std::size_t i = 0; i < widths.size(); ++i)
      if (widths[i] > least[i] && (widest == widths.size() || widths[i] > widths[widest])) widest = i;
    if (widest == widths.size()) break;
    --widths[widest];
  }
  return widths;
}

/// One row of a table; it has as many lines as its fullest cell.
std::string row_in(const std::vector<std::string>& row, const std::vector<std::size_t>& widths,
                   const std::string& indent, const std::vector<std::size_t>& right_aligned) {
  std::vector<std::vector<std::string>> cells;
  std::size_t count = 1;
  for (std::size_t i = 0; i < row.size(); ++i) {
    const bool fits = count_characters(row[i]) <= widths[i];  // then its blanks stay as they are
    const std::string start(std::min(row[i].find_first_not_of(' '), row[i].size()), ' ');
    cells.push_back(fits ? std::vector<std::string>{row[i]} : wrapped_lines(start, row[i], widths[i]));
    count = std::max(count, cells.back().size());
  }
  std::string text;
  for (std::size_t at = 0; at < count; ++at) {
    std::string line = indent;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const std::string cell = at < cells[i].size() ? cells[i][at] : "";
      const std::string blanks(widths[i] - std::min(widths[i], count_characters(cell)), ' ');
      line += (i > 0 ? "  " : "") + (holds(right_aligned, i) ? blanks + cell : cell + blanks);
    }
    line.erase(line.find_last_not_of(' ') + 1);
    text += (at > 0 ? "\n" : "") + line;
  }
  return text;
}

}  // namespace

std::string heading(const std::string& title, const Style& style) {
  const std::string shown = printable(title);
  if (style.bold_headings) return "\033[1m" + shown + "\033[0m\n";
  return shown + "\n" + std::string(count_characters(shown), '-') + "\n";
}

std::vector<std::string> wrapped_lines(const std::string& first, const std::string& text, std::size_t width) {
  const std::string start = printable(first);
  const std::string indent(count_characters(start), ' ');
  std::vector<std::string> lines = {start};
  std::size_t used = indent.size();
  bool line_is_empty = true;
  std::istringstream words(text);
  for (std::string word; words >> word;) {
    for (const std::string& piece : pieces_of(printable(word), width > indent.size() ? width - indent.size() : width)) {
      const std::size_t wide = count_characters(piece);
      if (!line_is_empty && used + 1 + wide > width) {
        lines.push_back(indent);
        used = indent.size();
        line_is_empty = true;
      }
      if (!line_is_empty) {
        lines.back() += ' ';
        ++used;
      }
      lines.back() += piece;
      used += wide;
      line_is_empty = false;
    }
  }
  return lines;
}

std::string wrapped(const std::string& first, const std::string& text, std::size_t width) {
  std::string result;
  for (const std::string& line : wrapped_lines(first, text, width)) result += line + "\n";
  return result;
}

std::string named(const std::string& name, const std::string& value, std::size_t width) {
  constexpr std::size_t kNameWidth = 24;
  return wrapped(fmt::format("  {:<{}} ", name, kNameWidth), value, width);
}

std::vector<std::string> column_lines(std::vector<std::vector<std::string>> rows, const std::string& indent,
                                      const std::vector<std::size_t>& right_aligned, std::size_t width) {
  for (auto& row : rows)
    for (std::string& cell : row) cell = printable(cell);
  const std::vector<std::size_t> widths = narrowed(rows, right_aligned, width, indent.size());
  std::vector<std::string> lines;
  lines.reserve(rows.size());
  for (const auto& row : rows) lines.push_back(row_in(row, widths, indent, right_aligned));
  return lines;
}

std::string table(std::vector<std::vector<std::string>> rows, const std::string& indent,
                  const std::vector<std::size_t>& right_aligned, std::size_t width) {
  std::string text;
  for (const std::string& line : column_lines(std::move(rows), indent, right_aligned, width)) text += line + "\n";
  return text;
}

std::string columns(std::vector<std::vector<std::string>> rows, const std::string& indent,
                    const std::vector<std::size_t>& right_aligned, std::size_t width) {
  for (auto& row : rows)
    for (std::string& cell : row) cell = printable(cell);
  const std::vector<std::size_t> widths = column_widths(rows);
  const std::string further_in = indent + std::string(kBeneath, ' ');
  std::string result;
  for (const auto& row : rows) {
    std::string line = indent;
    std::size_t used = indent.size();
    std::vector<std::string> beneath;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const bool right = holds(right_aligned, i);
      const std::size_t blanks = widths[i] - count_characters(row[i]);
      if (!beneath.empty() || (i > 0 && used + (right ? widths[i] : widths[i] - blanks) > width)) {
        if (!row[i].empty()) beneath.push_back(row[i]);
        continue;
      }
      line += right ? std::string(blanks, ' ') + row[i] : padded(row[i], widths[i]);
      line += "  ";
      used += widths[i] + 2;
    }
    line.erase(line.find_last_not_of(' ') + 1);  // of an empty last cell
    result += line + "\n";
    if (!beneath.empty()) result += wrapped(further_in, fmt::format("{}", fmt::join(beneath, "; ")), width);
  }
  return result;
}

std::string padded(const std::string& text, std::size_t width) {
  const std::size_t used = count_characters(text);
  return text + std::string(used < width ? width - used : 0, ' ');
}

std::string clipped(const std::string& text, std::size_t width) {
  const std::string shown = printable(text);
  return count_characters(shown) <= width ? shown : pieces_of(shown, width - 1).front() + ".";
}

std::string counted(long count, const std::string& one, const std::string& many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

}  // namespace riserun::report
