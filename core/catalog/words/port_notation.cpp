#include "catalog/words/port_notation.h"

#include "catalog/words/port_vocabulary.h"
#include "catalog/words/words.h"
#include "catalog/yaml/nearest_name.h"
#include "quantity/read.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace riserun::catalog {

namespace {

constexpr std::size_t kMostPortsListed = 8;
constexpr std::size_t kLongestText = 200;

constexpr std::string_view kIdlePortWords[] = {"in",  "inch", "inches", "thread",   "threads", "threaded",
                                               "end", "ends", "port",   "size",     "nominal", "nps",
                                               "a",   "an",   "the",    "nominally"};

bool idle_in_port(std::string_view word) {
  return std::find(std::begin(kIdlePortWords), std::end(kIdlePortWords), word) != std::end(kIdlePortWords);
}

bool digits_alone(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789.") == std::string_view::npos;
}

std::string listed(const std::vector<std::string>& names) {
  const std::vector<std::string_view> views(names.begin(), names.end());
  if (views.size() <= kMostPortsListed) return either_of(views);
  std::string result;
  for (std::size_t i = 0; i < kMostPortsListed; ++i) result += (i == 0 ? "" : ", ") + names[i];
  return result + " ...";
}

using Vocabulary = detail::PortVocabulary;

class PortReader {
 public:
  /// @param slips  whether a mistyped word is taken for the one that it must be
  PortReader(const Catalog& catalog, const Vocabulary& vocabulary, std::string_view text, bool slips)
      : catalog_(catalog), text_(text), vocabulary_(vocabulary), slips_(slips), tokens_(split_words(text)) {}

  std::variant<PortTypeId, NotationError> read() {
    if (tokens_.empty()) return NotationError{"a port is expected, as in '" + example() + "'", 0, {}};
    if (slips_)
      for (Token& token : tokens_) correct(token);
    for (std::size_t at = 0; at < tokens_.size();) {
      const std::size_t used = take(at);
      if (used == 0) return unknown_word(tokens_[at]);
      if (conflict_) return *conflict_;
      at += used;
    }
    return decide();
  }

  /// The same where it does not matter why there is no port: to say why takes far longer than to see that there is
  /// none.
  std::optional<PortTypeId> find() {
    if (slips_)
      for (Token& token : tokens_) correct(token);
    for (std::size_t at = 0; at < tokens_.size();) {
      const std::size_t used = take(at);
      if (used == 0 || conflict_) return std::nullopt;
      at += used;
    }
    return the_one();
  }

 private:
  std::string example() const { return catalog_.port_types().empty() ? "1 FNPT" : catalog_.written(PortTypeId{0}); }
  std::string in_text(const Token& token) const {
    return "'" + std::string(text_.substr(token.offset, token.length)) + "'";
  }

  /// How many words from there have been understood; 0: the first was not.
  std::size_t take(std::size_t at) {
    const std::span<const Token> rest = std::span(tokens_).subspan(at);
    const Token& token = tokens_[at];
    if (const Phrase* phrase = vocabulary_.longest_at(rest)) {
      narrow(phrase->means, token, rest[phrase->words.size() - 1]);
      usually_.insert(phrase->usually.begin(), phrase->usually.end());
      return phrase->words.size();
    }
    if (token.is_size) {
      take_size(token);
    } else if (const std::optional<End> end = end_of_word(token.text)) {
      take_end(*end, token);
    } else if (const std::optional<KindEnds> means = vocabulary_.with_end_letter(token)) {
      narrow(*means, token, token);
    } else if (!idle_in_port(token.text)) {
      return 0;
    }
    return 1;
  }

  void correct(Token& token) const {
    const std::vector<std::string>& known = vocabulary_.words();
    if (token.is_size || idle_in_port(token.text) || end_of_word(token.text) || vocabulary_.with_end_letter(token) ||
        std::binary_search(known.begin(), known.end(), token.text))
      return;
    std::vector<std::string> meant = meant_by(token.text, known);
    if (meant.size() == 1) token.text = std::move(meant.front());
  }

  void narrow(const KindEnds& means, const Token& first, const Token& last) {
    KindEnds both;
    if (!kinds_) {
      both = means;
    } else {
      std::set_intersection(kinds_->begin(), kinds_->end(), means.begin(), means.end(),
                            std::inserter(both, both.end()));
    }
    if (both.empty()) {
      const std::string words(text_.substr(first.offset, last.offset + last.length - first.offset));
      conflict_ = NotationError{"'" + words + "' does not go with what stands before it", first.offset, {}};
    }
    kinds_ = both;
  }

