// The leak test as a sheet: what plugs which port, the rig on the one that the air comes in by, the steps, and what a
// falling gauge tells.
#pragma once

#include "chain/ask/assembly.h"
#include "plan/job/job.h"
#include "plan/remarks.h"
#include "quantity/quantities.h"
#include "reservoir/stored_energy.h"

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace riserun::plan {

/// A port that is plugged for the leak test, and with what.
struct TestPlug {
  std::string port;
  std::optional<PartId> part;  // none: the catalog has nothing that closes it
  bool from_bin = false;
  bool of_job = false;  // a connection ends in it anyhow: it stays
};

/// A part of the rig, and whose it is.
struct RigPart {
  enum class Whose : std::uint8_t {
    job,     // a connection's, not built in yet: lent to the test
    bin,     // left there by the job
    bought,  // for the test
  };
  PartId part;
  Whose whose = Whose::bought;
};

/// What stands on the port that the test air comes in by: gauge, relief valve and shut-off, branched from it. A hose
/// leads from the shut-off to where the supply is worked, at the stand-off distance.
struct TestRig {
  chain::AssemblyRequest request;  // its ends in the order gauge, relief valve, feed
  std::variant<chain::Run, chain::NoAssembly> answer;
  std::vector<RigPart> parts;           // of the run and at its ends, from the port outwards
  std::string fed_from;                 // the port of the air supply; empty: the job has no regulator to feed it by
  std::optional<Fact> relief_stands{};  // which opening its relief valve goes into, and how that is turned

  const chain::Run* run() const { return std::get_if<chain::Run>(&answer); }
};

/// One rise of the pressure.
struct TestRung {
  GaugePressure pressure;
  Time hold{};
};

struct LeakTestPlan {
  bool possible = true;  // false: the walls are too weak for any test with air; basis says why
  GaugePressure pressure;
  GaugePressure brushed_at;  // what it is let down to before anybody goes near with the solution
  bool given = false;
  Fact basis;                                 // why that pressure, or why none
  GaugePressure gauge_full_scale;             // zero: too low for a dial, use the water column
  bool gauge_of_job = false;                  // the one of the job shows it
  PressureDifference gauge_mark;              // widest step between its marks
  PressureDifference gauge_error;             // plus or minus, at the test pressure
  Length water_column_leg{};                  // each leg of a U of clear hose that shows the pressure
  GaugePressure relief;                       // in the test line, at most
  std::optional<GaugePressure> relief_opens;  // of the valve that stands in it
  VolumeFlow relief_passes{};                 // free air, wide open or at the walls' limit
  VolumeFlow supply_gives{};                  // ... then, with the regulator of the test stuck wide open
  bool relief_is_enough = true;               // with the throttle, where there is one
  Length throttle_bore{};                     // widest hole that makes it so; zero: none is needed, or none does
  std::optional<PartId> throttle;             // of the test: stands at the supply in place of the job's own
  std::optional<PartId> regulator;            // of the test: the job's own does not go up to its pressure
  std::vector<RigPart> at_supply;             // from the supply on: restrictor, regulator; empty: none reaches it
  std::string air_port;                       // where the air and the gauge go in; empty: the job names no port
  std::vector<TestPlug> plugs;
  std::optional<TestRig> rig;
  int compartments = 1;                   // that tight baffles make: each is tested by itself
  Volume air_volume{};                    // of the empty reservoir
  reservoir::StoredEnergy energy;         // at the test pressure, reservoir empty
  reservoir::StoredEnergy energy_in_use;  // at the set pressure, ullage with the water up
  Force lid_force{};                      // at the test pressure
  PressureDifference drift_per_kelvin;    // of the reading at which it is brushed
  std::vector<TestRung> rungs;            // the last one is the test pressure
  Time hold{};                            // from the first reading to the last
  std::vector<Time> readings;             // from its start
  VolumeFlow least_leak{};                // free air, that moves the gauge by one mark in the hold
  Length least_hole{};                    // round, in thin sheet, that leaks so
  std::vector<Fact> steps;                // empty where no test is possible, or no relief valve is sold for its rig
  std::vector<Fact> welds;                // and joints, in the order in which they are brushed

  /// The job's own regulator sets its pressure, so that the knob is marked on the way, by the rig's gauge.
  bool by_own_regulator() const { return possible && !at_supply.empty() && !regulator; }
};

}  // namespace riserun::plan
