// What stands in a field that a row of the table of askables is about: read, held against its range, given up, chosen.
#include "chain/ask/askable.h"
#include "quantity/write.h"

#include <algorithm>
#include <string>
#include <type_traits>

namespace riserun::chain {

namespace {

using quantity::Range;
using quantity::ReadError;
using quantity::Reading;

Reading<int> read_as(const quantity::Written& text, const int& /*kind*/) { return quantity::read_count(text); }
Reading<Length> read_as(const quantity::Written& text, const Length& /*kind*/) { return quantity::read_length(text); }
Reading<GaugePressure> read_as(const quantity::Written& text, const GaugePressure& /*kind*/) {
  return quantity::read_pressure(text);
}
Reading<Temperature> read_as(const quantity::Written& text, const Temperature& /*kind*/) {
  return quantity::read_temperature(text);
}

std::string as_text(int count) { return std::to_string(count); }
std::string as_text(Length length) { return quantity::write_long_length(length, UnitSystem::inch); }
std::string as_text(GaugePressure pressure) { return quantity::write_pressure_alone(pressure, UnitSystem::inch); }
std::string as_text(Temperature temperature) { return quantity::write_temperature(temperature, UnitSystem::inch); }

template <class T>
struct Held {
  using Value = T;
  static const T* value(const T& field) { return &field; }
};
template <class T>
struct Held<std::optional<T>> {
  using Value = T;
  static const T* value(const std::optional<T>& field) { return field ? &*field : nullptr; }
};

template <class T>
constexpr bool kIsRead = !std::is_same_v<T, bool> && !std::is_enum_v<T>;

/// Calls `use` with the row's field of these rules, if it has one there.
template <class Rules, class Use>
void with_field(Rules& rules, const Askable& row, Use use) {
  std::visit(
      [&](auto member) {
        if constexpr (std::is_invocable_v<decltype(member), Rules&>) use(rules.*member);
      },
      row.field);
}

/// Calls `use` with the row's field of these rules, if it is one that is read from a text.
template <class Rules, class Use>
void with_read_field(Rules& rules, const Askable& row, Use use) {
  with_field(rules, row, [&](auto& field) {
    using Value = typename Held<std::remove_cvref_t<decltype(field)>>::Value;
    if constexpr (kIsRead<Value>) use(field, Value{});
  });
}

template <class T>
Reading<T> in_range(const Askable& row, Reading<T> reading, const quantity::Written& text) {
  const auto* range = std::get_if<Range<T>>(&row.range);
  return range ? quantity::within(std::move(reading), *range, text) : std::move(reading);
}

template <class Rules>
std::optional<ReadError> read_field(Rules& rules, const Askable& row, const quantity::Written& text) {
  std::optional<ReadError> wrong;
  with_read_field(rules, row, [&](auto& field, const auto& kind) {
    using T = std::remove_cvref_t<decltype(kind)>;
    const Reading<T> reading = in_range<T>(row, read_as(text, kind), text);
    if (const T* value = std::get_if<T>(&reading))
      field = *value;
    else
      wrong = std::get<ReadError>(reading);
  });
  return wrong;
}

template <class Rules>
std::optional<ReadError> wrong_field(const Rules& rules, const Askable& row) {
  std::optional<ReadError> wrong;
  with_read_field(rules, row, [&](const auto& field, const auto& kind) {
    using T = std::remove_cvref_t<decltype(kind)>;
    const auto* range = std::get_if<Range<T>>(&row.range);
    const T* value = Held<std::remove_cvref_t<decltype(field)>>::value(field);
    if (!range || !value || (range->low <= *value && *value <= range->high)) return;
    wrong = std::get<ReadError>(in_range<T>(row, *value, as_text(*value)));
  });
  return wrong;
}

template <class Rules>
bool field_is_asked(const Rules& rules, const Askable& row) {
  bool asked = false;
  with_field(rules, row, [&](const auto& field) { asked = field != std::remove_cvref_t<decltype(field)>{}; });
  return asked;
}

template <class Rules>
void give_up_field(Rules& rules, const Askable& row) {
  with_field(rules, row, [](auto& field) { field = {}; });
}

template <class Rules>
void choose_field(Rules& rules, const Askable& row, std::size_t choice) {
  with_field(rules, row, [&](auto& field) {
    using T = std::remove_cvref_t<decltype(field)>;
    if constexpr (!kIsRead<T>) field = static_cast<T>(choice);
  });
}

}  // namespace

std::optional<ReadError> read_into(RunRules& rules, const Askable& row, const quantity::Written& text) {
  return read_field(rules, row, text);
}
std::optional<ReadError> read_into(WayRules& rules, const Askable& row, const quantity::Written& text) {
  return read_field(rules, row, text);
}
std::optional<ReadError> read_into(Span& span, const Askable& row, const quantity::Written& text) {
  return read_field(span, row, text);
}

std::optional<ReadError> out_of_range(const RunRules& rules, const Askable& row) { return wrong_field(rules, row); }
std::optional<ReadError> out_of_range(const WayRules& rules, const Askable& row) { return wrong_field(rules, row); }
std::optional<ReadError> out_of_range(const Span& span, const Askable& row) { return wrong_field(span, row); }

bool is_asked(const RunRules& rules, const Askable& row) { return field_is_asked(rules, row); }
bool is_asked(const WayRules& rules, const Askable& row) { return field_is_asked(rules, row); }
void give_up(RunRules& rules, const Askable& row) { give_up_field(rules, row); }
void give_up(WayRules& rules, const Askable& row) { give_up_field(rules, row); }

void choose(RunRules& rules, const Askable& row, std::size_t choice) { choose_field(rules, row, choice); }
void choose(WayRules& rules, const Askable& row, std::size_t choice) { choose_field(rules, row, choice); }

}  // namespace riserun::chain
