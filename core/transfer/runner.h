// One run of the equations: the steps in runner.cpp, and what is watched on the way in events.cpp.
#pragma once

#include "transfer/course.h"
#include "transfer/stiff_stepper.h"

#include <array>
#include <utility>

namespace riserun::transfer {

inline constexpr double kFirstStep = 1.0e-6;  // s; at a start or a turn the flow rises like a square root of time
inline constexpr double kOff = -1.0e300;      // of a gauge that cannot fire now

/// What is watched. A gauge fires when it rises through zero.
enum Watch : std::size_t {
  kGoal,           // the table has its depth, or is drained to its inlet: the end
  kRiser,          // the reservoir is down to the riser's end: the end
  kRim,            // the table is full: the end of a fill; otherwise water goes over the rim from here
  kRest,           // everything is at rest before the goal: the end
  kReservoirFull,  // the end
  kShutOff,        // enough air is in the ullage to finish without more: marked
  kLineFull,       // water reaches the inlet
  kTableLeft,      // water falls back from the inlet into the line
  kRimLeft,        // water runs back, no longer over the rim
  kReceiverFull,   // the compressor stops
  kReceiverDraws,  // more is drawn than the compressor delivers: it runs
  kReverses,       // the head changes sign
  kCovered,        // the table's water covers its inlet
  kWatches
};
using Gauges = std::array<double, kWatches>;

/// Solves one run. The state is scaled so that a relative tolerance suits each of its parts.
class Runner {
 public:
  using Vector = StiffStepper::Vector;

  Runner(const Equations& equations, const RunOptions& options);

  Course go();

 private:
  enum class Outcome { goes_on, switched, stopped };

  State state(const Vector& y) const {
    return {y[0] * scale_[0], y[1] * scale_[1], y[2] * scale_[2], y[3] * scale_[3]};
  }
  void derivatives(const Vector& y, Vector& rate) const;
  void scaled_jacobian(const Vector& y, double (&by)[4][4]) const;
  Gauges gauges(const State& s) const;
  bool start();
  void note(double time, const State& s);
  bool fire(Watch watch, double time, const State& s);
  void stop(Stop why, double time, const State& s);
  template <class At>
  std::pair<Watch, double> first_to_fire(double from, double end, const Gauges& after, const At& at) const;
  template <class At>
  Outcome after_step(double from, double to, const At& at);
  bool is_stiff(double step);
  Outcome ordinary_segment();
  Outcome stiff_segment();
  StiffStepper::System stiff_system() const;
  Vector again(double from, double to) const;
  void refine(Watch which, double from, double& time, Vector& y) const;

  const Equations& e_;
  const RunOptions& o_;
  Books books_;
  bool idles_;
  double rest_water_, rest_pressure_, rest_margin_;
  bool watch_rest_;
  Vector scale_;

  Vector y_{};
  double time_ = 0.0;
  double step_ = kFirstStep;
  double way_ = 0.0;  // of the head: +1 forward, -1 backward, 0 too small to tell
  double tolerance_;
  Gauges gauges_{};
  int stiff_checks_ = 0;
  bool stiff_ = false;
  Course course_;
};

}  // namespace riserun::transfer
