// A value of a YAML file, which knows its file, line, column and the line it stands on, so that each mistake is
// reported at its place.
#pragma once

#include "catalog/yaml/document_data.h"
#include "quantity/input_error.h"
#include "quantity/reading.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace riserun::catalog {

/// A value of a document: a text, a list or a map; or nothing at all, and then it still knows where it was looked for.
/// Light to copy; valid as long as its Document lives.
class Value {
 public:
  using Shape = detail::Shape;

  Value() = default;
  Shape shape() const;
  bool exists() const { return shape() != Shape::missing; }
  bool is_text() const { return shape() == Shape::text; }
  bool is_list() const { return shape() == Shape::list; }
  bool is_map() const { return shape() == Shape::map; }

  /// The text as written, quotes resolved; empty for anything but a text.
  std::string_view text() const;
  /// The same for a reader of quantities: a number without a unit is in that of the document.
  quantity::Written written() const;
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
  Value(const detail::DocumentData* data, std::uint32_t node) : data_(data), node_(node) {}
  const detail::DocumentData* data_ = nullptr;
  std::uint32_t node_ = 0;
  bool missing_ = false;  // looked for in the map `node_` and not found
};

/// The path and a colon, which a message begins with, or nothing at the top.
std::string at_path(const Value& value);

}  // namespace riserun::catalog
