#include "transfer/integrate.h"

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

using Vector = StiffStepper::Vector;

// A step that stability limits settles where the step times the fastest rate is 1.5 to 3.3 (Dormand and Prince's
// method; less where the rate swings, as with the square root of a small head); one that accuracy limits stays far
// below 1.
constexpr double kStiffProduct = 1.0;
constexpr std::size_t kStepsPerCheck = 4;
constexpr int kStiffChecks = 4;  // in a row: then the method changes
constexpr std::size_t kStepsToLoosen =
    20'000;  // usual are hundreds: beyond it the system's own numbers are not that fine
constexpr double kLoosen = 10.0;
constexpr double kLoosest = 1.0e-4;
constexpr double kRestShare = 1.0e-7;  // of the water still to move: at rest
constexpr double kRestLevel = 1.0e-4;  // m of table: at rest where wall friction makes the last of it creep
constexpr double kRestHead = 1.0e-5;   // m of water: the pressure is the one at rest
constexpr double kTurnHead = 1.0e-4;   // m; a head that has been greater than this and changes sign is a turn
constexpr double kFirstStep = 1.0e-6;  // s; at a start or a turn the flow rises like a square root of time
constexpr double kOff = -1.0e300;      // of a gauge that cannot fire now
constexpr double kAlmost = 1.0e-300;   // below zero: of a gauge that fires at once

/// What is watched. A gauge fires when it rises through zero.
enum Watch : std::size_t {
  kGoal,
  kRiser,
  kRim,
  kRest,
  kReservoirFull,
  kShutOff,
  kLineFull,
  kTableLeft,
  kRimLeft,
  kReceiverFull,
  kReceiverDraws,
  kReverses,
  kCovered,
  kWatches
};
using Gauges = std::array<double, kWatches>;

