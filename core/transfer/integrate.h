// Runs the equations of a transfer from its start to its end: adaptive steps with dense output (Boost odeint), every
// event located on the dense output.
#pragma once

#include "transfer/course.h"

namespace riserun::transfer {

/// Runs until the goal or what comes before it.
Course run(const Equations& equations, const RunOptions& options);

}  // namespace riserun::transfer
