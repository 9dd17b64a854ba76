#include "chain/span_texts.h"

#include "chain/moves.h"
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

// The first joint in the build order that a bend takes part in, on the side of the leg that it is set from.
BuildStep* step_of_joint(Chain& chain, std::size_t joint) {
  for (BuildStep& step : chain.steps)
    if (step.joint == joint) return &step;
  return nullptr;
}

bool is_bend(const Catalog& catalog, const ChainPart& link) {
  return bought_move(catalog, link.part, link.enter, link.leave).bend != 0;
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

void add_facing(const Catalog& catalog, Chain& chain) {
  bool is_first = true;
  for (std::size_t row = 0; row < chain.parts.size(); ++row) {
    if (!is_bend(catalog, chain.parts[row])) continue;
    BuildStep* step = step_of_joint(chain, is_first ? row : row + 1);
    if (step != nullptr)
      step->text += fmt::format(
          " Stop with the open side of part {} looking {}: it can be set only within the last turn, and is never "
          "backed "
          "off.",
          row + 1, is_first ? "towards the other axis" : "back at part " + std::to_string(row));
    BuildStep* between = step_of_joint(chain, is_first ? row + 1 : row);
    if (!is_first && between != nullptr && between != step)
      between->text += fmt::format(" The open sides of both bends must come to lie in one plane.");
    is_first = false;
  }
}

}  // namespace riserun::chain
