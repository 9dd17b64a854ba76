// Reads what is lifted: water, or water that stays water.
#include "catalog/words/words.h"
#include "plan/job/job_reading.h"
#include "quantity/read.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <iterator>
#include <span>
#include <string>
#include <string_view>
#include <variant>

namespace riserun::plan {

using catalog::Value;

namespace {

/// What water may hold and stay water: a few per cent of a cutting fluid that is made to mix with it (common practice).
constexpr std::string_view kWatery[] = {"water",     "coolant", "soluble oil",     "emulsion",
                                        "inhibitor", "biocide", "propylene glycol"};
constexpr std::string_view kGlycol = "propylene glycol";

/// Liquids that burn, by the words that name them.
constexpr std::string_view kFlammable[] = {"gasoline", "petrol",  "diesel",   "kerosene", "paraffin", "acetone",
                                           "alcohol",  "ethanol", "methanol", "propanol", "solvent",  "thinner",
                                           "spirit",   "naphtha", "xylene",   "toluene",  "fuel",     "oil"};

/// What stands beside those words and names nothing else.
constexpr std::string_view kNamesNothing[] = {"with",  "and",    "a",       "few",      "per",   "cent", "percent",
                                              "of",    "in",     "the",     "or",       "plain", "tap",  "city",
                                              "fresh", "clean",  "soft",    "well",     "rain",  "town", "mains",
                                              "some",  "little", "cutting", "grinding", "rust"};

/// Share in per cent up to which what is mixed in leaves water water (common practice: 2 to 10 % of a coolant).
constexpr double kMostMixedIn = 10.0;

/// A word that names something else, or a share that is too large; empty: neither.
std::string not_water(const std::string& rest) {
  std::string word;
  for (const char c : rest + " ") {
    if (std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '.' || static_cast<unsigned char>(c) >= 0x80) {
      word += c;
      continue;
    }
    const bool beside =
        word.empty() || std::find(std::begin(kNamesNothing), std::end(kNamesNothing), word) != std::end(kNamesNothing);
    const auto number = quantity::read_number(word);
    const double* share = std::get_if<double>(&number);
    if (!beside && share == nullptr) return word;
    if (!beside && *share > kMostMixedIn) return word + " %";
    word.clear();
  }
  return {};
}

/// The first number of the text: a share in per cent; where none stands there, the most that may.
double share_in(const std::string& text) {
  std::string word;
  for (const char c : text + " ") {
    if (std::isdigit(static_cast<unsigned char>(c)) != 0 || c == '.') {
      word += c;
      continue;
    }
    const auto number = quantity::read_number(word);
    if (const double* share = std::get_if<double>(&number)) return *share;
    word.clear();
  }
  return kMostMixedIn;
}

bool names_any(const std::string& text, std::span<const std::string_view> words) {
  return std::any_of(words.begin(), words.end(),
                     [&](std::string_view word) { return text.find(word) != std::string::npos; });
}

}  // namespace

void read_liquid(JobReading& reading, const Value& value, Job& job) {
  if (!value.exists()) return;
  const auto text = catalog::read_text(value, reading.problems);
  if (!text) return;
  job.liquid.name = *text;
  const std::string lower = catalog::lower_case(*text);
  // "oil" burns, "soluble oil" in water does not: what is left of the text once that is taken out must name no liquid
  // that burns.
  std::string rest = lower;
  for (const std::string_view word : kWatery)
    for (std::size_t at = rest.find(word); at != std::string::npos; at = rest.find(word)) rest.erase(at, word.size());
  job.liquid.flammable = names_any(rest, kFlammable);
  const std::string strange = rest == lower ? std::string(*text) : not_water(rest);
  if (strange.empty() && lower.find(kGlycol) != std::string::npos) job.liquid.glycol = share_in(lower) / 100.0;
  if (!job.liquid.flammable && !strange.empty())
    reading.problems.add(
        value, fmt::format("{}: '{}' is not worked out; allowed is water, or water with up to 10 % of soluble "
                           "oil, coolant, inhibitor or propylene glycol; acids, lyes, salt and bleach eat the tank",
                           value.path(), strange));
}

}  // namespace riserun::plan
