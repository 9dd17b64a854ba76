// The plan's lists of steps in words, for text and window: each row one thing to do, read or brush, with a box to tick.
#pragma once

#include "plan/plan.h"
#include "quantity/write.h"

#include <string>
#include <vector>

namespace riserun::report {

struct SaidStep {
  std::string text;
  std::string of{};  // the connection that it belongs to; empty: the whole job
  int number = 0;    // in that connection's own build order; 0: it is none of its steps
};

struct StepList {
  std::string title;
  std::vector<SaidStep> steps;
};

/// Title of the list of readings.
inline constexpr const char* kReadings = "Readings";

/// The leak test's rig, steps, welds and readings; empty where no test is possible, or no relief valve is
/// sold for its rig.
std::vector<StepList> leak_test_steps(const plan::Plan& plan, UnitSystem units);
/// The order of work, phase by phase.
std::vector<StepList> work_steps(const plan::Plan& plan, UnitSystem units);

/// `lent by the job`, `bin`, `buy $4.20`.
std::string source_of(const catalog::Catalog& catalog, const plan::RigPart& part);
/// As JSON gives it: `in_the_vise`.
std::string_view key_of(plan::WorkPhase phase);

}  // namespace riserun::report
