// Typed reading of a document's values, with the messages for what is wrong with them.
#include "catalog/yaml/document.h"

#include <algorithm>
#include <cctype>

namespace riserun::catalog {

namespace {

char lower(char c) { return static_cast<char>(std::tolower(static_cast<unsigned char>(c))); }

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
      value, at_path(value) + std::string(wanted) + " is expected here, not " + std::string(shape_name(value.shape())));
}

}  // namespace

std::string at_path(const Value& value) {
  const std::string path = value.path();
  return path.empty() ? path : path + ": ";
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  // Three rows of the table of optimal string alignment: the one being filled and the two above it.
  std::vector<std::size_t> two_up(b.size() + 1), up(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) up[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const bool same = lower(a[i - 1]) == lower(b[j - 1]);
      row[j] = std::min({up[j] + 1, row[j - 1] + 1, up[j - 1] + (same ? 0 : 1)});
      const bool swapped = i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) && lower(a[i - 2]) == lower(b[j - 1]);
      if (swapped) row[j] = std::min(row[j], two_up[j - 2] + 1);
    }
    std::swap(two_up, up);
    std::swap(up, row);
  }
  return up[b.size()];
}

std::optional<std::string_view> nearest_name(std::string_view word, std::span<const std::string_view> names) {
  constexpr std::size_t kLongestWord = 64;  // longer is no mistyped name
  if (word.size() > kLongestWord) return std::nullopt;
  std::optional<std::string_view> best;
  std::size_t least = 0;
  for (const std::string_view name : names) {
    const std::size_t distance = edit_distance(word, name);
    const std::size_t allowed = std::max<std::size_t>(1, std::max(word.size(), name.size()) / 3);
    if (distance > allowed || distance >= name.size() || (best && distance >= least)) continue;
    best = name;
    least = distance;
  }
  return best;
}

std::string did_you_mean(std::string_view word, std::span<const std::string_view> names) {
  const std::optional<std::string_view> near = nearest_name(word, names);
  return near ? "; did you mean '" + std::string(*near) + "'?" : std::string();
}

std::string either_of(std::span<const std::string_view> names) {
  std::string result;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) result += i + 1 == names.size() ? " or " : ", ";
    result += names[i];
  }
  return result;
}

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
  problems.add(value, at_path(value) + "'" + std::string(*text) + "' is neither yes nor no");
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
    problems.add(key, at_path(map) + "unknown key '" + std::string(name) + "'" + did_you_mean(name, names) +
                          " (allowed: " + either_of(names) + ")");
  }
}

Value Fields::find(std::string_view key) {
  if (!valid()) return {};
  const Value value = map_[key];
  if (value.shape() != Value::Shape::empty) return value;
  problems_.add(value, at_path(value) + "has no value");
  return {};
}

Value Fields::need(std::string_view key) {
  if (!valid()) return {};
  if (!map_[key].exists()) {
    problems_.add(map_, at_path(map_) + "'" + std::string(key) + "' is missing");
    return {};
  }
  return find(key);
}

std::string Fields::need_text(std::string_view key) {
  const std::optional<std::string_view> text = read_text(need(key), problems_);
  if (text && text->empty()) problems_.add(map_[key], at_path(map_[key]) + "is an empty text");
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

void Fields::report_choice(const Value& value, std::span<const std::string_view> names) {
  problems_.add(value, at_path(value) + "'" + std::string(value.text()) + "' is not one of " + either_of(names) +
                           did_you_mean(value.text(), names));
}

}  // namespace riserun::catalog
