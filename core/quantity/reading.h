// What is read as a quantity, and what reading it gives: the quantity, or why the text is none.
#pragma once

#include "quantity/error_codes.h"
#include "quantity/unit_system.h"

#include <concepts>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

namespace riserun::quantity {

/// A text that is to be read, and what a number without a unit means in it. Made of any text, and a text again.
struct Written {
  std::string_view text;
  /// The system whose unit such a number is read in, and in which it is settled; nullopt: it is a mistake.
  std::optional<UnitSystem> units{};
  /// What would settle it where it is not, as a person writes it: `units: inch`. Empty: nothing.
  std::string_view settled_by{};

  template <std::convertible_to<std::string_view> Text>
  Written(const Text& written) : text(written) {}  // NOLINT(google-explicit-constructor): read_length("5 in")
  Written(std::string_view written, std::optional<UnitSystem> system, std::string_view settles)
      : text(written), units(system), settled_by(settles) {}
  operator std::string_view() const { return text; }  // NOLINT(google-explicit-constructor)
  /// Another text, which stands in the same place.
  Written with(std::string_view other) const { return {other, units, settled_by}; }
};

/// Why a text is not the quantity that was asked for. `offset` is the byte of the text at which the mistake stands.
struct ReadError {
  std::string message;
  std::size_t offset = 0;
  std::string_view code = mistake::kWrongValue;
};

template <class T>
using Reading = std::variant<T, ReadError>;

/// Both ends belong to it.
template <class T>
struct Range {
  T low;
  T high;
};

}  // namespace riserun::quantity
