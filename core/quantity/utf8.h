// UTF-8 as the Unicode standard has it (version 15, table 3-7): what the readers of text share.
#pragma once

#include <cstddef>
#include <string_view>

namespace riserun::quantity {

/// Bytes of the UTF-8 character that begins at `at`; 0 where none does: at the end, inside a character, and for
/// overlong forms, surrogates and what lies beyond U+10FFFF.
std::size_t utf8_length(std::string_view text, std::size_t at = 0);

}  // namespace riserun::quantity
