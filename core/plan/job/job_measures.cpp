// Reads what is done against heat and frost.
#include "catalog/words/words.h"
#include "plan/job/job_reading.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <iterator>
#include <optional>
#include <span>
#include <string_view>
#include <utility>

namespace riserun::plan {

using catalog::Value;

namespace {

/// A measure with the words that stand for it, each the beginning of one or more words of the job (common practice).
template <class Against>
struct Measure {
  std::string_view name;  // as the messages say it
  bool Against::*is;
  std::array<std::string_view, 8> words;
};

constexpr auto kHeat = std::to_array<Measure<AgainstHeat>>({
    {"guarded", &AgainstHeat::guarded, {"guard", "fence", "barrier", "screen", "shielded", "railing"}},
    {"insulated", &AgainstHeat::insulated, {"insulat", "lagg"}},
    {"covered", &AgainstHeat::covered, {"cover", "hood"}},
    {"mixing valve", &AgainstHeat::mixing_valve, {"mixing valve", "tempering valve", "thermostat"}},
    {"gloves", &AgainstHeat::protection_worn, {"glove", "apron", "face shield", "goggles", "bare hands"}},
});
constexpr auto kFrost = std::to_array<Measure<AgainstFrost>>({
    {"drained", &AgainstFrost::drained, {"drain", "empt"}},
    {"heated", &AgainstFrost::heated, {"heat", "trace"}},
    {"antifreeze", &AgainstFrost::antifreeze, {"antifreeze", "anti-freeze", "glycol"}},
    {"insulated", &AgainstFrost::insulated, {"insulat", "lagg"}},
});
constexpr std::string_view kHeatAllows = "guarded, insulated, covered or mixing valve, and gloves beside one of them";
constexpr std::string_view kFrostAllows = "drained, heated or antifreeze, and insulated beside one of them";

/// Words that take back what stands beside them.
constexpr std::string_view kTakesBack[] = {"no",        "not",         "none",      "nothing", "never",   "without",
                                           "hope",      "unknown",     "nobody",    "ignore",  "maybe",   "perhaps",
                                           "later",     "should",      "might",     "could",   "planned", "someday",
                                           "unguarded", "uninsulated", "uncovered", "unheated"};
/// "No bare hands" asks for gloves.
constexpr std::string_view kNoBareHands = "no bare hands";

bool is_letter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0 || static_cast<unsigned char>(c) >= 0x80;
}

bool begins_a_word(std::string_view clause, std::string_view with) {
  for (std::size_t at = clause.find(with); at != std::string_view::npos; at = clause.find(with, at + 1))
    if (at == 0 || !is_letter(clause[at - 1])) return true;
  return false;
}

bool is_a_word_of(std::string_view clause, std::string_view word) {
  for (std::size_t at = clause.find(word); at != std::string_view::npos; at = clause.find(word, at + 1)) {
    const std::size_t behind = at + word.size();
    if ((at == 0 || !is_letter(clause[at - 1])) && (behind == clause.size() || !is_letter(clause[behind]))) return true;
  }
  return false;
}

bool takes_back(std::string_view clause) {
  return !is_a_word_of(clause, kNoBareHands) &&
         std::any_of(std::begin(kTakesBack), std::end(kTakesBack),
                     [&](std::string_view word) { return is_a_word_of(clause, word); });
}

/// The measures that the clause names, as the messages say them.
template <class Measures>
std::vector<std::size_t> named_in(std::string_view clause, const Measures& measures) {
  std::vector<std::size_t> rows;
  for (std::size_t row = 0; row < measures.size(); ++row)
    if (std::any_of(measures[row].words.begin(), measures[row].words.end(),
                    [&](std::string_view word) { return !word.empty() && begins_a_word(clause, word); }))
      rows.push_back(row);
  return rows;
}

/// What stands between commas, semicolons and "and", with the byte at which each begins.
std::vector<std::pair<std::string, std::size_t>> clauses_of(std::string_view text) {
  std::vector<std::pair<std::string, std::size_t>> clauses;
  const std::string lower = catalog::lower_case(text);
  const auto add = [&](std::size_t from, std::size_t to) {
    while (from < to && lower[from] == ' ') ++from;
    while (to > from && lower[to - 1] == ' ') --to;
    if (to > from) clauses.emplace_back(lower.substr(from, to - from), from);
  };
  constexpr std::string_view kAnd = " and ";
  std::size_t begin = 0;
  for (std::size_t at = 0; at < lower.size(); ++at) {
    const bool by_word = lower.compare(at, kAnd.size(), kAnd) == 0;
    if (!by_word && lower[at] != ',' && lower[at] != ';') continue;
    add(begin, at);
    begin = at + (by_word ? kAnd.size() : 1);
  }
  add(begin, lower.size());
  return clauses;
}

/// @param others  measures against the other of the two, which handle nothing here
template <class Against, class Measures, class Others>
void read_against(JobReading& reading, const Value& value, std::string_view matter, std::string_view allowed,
                  const Measures& measures, const Others& others, Against& against) {
  if (!value.exists()) return;
  const auto text = catalog::read_text(value, reading.problems);
  if (!text) return;
  against.words = *text;
  for (const auto& [clause, offset] : clauses_of(*text)) {
    const std::vector<std::size_t> named = named_in(clause, measures);
    if (!named.empty() && !takes_back(clause)) {
      for (const std::size_t row : named) against.*(measures[row].is) = true;
      continue;
    }
    const bool of_the_other = named.empty() && !named_in(clause, others).empty();
    reading.problems.add(
        value,
        fmt::format("{}: '{}' {} {}; allowed are {}, and what the shop says beside that word", value.path(), clause,
                    !named.empty() ? "takes back what is to be done against"
                    : of_the_other ? "does nothing against"
                                   : "is no measure that is known against",
                    matter, allowed),
        offset);
  }
}

}  // namespace

void read_measures(JobReading& reading, const Value& heat, const Value& frost, Job& job) {
  read_against(reading, heat, "heat", kHeatAllows, kHeat, kFrost, job.against_heat);
  read_against(reading, frost, "frost", kFrostAllows, kFrost, kHeat, job.against_frost);
}

}  // namespace riserun::plan
