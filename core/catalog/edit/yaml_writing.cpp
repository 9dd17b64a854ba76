#include "catalog/edit/yaml_writing.h"

#include <algorithm>
#include <array>

namespace riserun::catalog {

namespace {

bool is_word_for_nothing(std::string_view text) {
  constexpr std::array<std::string_view, 4> kNothing = {"~", "null", "Null", "NULL"};
  return std::find(kNothing.begin(), kNothing.end(), text) != kNothing.end();
}

/// A sign that begins something other than a plain text (YAML 1.2, 7.3.3).
bool may_begin(std::string_view text) {
  constexpr std::string_view kSigns = ",[]{}#&*!|>'\"%@`";
  if (kSigns.find(text.front()) != std::string_view::npos) return false;
  const bool alone = text.size() == 1 || text[1] == ' ';
  return !(alone && (text.front() == '-' || text.front() == '?' || text.front() == ':'));
}

bool can_be_plain(std::string_view text, bool in_brackets) {
  if (text.empty() || text.front() == ' ' || text.back() == ' ' || text.back() == ':') return false;
  if (!may_begin(text) || is_word_for_nothing(text)) return false;
  if (text == "---" || text == "..." || text.starts_with("--- ") || text.starts_with("... ")) return false;
  if (text.find(": ") != std::string_view::npos || text.find(" #") != std::string_view::npos) return false;
  if (text.find_first_of("\t\n\r") != std::string_view::npos) return false;
  return !in_brackets || text.find_first_of(",[]{}:?") == std::string_view::npos;
}

}  // namespace

std::string in_double_quotes(std::string_view text) {
  std::string result = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') result += '\\';
    if (c == '\n') {
      result += "\\n";
    } else if (c == '\t') {
      result += "\\t";
    } else {
      result += c;
    }
  }
  return result + '"';
}

std::string written_scalar(std::string_view text, bool in_brackets) {
  return can_be_plain(text, in_brackets) ? std::string(text) : in_double_quotes(text);
}

std::string written_in_brackets(const Content& content, bool in_brackets) {
  if (const auto* text = std::get_if<std::string>(&content.what)) return written_scalar(*text, in_brackets);
  std::string inside;
  if (const auto* list = std::get_if<Content::List>(&content.what)) {
    for (const Content& item : *list) inside += (inside.empty() ? "" : ", ") + written_in_brackets(item, true);
    return "[" + inside + "]";
  }
  for (const auto& [key, item] : std::get<Content::Map>(content.what))
    inside += (inside.empty() ? "" : ", ") + written_scalar(key, true) + ": " + written_in_brackets(item, true);
  return "{" + inside + "}";
}

std::string lines_of_entry(const std::string& key, const Content& content, std::size_t column) {
  const std::string indent(column, ' ');
  const std::string head = indent + written_scalar(key, false) + ":";
  const auto* list = std::get_if<Content::List>(&content.what);
  const bool rows = list != nullptr && std::any_of(list->begin(), list->end(), [](const Content& item) {
                      return std::holds_alternative<Content::Map>(item.what);
                    });
  if (!rows) return head + " " + written_in_brackets(content, false) + "\n";
  std::string lines = head + "\n";
  for (const Content& item : *list) lines += lines_of_row(item, column + 2, false);
  return lines;
}

std::string lines_of_row(const Content& row, std::size_t column, bool one_line) {
  const std::string indent(column, ' ');
  const auto* map = std::get_if<Content::Map>(&row.what);
  if (map == nullptr || map->empty() || one_line) return indent + "- " + written_in_brackets(row, false) + "\n";
  std::string lines;
  for (const auto& [key, item] : *map) lines += lines_of_entry(key, item, column + 2);
  lines[column] = '-';
  return lines;
}

}  // namespace riserun::catalog
