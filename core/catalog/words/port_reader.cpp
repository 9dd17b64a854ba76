#include "catalog/words/port_reader.h"

#include "catalog/yaml/nearest_name.h"
#include "quantity/read.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <span>

namespace riserun::catalog::detail {

namespace {

constexpr std::string_view kIdlePortWords[] = {"in",  "inch", "inches", "thread",   "threads", "threaded",
                                               "end", "ends", "port",   "size",     "nominal", "nps",
                                               "a",   "an",   "the",    "nominally"};

bool idle_in_port(std::string_view word) {
  return std::find(std::begin(kIdlePortWords), std::end(kIdlePortWords), word) != std::end(kIdlePortWords);
}

bool digits_alone(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789.") == std::string_view::npos;
}

}  // namespace

PortReader::PortReader(const Catalog& catalog, const PortVocabulary& vocabulary, std::string_view text,
                       Leniency leniency)
    : catalog_(catalog), text_(text), vocabulary_(vocabulary), leniency_(leniency), tokens_(split_words(text)) {
  if (leniency_.size_first)
    std::stable_partition(tokens_.begin(), tokens_.end(), [](const Token& token) { return token.is_size; });
}

std::variant<PortTypeId, PortError> PortReader::read() {
  if (tokens_.empty()) return PortError{"a port is expected, as in '" + example() + "'", 0, {}};
  if (leniency_.slips)
    for (Token& token : tokens_) correct(token);
  for (std::size_t at = 0; at < tokens_.size();) {
    const std::size_t used = take(at);
    if (used == 0) return unknown_word(tokens_[at]);
    if (conflict_) return *conflict_;
    at += used;
  }
  return decide();
}

std::optional<PortTypeId> PortReader::find() {
  if (leniency_.slips)
    for (Token& token : tokens_) correct(token);
  for (std::size_t at = 0; at < tokens_.size();) {
    const std::size_t used = take(at);
    if (used == 0 || conflict_) return std::nullopt;
    at += used;
  }
  return the_one();
}

std::size_t PortReader::take(std::size_t at) {
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
  } else if (token.text == "od") {
    by_outside_ = true;
  } else if (!idle_in_port(token.text)) {
    return 0;
  }
  return 1;
}

void PortReader::correct(Token& token) const {
  const std::vector<std::string>& known = vocabulary_.words();
  if (token.is_size || idle_in_port(token.text) || end_of_word(token.text) || vocabulary_.with_end_letter(token) ||
      std::binary_search(known.begin(), known.end(), token.text))
    return;
  std::vector<std::string> meant = meant_by(token.text, known);
  if (meant.size() == 1) token.text = std::move(meant.front());
}

void PortReader::narrow(const KindEnds& means, const Token& first, const Token& last) {
  KindEnds both;
  if (!kinds_) {
    both = means;
  } else {
    std::set_intersection(kinds_->begin(), kinds_->end(), means.begin(), means.end(), std::inserter(both, both.end()));
  }
  if (both.empty()) {
    const std::string words(text_.substr(first.offset, last.offset + last.length - first.offset));
    conflict_ = PortError{"'" + words + "' does not go with what stands before it", first.offset, {}};
  }
  kinds_ = both;
}

bool PortReader::counts_threads(const Token& token) const {
  return size_ && !per_inch_ && token.offset == size_->offset + size_->length + 1 && text_[token.offset - 1] == '-' &&
         digits_alone(text_.substr(token.offset, token.length));
}

void PortReader::take_size(const Token& token) {
  if (counts_threads(token)) {
    per_inch_ = std::get<double>(quantity::read_number(text_.substr(token.offset, token.length)));
    return;
  }
  if (size_ && size_->text != token.text)
    conflict_ =
        PortError{"two sizes, " + in_text(*size_) + " and " + in_text(token) + ": a port has one", token.offset, {}};
  size_ = token;
}

void PortReader::take_end(End end, const Token& token) {
  if (end_ && *end_ != end)
    conflict_ = PortError{in_text(token) + " does not go with what stands before it", token.offset, {}};
  end_ = end;
  end_token_ = token;
}

std::optional<SizeId> PortReader::dash_size(const JointKind& kind) const {
  const bool has_cone = kind.recognition && kind.recognition->cone_angle_degrees > 0.0;
  if (!has_cone || size_->text.find_first_not_of("0123456789") != std::string::npos) return std::nullopt;
  const quantity::Reading<std::string> sixteenths = quantity::read_size_name(size_->text + "/16");
  const std::string* name = std::get_if<std::string>(&sixteenths);
  return name == nullptr ? std::nullopt : catalog_.find_size(*name);
}

const JointSize* PortReader::row_of(const JointKind& kind) const {
  const quantity::Reading<double> across = quantity::read_number(size_->text);
  const bool is_number = std::holds_alternative<double>(across);
  const auto is_as_far_across = [&](const JointSize& row) {
    return std::abs(in_inches(row.outside_diameter) - std::get<double>(across)) < 1e-4;
  };
  if (by_outside_) {
    if (kind.threaded || !is_number) return nullptr;
    const auto row = std::find_if(kind.sizes.begin(), kind.sizes.end(), is_as_far_across);
    return row == kind.sizes.end() ? nullptr : &*row;
  }
  const auto counts = [&](const JointSize& row) { return !per_inch_ || row.threads_per_inch == *per_inch_; };
  for (const JointSize& row : kind.sizes)
    if (catalog_.size_name(row.size) == size_->text && counts(row)) return &row;
  if (const auto dash = dash_size(kind))
    for (const JointSize& row : kind.sizes)
      if (row.size == *dash) return &row;
  if (!kind.threaded || kind.tapered || !is_number) return nullptr;
  for (const JointSize& row : kind.sizes)
    if (is_as_far_across(row) && counts(row)) return &row;
  return nullptr;
}

std::vector<PortTypeId> PortReader::in_size(const KindEnds& ends) const {
  std::vector<PortTypeId> ports;
  if (!size_) return ports;
  for (const KindEnd& one : ends)
    if (const JointSize* row = row_of(catalog_.kind(one.kind)))
      if (const auto port = catalog_.find_port_type({one.kind, row->size, one.end})) ports.push_back(*port);
  return ports;
}

KindEnds PortReader::all_ends() const {
  KindEnds all;
  for (std::uint32_t row = 0; row < catalog_.kinds().size(); ++row) all.merge(vocabulary_.ends_of(KindId{row}));
  return all;
}

KindEnds PortReader::ends_said() const {
  KindEnds ends = kinds_ ? *kinds_ : all_ends();
  if (end_) std::erase_if(ends, [&](const KindEnd& one) { return one.end != *end_; });
  return ends;
}

std::optional<PortTypeId> PortReader::the_one() const {
  if (!kinds_ || !size_) return std::nullopt;
  KindEnds ends = ends_said();
  const std::vector<PortTypeId> ports = in_size(ends);
  if (ports.size() == 1) return ports.front();
  if (end_ || ports.empty()) return std::nullopt;
  std::erase_if(ends, [&](const KindEnd& one) { return !usually_.contains(one); });
  const std::vector<PortTypeId> usual = in_size(ends);
  return usual.size() == 1 ? std::optional(usual.front()) : std::nullopt;
}

}  // namespace riserun::catalog::detail
