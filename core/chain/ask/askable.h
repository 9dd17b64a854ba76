// What can be asked of a run, of one of its branches and of a distance: a row for each thing. The job file and the
// command line read by it, the window's fields are made of it, the check at the door holds what is asked against it,
// and a refusal names what cannot be kept by its code. A new rule is a field of RunRules or WayRules, a row here, a
// line in Rules and its three sentences in core/report/words.
#pragma once

#include "chain/ask/assembly.h"
#include "chain/ask/span.h"
#include "quantity/read.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <variant>

namespace riserun::chain {

/// Of what it is asked. Other rows say what a refusal may name though nobody asks for it by a word.
enum class AskedOf : std::uint8_t { run, branch, distance };

/// What its value is: read from a text, but for `yes_no`, `parts` (words that name parts) and `choice` (a word of a
/// few).
enum class AskedKind : std::uint8_t { none, yes_no, choice, parts, count, length, pressure, temperature, flow };

/// What a person can do where it cannot be kept.
enum class Relief : std::uint8_t {
  none,     // it is a wish or a fact, not a rule: there is an answer whatever it says, or it must be kept
  give_up,  // do without it
  loosen,   // take less, or more: another figure would do
};

/// What may be written; both ends belong to it.
using AskedRange = std::variant<std::monostate, quantity::Range<int>, quantity::Range<Length>,
                                quantity::Range<GaugePressure>, quantity::Range<Temperature>>;

/// Where the value is kept, for what can be read, checked and given up without knowing more of it.
using AskedField = std::variant<std::monostate, bool RunRules::*, Galvanic RunRules::*, std::optional<int> RunRules::*,
                                std::optional<Length> RunRules::*, std::optional<GaugePressure> RunRules::*,
                                std::optional<Temperature> RunRules::*, bool WayRules::*, Facing WayRules::*,
                                std::optional<Length> WayRules::*, Length Span::*>;

/// A place of the table.
struct Askable {
  std::string_view code{};    // in a refusal and in JSON: "smallest_bore"
  std::string_view key{};     // in a job: "smallest bore"; empty: none
  std::string_view option{};  // of the command: "--bore"; empty: none
  std::string_view help{};    // of the option
  bool flag = false;          // the option has no value; of a branch, its number only
  AskedOf of = AskedOf::run;
  AskedKind kind = AskedKind::none;
  Relief relief = Relief::none;
  AskedField field{};
  AskedRange range{};
  std::span<const std::string_view> choices{};         // the words, in the order of the enumeration that they stand for
  std::span<const std::string_view> branch_choices{};  // those for several far ends, where not all are
  bool one_run = false;                                // says nothing of a run with several far ends
  std::string_view like{};                             // of a branch: the row of a run that has its words
  std::string_view example{};                          // of a branch's option: "2=3/4 in"
};

/// All rows; those of a run in the order in which refusals name them.
std::span<const Askable> askables();
/// @pre there is such a row
const Askable& askable(std::string_view code);

/// Reads the text into the row's own field; what is wrong with it, the range named, is the answer.
/// @pre the row has a field of a kind that is read from a text
std::optional<quantity::ReadError> read_into(RunRules& rules, const Askable& row, const quantity::Written& text);
std::optional<quantity::ReadError> read_into(WayRules& rules, const Askable& row, const quantity::Written& text);
std::optional<quantity::ReadError> read_into(Span& span, const Askable& row, const quantity::Written& text);

/// What is wrong with the value as it stands: out of the range. nullopt: nothing, or the row has none.
std::optional<quantity::ReadError> out_of_range(const RunRules& rules, const Askable& row);
std::optional<quantity::ReadError> out_of_range(const WayRules& rules, const Askable& row);
std::optional<quantity::ReadError> out_of_range(const Span& span, const Askable& row);

/// Something is asked by the row's own field: a figure stands there, a yes, another word than the first.
bool is_asked(const RunRules& rules, const Askable& row);
bool is_asked(const WayRules& rules, const Askable& row);
/// Nothing is asked by it any more.
void give_up(RunRules& rules, const Askable& row);
void give_up(WayRules& rules, const Askable& row);

/// Sets a field of kind yes_no, or one of kind choice to the word of that place.
void choose(RunRules& rules, const Askable& row, std::size_t choice);
void choose(WayRules& rules, const Askable& row, std::size_t choice);

}  // namespace riserun::chain
