#include "quantity/sheet_gauge.h"

#include "quantity/number_text.h"
#include "quantity/unit_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace riserun::quantity {

namespace {

constexpr int kFirstGauge = 7;
constexpr int kFirstGalvanizedGauge = 8;
constexpr int kLastGauge = 30;

// Inches, from gauge 7 down.
constexpr std::array kSteel = {0.1793, 0.1644, 0.1495, 0.1345, 0.1196, 0.1046, 0.0897, 0.0747,
                               0.0673, 0.0598, 0.0538, 0.0478, 0.0418, 0.0359, 0.0329, 0.0299,
                               0.0269, 0.0239, 0.0209, 0.0179, 0.0164, 0.0149, 0.0135, 0.0120};
// Inches, from gauge 8 down.
constexpr std::array kGalvanized = {0.1681, 0.1532, 0.1382, 0.1233, 0.1084, 0.0934, 0.0785, 0.0710,
                                    0.0635, 0.0575, 0.0516, 0.0456, 0.0396, 0.0366, 0.0336, 0.0306,
                                    0.0276, 0.0247, 0.0217, 0.0202, 0.0187, 0.0172, 0.0157};
// Inches, from gauge 7 down; the gauge is defined in these fractions.
constexpr std::array kStainless = {3.0 / 16,  11.0 / 64, 5.0 / 32,   9.0 / 64, 1.0 / 8,   7.0 / 64,
                                   3.0 / 32,  5.0 / 64,  9.0 / 128,  1.0 / 16, 9.0 / 160, 1.0 / 20,
                                   7.0 / 160, 3.0 / 80,  11.0 / 320, 1.0 / 32, 9.0 / 320, 1.0 / 40,
                                   7.0 / 320, 3.0 / 160, 11.0 / 640, 1.0 / 64, 9.0 / 640, 1.0 / 80};

// The least of the same, in inches. Steel and galvanized to 20 gauge as charts print it.
constexpr std::array kLeastSteel = {0.1713, 0.1564, 0.1415, 0.1265, 0.1116, 0.0966, 0.0827,
                                    0.0677, 0.0613, 0.0538, 0.0478, 0.0428, 0.0378, 0.0329};
constexpr std::array kLeastGalvanized = {0.1591, 0.1442, 0.1292, 0.1143, 0.0994, 0.0854, 0.0705,
                                         0.0650, 0.0575, 0.0525, 0.0466, 0.0406, 0.0356};
// What is ordered, less the tolerance: 0.135 - 0.009 for 10 gauge.
constexpr std::array kLeastStainless = {0.1775, 0.1619, 0.1463, 0.1260, 0.1120, 0.0980, 0.0868,
                                        0.0690, 0.0653, 0.0550, 0.0523, 0.0440, 0.0398, 0.0330};
constexpr double kThinSheetTolerance = 0.003;  // in, of what is thinner than the tables above
constexpr double kAluminiumTolerance = 0.05;   // of the thickness

double aluminium_inches(int gauge) { return std::round(50.0 * std::pow(92.0, (36.0 - gauge) / 39.0)) / 10000.0; }

struct MetalName {
  std::string_view name;  // in lower case, without spaces and hyphens
  SheetMetal metal;
};

constexpr std::array kMetalNames = std::to_array<MetalName>({
    {"steel", SheetMetal::steel},
    {"mildsteel", SheetMetal::steel},
    {"carbonsteel", SheetMetal::steel},
    {"plainsteel", SheetMetal::steel},
    {"blacksteel", SheetMetal::steel},
    {"a36", SheetMetal::steel},
    {"sheetsteel", SheetMetal::steel},
    {"commercialsteel", SheetMetal::steel},
    {"commercialsteelsheet", SheetMetal::steel},
    {"crs", SheetMetal::steel},
    {"hrs", SheetMetal::steel},
    {"coldrolledsteel", SheetMetal::steel},
    {"hotrolledsteel", SheetMetal::steel},
    {"mild", SheetMetal::steel},
    {"hotrolled", SheetMetal::steel},
    {"hr", SheetMetal::steel},
    {"coldrolled", SheetMetal::steel},
    {"cr", SheetMetal::steel},
    {"hrpo", SheetMetal::steel},
    {"p&o", SheetMetal::steel},
    {"pickledandoiled", SheetMetal::steel},
    {"hotrolledpickledandoiled", SheetMetal::steel},
    {"galvanized", SheetMetal::galvanized},
    {"galvanised", SheetMetal::galvanized},
    {"galvanizedsteel", SheetMetal::galvanized},
    {"galvanisedsteel", SheetMetal::galvanized},
    {"galv", SheetMetal::galvanized},
    {"a653", SheetMetal::galvanized},
    {"stainless", SheetMetal::stainless},
    {"stainlesssteel", SheetMetal::stainless},
    {"ss", SheetMetal::stainless},
    {"304", SheetMetal::stainless},
    {"316", SheetMetal::stainless},
    {"stainless304", SheetMetal::stainless},
    {"stainless316", SheetMetal::stainless},
    {"304stainless", SheetMetal::stainless},
    {"316stainless", SheetMetal::stainless},
    {"aluminium", SheetMetal::aluminium},
    {"aluminum", SheetMetal::aluminium},
    {"alu", SheetMetal::aluminium},
    {"5052", SheetMetal::aluminium},
    {"6061", SheetMetal::aluminium},
    {"3003", SheetMetal::aluminium},
});

constexpr std::string_view kMetalsAllowed = "steel, galvanized, stainless or aluminium";

std::string folded(std::string_view text) {
  std::string result;
  for (const char c : text) {
    if (c == ' ' || c == '-' || c == '.' || c == ',') continue;
    result += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return result;
}

std::optional<SheetMetal> find_metal(std::string_view word) {
  const std::string name = folded(word);
  for (const std::string_view standard : {"a1011", "a1008", "structuralsteelsheet"})
    if (name.starts_with(standard)) return SheetMetal::steel;
  const auto found =
      std::find_if(kMetalNames.begin(), kMetalNames.end(), [&](const MetalName& each) { return each.name == name; });
  if (found == kMetalNames.end()) return std::nullopt;
  return found->metal;
}

std::string_view name_of(SheetMetal metal) {
  switch (metal) {
    case SheetMetal::steel:
      return "steel";
    case SheetMetal::galvanized:
      return "galvanized";
    case SheetMetal::stainless:
      return "stainless";
    default:
      return "aluminium";
  }
}

/// Where the word for a gauge number ends (`ga`, `ga.`, `gauge`, `gage`), if one stands at `begin`.
std::optional<std::size_t> end_of_gauge_word(const std::string& text, std::size_t begin) {
  while (begin < text.size() && (text[begin] == ' ' || text[begin] == '-')) ++begin;
  const std::string lowered = [&] {
    std::string result = text.substr(begin);
    std::transform(result.begin(), result.end(), result.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return result;
  }();
  for (const std::string_view word : {"gauge", "gage", "ga."}) {
    if (lowered.starts_with(word)) return begin + word.size();
  }
  const bool ends_there = lowered.size() == 2 || (lowered.size() > 2 && (lowered[2] == ' ' || lowered[2] == ','));
  if (lowered.starts_with("ga") && ends_there) return begin + 2;
  return std::nullopt;
}

/// `0.12 in in steel, 0.091 in in aluminium`; the metals alone where the number is no gauge.
std::string thicknesses_of(const Number& number) {
  std::string all;
  for (const SheetMetal metal :
       {SheetMetal::steel, SheetMetal::galvanized, SheetMetal::stainless, SheetMetal::aluminium}) {
    const auto thickness = number.whole ? gauge_thickness(metal, static_cast<int>(number.value)) : std::nullopt;
    if (!thickness) return std::string(kMetalsAllowed);
    all += fmt::format("{}{:.4g} in for {}", all.empty() ? "" : ", ", in_inches(*thickness), name_of(metal));
  }
  return all;
}

struct Gauge {
  SheetMetal metal = SheetMetal::steel;
  int number = 0;
};

Reading<Gauge> read_gauge(const PlainText& text, const Number& number, std::size_t metal_at) {
  const std::string_view word = std::string_view(text.plain).substr(metal_at);
  if (folded(word).empty()) {
    return read_error(text, text.plain.size(),
                      fmt::format("a gauge number needs its metal, as it means another thickness in each: {}, like 10 "
                                  "ga steel",
                                  thicknesses_of(number)));
  }
  const auto metal = find_metal(word);
  if (!metal) {
    while (metal_at + 1 < text.plain.size() && text.plain[metal_at] == ' ') ++metal_at;
    const std::string shown = quoted(text.written_for(metal_at, text.plain.size()));
    return read_error(text, metal_at, fmt::format("no gauge table for {}; allowed: {}", shown, kMetalsAllowed));
  }
  const Range<int> numbers = gauge_numbers(*metal);
  const bool known = number.whole && number.value >= numbers.low && number.value <= numbers.high;
  if (!known) {
    return read_error(text, 0,
                      fmt::format("no such gauge; {} gauges are whole numbers from {} to {}", name_of(*metal),
                                  numbers.low, numbers.high));
  }
  return Gauge{*metal, static_cast<int>(number.value)};
}

/// `3/16 in steel`: the metal after a plain thickness says nothing more about it and is dropped.
std::string_view without_metal(std::string_view written) {
  for (std::size_t at = written.find(' '); at != std::string_view::npos; at = written.find(' ', at + 1)) {
    if (find_metal(written.substr(at))) return written.substr(0, at);
  }
  return written;
}

/// A whole number and no more, in a shop that has both gauges and inches.
bool is_thickness_or_gauge(const Written& written) {
  const PlainText text = plain_text(written);
  const auto scanned = scan_number(text, 0, "");
  const auto* number = std::get_if<Number>(&scanned);
  return number != nullptr && number->whole && number->end == text.plain.size() && text.units == UnitSystem::inch;
}

}  // namespace

Range<int> gauge_numbers(SheetMetal metal) {
  return {metal == SheetMetal::galvanized ? kFirstGalvanizedGauge : kFirstGauge, kLastGauge};
}

std::optional<Length> gauge_thickness(SheetMetal metal, int gauge) {
  const Range<int> numbers = gauge_numbers(metal);
  if (gauge < numbers.low || gauge > numbers.high) return std::nullopt;
  const auto row = static_cast<std::size_t>(gauge - numbers.low);
  static_assert(kSteel.size() == kLastGauge - kFirstGauge + 1 && kStainless.size() == kSteel.size());
  static_assert(kGalvanized.size() == kLastGauge - kFirstGalvanizedGauge + 1);
  switch (metal) {
    case SheetMetal::steel:
      return inches(kSteel[row]);
    case SheetMetal::galvanized:
      return inches(kGalvanized[row]);
    case SheetMetal::stainless:
      return inches(kStainless[row]);
    default:
      return inches(aluminium_inches(gauge));
  }
}

std::optional<Length> least_gauge_thickness(SheetMetal metal, int gauge) {
  const auto nominal = gauge_thickness(metal, gauge);
  if (!nominal) return std::nullopt;
  if (metal == SheetMetal::aluminium) return *nominal * (1.0 - kAluminiumTolerance);
  const auto row = static_cast<std::size_t>(gauge - gauge_numbers(metal).low);
  const auto least = [&](const auto& table) {
    return row < table.size() ? inches(table[row]) : *nominal - inches(kThinSheetTolerance);
  };
  if (metal == SheetMetal::steel) return least(kLeastSteel);
  return metal == SheetMetal::galvanized ? least(kLeastGalvanized) : least(kLeastStainless);
}

Reading<Length> read_sheet(const Written& written) {
  const PlainText text = plain_text(written);
  const UnitTable& table = unit_table(Kind::length);
  const auto number = scan_number(text, 0, "");
  if (const auto* value = std::get_if<Number>(&number)) {
    if (const auto end = end_of_gauge_word(text.plain, value->end)) {
      const auto gauge = read_gauge(text, *value, *end);
      if (const auto* error = std::get_if<ReadError>(&gauge)) return *error;
      return *gauge_thickness(std::get<Gauge>(gauge).metal, std::get<Gauge>(gauge).number);
    }
    if (!text.units && value->end >= text.plain.size()) {
      return read_error(text, value->end,
                        fmt::format("no unit; a sheet is a thickness ({}) or a gauge with its metal, "
                                    "like 10 ga steel",
                                    symbols(table)));
    }
  }
  const Written thickness = written.with(without_metal(written));
  if (is_thickness_or_gauge(thickness)) {
    return read_error(text, text.plain.size(), fmt::format("no unit; it can be {0} ga or {0} in", thickness.text),
                      mistake::kNoUnit);
  }
  const auto reading = read_limited(thickness, table);
  if (const auto* error = std::get_if<ReadError>(&reading)) return *error;
  return metres(std::get<Measured>(reading).in_si);
}

std::optional<Length> least_of_gauge(std::string_view written) {
  const PlainText text = plain_text(written);
  const auto number = scan_number(text, 0, "");
  const auto* value = std::get_if<Number>(&number);
  const auto end = value == nullptr ? std::nullopt : end_of_gauge_word(text.plain, value->end);
  if (!end) return std::nullopt;
  const auto gauge = read_gauge(text, *value, *end);
  const auto* known = std::get_if<Gauge>(&gauge);
  return known == nullptr ? std::nullopt : least_gauge_thickness(known->metal, known->number);
}

}  // namespace riserun::quantity
