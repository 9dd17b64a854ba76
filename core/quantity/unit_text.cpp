#include "quantity/unit_text.h"

#include "quantity/bare_number.h"
#include "quantity/nearly.h"
#include "quantity/plain_ascii.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace riserun::quantity {

namespace {

std::string grammar(const UnitTable& table) {
  return fmt::format("{} is a number and a unit, like {}", table.name, table.example);
}

ReadError wrong_unit(const PlainText& text, std::size_t at, const UnitTable& table) {
  const std::string word = quoted(text.written_for(at, text.plain.size()));
  if (is_digit(text.plain[at]) || text.plain[at] == '-' || text.plain[at] == '+') {
    return read_error(text, at,
                      fmt::format("{} follows the number; write one number and a unit, like {}", word, table.example),
                      mistake::kWrongUnit);
  }
  const std::string allowed = fmt::format("{} takes {}", table.name, symbols(table));
  const std::string_view written = std::string_view(text.plain).substr(at);
  if (const UnitTable* other = find_other_kind(table.kind, written)) {
    return read_error(text, at, fmt::format("{} is a unit of {}; {}", word, other->name, allowed), mistake::kWrongUnit);
  }
  if (text.plain[at] == PlainText::kUnreadable) {
    return read_error(text, at, fmt::format("{} is not understood here; {}", word, allowed), mistake::kWrongUnit);
  }
  const auto near = nearest_symbol(table, written);
  const std::string hint = near ? fmt::format("; did you mean '{}'?", *near) : "";
  return read_error(text, at, fmt::format("unknown unit {}; {}{}", word, allowed, hint), mistake::kWrongUnit);
}

struct Lead {
  const Compound* compound = nullptr;
  std::size_t second = 0;  // where the second number begins
};

/// A unit at `at` that a second number follows: `1' 6"`, `1 ft 6 in`, `6'-2"`.
std::optional<Lead> find_lead(const PlainText& text, std::size_t at, const UnitTable& table) {
  const std::string& plain = text.plain;
  std::size_t end = at;
  while (end < plain.size() && !is_digit(plain[end]) && plain[end] != ' ' && plain[end] != '-') ++end;
  const Unit* unit = find_unit(table, std::string_view(plain).substr(at, end - at));
  if (unit == nullptr) return std::nullopt;
  const auto compound = std::find_if(table.compounds.begin(), table.compounds.end(),
                                     [&](const Compound& each) { return each.lead == unit->symbol; });
  if (compound == table.compounds.end()) return std::nullopt;
  std::size_t second = skip_spaces(plain, end);
  if (second < plain.size() && plain[second] == '-') ++second;
  if (second >= plain.size() || !is_digit(plain[second])) return std::nullopt;
  return Lead{&*compound, second};
}

/// Size only; the sign stands before all of it.
std::variant<Measured, ReadError> read_from(const PlainText& text, const Number& number, const UnitTable& table);

std::variant<Measured, ReadError> read_second(const PlainText& text, const Number& first, const Lead& lead,
                                              const UnitTable& table) {
  const Unit& lead_unit = *find_symbol(table, lead.compound->lead);
  const Unit& follow_unit = *find_symbol(table, lead.compound->follow);
  if (!first.whole) {
    return read_error(text, 0, fmt::format("{} before {} is a whole number", lead_unit.symbol, follow_unit.symbol));
  }
  const auto second = scan_number(text, lead.second, grammar(table));
  if (const auto* error = std::get_if<ReadError>(&second)) return *error;
  const Number& number = std::get<Number>(second);
  const auto rest = read_from(text, number, table);
  if (const auto* error = std::get_if<ReadError>(&rest)) return *error;
  const Measured& measured = std::get<Measured>(rest);
  if (measured.unit != &follow_unit || number.value >= lead.compound->ratio) {
    return read_error(
        text, lead.second,
        fmt::format("after {} comes a number below {} {}", lead_unit.symbol, lead.compound->ratio, follow_unit.symbol));
  }
  return Measured{first.value * lead_unit.factor + measured.in_si, &lead_unit, measured.finest};
}

std::variant<Measured, ReadError> read_from(const PlainText& text, const Number& number, const UnitTable& table) {
  std::size_t at = skip_spaces(text.plain, number.end);
  if (at + 1 < text.plain.size() && text.plain[at] == '-' && is_letter(text.plain[at + 1])) ++at;  // `3/4-in`
  if (at >= text.plain.size()) {
    const auto bare = unit_of_bare(text, number, table);
    if (const auto* error = std::get_if<ReadError>(&bare)) return *error;
    const Unit* unit = std::get<const Unit*>(bare);
    return Measured{number.value * unit->factor + unit->offset, unit, unit};
  }
  if (const Unit* unit = find_unit(table, std::string_view(text.plain).substr(at))) {
    return Measured{number.value * unit->factor + unit->offset, unit, unit};
  }
  if (const auto lead = find_lead(text, at, table)) return read_second(text, number, *lead, table);
  return wrong_unit(text, at, table);
}

ReadError beyond_limits(const PlainText& text, const Measured& measured, Range<double> limits, std::string_view name) {
  if (limits.low == 0.0 && measured.in_si < 0.0 && measured.unit->offset == 0.0) {
    return read_error(text, 0, fmt::format("{} cannot be negative", name), mistake::kOutOfRange);
  }
  return read_error(text, 0,
                    fmt::format("out of range; {} is allowed from {} to {}", name,
                                limit_text(limits.low, *measured.finest), limit_text(limits.high, *measured.finest)),
                    mistake::kOutOfRange);
}

/// What is a plain number in the inch system's own unit, up to where another unit's last digits end, is that number to
/// the last bit: `0.11031611669 bar` is 1.6 psi, and all that is worked out from it is the same.
double as_in_inch_system(double in_si, const Unit& written, const UnitTable& table) {
  constexpr int kPlainDigits = 8;
  constexpr double kMostPlaces = 20;
  constexpr double kLastDigits = 1e-10;
  const auto usual = bare_units(table.kind, UnitSystem::inch);
  const Unit* unit = usual.empty() ? nullptr : find_symbol(table, usual.front());
  if (unit == nullptr || unit == &written || !std::isfinite(in_si)) return in_si;
  const double number = (in_si - unit->offset) / unit->factor;
  if (number == 0.0) return in_si;
  const double places = kPlainDigits - 1 - std::floor(std::log10(std::abs(number)));
  if (places < 0.0 || places > kMostPlaces) return in_si;
  const double scale = std::pow(10.0, places);  // exact, so that the quotient is the number as it is read
  const double plain = std::round(number * scale) / scale * unit->factor + unit->offset;
  return std::abs(plain - in_si) <= kLastDigits * std::abs(in_si) ? plain : in_si;
}

}  // namespace