  /// `7/16-20`: twenty threads per inch behind the size.
  bool counts_threads(const Token& token) const {
    return size_ && !per_inch_ && token.offset == size_->offset + size_->length + 1 && text_[token.offset - 1] == '-' &&
           digits_alone(text_.substr(token.offset, token.length));
  }

  void take_size(const Token& token) {
    if (counts_threads(token)) {
      per_inch_ = std::get<double>(quantity::read_number(text_.substr(token.offset, token.length)));
      return;
    }
    if (size_ && size_->text != token.text)
      conflict_ = NotationError{
          "two sizes, " + in_text(*size_) + " and " + in_text(token) + ": a port has one", token.offset, {}};
    size_ = token;
  }

  void take_end(End end, const Token& token) {
    if (end_ && *end_ != end)
      conflict_ = NotationError{in_text(token) + " does not go with what stands before it", token.offset, {}};
    end_ = end;
    end_token_ = token;
  }

  NotationError unknown_word(const Token& token) const {
    std::vector<std::string> close = vocabulary_.close_to(token.text);
    std::string message = in_text(token) + " is not understood";
    if (!close.empty()) {
      message += "; close to it: " + listed(close);
    } else {
      message += "; a port is a size, a kind of joint and an end, as in '" + example() + "'";
    }
    return {std::move(message), token.offset, std::move(close)};
  }

  /// The row of the kind that the size names: by its name, or, of a straight thread, by its outside diameter, as in
  /// `7/16-20 37 flare`.
  const JointSize* row_of(const JointKind& kind) const {
    const auto counts = [&](const JointSize& row) { return !per_inch_ || row.threads_per_inch == *per_inch_; };
    for (const JointSize& row : kind.sizes)
      if (catalog_.size_name(row.size) == size_->text && counts(row)) return &row;
    const quantity::Reading<double> across = quantity::read_number(size_->text);
    if (!kind.threaded || kind.tapered || !std::holds_alternative<double>(across)) return nullptr;
    for (const JointSize& row : kind.sizes)
      if (std::abs(in_inches(row.outside_diameter) - std::get<double>(across)) < 1e-4 && counts(row)) return &row;
    return nullptr;
  }

  /// What of the ends comes in that size, as ports.
  std::vector<PortTypeId> in_size(const KindEnds& ends) const {
    std::vector<PortTypeId> ports;
    if (!size_) return ports;
    for (const KindEnd& one : ends)
      if (const JointSize* row = row_of(catalog_.kind(one.kind)))
        if (const auto port = catalog_.find_port_type({one.kind, row->size, one.end})) ports.push_back(*port);
    return ports;
  }

  std::vector<std::string> written(const std::vector<PortTypeId>& ports) const {
    std::vector<std::string> result;
    for (const PortTypeId port : ports) result.push_back(catalog_.written(port));
    return result;
  }

  KindEnds all_ends() const {
    KindEnds all;
    for (std::uint32_t row = 0; row < catalog_.kinds().size(); ++row) all.merge(vocabulary_.ends_of(KindId{row}));
    return all;
  }

  /// What the words leave open, of the kinds that they name.
  KindEnds ends_said() const {
    KindEnds ends = kinds_ ? *kinds_ : all_ends();
    if (end_) std::erase_if(ends, [&](const KindEnd& one) { return one.end != *end_; });
    return ends;
  }

  std::optional<PortTypeId> the_one() const {
    if (!kinds_ || !size_) return std::nullopt;
    KindEnds ends = ends_said();
    const std::vector<PortTypeId> ports = in_size(ends);
    if (ports.size() == 1) return ports.front();
    if (end_ || ports.empty()) return std::nullopt;
    std::erase_if(ends, [&](const KindEnd& one) { return !usually_.contains(one); });
    const std::vector<PortTypeId> usual = in_size(ends);
    return usual.size() == 1 ? std::optional(usual.front()) : std::nullopt;
  }

  std::variant<PortTypeId, NotationError> decide() const {
    if (const std::optional<PortTypeId> port = the_one()) return *port;
    KindEnds ends = ends_said();
    if (!kinds_) return no_kind(ends);
    if (ends.empty()) return no_such_end(*kinds_);
    if (!size_) return no_size(ends);
    const std::vector<PortTypeId> ports = in_size(ends);
    if (ports.empty()) return no_such_size(ends);
    return several(ports);
  }

