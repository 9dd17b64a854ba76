#include "quantity/number_text.h"
#include "quantity/plain_ascii.h"
#include "quantity/read.h"
#include "quantity/units.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <optional>

namespace riserun::quantity {

namespace {

constexpr std::string_view kPriceGrammar = "a price is dollars and cents, like $2.10 or 2.10 usd";
constexpr std::int64_t kMostDollars = 10'000'000;

enum class Coin { dollars, cents };

std::optional<Coin> find_coin(std::string_view word) {
  const std::string folded = folded_unit(word);
  for (const std::string_view each : {"$", "usd", "us$", "dollar", "dollars"}) {
    if (folded == each) return Coin::dollars;
  }
  for (const std::string_view each : {"cent", "cents", "c"}) {
    if (folded == each) return Coin::cents;
  }
  return std::nullopt;
}

/// `2.10` without its currency, at plain[begin, end).
Reading<Price> read_amount(const PlainText& text, std::size_t begin, std::size_t end, Coin coin) {
  const std::string_view digits = std::string_view(text.plain).substr(begin, end - begin);
  const std::size_t point = std::min(digits.find('.'), digits.size());
  const std::string_view decimals = point == digits.size() ? std::string_view() : digits.substr(point + 1);
  const std::size_t most = coin == Coin::dollars ? 2 : 0;
  if (decimals.size() > most) return read_error(text, begin, "a price is in whole cents, like $2.10");
  std::int64_t whole = 0;
  if (point > 0) {
    const auto result = std::from_chars(digits.data(), digits.data() + point, whole);
    if (result.ec != std::errc() || whole > kMostDollars) {
      return read_error(text, begin, fmt::format("out of range; a price is allowed from $0 to ${}", kMostDollars),
                        mistake::kOutOfRange);
    }
  }
  if (coin == Coin::cents) return cents(whole);
  std::int64_t part = 0;
  if (!decimals.empty()) {
    std::from_chars(decimals.data(), decimals.data() + decimals.size(), part);
    if (decimals.size() == 1) part *= 10;
  }
  return cents(whole * 100 + part);
}

/// How far a currency before the number reaches: `$`, `usd `.
std::size_t end_of_leading_coin(const std::string& plain) {
  for (const std::string_view each : {"US$", "$", "USD", "usd"}) {
    if (plain.starts_with(each)) return each.size();
  }
  return 0;
}

}  // namespace

Reading<Price> read_price(std::string_view written) {
  const PlainText text = plain_text(written);
  const std::string& plain = text.plain;
  if (plain.empty()) return ReadError{fmt::format("nothing written; {}", kPriceGrammar), 0, mistake::kNothingWritten};
  if (plain.front() == '-') return read_error(text, 0, "a price cannot be negative", mistake::kOutOfRange);
  const std::size_t lead = end_of_leading_coin(plain);
  std::size_t begin = lead;
  while (begin < plain.size() && plain[begin] == ' ') ++begin;
  std::size_t end = begin;
  while (end < plain.size() && (is_digit(plain[end]) || plain[end] == '.')) ++end;
  const auto points = std::count(plain.begin(), plain.begin() + static_cast<std::ptrdiff_t>(end), '.');
  if (end == begin || points > 1 || (points == 1 && end == begin + 1)) {
    return read_error(text, begin, fmt::format("not a price; {}", kPriceGrammar));
  }
  std::size_t word = end;
  while (word < plain.size() && plain[word] == ' ') ++word;
  if (word == plain.size()) {
    if (lead > 0) return read_amount(text, begin, end, Coin::dollars);
    return read_error(text, word, fmt::format("no currency; {}", kPriceGrammar));
  }
  const auto coin = lead > 0 ? std::nullopt : find_coin(std::string_view(plain).substr(word));
  if (coin) return read_amount(text, begin, end, *coin);
  const std::string shown = quoted(text.written_for(word, plain.size()));
  return read_error(text, word, fmt::format("{} after the amount is not understood; {}", shown, kPriceGrammar));
}

}  // namespace riserun::quantity
