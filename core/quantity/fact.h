// What is to be said, before it is put into words: a code and the values that fill its sentence. The solver, the
// physics and the plan make facts; core/report alone turns them into sentences, once, in the units asked for.
#pragma once

#include "quantity/quantities.h"

#include <concepts>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace riserun::quantity {

struct Fact;

using Texts = std::vector<std::string>;  // names in a row
using Facts = std::vector<Fact>;         // facts within a fact, in their order

/// What fills a place of a sentence: a name, a count, a bare number, a quantity, or what is itself to be put into
/// words.
using Value = std::variant<std::string, std::int64_t, double, Length, Area, Volume, Time, Velocity, Mass, Force, Energy,
                           Power, VolumeFlow, PressureDifference, Stress, Head, TemperatureDifference, GaugePressure,
                           AbsolutePressure, Temperature, Price, Texts, Facts>;

struct Fact {
  std::string_view code;      // a literal, "metals_meet": its sentence stands under it in core/report/words
  std::vector<Value> values;  // in the order in which the sentence numbers them

  bool operator==(const Fact&) const = default;
};

/// Sets a value as a fact holds it: whole numbers of any width are counts, literals are names, a single fact is a row
/// of one. In place: a run that is offered has a fact for each of its steps.
template <class T>
void set_value(Value& at, T&& value) {
  using Bare = std::remove_cvref_t<T>;
  if constexpr (std::same_as<Bare, Fact>)
    at.emplace<Facts>().push_back(std::forward<T>(value));
  else if constexpr (std::integral<Bare>)
    at.emplace<std::int64_t>(static_cast<std::int64_t>(value));
  else if constexpr (std::convertible_to<Bare, std::string_view>)
    at.emplace<std::string>(std::forward<T>(value));
  else
    at = std::forward<T>(value);
}

template <class T>
Value value_of(T&& value) {
  Value made;
  set_value(made, std::forward<T>(value));
  return made;
}

/// `fact("smallest_bore", bore)`.
template <class... Parts>
Fact fact(std::string_view code, Parts&&... values) {
  Fact made{code, {}};
  made.values.reserve(sizeof...(values));
  (set_value(made.values.emplace_back(), std::forward<Parts>(values)), ...);
  return made;
}

}  // namespace riserun::quantity
