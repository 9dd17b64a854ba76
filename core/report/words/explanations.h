// What `riserun explain` says of each finding and each caution of a plan, of each reason why there is no run and of
// each kind of mistake in a file or a word: what it means, why it matters, what mends it, and where that comes from.
// Verb, completion and manual page are made of this table.
#pragma once

#include <span>
#include <string_view>
#include <vector>

namespace riserun::report {

struct Explanation {
  std::string_view code;  // of the finding's, the caution's or the refusal's fact: "no_gauge"
  std::string_view means;
  std::string_view why;
  std::string_view mend;
  std::string_view source;  // a standard, a report, "common practice"
};

/// The tables by topic; each code stands in one of them.
std::span<const Explanation> wall_explanations();
std::span<const Explanation> air_explanations();
std::span<const Explanation> relief_explanations();
std::span<const Explanation> water_explanations();
std::span<const Explanation> run_explanations();
std::span<const Explanation> caution_explanations();
std::span<const Explanation> joint_explanations();
std::span<const Explanation> input_explanations();

/// All of them, in the order of the tables.
const std::vector<Explanation>& explanations();

/// nullptr: no finding, no caution, no refusal and no mistake has that code.
const Explanation* explanation_of(std::string_view code);

}  // namespace riserun::report
