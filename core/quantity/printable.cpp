#include "quantity/printable.h"

#include "quantity/utf8.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::quantity {

namespace {

struct CodeRange {
  char32_t first;
  char32_t last;
};

constexpr CodeRange kNotPrintable[] = {
    {0x00, 0x1F},     {0x7F, 0x9F},                           // controls
    {0x061C, 0x061C}, {0x200E, 0x200F}, {0x202A, 0x202E},     // of direction
    {0x2066, 0x2069}, {0x2028, 0x2029},                       // of direction; separators of lines and paragraphs
    {0x200B, 0x200B}, {0xFEFF, 0xFEFF}, {0xE0000, 0xE007F}};  // not to be seen

/// The character of so many bytes, which are UTF-8.
char32_t code_of(std::string_view bytes) {
  constexpr unsigned kLeadBits[] = {0, 0x7F, 0x1F, 0x0F, 0x07};
  char32_t code = static_cast<unsigned char>(bytes[0]) & kLeadBits[bytes.size()];
  for (const char byte : bytes.substr(1)) code = code << 6 | (static_cast<unsigned char>(byte) & 0x3FU);
  return code;
}

std::string escape_of(const Unprintable& what) {
  if (what.code == U'\n') return "\\n";
  if (what.code == U'\t') return "\\t";
  const auto code = static_cast<unsigned>(what.code);
  return !what.utf8 || code < 0x80 ? fmt::format("\\x{:02X}", code) : fmt::format("\\u{:04X}", code);
}

/// What stands at that byte, if it may not be printed; `length` is that of what may.
std::optional<Unprintable> unprintable_at(std::string_view text, std::size_t at, std::size_t& length) {
  length = utf8_length(text, at);
  if (length == 0) return Unprintable{at, 1, static_cast<unsigned char>(text[at]), false};
  const char32_t code = code_of(text.substr(at, length));
  if (is_printable(code)) return std::nullopt;
  return Unprintable{at, length, code, true};
}

std::optional<Unprintable> first_from(std::string_view text, std::size_t at) {
  while (at < text.size()) {
    std::size_t length = 1;
    if (text[at] < ' ' || text[at] > '~')
      if (auto found = unprintable_at(text, at, length)) return found;
    at += length;
  }
  return std::nullopt;
}

}  // namespace

bool is_printable(char32_t code) {
  return std::none_of(std::begin(kNotPrintable), std::end(kNotPrintable),
                      [&](const CodeRange& range) { return code >= range.first && code <= range.last; });
}

std::string Unprintable::words() const {
  if (!utf8) return "bytes that are not UTF-8 text";
  const std::string_view kind = code == U'\n' || code == U'\r'     ? "a line break"
                                : code == U'\t'                    ? "a tab"
                                : code < 0xA0                      ? "a control character"
                                : code == 0x2028 || code == 0x2029 ? "a separator of lines"
                                                                   : "a character that cannot be seen";
  return fmt::format("{} (U+{:04X})", kind, static_cast<unsigned>(code));
}

std::optional<Unprintable> first_unprintable(std::string_view text) { return first_from(text, 0); }

std::string printable(std::string_view text) {
  std::string result;
  std::size_t copied = 0;
  while (const auto found = first_from(text, copied)) {
    result.append(text.substr(copied, found->offset - copied)).append(escape_of(*found));
    copied = found->offset + found->length;
  }
  return result.append(text.substr(copied));
}

std::size_t count_characters(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char byte) { return (byte & 0xC0) != 0x80; }));
}

}  // namespace riserun::quantity
