#include "catalog/words/port_notation.h"

#include "catalog/words/port_reader.h"
#include "catalog/words/port_vocabulary.h"
#include "catalog/words/words.h"

#include <algorithm>
#include <utility>

namespace riserun::catalog {

namespace {

using detail::Leniency;
using detail::PortReader;
using Vocabulary = detail::PortVocabulary;

constexpr std::size_t kLongestText = 200;
/// Where words are no port as they stand.
constexpr Leniency kMoreAndMore[] = {{.size_first = true}, {.slips = true}};

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
    std::string message = "the kind of joint is missing; of " + catalog.material(said.material).name + " there is " +
                          detail::some_of_ports(ends);
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
  auto port = PortReader(catalog_, *vocabulary_, text, {}).read();
  if (auto* error = std::get_if<detail::PortError>(&port))
    return NotationError{std::move(error->message), error->offset, std::move(error->close)};
  return std::get<PortTypeId>(port);
}

std::variant<PortTypeId, NotationError> PortNotation::read(std::string_view text) const {
  auto port = read_letter_by_letter(text);
  if (std::holds_alternative<PortTypeId>(port) || text.size() > kLongestText) return port;
  for (const Leniency& leniency : kMoreAndMore)
    if (auto meant = PortReader(catalog_, *vocabulary_, text, leniency).find()) return *meant;
  return port;
}

std::optional<PortTypeId> PortNotation::find(std::string_view text) const {
  if (text.size() > kLongestText) return std::nullopt;
  if (const std::optional<PortTypeId> port = read_exactly(catalog_, *vocabulary_, text)) return port;
  if (const std::optional<PortTypeId> port = PortReader(catalog_, *vocabulary_, text, {}).find()) return port;
  for (const Leniency& leniency : kMoreAndMore)
    if (const auto meant = PortReader(catalog_, *vocabulary_, text, leniency).find()) return meant;
  return std::nullopt;
}

std::variant<MadePort, NotationError> PortNotation::read_made(std::string_view text) const {
  auto port = read_letter_by_letter(text);
  if (const PortTypeId* type = std::get_if<PortTypeId>(&port)) return MadePort{*type, {}};
  // Of `15 mm copper` the whole says more than `15 mm` does.
  const std::vector<Token> tokens = split_words(text);
  if (std::any_of(tokens.begin(), tokens.end(), [](const Token& token) { return token.text == "mm"; }))
    return std::get<NotationError>(std::move(port));
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
