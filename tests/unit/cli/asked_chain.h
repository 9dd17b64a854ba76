// What the tests of `riserun chain` ask again and again.
#pragma once

#include "unit/cli/asked_command.h"

namespace riserun::cli {

using testing::Contains;
using testing::ContainsRegex;
using testing::Each;
using testing::ElementsAre;
using testing::IsEmpty;

inline const Words kBenchPair{"1 FNPT", "3/4 MGHT"};
inline const Words kOneToOne{"1 FNPT", "1 FNPT"};

/// The rules that cannot all be kept.
inline std::vector<std::string> conflict(const json& answer) {
  return each(answer.at("why_none").at("conflict"), "rule");
}

}  // namespace riserun::cli