  NotationError no_kind(const KindEnds& ends) const {
    std::vector<std::string> close = written(in_size(ends));
    std::string message = "the kind of joint is missing";
    if (!close.empty()) message += "; it could be " + listed(close);
    return {std::move(message), text_.size(), std::move(close)};
  }

  NotationError no_such_end(const KindEnds& any_end) const {
    std::vector<std::string> close = written(in_size(any_end));
    std::string message = in_text(end_token_) + ": there is no such end of " + kinds_text(any_end);
    if (!close.empty()) message += "; there is " + listed(close);
    return {std::move(message), end_token_.offset, std::move(close)};
  }

  NotationError no_size(const KindEnds& ends) const {
    std::vector<std::string> close;
    for (const KindEnd& one : ends)
      for (const JointSize& size : catalog_.kind(one.kind).sizes) {
        const std::string& name = catalog_.size_name(size.size);
        if (std::find(close.begin(), close.end(), name) == close.end()) close.push_back(name);
      }
    return {"the size is missing; " + kinds_text(ends) + " comes in " + listed(close), text_.size(), close};
  }

  NotationError no_such_size(const KindEnds& ends) const {
    NotationError error = no_size(ends);
    error.message =
        in_text(*size_) + " is not a size of " + kinds_text(ends) + ", which comes in " + listed(error.close);
    error.offset = size_->offset;
    return error;
  }

  NotationError several(const std::vector<PortTypeId>& ports) const {
    std::vector<std::string> close = written(ports);
    const auto same_kind = [&](PortTypeId port) {
      return catalog_.port_type(port).kind == catalog_.port_type(ports.front()).kind;
    };
    const bool only_end = std::all_of(ports.begin(), ports.end(), same_kind);
    std::string message = (only_end ? "the end is missing: " : "this can be read in several ways: ") + listed(close);
    return {std::move(message), only_end ? text_.size() : 0, std::move(close)};
  }

