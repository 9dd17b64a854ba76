// Reads what is cut, ground or cast over the reservoir: some of it makes hydrogen in the water.
#include "catalog/words/words.h"
#include "plan/job/job_reading.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

namespace riserun::plan {

using catalog::Value;

namespace {

// Names of the trade, all common practice; alloys by the Aluminum Association's numbers, from memory.
constexpr std::string_view kAluminium[] = {"aluminium", "aluminum", "alu",  "al",   "alum", "dural", "duralumin",
                                           "1100",      "2011",     "2014", "2017", "2024", "3003",  "5052",
                                           "5083",      "5086",     "5754", "6061", "6063", "6082",  "7075"};
constexpr std::string_view kMagnesium[] = {"magnesium", "mag", "mg"};
constexpr std::string_view kLithium[] = {"lithium", "li", "2090", "2091", "2099", "2195", "2198", "8090"};
constexpr std::string_view kHarmless[] = {
    "steel",  "stainless", "iron",      "galvanized", "galvanised", "brass",  "bronze",  "copper",  "nickel",
    "inox",   "inconel",   "monel",     "glass",      "stone",      "marble", "granite", "slate",   "quartz",
    "tile",   "ceramic",   "porcelain", "concrete",   "wood",       "clay",   "plastic", "acrylic", "pvc",
    "rubber", "foam",      "glaze",     "enamel",     "lead",       "tin",    "carbide"};
/// What stands beside a material and names none: the kind, the form.
constexpr std::string_view kBeside[] = {"mild", "carbon", "alloy", "alloys", "cast",  "ductile",
                                        "tool", "spring", "sheet", "plate",  "bar",   "tube",
                                        "pipe", "and",    "hot",   "cold",   "rolled"};
/// What the message names; every spelling above is read.
constexpr auto kNamed = std::to_array<std::string_view>(
    {"aluminium", "magnesium", "aluminium-lithium", "steel", "stainless", "iron", "galvanized", "brass", "bronze",
     "copper", "glass", "stone", "tile", "ceramic", "concrete", "wood", "plastic", "rubber"});

template <class Names>
bool is_one_of(std::string_view word, const Names& names) {
  return std::find(std::begin(names), std::end(names), word) != std::end(names);
}

bool is_letter_or_digit(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || static_cast<unsigned char>(c) >= 0x80;
}

/// The words of a text, in lower case, with the byte at which each begins.
std::vector<std::pair<std::string, std::size_t>> words_of(std::string_view text) {
  std::vector<std::pair<std::string, std::size_t>> words;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = at;
    while (end < text.size() && is_letter_or_digit(text[end])) ++end;
    if (end > at) words.emplace_back(catalog::lower_case(text.substr(at, end - at)), at);
    at = std::max(end, at + 1);
  }
  return words;
}

bool is_number(std::string_view word) {
  return std::all_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; });
}

void refuse_word(JobReading& reading, const Value& value, std::string_view word, std::size_t offset) {
  std::vector<std::string_view> known(kNamed.begin(), kNamed.end());
  const std::string allowed = catalog::either_of(known);
  for (const auto& [first, last] :
       {std::pair(std::begin(kAluminium), std::end(kAluminium)),
        std::pair(std::begin(kMagnesium), std::end(kMagnesium)), std::pair(std::begin(kHarmless), std::end(kHarmless))})
    for (const auto* name = first; name != last; ++name)
      if (name->size() > 3) known.push_back(*name);
  reading.problems.add(value,
                       fmt::format("{}: '{}' is no material that is known here; allowed are {}{}", value.path(), word,
                                   allowed, catalog::did_you_mean(word, known)),
                       offset);
}

void read_worked(JobReading& reading, const Value& value, Cutting& cutting) {
  bool aluminium = false;
  bool lithium = false;
  bool any = false;
  for (const auto& [word, offset] : words_of(value.text())) {
    const bool is_aluminium = is_one_of(word, kAluminium);
    const bool is_magnesium = is_one_of(word, kMagnesium);
    const bool is_lithium = is_one_of(word, kLithium);
    const bool is_known = is_aluminium || is_magnesium || is_lithium || is_one_of(word, kHarmless);
    if (!is_known && !is_one_of(word, kBeside) && !is_number(word)) return refuse_word(reading, value, word, offset);
    aluminium = aluminium || is_aluminium;
    lithium = lithium || is_lithium;
    cutting.magnesium = cutting.magnesium || is_magnesium;
    any = any || is_known;
  }
  if (!any) return refuse_word(reading, value, value.text(), 0);
  if (lithium)
    cutting.aluminium_lithium = true;
  else if (aluminium)
    cutting.aluminium = true;
}

}  // namespace

void read_cutting(JobReading& reading, const Value& value, Job& job) {
  if (!value.exists()) return;
  for (const Value& item : catalog::read_texts(value, reading.problems))
    if (item.is_text()) read_worked(reading, item, job.cutting);
}

}  // namespace riserun::plan
