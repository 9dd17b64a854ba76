// The rig of the leak test: gauge, relief valve and shut-off on the port that the air comes in by, as an assembly. The
// job's own parts are not built in yet and lend themselves to it.
#pragma once

#include "chain/finder.h"
#include "plan/plan.h"
#include "plan/stage/bin_left.h"
#include "plan/stage/inputs.h"

#include <optional>
#include <vector>

namespace riserun::plan {

/// The dial that shows the test pressure: the job's own where it does (1.5 to 4 times), else of the catalog's the one
/// nearest above twice; none: there is no such dial. Where the regulator's knob is marked by it, too, the one that is
/// least off there.
struct TestDial {
  std::vector<PartId> parts;  // alike in their scale
  bool of_job = false;
};
///
/// @param marked  what the knob is set to; nullopt: it is not marked in this test
TestDial dial_for_test(const Inputs& inputs, const std::vector<ConnectionPlan>& connections, GaugePressure pressure,
                       std::optional<GaugePressure> marked);

/// The relief valves of the test line: the job's own where one opens over the test pressure and no higher than `most`,
/// else of the catalog's the cheapest of those that open nearest below `most`.
std::vector<PartId> reliefs_for_test(const Inputs& inputs, const std::vector<ConnectionPlan>& connections,
                                     GaugePressure pressure, GaugePressure most);

/// Every device at an end of the job's own runs, and every part in them, once for each that there is: not built in
/// yet, they lend themselves to the test. What is cut to measure is cut for its own place.
std::vector<PartId> lent_by_job(const Catalog& catalog, const std::vector<ConnectionPlan>& connections);

/// What the rig is worked out from.
struct RigRequest {
  const JobPort& port;
  std::vector<PartId> gauges;   // none: its place ends in a port for one
  std::vector<PartId> reliefs;  // none: its place ends in a port for one
  bool fed_by_job = false;      // by its regulator
};

/// @param left what the job left of the bin; the rig takes of it
TestRig plan_test_rig(const Inputs& inputs, const chain::Finder& finder, const std::vector<ConnectionPlan>& connections,
                      const RigRequest& wanted, BinLeft& left);

}  // namespace riserun::plan
