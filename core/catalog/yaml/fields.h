// Typed reading of a document's values, with the messages for what is wrong with them.
#pragma once

#include "catalog/yaml/problems.h"
#include "catalog/yaml/value.h"

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace riserun::catalog {

/// The text of a value; a problem when it is none. `what` names it in the message when the path does not.
std::optional<std::string_view> read_text(const Value& value, Problems& problems);
/// yes/no, true/false.
std::optional<bool> read_flag(const Value& value, Problems& problems);
/// A list of texts; a single text counts as a list of one.
std::vector<Value> read_texts(const Value& value, Problems& problems);
/// Items of a list; a problem when it is none.
std::vector<Value> read_list(const Value& value, Problems& problems);

/// A text through one of quantity/read.h's readers, with the document's units: a mistake is reported at its own column.
template <class Reader>
auto read_with(const Value& value, Reader reader, Problems& problems) {
  using Reading = decltype(reader(std::declval<const quantity::Written&>()));
  std::optional<std::variant_alternative_t<0, Reading>> result;
  if (!read_text(value, problems)) return result;
  Reading reading = reader(value.written());
  if (auto* good = std::get_if<0>(&reading)) {
    result = std::move(*good);
  } else {
    const auto& error = std::get<1>(reading);
    problems.add(value, value.path() + ": " + error.message, error.offset, error.code);
  }
  return result;
}

/// One map and what may stand in it. Reports unknown keys when made, and missing ones when they are needed.
class Fields {
 public:
  Fields(const Value& map, std::initializer_list<std::string_view> known, Problems& problems)
      : Fields(map, std::span(known.begin(), known.size()), problems) {}
  Fields(const Value& map, std::span<const std::string_view> known, Problems& problems);
  /// False when the value was no map at all; then every getter is silent.
  bool valid() const { return map_.is_map(); }
  const Value& map() const { return map_; }

  /// The value under the key; when it is missing or empty, that is a problem, and the result is missing.
  Value need(std::string_view key);
  /// The value under the key, or missing. An empty value is a problem.
  Value find(std::string_view key);

  std::string need_text(std::string_view key);
  std::string text_or(std::string_view key, std::string_view otherwise);
  bool flag_or(std::string_view key, bool otherwise);
  std::vector<std::string> texts(std::string_view key);
  std::vector<Value> need_list(std::string_view key);
  std::vector<Value> list(std::string_view key);

  template <class Reader>
  auto need_with(std::string_view key, Reader reader) {
    using Result =
        std::optional<std::variant_alternative_t<0, decltype(reader(std::declval<const quantity::Written&>()))>>;
    const Value value = need(key);
    return value.exists() ? read_with(value, reader, problems_) : Result{};
  }
  template <class Reader>
  auto find_with(std::string_view key, Reader reader) {
    using Result =
        std::optional<std::variant_alternative_t<0, decltype(reader(std::declval<const quantity::Written&>()))>>;
    const Value value = find(key);
    return value.exists() ? read_with(value, reader, problems_) : Result{};
  }
  /// One of a few words, each standing for a T.
  template <class T>
  std::optional<T> choice(const Value& value, std::initializer_list<std::pair<std::string_view, T>> choices) {
    return choice<T>(value, std::span(choices.begin(), choices.size()));
  }
  template <class T>
  std::optional<T> choice(const Value& value, std::span<const std::pair<std::string_view, T>> choices) {
    if (!value.exists()) return std::nullopt;
    std::vector<std::string_view> names;
    for (const auto& [name, meaning] : choices) names.push_back(name);
    const std::optional<std::size_t> place = choice(value, names);
    return place ? std::optional<T>(choices[*place].second) : std::nullopt;
  }
  /// The place of one of a few words.
  std::optional<std::size_t> choice(const Value& value, std::span<const std::string_view> words);

 private:
  void report_choice(const Value& value, std::span<const std::string_view> names);
  Value map_;
  Problems& problems_;
};

/// The file's key `units`; a problem when it is another word.
std::optional<quantity::UnitSystem> read_units(Fields& fields);

}  // namespace riserun::catalog
