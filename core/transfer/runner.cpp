#include "transfer/runner.h"

#include "transfer/stiff_stepper.h"

#include <boost/math/tools/toms748_solve.hpp>
#include <boost/numeric/odeint/algebra/array_algebra.hpp>
#include <boost/numeric/odeint/integrate/integrate_adaptive.hpp>
#include <boost/numeric/odeint/stepper/controlled_runge_kutta.hpp>
#include <boost/numeric/odeint/stepper/dense_output_runge_kutta.hpp>
#include <boost/numeric/odeint/stepper/generation.hpp>
#include <boost/numeric/odeint/stepper/runge_kutta_dopri5.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace riserun::transfer {
namespace {

namespace odeint = boost::numeric::odeint;

using Vector = Runner::Vector;

// A step that stability limits settles where the step times the fastest rate is 1.5 to 3.3 (Dormand and Prince's
// method; less where the rate swings, as with the square root of a small head); one that accuracy limits stays far
// below 1.
constexpr double kStiffProduct = 1.0;
constexpr std::size_t kStepsPerCheck = 4;
constexpr int kStiffChecks = 4;  // in a row: then the method changes
// Hundreds of steps are usual. A system that takes far more is too extreme for so fine a tolerance.
constexpr std::size_t kStepsToLoosen = 20'000;
constexpr double kLoosen = 10.0;
constexpr double kLoosest = 1.0e-4;
constexpr double kAlmost = 1.0e-300;  // below zero: of a gauge that fires at once
constexpr double kTurnHead = 1.0e-4;  // m; a head that has been greater than this and changes sign is a turn

}  // namespace

void Runner::derivatives(const Vector& y, Vector& rate) const {
  const State by_time = e_.rates(state(y), books_, idles_);
  rate = {by_time.water / scale_[0], by_time.regulated / scale_[1], by_time.vented / scale_[2],
          by_time.compressed / scale_[3]};
}

void Runner::scaled_jacobian(const Vector& y, double (&by)[4][4]) const {
  e_.jacobian(state(y), books_, idles_, by);
  for (std::size_t i = 0; i < 4; ++i) {
    for (std::size_t j = 0; j < 4; ++j) by[i][j] *= scale_[j] / scale_[i];
  }
}

StiffStepper::System Runner::stiff_system() const {
  const auto rates = [](const void* self, const Vector& y, Vector& rate) {
    static_cast<const Runner*>(self)->derivatives(y, rate);
  };
  const auto jacobian = [](const void* self, const Vector& y, double(&by)[4][4]) {
    static_cast<const Runner*>(self)->scaled_jacobian(y, by);
  };
  return {this, rates, jacobian};
}

/// The way from the last step's start to a time within it once more, in steps that end there.
Vector Runner::again(double from, double to) const {
  if (stiff_) {
    StiffStepper stepper(stiff_system(), tolerance_, y_, from, to - from);
    double reached = from;
    while (reached < to) {
      const double before = reached;
      reached = stepper.step().second;
      if (!(reached > before)) return y_;
    }
    return stepper.at(to);
  }
  Vector y = y_;
  const auto system = [this](const Vector& at, Vector& rate, double) { derivatives(at, rate); };
  odeint::integrate_adaptive(odeint::make_controlled(tolerance_, tolerance_, odeint::runge_kutta_dopri5<Vector>()),
                             system, y, from, to, to - from);
  return y;
}

/// An event is settled by steps that end where the dense output puts it, and by the gauge's own slope from there: past
/// an event the equations often have a kink (the head turns, the inlet falls dry), and the dense output of a step that
/// reaches across one, or of Rosenbrock's long steps, is not as good as the step.
void Runner::refine(Watch which, double from, double& time, Vector& y) const {
  const double span = time - from;
  if (!(span > 1.0e-9)) return;
  y = again(from, time);
  Vector rate;
  derivatives(y, rate);
  const auto moved = [&](double by) {
    Vector result = y;
    for (std::size_t i = 0; i < result.size(); ++i) result[i] += by * rate[i];
    return result;
  };
  // Small against the bend of the gauge over the step, large against its last digits.
  const double small = 1.0e-5 * span;
  const double slope = (gauges(state(y))[which] - gauges(state(moved(-small)))[which]) / small;
  const double left = -gauges(state(y))[which] / slope;
  // Farther off, the slope at a kink has misled Newton's step: what the steps found stays.
  if (!(std::abs(left) < 1.0e-2 * span)) return;
  y = moved(left);
  time += left;
}

