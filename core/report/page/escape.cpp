#include "report/page/escape.h"

#include "quantity/printable.h"

#include <algorithm>

namespace riserun::report {

namespace {

std::string_view entity(char c) {
  switch (c) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case '\'':
      return "&#39;";
    default:
      return {};
  }
}

}  // namespace

std::string html(std::string_view text) {
  std::string safe;
  for (const char c : quantity::printable(text)) {
    if (const std::string_view written = entity(c); !written.empty())
      safe += written;
    else
      safe += c;
  }
  return safe;
}

std::string html_words(std::string_view text) {
  std::string safe;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string_view word = text.substr(at, end - at);
    const std::size_t hyphen = word.find('-');
    const bool measure = hyphen != std::string_view::npos && word.find('/', hyphen) != std::string_view::npos;
    safe += measure ? "<span class=\"whole\">" + html(word) + "</span>" : html(word);
    if (end < text.size()) safe += ' ';
    at = end + 1;
  }
  return safe;
}

std::string markdown(std::string_view text) {
  constexpr std::string_view kMarks = R"(\`*_[]<>|&~)";
  const std::string shown = quantity::printable(text);
  // What begins a heading or a list does so at the start alone: "#", "-", "1.", "1)".
  const std::size_t number = std::min(shown.find_first_not_of("0123456789"), shown.size());
  const bool begins =
      number < shown.size() && (number == 0 ? std::string_view("#+-=").find(shown.front()) != std::string_view::npos
                                            : shown[number] == '.' || shown[number] == ')');
  std::string safe;
  for (std::size_t at = 0; at < shown.size(); ++at) {
    if (kMarks.find(shown[at]) != std::string_view::npos || (begins && at == number)) safe += '\\';
    safe += shown[at];
  }
  return safe;
}

std::string csv_text(std::string_view text) {
  std::string safe = quantity::printable(text);
  if (!safe.empty() && std::string_view("=+-@\t").find(safe.front()) != std::string_view::npos) safe.insert(0, 1, '\'');
  if (safe.find_first_of("\",\r\n") == std::string::npos) return safe;
  std::string quoted = "\"";
  for (const char c : safe) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + "\"";
}

}  // namespace riserun::report
