#include "chain/ask/answer.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace riserun::chain {

std::string conflict_sentence(const std::vector<std::string>& rules) {
  static constexpr const char* kNumbers[] = {"three", "four", "five", "six", "seven", "eight"};
  const std::string list = fmt::format("{}", fmt::join(rules, "; "));
  if (rules.size() == 2) return "these two cannot both be kept: " + list;
  const std::string count =
      rules.size() < 3 || rules.size() > 8 ? std::to_string(rules.size()) : kNumbers[rules.size() - 3];
  return fmt::format("these {} cannot all be kept: {}", count, list);
}

}  // namespace riserun::chain
