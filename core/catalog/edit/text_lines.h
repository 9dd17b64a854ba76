// Lines of a text by byte.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string_view>

namespace riserun::catalog {

inline constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

inline std::size_t line_start(std::string_view text, std::size_t at) {
  const std::size_t before = at == 0 ? std::string_view::npos : text.rfind('\n', at - 1);
  if (before != std::string_view::npos) return before + 1;
  return text.starts_with(kByteOrderMark) ? std::min(at, kByteOrderMark.size()) : 0;
}

/// Of the line break or of the text.
inline std::size_t line_end(std::string_view text, std::size_t at) {
  return std::min(text.find('\n', at), text.size());
}

inline std::size_t next_line(std::string_view text, std::size_t at) {
  return std::min(line_end(text, at) + 1, text.size());
}

/// In bytes, from 0.
inline std::size_t column_of(std::string_view text, std::size_t at) { return at - line_start(text, at); }

inline bool is_blank(std::string_view part) { return part.find_first_not_of(" \t\r\n") == std::string_view::npos; }

}  // namespace riserun::catalog
