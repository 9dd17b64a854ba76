// What a run has of its own ends' size and kinds, and what it weighs to pass a port that has not.
#pragma once

#include "chain/part/measures.h"

#include <vector>

namespace riserun::chain {

/// The ends of a run, as far as the orders line and bin look at them.
struct RunEnds {
  double line_inches = 0.0;  // the line size, nominal; 0: not known, and nothing narrows it
  std::vector<catalog::KindId> kinds;

  bool has(catalog::KindId kind) const;
};

/// The ends of a chain.
RunEnds run_ends(const Catalog& catalog, PortTypeId from, PortTypeId to);

/// Adds what it weighs to pass a port of that type: narrowing, foreign thread and kind. O(foreign threads).
void add_passing(const Catalog& catalog, const RunEnds& ends, PortTypeId type, Measures& measures);
/// The same of a plug, through which nothing runs: it narrows nothing.
void add_plugging(const Catalog& catalog, const RunEnds& ends, PortTypeId type, Measures& measures);

}  // namespace riserun::chain
