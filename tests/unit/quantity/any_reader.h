// Every reader as one type of function, so that a table of tests can name it: text in, SI value or message out.
#pragma once

#include "quantity/read.h"

#include <string>
#include <string_view>
#include <type_traits>
#include <variant>

namespace riserun::quantity {

using AnyReader = Reading<double> (*)(std::string_view);

template <class T>
double in_si_units(const T& value) {
  if constexpr (std::is_arithmetic_v<T>) {
    return value;
  } else if constexpr (std::is_same_v<T, Price>) {
    return static_cast<double>(value.cents());
  } else if constexpr (requires { value.in_si(); }) {
    return value.in_si();
  } else {
    return value.value();
  }
}

template <auto reader>
Reading<double> any(std::string_view text) {
  const auto reading = reader(text);
  if (const auto* error = std::get_if<ReadError>(&reading)) return *error;
  return in_si_units(std::get<0>(reading));
}

/// A size name has no value: its sixteenths are counted from the name by the tests of sizes; here only its error
/// counts.
inline Reading<double> any_size_name(std::string_view text) {
  const auto reading = read_size_name(text);
  if (const auto* error = std::get_if<ReadError>(&reading)) return *error;
  return 0.0;
}

inline constexpr AnyReader kLength = any<&read_length>;

}  // namespace riserun::quantity