/// The first gauge that fires in a step, and when; kWatches and the end: none does.
///
/// @param at     state at a time within the step
/// @param after  the gauges at the end
template <class At>
std::pair<Watch, double> Runner::first_to_fire(double from, double end, const Gauges& after, const At& at) const {
  double first = end;
  Watch which = kWatches;
  for (std::size_t i = 0; i < kWatches; ++i) {
    if (!(gauges_[i] < 0.0 && after[i] >= 0.0)) continue;
    double when = end;
    const auto gauge = [&](double time) { return gauges(state(at(time)))[i]; };
    const double close = std::max(1.0e-12 * end, 1.0e-13);  // s
    std::uintmax_t most = 100;
    const double at_from = gauge(from);
    if (at_from < 0.0) {
      const auto found = boost::math::tools::toms748_solve(
          gauge, from, end, at_from, after[i], [&](double a, double b) { return std::abs(b - a) <= close; }, most);
      when = found.second;
    } else {
      when = from;
    }
    // Of gauges that fire together the first in the list counts: an end before a change on the way.
    if (which == kWatches || when < first - 2.0 * close) {
      first = when;
      which = static_cast<Watch>(i);
    }
  }
  return {which, first};
}

/// Looks for the first event in a step and acts on it.
///
/// @param at state at a time within the step
template <class At>
Runner::Outcome Runner::after_step(double from, double to, const At& at) {
  ++course_.steps;
  const Gauges before = gauges_;
  const double end = std::min(to, o_.longest);
  Vector y = at(end);
  Gauges after = gauges(state(y));
  auto [which, first] = first_to_fire(from, end, after, at);
  if (which != kWatches) {
    y = at(first);
    refine(which, from, first, y);
  }
  y_ = y;
  time_ = first;
  step_ = to - from;
  const State s = state(y);
  note(time_, s);
  if (const double head = e_.head(s, books_); which == kWatches && way_ == 0.0 && std::abs(head) > kTurnHead) {
    way_ = head < 0.0 ? -1.0 : 1.0;
    after[kReverses] = -std::abs(head);
  }
  const bool weary = course_.steps % kStepsToLoosen == 0;
  if (weary) tolerance_ *= kLoosen;
  if (tolerance_ > kLoosest || (which == kWatches && !(to < o_.longest))) {
    stop(Stop::time_limit, time_, s);
    return Outcome::stopped;
  }
  if (which == kWatches) {
    gauges_ = after;
    return weary ? Outcome::switched : Outcome::goes_on;
  }
  if (fire(which, time_, s)) return Outcome::stopped;
  gauges_ = gauges(s);
  for (std::size_t i = 0; i < kWatches; ++i) {
    const bool was_waiting = before[i] < 0.0 && before[i] != kOff;
    if (i == which) gauges_[i] = std::max(gauges_[i], 0.0);  // not again for the last bit of the same crossing
    if (i != which && was_waiting && gauges_[i] >= 0.0) gauges_[i] = -kAlmost;  // fired together: its turn comes next
  }
  // A head that has just turned grows like a square root: only small steps see that.
  step_ = which == kReverses ? kFirstStep : std::max(kFirstStep, 0.05 * step_);
  return Outcome::switched;
}

/// All fast modes of these equations die away, so the trace bounds the fastest of them within a factor of four.
bool Runner::is_stiff(double step) {
  double by[4][4];
  e_.jacobian(state(y_), books_, idles_, by);
  return step * std::abs(by[0][0] + by[1][1] + by[2][2] + by[3][3]) > kStiffProduct;
}

Runner::Outcome Runner::ordinary_segment() {
  auto stepper = odeint::make_dense_output(tolerance_, tolerance_, odeint::runge_kutta_dopri5<Vector>());
  const auto system = [this](const Vector& y, Vector& dydt, double) { derivatives(y, dydt); };
  const auto at = [&stepper](double time) {
    Vector y;
    stepper.calc_state(time, y);
    return y;
  };
  stepper.initialize(y_, time_, step_);
  while (true) {
    const auto [from, to] = stepper.do_step(system);
    const Outcome outcome = after_step(from, to, at);
    if (outcome != Outcome::goes_on) return outcome;
    if (course_.steps % kStepsPerCheck != 0) continue;
    stiff_checks_ = is_stiff(to - from) ? stiff_checks_ + 1 : 0;
    if (stiff_checks_ < kStiffChecks) continue;
    stiff_ = true;
    return Outcome::switched;
  }
}

Runner::Outcome Runner::stiff_segment() {
  StiffStepper stepper(stiff_system(), tolerance_, y_, time_, step_);
  const auto at = [&stepper](double time) { return stepper.at(time); };
  while (true) {
    const auto [from, to] = stepper.step();
    if (!(to > from)) throw odeint::step_adjustment_error("no step is small enough");
    ++course_.stiff_steps;
    const Outcome outcome = after_step(from, to, at);
    if (outcome != Outcome::goes_on) return outcome;
  }
}

Course Runner::go() {
  if (start()) return std::move(course_);
  while (true) {
    try {
      if ((stiff_ ? stiff_segment() : ordinary_segment()) == Outcome::stopped) break;
    } catch (const odeint::step_adjustment_error&) {
      // No step is small enough for one method: the other may do; if neither does, say how far it went.
      if (stiff_) {
        stop(Stop::time_limit, time_, state(y_));
        break;
      }
      stiff_ = true;
    }
  }
  return std::move(course_);
}

}  // namespace riserun::transfer
