// How a joint is made tight and how far it is screwed up, as facts of a build step.
#pragma once

#include "catalog/catalog.h"
#include "quantity/fact.h"

#include <map>
#include <string>

namespace riserun::chain {

/// "hand-tight, then 1-1/2 to 3 turns more", for the thread of the end that goes in.
/// Plastic takes less: 1 to 2 turns (common practice, as the trade reference C9 gives it).
quantity::Fact turns_past_hand(const catalog::Catalog& catalog, catalog::PortTypeId a, catalog::PortTypeId b,
                               bool plastic);

/// The whole instruction the first time, then the number of the step that gave it.
class Seals {
 public:
  quantity::Fact sealing(const catalog::Catalog& catalog, const catalog::MatingRule& joint, std::size_t step);

 private:
  std::map<std::string, std::size_t> sealed_in_;  // number of the step that gave the instruction
};

}  // namespace riserun::chain
