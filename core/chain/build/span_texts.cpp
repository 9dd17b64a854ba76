#include "chain/build/span_texts.h"

#include "quantity/write.h"

#include <fmt/format.h>

namespace riserun::chain {

using catalog::Part;
using quantity::UnitSystem;

namespace {

const char* way_of_cutting(const Part& part) {
  if (part.threaded_when_cut) return "end to end, and thread both ends";
  return part.flexible ? "end to end, ends square" : "end to end, ends square and free of burrs";
}

}  // namespace

std::string tape_length(Length length) {
  return fmt::format("{} ({})", quantity::write_length(length, UnitSystem::inch),
                     quantity::write_length(length, UnitSystem::metric));
}

void add_cutting_steps(const Catalog& catalog, Chain& chain) {
  for (std::size_t row = 0; row < chain.parts.size(); ++row) {
    const ChainPart& link = chain.parts[row];
    if (!link.cut_length) continue;
    const Part& part = catalog.part(link.part);
    chain.steps.push_back({fmt::format("At the bench, cut part {} ({}) to {} {}.", row + 1, part.name,
                                       tape_length(*link.cut_length), way_of_cutting(part)),
                           kNoJoint, false});
  }
}

}  // namespace riserun::chain
