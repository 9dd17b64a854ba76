// Reads a port the way people write it, generously: `1 FNPT`, `1" FIP`, `1 in female NPT`, `1 1/4 MIP`, `3/4 GHT male`,
// `1/2 barb`, `G 1/2 female`. Upper and lower case are the same, and the words may stand in any order that leaves one
// meaning. Which words there are is the catalog's data. It is written one way: Catalog::written.
#pragma once

#include "catalog/catalog.h"

#include <memory>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace riserun::catalog {

/// Why a text is no port. `close`: what may have been meant, as Catalog::written writes it or, for a word, the word;
/// the message lists them too.
struct NotationError {
  std::string message;
  std::size_t offset = 0;  // byte of the text at which the word stands that was not understood
  std::vector<std::string> close;
};

/// The port that the text names. `SIZE KIND END` as Catalog::spelled prints it, and what Catalog::written prints, are
/// always read.
std::variant<PortTypeId, NotationError> read_port(const Catalog& catalog, std::string_view text);

namespace detail {
class PortVocabulary;
}

/// The same for many texts: the catalog's words are gathered once. The catalog must outlive it.
class PortNotation {
 public:
  explicit PortNotation(const Catalog& catalog);
  ~PortNotation();
  std::variant<PortTypeId, NotationError> read(std::string_view text) const;

 private:
  const Catalog& catalog_;
  std::unique_ptr<const detail::PortVocabulary> vocabulary_;
};

}  // namespace riserun::catalog
