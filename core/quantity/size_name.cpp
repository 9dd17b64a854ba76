#include "quantity/number_text.h"
#include "quantity/plain_ascii.h"
#include "quantity/read.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <numeric>
#include <optional>

namespace riserun::quantity {

namespace {

constexpr std::int64_t kFinest = 32;  // sizes are named to 1/32 in
constexpr double kLargestSize = 48.0;
constexpr std::string_view kAllowed = "sizes are whole inches and fractions up to 48, like 3/4 or 1-1/4";

struct MetricSize {
  int diameter;  // DN
  std::string_view name;
};

// DN numbers and the inch sizes they stand for: ISO 6708 beside ASME B36.10M, from memory.
constexpr std::array kMetricSizes = std::to_array<MetricSize>({
    {6, "1/8"},
    {8, "1/4"},
    {10, "3/8"},
    {15, "1/2"},
    {20, "3/4"},
    {25, "1"},
    {32, "1-1/4"},
    {40, "1-1/2"},
    {50, "2"},
    {65, "2-1/2"},
    {80, "3"},
    {90, "3-1/2"},
    {100, "4"},
    {125, "5"},
    {150, "6"},
    {200, "8"},
    {250, "10"},
    {300, "12"},
});

/// Whether the text begins with a word, in any case, that no letter follows; then where what follows it begins.
std::optional<std::size_t> after_word(const std::string& text, std::string_view word) {
  if (text.size() < word.size()) return std::nullopt;
  for (std::size_t i = 0; i < word.size(); ++i) {
    if (lower(text[i]) != word[i]) return std::nullopt;
  }
  return skip_spaces(text, word.size());
}

std::string size_name(std::int64_t parts, std::int64_t whole_parts) {
  const std::int64_t whole = parts / whole_parts;
  const std::int64_t rest = parts % whole_parts;
  if (rest == 0) return std::to_string(whole);
  const std::int64_t common = std::gcd(rest, whole_parts);
  const std::string fraction = fmt::format("{}/{}", rest / common, whole_parts / common);
  return whole == 0 ? fraction : fmt::format("{}-{}", whole, fraction);
}

bool is_inch_word(std::string_view text) {
  std::string folded;
  for (const char c : text) {
    if (c != ' ' && c != '.' && c != '-') folded += lower(c);
  }
  constexpr std::array<std::string_view, 6> kWords = {"", "in", "inch", "inches", "\"", "''"};
  return std::find(kWords.begin(), kWords.end(), folded) != kWords.end();
}

/// Digits to the end of the text, as a number up to `most`; nullopt: something else.
std::optional<int> only_digits(const std::string& text, std::size_t at, int most) {
  if (at >= text.size()) return std::nullopt;
  int value = 0;
  for (; at < text.size(); ++at) {
    if (text[at] < '0' || text[at] > '9') return std::nullopt;
    value = value * 10 + (text[at] - '0');
    if (value > most) return std::nullopt;
  }
  return value;
}

Reading<std::string> read_metric_size(const PlainText& text, std::size_t at) {
  const auto diameter = only_digits(text.plain, at, 10000);
  const auto found = std::find_if(kMetricSizes.begin(), kMetricSizes.end(),
                                  [&](const MetricSize& size) { return diameter && size.diameter == *diameter; });
  if (found != kMetricSizes.end()) return std::string(found->name);
  std::string allowed;
  for (const MetricSize& size : kMetricSizes) allowed += fmt::format(" {}", size.diameter);
  return read_error(text, at, fmt::format("no such DN; DN is one of{}", allowed));
}

Reading<std::string> read_inch_size(const PlainText& text, std::size_t begin) {
  const auto scanned = scan_number(text, begin, kAllowed);
  if (const auto* error = std::get_if<ReadError>(&scanned)) return *error;
  const Number& number = std::get<Number>(scanned);
  if (!is_inch_word(std::string_view(text.plain).substr(number.end))) {
    const std::size_t at = skip_spaces(text.plain, number.end);
    const std::string word = quoted(text.written_for(at, text.plain.size()));
    return read_error(text, at, fmt::format("{} is no part of a size; {}", word, kAllowed));
  }
  const double parts = number.value * static_cast<double>(kFinest);
  if (number.value <= 0.0 || number.value > kLargestSize || parts != std::floor(parts)) {
    return read_error(text, begin, fmt::format("no such size; {}", kAllowed));
  }
  return size_name(static_cast<std::int64_t>(parts), kFinest);
}

}  // namespace

Reading<std::string> read_size_name(std::string_view written) {
  const PlainText text = plain_text(written);
  if (text.plain.empty()) return ReadError{fmt::format("nothing written; {}", kAllowed), 0, mistake::kNothingWritten};
  if (const auto at = after_word(text.plain, "dn")) return read_metric_size(text, *at);
  if (const auto at = after_word(text.plain, "nps")) return read_inch_size(text, *at);
  if (text.plain.front() == '-') {
    // A dash size counts sixteenths of an inch (SAE J514, from memory).
    constexpr int kLargestDash = 64;
    const auto dash = only_digits(text.plain, 1, kLargestDash);
    if (dash && *dash > 0) return size_name(*dash, 16);
    return read_error(
        text, 0, fmt::format("no such dash size; dash sizes are sixteenths of an inch from -1 to -{}", kLargestDash));
  }
  return read_inch_size(text, 0);
}

}  // namespace riserun::quantity
