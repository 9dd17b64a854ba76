// What the verbs read: the catalog with the user's own files, the bin, and the words of single options. Every mistake
// on a command line is gathered and shown in one go.
#pragma once

#include "catalog/bin.h"
#include "catalog/catalog.h"
#include "catalog/words/port_notation.h"
#include "chain/ask/request.h"
#include "cli/command.h"
#include "quantity/input_error.h"
#include "quantity/read.h"

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::cli {

struct Stock {
  std::shared_ptr<const catalog::Catalog> catalog;
  catalog::Bin bin;
};

/// The shipped catalog with the files of --catalog and the bin of --bin.
/// @throws InputError with every mistake in those files
Stock load_stock(const CommonOptions& common);

/// Gathers the mistakes of a command line's words.
class WordReader {
 public:
  /// The option's quantity; nullopt when it was not given, or is wrong (then a problem is kept).
  template <class T>
  std::optional<T> quantity(const std::string& option, const std::string& text,
                            quantity::Reading<T> (*reader)(std::string_view)) {
    if (text.empty()) return std::nullopt;
    auto reading = reader(text);
    if (T* value = std::get_if<T>(&reading)) return *value;
    const auto& error = std::get<quantity::ReadError>(reading);
    add(option, text, error.message, error.offset);
    return std::nullopt;
  }

  /// `1 FNPT`, or with what it is in: `1 FNPT aluminium`.
  catalog::MadePort port(const catalog::Catalog& catalog, const std::string& text);
  std::vector<catalog::PartId> parts(const catalog::Catalog& catalog, const std::string& option,
                                     const std::string& words);
  /// What is kept out by those words.
  chain::Avoidance avoidance(const catalog::Catalog& catalog, const std::string& option, const std::string& words);
  /// The material of that name; nullopt when the text is empty or names none (then a problem is kept).
  std::optional<catalog::MaterialId> material(const catalog::Catalog& catalog, const std::string& option,
                                              const std::string& text);
  /// One of the words of a list, by its place in it; the first when the text is empty.
  std::size_t choice(const std::string& option, const std::string& text, std::span<const std::string_view> words);

  void add(const std::string& option, const std::string& text, const std::string& message, std::size_t offset);
  /// @throws InputError with all that was gathered, if anything was
  void finish() const;

 private:
  /// Whether the words may be printed, as every answer must be; else a problem is kept.
  bool is_text(const std::string& option, const std::string& words);

  std::vector<quantity::Problem> problems_;
};

}  // namespace riserun::cli