std::variant<Measured, ReadError> read_measured(const PlainText& text, const UnitTable& table) {
  if (text.plain.empty())
    return ReadError{fmt::format("nothing written; {}", grammar(table)), 0, mistake::kNothingWritten};
  const auto scanned = scan_number(text, 0, grammar(table));
  if (const auto* error = std::get_if<ReadError>(&scanned)) return *error;
  Number number = std::get<Number>(scanned);
  // In `-1 ft 6 in` the minus belongs to both, so it is set aside and put back; a temperature's sign is its own.
  const bool negative = number.value < 0.0 && !table.compounds.empty();
  if (negative) number.value = -number.value;
  auto reading = read_from(text, number, table);
  if (auto* measured = std::get_if<Measured>(&reading)) {
    measured->in_si = as_in_inch_system(negative ? -measured->in_si : measured->in_si, *measured->finest, table);
    if (!std::isfinite(measured->in_si)) return read_error(text, 0, "the number is too large to work with");
  }
  return reading;
}

std::variant<Measured, ReadError> read_limited(const Written& written, const UnitTable& table,
                                               std::optional<Range<double>> limits) {
  const PlainText text = plain_text(written);
  auto reading = read_measured(text, table);
  const Range<double> allowed = limits.value_or(Range<double>{table.low, table.high});
  if (const auto* measured = std::get_if<Measured>(&reading)) {
    const bool inside = at_most(allowed.low, measured->in_si) && at_most(measured->in_si, allowed.high);
    if (!inside) return beyond_limits(text, *measured, allowed, table.name);
  }
  return reading;
}

std::string limit_text(double in_si, const Unit& unit) {
  constexpr int kDigits = 6;
  return fmt::format("{} {}", write_number((in_si - unit.offset) / unit.factor, kDigits), unit.symbol);
}

}  // namespace riserun::quantity
