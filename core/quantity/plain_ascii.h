// Letters, digits and spaces of plain ASCII, whatever the locale: what the readers share.
#pragma once

#include <cstddef>
#include <string_view>

namespace riserun::quantity {

inline bool is_digit(char c) { return c >= '0' && c <= '9'; }
inline bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
inline char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

/// Where the spaces that stand at that place end.
inline std::size_t skip_spaces(std::string_view text, std::size_t at) {
  while (at < text.size() && text[at] == ' ') ++at;
  return at;
}

}  // namespace riserun::quantity
