// Our own view of a YAML file. Stricter than YAML where YAML hides mistakes: repeated keys, a second document, a text
// that runs on over several lines, anchors and tags, an empty value. A file `.csv` is a table of a spreadsheet: a list
// of maps, one for each row, with the heads of its columns as keys.
#pragma once

#include "catalog/yaml/problems.h"
#include "catalog/yaml/value.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>

namespace riserun::catalog {

/// Whether that file is read as a table: its name ends in `.csv`.
bool is_table_file(const std::filesystem::path& path);

/// A parsed file. A file that cannot be parsed has its mistake in the Problems and a missing root.
class Document {
 public:
  /// Reads and parses the file. What is beyond the bounds of limits.h is refused, and so are characters
  /// that may not be printed (quantity/printable.h) other than tabs and line breaks between the texts.
  static Document load(const std::filesystem::path& path, Problems& problems);
  /// The same for a text; `name` stands for the file in messages.
  static Document parse(std::string text, std::string name, Problems& problems);

  Document(Document&&) noexcept;
  Document& operator=(Document&&) noexcept;
  ~Document();

  /// The outermost value; missing when the file could not be parsed, empty when it holds nothing.
  Value root() const;
  /// Whether it is a table: then its root is the list of its rows.
  bool is_table() const;

  /// From now on its numbers without a unit are in the system that its own key `units` names, or else in that one.
  /// @return that system; nullopt: there is none, and such a number is a mistake
  std::optional<quantity::UnitSystem> settle_units(std::optional<quantity::UnitSystem> otherwise = std::nullopt);

 private:
  explicit Document(std::unique_ptr<detail::DocumentData> data);
  std::unique_ptr<detail::DocumentData> data_;
};

}  // namespace riserun::catalog
