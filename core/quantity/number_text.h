// The number at the head of a written quantity, in ASCII: what read.h's readers share. Typographic forms (prime marks,
// fraction signs, superscripts, thin spaces) are spelled out first, each byte keeping the place it came from.
#pragma once

#include "quantity/reading.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace riserun::quantity {

/// A written text in plain ASCII. Whatever has no plain form stands as kUnreadable.
struct PlainText {
  static constexpr char kUnreadable = '\x01';

  std::string_view written;
  std::string plain;
  std::vector<std::size_t> places;    // of each plain byte in `written`; one more for the end
  std::optional<UnitSystem> units{};  // see Written
  std::string_view settled_by{};

  /// What was written for plain[from, to), as far as it lies in the text.
  std::string_view written_for(std::size_t from, std::size_t to) const;
};

/// Spaces at both ends are dropped.
PlainText plain_text(const Written& from);

/// `'5 ft'`, cut to 40 characters; what is not printable text stands as `?`.
std::string quoted(std::string_view text);

/// `'5 psy': problem`, standing at plain[at].
ReadError read_error(const PlainText& text, std::size_t at, const std::string& problem,
                     std::string_view code = mistake::kWrongValue);

struct Number {
  double value = 0.0;   // finite; never a negative zero
  bool whole = false;   // written without point, fraction or exponent
  std::size_t end = 0;  // first byte of the plain text after it
};

/// `5`, `5.5`, `.5`, `1e-3`, `3/4`, `5-1/2`, `5 1/2`, with an optional sign. `grammar` is said where there is no
/// number.
std::variant<Number, ReadError> scan_number(const PlainText& text, std::size_t begin, std::string_view grammar);

}  // namespace riserun::quantity
