// Writes pieces of YAML the way a person would: plain texts where they can be, quotes only where they must.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace riserun::catalog {

/// What an edit writes: a text, a list, or a map.
struct Content {
  using List = std::vector<Content>;
  using Map = std::vector<std::pair<std::string, Content>>;
  std::variant<std::string, List, Map> what;

  // What an edit says is read best as it stands: Content::Map{{"part", "1 x 4 nipple"}}.
  // NOLINTBEGIN(google-explicit-constructor)
  Content(std::string text) : what(std::move(text)) {}
  Content(const char* text) : what(std::string(text)) {}
  Content(List list) : what(std::move(list)) {}
  Content(Map map) : what(std::move(map)) {}
  // NOLINTEND(google-explicit-constructor)
};

/// A text as a value or a key: plain where it can be, otherwise in quotes. `in_brackets`: within a list or map that is
/// written in brackets.
std::string written_scalar(std::string_view text, bool in_brackets);
std::string in_double_quotes(std::string_view text);
/// On one line, lists and maps in brackets.
std::string written_in_brackets(const Content& content, bool in_brackets);

/// A key with its value as whole lines, beginning at that column.
std::string lines_of_entry(const std::string& key, const Content& content, std::size_t column);
/// A row of a list behind its dash, as whole lines; a map on one line or a line a key.
std::string lines_of_row(const Content& row, std::size_t column, bool one_line);

}  // namespace riserun::catalog
