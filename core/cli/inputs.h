// What the verbs read: the catalog with the user's own files, the bin, and the words of single options. Every mistake
// on a command line is gathered and shown in one go.
#pragma once

#include "catalog/bin.h"
#include "catalog/catalog.h"
#include "catalog/words/port_notation.h"
#include "chain/ask/request.h"
#include "cli/command.h"
#include "plan/job/job.h"
#include "quantity/error_codes.h"
#include "quantity/input_error.h"
#include "quantity/read.h"

#include <iosfwd>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace riserun::cli {

struct Stock {
  std::shared_ptr<const catalog::Catalog> catalog;
  catalog::Bin bin;  // all of them
  std::vector<catalog::NamedBin> bins;
};

/// The shipped catalog with the files of --catalog and the bins of --bin, each called by the name of its file.
/// @throws InputError with every mistake in those files
Stock load_stock(const CommonOptions& common);

/// The job of that file; with the bins of --bin in place of its own where there are any, which is said on `err`.
/// @throws InputError with every mistake in it
plan::Job load_job(const Stock& stock, const std::string& file, std::ostream& err);

/// Gathers the mistakes of a command line's words.
class WordReader {
 public:
  WordReader() = default;  // where no option is a quantity
  explicit WordReader(const CommonOptions& common) : units_(units_given(common)) {}

  /// The option's quantity; nullopt when it was not given, or is wrong (then a problem is kept).
  template <class Reader>
  auto quantity(const std::string& option, const std::string& text, Reader reader) {
    std::optional<std::variant_alternative_t<0, decltype(reader(written(text)))>> result;
    if (text.empty()) return result;
    auto reading = reader(written(text));
    if (auto* value = std::get_if<0>(&reading)) {
      result = std::move(*value);
    } else {
      const auto& error = std::get<1>(reading);
      add(option, text, error.message, error.offset, error.code);
    }
    return result;
  }
  /// An option's text; a number in it that has no unit is in that of --units.
  quantity::Written written(std::string_view text) const { return {text, units_, "--units inch"}; }

  /// `1 FNPT`, or with what it is in: `1 FNPT aluminium`.
  catalog::MadePort port(const catalog::Catalog& catalog, const std::string& text);
  std::vector<catalog::PartId> parts(const catalog::Catalog& catalog, const std::string& option,
                                     const std::string& words);
  /// The same for a look into the catalog: all that the words fit.
  std::vector<catalog::PartId> all_parts(const catalog::Catalog& catalog, const std::string& option,
                                         const std::string& words);
  /// What is kept out by those words.
  chain::Avoidance avoidance(const catalog::Catalog& catalog, const std::string& option, const std::string& words);
  /// The material of that name; nullopt when the text is empty or names none (then a problem is kept).
  std::optional<catalog::MaterialId> material(const catalog::Catalog& catalog, const std::string& option,
                                              const std::string& text);
  /// One of the words of a list, by its place in it; the first when the text is empty.
  std::size_t choice(const std::string& option, const std::string& text, std::span<const std::string_view> words);

  void add(const std::string& option, const std::string& text, const std::string& message, std::size_t offset,
           std::string_view code = quantity::mistake::kWrongValue);
  /// @throws InputError with all that was gathered, if anything was
  void finish() const;

 private:
  /// Whether the words may be printed, as every answer must be; else a problem is kept.
  bool is_text(const std::string& option, const std::string& words);
  /// What was found, or nothing: then a problem is kept.
  std::vector<catalog::PartId> those_found(const std::string& option, const std::string& words,
                                           std::variant<std::vector<catalog::PartId>, catalog::NotationError> found);

  std::optional<UnitSystem> units_;
  std::vector<quantity::Problem> problems_;
};

}  // namespace riserun::cli
