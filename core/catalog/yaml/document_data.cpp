#include "catalog/yaml/document_data.h"

#include <algorithm>

namespace riserun::catalog::detail {

namespace {

constexpr std::size_t kLongestSourceLine = 160;

int characters_before(std::string_view line, std::size_t bytes) {
  const std::string_view part = line.substr(0, bytes);
  return static_cast<int>(std::count_if(part.begin(), part.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

}  // namespace

void DocumentData::find_lines() {
  line_starts = {0};
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool lone_return = text[i] == '\r' && (i + 1 == text.size() || text[i + 1] != '\n');
    if (text[i] == '\n' || lone_return) line_starts.push_back(static_cast<std::uint32_t>(i + 1));
  }
}

std::string_view DocumentData::line_text(std::uint32_t line) const {
  const std::size_t begin = line_starts[line];
  const std::size_t end = line + 1 < line_starts.size() ? line_starts[line + 1] : text.size();
  std::string_view whole = std::string_view(text).substr(begin, end - begin);
  while (!whole.empty() && (whole.back() == '\n' || whole.back() == '\r')) whole.remove_suffix(1);
  return whole;
}

quantity::Problem DocumentData::problem_at(std::size_t offset, std::string message, std::string_view code) const {
  const auto after = std::upper_bound(line_starts.begin(), line_starts.end(), offset);
  const auto line = static_cast<std::uint32_t>(after - line_starts.begin()) - 1;
  const std::string_view whole = line_text(line);
  const int column = characters_before(whole, offset - line_starts[line]) + 1;
  std::string shown = whole.size() <= kLongestSourceLine ? std::string(whole) : std::string();
  for (char& c : shown)
    if (static_cast<unsigned char>(c) < 0x20) c = ' ';  // a tab would move the caret
  return {file, static_cast<int>(line) + 1, column, std::move(message), std::move(shown), std::string(code)};
}

}  // namespace riserun::catalog::detail
