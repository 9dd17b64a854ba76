// Reads a port the way people write it, generously: `1 FNPT`, `1" FIP`, `1 in female NPT`, `1 1/4 MIP`, `3/4 GHT male`,
// `1/2 barb`, `G 1/2 female`. Upper and lower case are the same, and the words may stand in any order that leaves one
// meaning. Which words there are is the catalog's data. It is written one way: Catalog::written.
#pragma once

#include "catalog/catalog.h"
#include "quantity/error_codes.h"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace riserun::catalog {

/// Why a text is no port. `close`: what may have been meant, as Catalog::written writes it or, for a word, the word;
/// the message lists them too; `code` is of quantity/error_codes.h.
struct NotationError {
  std::string message;
  std::size_t offset = 0;  // byte of the text at which the word stands that was not understood
  std::vector<std::string> close;
  std::string_view code = quantity::mistake::kUnknownPart;
};

/// The port that the text names. `SIZE KIND END` as Catalog::spelled prints it, and what Catalog::written prints, are
/// always read.
std::variant<PortTypeId, NotationError> read_port(const Catalog& catalog, std::string_view text);

/// A port, and what the thing that has it is made of where that is said.
struct MadePort {
  PortTypeId type;
  std::optional<MaterialId> material;
};

/// `1 FNPT aluminium`, `brass 3/4 MGHT`: a port with the material before or behind it, or a port alone.
std::variant<MadePort, NotationError> read_made_port(const Catalog& catalog, std::string_view text);

namespace detail {
class PortVocabulary;
}

/// The same for many texts: the catalog's words are gathered once. The catalog must outlive it.
class PortNotation {
 public:
  explicit PortNotation(const Catalog& catalog);
  ~PortNotation();
  /// A mistyped word is taken for the one that it must be, where only one is near.
  std::variant<PortTypeId, NotationError> read(std::string_view text) const;
  /// As read, for whoever does not ask why a text is no port.
  std::optional<PortTypeId> find(std::string_view text) const;
  std::variant<MadePort, NotationError> read_made(std::string_view text) const;

 private:
  std::variant<PortTypeId, NotationError> read_letter_by_letter(std::string_view text) const;

  const Catalog& catalog_;
  std::unique_ptr<const detail::PortVocabulary> vocabulary_;
};

}  // namespace riserun::catalog
