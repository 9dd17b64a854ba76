#include "catalog/yaml/fields.h"

#include "catalog/yaml/nearest_name.h"

#include <algorithm>

namespace riserun::catalog {

namespace mistake = quantity::mistake;

namespace {

std::string_view shape_name(Value::Shape shape) {
  switch (shape) {
    case Value::Shape::text:
      return "a text";
    case Value::Shape::list:
      return "a list";
    case Value::Shape::map:
      return "a map of keys";
    case Value::Shape::empty:
      return "nothing";
    case Value::Shape::missing:
      return "missing";
  }
  return "something else";
}

void report_shape(const Value& value, std::string_view wanted, Problems& problems) {
  if (!value.exists()) return;  // whoever looked for it has said so
  problems.add(
      value, at_path(value) + std::string(wanted) + " is expected here, not " + std::string(shape_name(value.shape())),
      0, mistake::kWrongShape);
}

}  // namespace

std::optional<std::string_view> read_text(const Value& value, Problems& problems) {
  if (value.is_text()) return value.text();
  report_shape(value, "a text", problems);
  return std::nullopt;
}

std::optional<bool> read_flag(const Value& value, Problems& problems) {
  const std::optional<std::string_view> text = read_text(value, problems);
  if (!text) return std::nullopt;
  if (*text == "yes" || *text == "true") return true;
  if (*text == "no" || *text == "false") return false;
  problems.add(value, at_path(value) + "'" + std::string(*text) + "' is neither yes nor no", 0, mistake::kNotOneOf);
  return std::nullopt;
}

std::vector<Value> read_list(const Value& value, Problems& problems) {
  if (value.is_list()) return value.items();
  report_shape(value, "a list", problems);
  return {};
}

std::vector<Value> read_texts(const Value& value, Problems& problems) {
  if (value.is_text()) return {value};
  std::vector<Value> result;
  for (const Value& item : read_list(value, problems))
    if (read_text(item, problems)) result.push_back(item);
  return result;
}

Fields::Fields(const Value& map, std::span<const std::string_view> names, Problems& problems)
    : map_(map), problems_(problems) {
  if (!map.is_map()) {
    report_shape(map, "a map of keys", problems);
    return;
  }
  for (const auto& [key, value] : map.entries()) {
    const std::string_view name = key.text();
    if (std::find(names.begin(), names.end(), name) != names.end()) continue;
    problems.add(key,
                 at_path(map) + "unknown key '" + std::string(name) + "'" + did_you_mean(name, names) +
                     " (allowed: " + either_of(names) + ")",
                 0, mistake::kUnknownKey);
  }
}

Value Fields::find(std::string_view key) {
  if (!valid()) return {};
  const Value value = map_[key];
  if (value.shape() != Value::Shape::empty) return value;
  problems_.add(value, at_path(value) + "has no value", 0, mistake::kEmptyKey);
  return {};
}

Value Fields::need(std::string_view key) {
  if (!valid()) return {};
  if (!map_[key].exists()) {
    problems_.add(map_, at_path(map_) + "'" + std::string(key) + "' is missing", 0, mistake::kMissingKey);
    return {};
  }
  return find(key);
}

std::string Fields::need_text(std::string_view key) {
  const std::optional<std::string_view> text = read_text(need(key), problems_);
  if (text && text->empty()) problems_.add(map_[key], at_path(map_[key]) + "is an empty text", 0, mistake::kEmptyKey);
  return std::string(text.value_or(""));
}

std::string Fields::text_or(std::string_view key, std::string_view otherwise) {
  return std::string(read_text(find(key), problems_).value_or(otherwise));
}

bool Fields::flag_or(std::string_view key, bool otherwise) {
  return read_flag(find(key), problems_).value_or(otherwise);
}

std::vector<std::string> Fields::texts(std::string_view key) {
  std::vector<std::string> result;
  for (const Value& value : read_texts(find(key), problems_)) result.emplace_back(value.text());
  return result;
}

std::vector<Value> Fields::need_list(std::string_view key) { return read_list(need(key), problems_); }
std::vector<Value> Fields::list(std::string_view key) { return read_list(find(key), problems_); }

std::optional<std::size_t> Fields::choice(const Value& value, std::span<const std::string_view> words) {
  if (!value.exists()) return std::nullopt;
  const std::optional<std::string_view> text = read_text(value, problems_);
  if (!text) return std::nullopt;
  const auto word = std::find(words.begin(), words.end(), *text);
  if (word != words.end()) return static_cast<std::size_t>(word - words.begin());
  report_choice(value, words);
  return std::nullopt;
}

std::optional<quantity::UnitSystem> read_units(Fields& fields) {
  using quantity::UnitSystem;
  return fields.choice<UnitSystem>(fields.find("units"), {{"inch", UnitSystem::inch}, {"metric", UnitSystem::metric}});
}

void Fields::report_choice(const Value& value, std::span<const std::string_view> names) {
  problems_.add(value,
                at_path(value) + "'" + std::string(value.text()) + "' is not one of " + either_of(names) +
                    did_you_mean(value.text(), names),
                0, mistake::kNotOneOf);
}

}  // namespace riserun::catalog