  std::string kinds_text(const KindEnds& ends) const {
    std::vector<std::string> names;
    for (const KindEnd& one : ends) {
      const std::string& name = catalog_.kind(one.kind).name;
      if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    return listed(names);
  }

  const Catalog& catalog_;
  std::string_view text_;
  const Vocabulary& vocabulary_;
  bool slips_;
  std::vector<Token> tokens_;
  std::optional<KindEnds> kinds_;
  KindEnds usually_;
  std::optional<Token> size_;
  std::optional<double> per_inch_;  // threads
  std::optional<End> end_;
  Token end_token_;
  std::optional<NotationError> conflict_;
};

/// Without blanks around, one blank between, lower case.
std::string one_way(std::string_view text) {
  std::string result;
  for (const char c : text) {
    if (c == ' ' && (result.empty() || result.back() == ' ')) continue;
    result += c;
  }
  while (!result.empty() && result.back() == ' ') result.pop_back();
  return lower_case(result);
}

/// What Catalog::written and Catalog::spelled print.
std::optional<PortTypeId> read_exactly(const Catalog& catalog, const Vocabulary& vocabulary, std::string_view text) {
  const std::string whole = one_way(text);
  for (const detail::PrintedEnd& printed : vocabulary.printed_ends()) {
    if (!whole.ends_with(printed.words)) continue;
    const std::optional<SizeId> size =
        catalog.find_size(std::string_view(whole).substr(0, whole.size() - printed.words.size()));
    if (!size) continue;
    if (const auto port = catalog.find_port_type({printed.which.kind, *size, printed.which.end})) return port;
  }
  return std::nullopt;
}

/// A material that a text begins or ends with, and what is left of the text.
struct MaterialWords {
  MaterialId material;
  std::size_t words = 0;
  std::string_view rest;
};

/// The longest name first: `1 FNPT stainless steel`.
std::vector<MaterialWords> materials_said(const Catalog& catalog, std::string_view text) {
  const std::vector<Token> tokens = split_words(text);
  std::vector<MaterialWords> said;
  const auto same = [](const Token& a, const Token& b) { return a.text == b.text; };
  const auto look = [&](MaterialId id, std::string_view name) {
    const std::vector<Token> words = split_words(name);
    if (words.empty() || words.size() >= tokens.size()) return;
    const std::size_t left = tokens.size() - words.size();
    if (std::equal(words.begin(), words.end(), tokens.begin() + static_cast<std::ptrdiff_t>(left), same))
      said.push_back({id, words.size(), text.substr(0, tokens[left].offset)});
    if (std::equal(words.begin(), words.end(), tokens.begin(), same))
      said.push_back({id, words.size(), text.substr(tokens[words.size()].offset)});
  };
  for (std::uint32_t row = 0; row < catalog.materials().size(); ++row) {
    const Material& material = catalog.materials()[row];
    look({row}, material.id);
    look({row}, material.name);
    for (const std::string& alias : material.aliases) look({row}, alias);
  }
  std::stable_sort(said.begin(), said.end(), [](const auto& a, const auto& b) { return a.words > b.words; });
  return said;
}

/// `3/4 copper`: a size and a material alone are told which ends parts of it have in that size.
std::optional<NotationError> ends_of_material(const Catalog& catalog, const std::vector<MaterialWords>& materials) {
  for (const MaterialWords& said : materials) {
    const std::vector<Token> left = split_words(said.rest);
    if (left.size() != 1 || !left.front().is_size) continue;
    std::vector<std::string> ends;
    for (const Part& part : catalog.parts()) {
      if (part.material != said.material) continue;
      for (const Port& port : part.ports) {
        const std::string written = catalog.written(port.type);
        const bool fits = catalog.size_name(catalog.port_type(port.type).size) == left.front().text;
        if (fits && std::find(ends.begin(), ends.end(), written) == ends.end()) ends.push_back(written);
      }
    }
    if (ends.empty()) continue;
    std::string message =
        "the kind of joint is missing; of " + catalog.material(said.material).name + " there is " + listed(ends);
    return NotationError{std::move(message), left.front().offset + left.front().length, std::move(ends)};
  }
  return std::nullopt;
}

}  // namespace

PortNotation::PortNotation(const Catalog& catalog)
    : catalog_(catalog), vocabulary_(std::make_unique<const detail::PortVocabulary>(catalog)) {}
PortNotation::~PortNotation() = default;

std::variant<PortTypeId, NotationError> PortNotation::read_letter_by_letter(std::string_view text) const {
  if (text.size() > kLongestText) return NotationError{"this is too long for a port", 0, {}};
  if (const std::optional<PortTypeId> port = read_exactly(catalog_, *vocabulary_, text)) return *port;
  return PortReader(catalog_, *vocabulary_, text, false).read();
}

std::variant<PortTypeId, NotationError> PortNotation::read(std::string_view text) const {
  auto port = read_letter_by_letter(text);
  if (std::holds_alternative<PortTypeId>(port) || text.size() > kLongestText) return port;
  auto meant = PortReader(catalog_, *vocabulary_, text, true).read();
  return std::holds_alternative<PortTypeId>(meant) ? meant : port;
}

std::optional<PortTypeId> PortNotation::find(std::string_view text) const {
  if (text.size() > kLongestText) return std::nullopt;
  if (const std::optional<PortTypeId> port = read_exactly(catalog_, *vocabulary_, text)) return port;
  if (const std::optional<PortTypeId> port = PortReader(catalog_, *vocabulary_, text, false).find()) return port;
  return PortReader(catalog_, *vocabulary_, text, true).find();
}

std::variant<MadePort, NotationError> PortNotation::read_made(std::string_view text) const {
  auto port = read_letter_by_letter(text);
  if (const PortTypeId* type = std::get_if<PortTypeId>(&port)) return MadePort{*type, {}};
  const std::vector<MaterialWords> materials = materials_said(catalog_, text);
  for (const bool slips : {false, true})
    for (const MaterialWords& said : materials) {
      const auto rest = slips ? read(said.rest) : read_letter_by_letter(said.rest);
      if (const PortTypeId* type = std::get_if<PortTypeId>(&rest)) return MadePort{*type, said.material};
    }
  auto meant = read(text);
  if (const PortTypeId* type = std::get_if<PortTypeId>(&meant)) return MadePort{*type, {}};
  if (std::optional<NotationError> ends = ends_of_material(catalog_, materials)) return std::move(*ends);
  // Where a material is said, what is wrong is wrong with the rest.
  if (!materials.empty()) {
    NotationError error = std::get<NotationError>(read(materials.front().rest));
    error.offset += static_cast<std::size_t>(materials.front().rest.data() - text.data());
    return error;
  }
  return std::get<NotationError>(std::move(port));
}

std::variant<PortTypeId, NotationError> read_port(const Catalog& catalog, std::string_view text) {
  return PortNotation(catalog).read(text);
}

std::variant<MadePort, NotationError> read_made_port(const Catalog& catalog, std::string_view text) {
  return PortNotation(catalog).read_made(text);
}

}  // namespace riserun::catalog
