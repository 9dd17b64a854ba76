// Reads a port's words one after the other. For core/catalog's own files only.
#pragma once

#include "catalog/catalog.h"
#include "catalog/words/port_vocabulary.h"
#include "catalog/words/words.h"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace riserun::catalog::detail {

/// Why the words are no port, as NotationError tells it.
struct PortError {
  std::string message;
  std::size_t offset = 0;
  std::vector<std::string> close;
};

/// The first eight of the names.
std::string some_of_ports(const std::vector<std::string>& names);

/// How generously the words are taken.
struct Leniency {
  bool slips = false;       // a mistyped word is the one that it must be
  bool size_first = false;  // a size stands between words that belong together: `G 1 swivel` is `1 G swivel`
};

class PortReader {
 public:
  PortReader(const Catalog& catalog, const PortVocabulary& vocabulary, std::string_view text, Leniency leniency);

  std::variant<PortTypeId, PortError> read();
  /// The same where it does not matter why there is no port: to say why takes far longer than to see that there is
  /// none.
  std::optional<PortTypeId> find();

 private:
  std::string example() const;
  std::string in_text(const Token& token) const;
  /// How many words from there have been understood; 0: the first was not.
  std::size_t take(std::size_t at);
  void correct(Token& token) const;
  void narrow(const KindEnds& means, const Token& first, const Token& last);
  /// `7/16-20`: twenty threads per inch behind the size.
  bool counts_threads(const Token& token) const;
  void take_size(const Token& token);
  void take_end(End end, const Token& token);
  PortError unknown_word(const Token& token) const;
  /// `15 mm copper`: no size, and what tubes are near.
  PortError in_millimetres() const;
  /// Of a cone a whole number that is no size is sixteenths of an inch, `JIC 8` (SAE J514 dash sizes, common practice).
  std::optional<SizeId> dash_size(const JointKind& kind) const;
  /// The row of the kind that the size names: by its name, or, of a straight thread, by its outside diameter, as in
  /// `7/16-20 37 flare`.
  const JointSize* row_of(const JointKind& kind) const;
  /// What of the ends comes in that size, as ports.
  std::vector<PortTypeId> in_size(const KindEnds& ends) const;
  std::vector<std::string> written(const std::vector<PortTypeId>& ports) const;
  KindEnds all_ends() const;
  /// What the words leave open, of the kinds that they name.
  KindEnds ends_said() const;
  std::optional<PortTypeId> the_one() const;
  std::variant<PortTypeId, PortError> decide() const;
  PortError no_kind(const KindEnds& ends) const;
  PortError no_such_end(const KindEnds& any_end) const;
  PortError no_size(const KindEnds& ends) const;
  PortError no_such_size(const KindEnds& ends) const;
  PortError several(const std::vector<PortTypeId>& ports) const;
  std::string kinds_text(const KindEnds& ends) const;

  const Catalog& catalog_;
  std::string_view text_;
  const PortVocabulary& vocabulary_;
  Leniency leniency_;
  std::vector<Token> tokens_;
  std::optional<KindEnds> kinds_;
  KindEnds usually_;
  std::optional<Token> size_;
  std::optional<double> per_inch_;  // threads
  bool by_outside_ = false;         // the size is said to be the diameter outside
  std::optional<End> end_;
  Token end_token_;
  std::optional<PortError> conflict_;
};

}  // namespace riserun::catalog::detail