class Runner {
 public:
  Runner(const Equations& equations, const RunOptions& options)
      : e_(equations),
        o_(options),
        books_(equations.start_books()),
        idles_(equations.supply == Equations::Supply::receiver),
        tolerance_(options.tolerance) {
    rest_water_ = e_.water_at_rest();
    rest_pressure_ = e_.atmosphere + e_.pressure_at_rest(rest_water_);
    // At rest on the way is the end only where rest comes before the goal.
    const double to_goal = o_.task == Task::fill ? e_.line_volume - e_.start_line + o_.goal_table - e_.start_table
                                                 : e_.inlet_volume - e_.start_table;
    watch_rest_ = o_.over_the_rim || (o_.task == Task::fill ? rest_water_ < to_goal : rest_water_ > to_goal);
    const double creep = e_.wall_friction ? kRestLevel * e_.table_area : 0.0;
    rest_margin_ =
        std::max({kRestShare * std::abs(rest_water_), creep, 1.0e-12 * std::min(e_.capacity, e_.rim_volume)});
    const double water =
        std::max(o_.over_the_rim ? std::abs(rest_water_) : std::min(std::abs(rest_water_), std::abs(to_goal)),
                 1.0e-4 * std::min(e_.capacity, e_.rim_volume));
    const double air = e_.atmosphere * water / e_.gas;
    scale_ = {water, air, air, air};
  }

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

Gauges Runner::gauges(const State& s) const {
  Gauges g;
  g.fill(kOff);
  const Books now = e_.now(books_, s.water);
  const double reservoir = e_.start_water - s.water;
  const double pressure = e_.ullage_pressure(s);
  const double head =
      (pressure - e_.atmosphere) / e_.rho_g + reservoir / e_.reservoir_area - e_.outlet_level(books_, s.water);

  if (!o_.over_the_rim) g[kGoal] = o_.task == Task::fill ? now.table - o_.goal_table : e_.inlet_volume - now.table;
  g[kReservoirFull] = reservoir - e_.full_water();
  if (head > 0.0) g[kRiser] = e_.riser_end * e_.reservoir_area - reservoir;
  if (way_ != 0.0) g[kReverses] = -way_ * head;
  if (watch_rest_) {
    g[kRest] = 1.0 - std::max(std::abs(s.water - rest_water_) / rest_margin_,
                              std::abs(pressure - rest_pressure_) / (kRestHead * e_.rho_g));
  }
  if (o_.shut_off_air > 0.0 && !course_.shut_off_table) g[kShutOff] = e_.air(s) - o_.shut_off_air;
  switch (books_.reach) {
    case Reach::line:
      g[kLineFull] = e_.line_volume > 0.0 ? now.line - e_.line_volume : head;
      break;
    case Reach::table:
      g[kRim] = now.table - e_.rim_volume;
      g[kCovered] = now.table - e_.inlet_volume;
      g[kTableLeft] = -std::max(head, (now.table - e_.inlet_volume) / e_.table_area);
      break;
    case Reach::rim:
      g[kRimLeft] = -head;
      break;
  }
  if (e_.supply == Equations::Supply::receiver && e_.compressor > 0.0) {
    if (idles_) {
      g[kReceiverDraws] = e_.regulator_flow(pressure, e_.receiver_pressure(s)) - e_.compressor;
    } else {
      g[kReceiverFull] = e_.receiver_start + s.compressed - s.regulated - e_.receiver_stop;
    }
  }
  return g;
}

void Runner::note(double time, const State& s) {
  const State rate = e_.rates(s, books_, idles_);
  const double pressure = e_.ullage_pressure(s);
  course_.peak_flow = std::max(course_.peak_flow, std::abs(rate.water));
  course_.peak_pressure = std::max(course_.peak_pressure, pressure);
  if (o_.keep_path) {
    course_.path.push_back({time, s, e_.now(books_, s.water), rate.water, rate.regulated - rate.vented, pressure});
  }
}

void Runner::stop(Stop why, double time, const State& s) {
  course_.stop = why;
  course_.time = time;
  course_.state = s;
  course_.books = e_.now(books_, s.water);
}

/// What a gauge that fired does. True: the run ends.
bool Runner::fire(Watch watch, double time, const State& s) {
  const Books now = e_.now(books_, s.water);
  switch (watch) {
    case kGoal:
      stop(Stop::goal_reached, time, s);
      return true;
    case kRiser:
      stop(Stop::riser_uncovered, time, s);
      return true;
    case kRest:
      stop(Stop::pressures_balance, time, s);
      return true;
    case kReservoirFull:
      stop(Stop::reservoir_full, time, s);
      return true;
    case kRim:
      if (o_.task == Task::fill && !o_.over_the_rim) {
        stop(Stop::table_overflows, time, s);
        return true;
      }
      books_ = {Reach::rim, s.water, now.line, now.table, now.spilled};
      return false;
    case kShutOff:
      course_.shut_off_table = now.table;
      return false;
    case kLineFull:
      books_ = {Reach::table, s.water, now.line, now.table, now.spilled};
      return false;
    case kTableLeft:
      books_ = {Reach::line, s.water, now.line, now.table, now.spilled};
      return false;
    case kRimLeft:
      books_ = {Reach::table, s.water, now.line, now.table, now.spilled};
      return false;
    case kReceiverFull:
      idles_ = true;
      return false;
    case kReceiverDraws:
      idles_ = false;
      return false;
    case kCovered:  // the outlet's level has a kink here: nothing to do but to begin a new step
      return false;
    case kReverses:
      way_ = 0.0;
      return false;
    case kWatches:
      break;
  }
  return false;
}

/// What is so from the first moment on: an end, or a compressor that has to run.
bool Runner::start() {
  const State s;
  course_.shut_off_table.reset();
  note(0.0, s);
  const double reservoir = e_.start_water;
  const double end = e_.riser_end * e_.reservoir_area;
  for (int round = 0; round < 8; ++round) {
    gauges_ = gauges(s);
    if (gauges_[kGoal] >= 0.0) return fire(kGoal, 0.0, s);
    if (o_.task == Task::fill && reservoir <= end) return fire(kRiser, 0.0, s);
    if (gauges_[kRest] >= 0.0) return fire(kRest, 0.0, s);
    if (o_.task == Task::drain && gauges_[kReservoirFull] >= 0.0 && e_.head(s, books_) < 0.0) {
      return fire(kReservoirFull, 0.0, s);
    }
    if (gauges_[kShutOff] >= 0.0) fire(kShutOff, 0.0, s);
    bool switched = false;
    for (const Watch watch : {kLineFull, kRim, kTableLeft, kReceiverDraws}) {
      if (gauges_[watch] > 0.0 || (watch == kRim && gauges_[watch] >= 0.0 && e_.head(s, books_) > 0.0)) {
        if (fire(watch, 0.0, s)) return true;
        switched = true;
        break;
      }
    }
    if (!switched) break;
  }
  gauges_ = gauges(s);
  return false;
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
  const double small = 1.0e-5 * span;
  const double slope = (gauges(state(y))[which] - gauges(state(moved(-small)))[which]) / small;
  const double left = -gauges(state(y))[which] / slope;
  if (!(std::abs(left) < 1.0e-2 * span)) return;
  y = moved(left);
  time += left;
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
  double first = end;
  Watch which = kWatches;
  for (std::size_t i = 0; i < kWatches; ++i) {
    if (!(before[i] < 0.0 && after[i] >= 0.0)) continue;
    double when = end;
    const auto gauge = [&](double time) { return gauges(state(at(time)))[i]; };
    const double close = std::max(1.0e-12 * end, 1.0e-13);
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

}  // namespace

Course run(const Equations& equations, const RunOptions& options) { return Runner(equations, options).go(); }

}  // namespace riserun::transfer
