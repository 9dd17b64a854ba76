// What a run has of its own ends' size and kinds, and what it weighs to pass a port that has not.
#pragma once

#include "chain/part/measures.h"

#include <vector>

namespace riserun::chain {

/// The ends of a run, as far as the orders line and bin look at them.
struct RunEnds {
  double line_inches = 0.0;  // the line size, nominal; 0: not known, and nothing narrows it
  std::vector<catalog::KindId> kinds;
  bool keeps_metals_apart = false;  // a thread that does is at home where the catalog says so
  bool runs_on_hose = false;        // a need asks for a hose with ends of such a thread, which then runs on beside it

  bool has(catalog::KindId kind) const;
};

/// The ends of a chain under the rules of a request.
RunEnds run_ends(const Catalog& catalog, const ChainRequest& request, PortTypeId from, PortTypeId to);
RunEnds run_ends(const Catalog& catalog, const ChainRequest& request);
/// The thread is at home at an end only.
bool only_at_end(const Catalog& catalog, catalog::KindId kind);
/// Some need may be met by a hose that has ends of a thread that is else at home at an end only (garden hose thread).
bool asks_for_hose_of_its_thread(const Catalog& catalog, const std::vector<Need>& needs);

/// Adds what it weighs to pass a port of that type: narrowing, foreign thread and kind. O(foreign threads).
void add_passing(const Catalog& catalog, const RunEnds& ends, PortTypeId type, Measures& measures);
/// Adds the foreign thread that a joint inside the run is, between two parts, where its thread is at home only at an
/// end and not all ends have it. Of an assembly: whose base has it not.
/// @param type  of the port by which the outer of the two is entered
void add_inner_joint(const Catalog& catalog, const RunEnds& ends, PortTypeId type, Measures& measures);
/// The same of a plug, through which nothing runs: it narrows nothing.
void add_plugging(const Catalog& catalog, const RunEnds& ends, PortTypeId type, Measures& measures);

}  // namespace riserun::chain
