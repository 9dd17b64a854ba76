// Our own view of a YAML file: every value knows its file, line, column and the line it stands on, so that each mistake
// is reported at its place. Stricter than YAML where YAML hides mistakes: repeated keys, a second document, a text that
// runs on over several lines, anchors and tags, an empty value. All mistakes of an input are gathered in Problems and
// thrown together; nothing is ever half-loaded.
#pragma once

#include "quantity/input_error.h"

#include <cstdint>
#include <filesystem>
#include <initializer_list>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace riserun::catalog {

namespace detail {
struct DocumentData;
}

/// A value of a document: a text, a list or a map; or nothing at all, and then it still knows where it was looked for.
/// Light to copy; valid as long as its Document lives.
class Value {
 public:
  enum class Shape : std::uint8_t { missing, empty, text, list, map };

  Value() = default;
  Shape shape() const;
  bool exists() const { return shape() != Shape::missing; }
  bool is_text() const { return shape() == Shape::text; }
  bool is_list() const { return shape() == Shape::list; }
  bool is_map() const { return shape() == Shape::map; }

  /// The text as written, quotes resolved; empty for anything but a text.
  std::string_view text() const;
  /// Number of items of a list or of keys of a map.
  std::size_t size() const;
  /// Items of a list or values of a map, in the order of the file.
  std::vector<Value> items() const;
  /// Keys of a map with their values, in the order of the file.
  std::vector<std::pair<Value, Value>> entries() const;
  /// The value under that key of a map; missing when there is none.
  Value operator[](std::string_view key) const;

  const std::string& file() const;
  int line() const;    // 1-based; 0 for a value of no document
  int column() const;  // 1-based, in characters
  /// Byte of the text, counted without a byte order mark, at which it begins: of a text in quotes the quote, of a list
  /// its first `-` or `[`.
  std::size_t offset() const;
  std::string source_line() const;
  /// Where it stands in the document, list places counted from 1: `families[3].table.rows[2]`.
  std::string path() const;
  /// The problem with this value, ready to be gathered. `offset`: byte of the text() at which the mistake stands.
  quantity::Problem problem(std::string message, std::size_t offset = 0) const;

 private:
  friend class Document;
  friend struct detail::DocumentData;
  Value(const detail::DocumentData* data, std::uint32_t node) : data_(data), node_(node) {}
  const detail::DocumentData* data_ = nullptr;
  std::uint32_t node_ = 0;
  bool missing_ = false;  // looked for in the map `node_` and not found
};

/// Gathers all mistakes of an input.
class Problems {
 public:
  void add(quantity::Problem problem);
  void add(const Value& where, std::string message, std::size_t offset = 0) {
    add(where.problem(std::move(message), offset));
  }
  bool empty() const { return problems_.empty(); }
  std::size_t size() const { return problems_.size(); }
  std::span<const quantity::Problem> all() const { return problems_; }
  /// Takes over what another has gathered.
  void take(Problems other);
  /// Throws one InputError with every problem, in the order of files and lines; nothing when there is none.
  void throw_if_any() &&;

 private:
  std::vector<quantity::Problem> problems_;
};

/// A parsed file. A file that cannot be parsed has its mistake in the Problems and a missing root.
class Document {
 public:
  /// Reads and parses the file. Files beyond 16 MB, bytes that are not UTF-8 text and nesting beyond 32 are refused.
  static Document load(const std::filesystem::path& path, Problems& problems);
  /// The same for a text; `name` stands for the file in messages.
  static Document parse(std::string text, std::string name, Problems& problems);

  Document(Document&&) noexcept;
  Document& operator=(Document&&) noexcept;
  ~Document();

  /// The outermost value; missing when the file could not be parsed, empty when it holds nothing.
  Value root() const;

 private:
  explicit Document(std::unique_ptr<detail::DocumentData> data);
  std::unique_ptr<detail::DocumentData> data_;
};

/// The path and a colon, which a message begins with, or nothing at the top.
std::string at_path(const Value& value);

/// What is nearest to `word` among the names, if anything is near enough to have been meant (edit distance; a letter
/// swapped with its neighbour counts once, upper and lower case are the same).
std::optional<std::string_view> nearest_name(std::string_view word, std::span<const std::string_view> names);
/// Edit distance as above.
std::size_t edit_distance(std::string_view a, std::string_view b);
/// `"NTP"; did you mean "NPT"?`-style hint to append: `; did you mean 'NPT'?`, or nothing.
std::string did_you_mean(std::string_view word, std::span<const std::string_view> names);
/// `a, b or c`
std::string either_of(std::span<const std::string_view> names);

/// The text of a value; a problem when it is none. `what` names it in the message when the path does not.
std::optional<std::string_view> read_text(const Value& value, Problems& problems);
/// yes/no, true/false.
std::optional<bool> read_flag(const Value& value, Problems& problems);
/// A list of texts; a single text counts as a list of one.
std::vector<Value> read_texts(const Value& value, Problems& problems);
/// Items of a list; a problem when it is none.
std::vector<Value> read_list(const Value& value, Problems& problems);

/// A text through one of quantity/read.h's readers: a mistake is reported at its own column.
template <class Reader>
auto read_with(const Value& value, Reader reader, Problems& problems) {
  using Reading = decltype(reader(std::string_view{}));
  std::optional<std::variant_alternative_t<0, Reading>> result;
  const std::optional<std::string_view> text = read_text(value, problems);
  if (!text) return result;
  Reading reading = reader(*text);
  if (auto* good = std::get_if<0>(&reading)) {
    result = std::move(*good);
  } else {
    const auto& error = std::get<1>(reading);
    problems.add(value, value.path() + ": " + error.message, error.offset);
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
    using Result = std::optional<std::variant_alternative_t<0, decltype(reader(std::string_view{}))>>;
    const Value value = need(key);
    return value.exists() ? read_with(value, reader, problems_) : Result{};
  }
  template <class Reader>
  auto find_with(std::string_view key, Reader reader) {
    using Result = std::optional<std::variant_alternative_t<0, decltype(reader(std::string_view{}))>>;
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
    return place ? std::optional<T>((choices.begin() + *place)->second) : std::nullopt;
  }
  /// The place of one of a few words.
  std::optional<std::size_t> choice(const Value& value, std::span<const std::string_view> words);

 private:
  void report_choice(const Value& value, std::span<const std::string_view> names);
  Value map_;
  Problems& problems_;
};

}  // namespace riserun::catalog
