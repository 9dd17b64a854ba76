#include "report/text/text_layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

namespace riserun::report {

namespace {

std::vector<std::size_t> column_widths(const std::vector<std::vector<std::string>>& rows) {
  std::vector<std::size_t> widths;
  for (const auto& row : rows) {
    widths.resize(std::max(widths.size(), row.size()), 0);
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], row[i].size());
  }
  return widths;
}

}  // namespace

std::string heading(const std::string& title, const Style& style) {
  if (style.bold_headings) return "\033[1m" + title + "\033[0m\n";
  return title + "\n" + std::string(title.size(), '-') + "\n";
}

std::string wrapped(const std::string& first, const std::string& text) {
  const std::string indent(first.size(), ' ');
  std::string result = first;
  std::size_t used = first.size();
  bool line_is_empty = true;
  std::istringstream words(text);
  for (std::string word; words >> word;) {
    if (!line_is_empty && used + 1 + word.size() > kPageWidth) {
      result += "\n" + indent;
      used = indent.size();
      line_is_empty = true;
    }
    if (!line_is_empty) {
      result += ' ';
      ++used;
    }
    result += word;
    used += word.size();
    line_is_empty = false;
  }
  return result + "\n";
}

std::string named(const std::string& name, const std::string& value) {
  constexpr std::size_t kNameWidth = 24;
  return wrapped(fmt::format("  {:<{}} ", name, kNameWidth), value);
}

std::string columns(const std::vector<std::vector<std::string>>& rows, const std::string& indent,
                    const std::vector<std::size_t>& right_aligned) {
  const std::vector<std::size_t> widths = column_widths(rows);
  std::string result;
  for (const auto& row : rows) {
    std::string line = indent;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const bool right = std::find(right_aligned.begin(), right_aligned.end(), i) != right_aligned.end();
      line += right ? fmt::format("{:>{}}", row[i], widths[i]) : fmt::format("{:<{}}", row[i], widths[i]);
      if (i + 1 < row.size()) line += "  ";
    }
    line.erase(line.find_last_not_of(' ') + 1);  // of an empty last cell
    result += line + "\n";
  }
  return result;
}

std::string counted(long count, const std::string& one, const std::string& many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

}  // namespace riserun::report
