// Facts put into words. A sentence stands once, under its code, in one of the tables of this room; this is how a
// table's text is filled.
//
// A place of the text is `{0}` or `{0:FORM}`: the value of that row, written in the units asked for. Forms:
//   a length         (none) by the tape: 1-1/2 in; thickness, thickness3 (digits): 0.134 in; bore: 3/64 in, else
//                    as thickness3; decimal3: 1.25 in;
//                    long: 6 ft 2 in; both: inch and, in brackets, metric; tape: the same, but metric alone where that
//                    is asked for; tape_up: the same, up to the next mark; no_less: in the person's own units alone, up
//                    to the next mark; distance: up to tens of feet, and metres; fixed1 (decimals of an inch, one fewer
//                    of a millimetre): 1.3 in
//   a pressure       (none) with the column of water; alone, alone4 (digits): without; mark: the same, and where that
//                    is metric psi beside it, as springs and name plates of low pressure have it; dial: so too, else
//                    with the column of water
//   a volume flow    (none) of water, gpm; air: scfm
//   a volume         (none) gal; air: free air, ft3
//   a stress         (none) or digits; both: ksi and, in brackets, MPa
//   other quantities (none), or a number of digits
//   a bare number    (none) or digits; fixed1: so many decimals; quarters: 1-1/2
//   a name           (none) as it is; sentence: from a capital to a full stop
//   a count          (none) the number; #part|parts: 2 parts; ?|s: the first word for one, the second for any other;
//                    none|one|no more than #: the words for none, for one, for more; spelled: three
//   rows             what stands between two: `; `; (none) a comma; and: commas, and "and" before the last
#pragma once

#include "chain/ask/answer.h"
#include "quantity/fact.h"
#include "quantity/write.h"

#include <span>
#include <string>
#include <string_view>

namespace riserun::report {

using quantity::Fact;
using quantity::Facts;

/// A sentence of a table.
struct Words {
  std::string_view code;
  std::string_view text;
};

std::span<const Words> plan_words();
std::span<const Words> riser_words();

/// All tables of the room, each of its topic. A new one is declared here and named in say.cpp.
std::span<const std::span<const Words>> word_tables();
std::span<const Words> build_words();
std::span<const Words> caution_words();
std::span<const Words> connection_words();
std::span<const Words> finding_words();
std::span<const Words> heat_words();
std::span<const Words> leak_test_words();
std::span<const Words> line_words();
std::span<const Words> refusal_words();
std::span<const Words> relief_words();
std::span<const Words> taken_words();
std::span<const Words> work_words();

/// The fact's sentence.
/// @pre its code has words, and values for all its places (a test goes through all tables and all codes)
std::string say(const Fact& fact, UnitSystem units);
std::vector<std::string> say_all(const Facts& facts, UnitSystem units);
/// What a run keeps of its line, as one sentence; empty where there is nothing to say.
std::string kept_sentence(const chain::Run& run, UnitSystem units);
/// What to do, of a change that makes a chain.
std::string words_of(const chain::Lift& lift, UnitSystem units);
/// The text with its places filled. For tests, and for texts that are not told apart by a code alone.
std::string fill(std::string_view text, const std::vector<quantity::Value>& values, UnitSystem units);

/// A factor of safety to two digits, never better than it is: 3.97 is no 4.
std::string write_factor(double factor);

}  // namespace riserun::report
