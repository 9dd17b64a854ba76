// Sentences that every build order shares.
#pragma once

#include "catalog/catalog.h"

#include <map>
#include <string>

namespace riserun::chain {

/// "hand-tight, then 1-1/2 to 3 turns more", for the thread of the end that goes in.
/// Plastic takes less: 1 to 2 turns (common practice, as the trade reference C9 gives it).
std::string turns_past_hand(const catalog::Catalog& catalog, catalog::PortTypeId a, catalog::PortTypeId b,
                            bool plastic);

/// How far a close nipple goes into what it is screwed into, and how it is held while something goes onto it.
inline constexpr const char* kCloseNippleTurns = "hand-tight and no more: what goes onto it draws it up";
std::string held_close_nipple(const std::string& short_name);

/// How joints are made tight: the whole instruction the first time, then the number of the step that gave it.
class SealTexts {
 public:
  std::string sealing(const catalog::Catalog& catalog, const catalog::MatingRule& joint, std::size_t step);

 private:
  std::map<std::string, std::size_t> sealed_in_;  // number of the step that gave the instruction
};

}  // namespace riserun::chain
