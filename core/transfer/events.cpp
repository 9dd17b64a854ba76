#include "transfer/runner.h"

#include <algorithm>
#include <cmath>

namespace riserun::transfer {
namespace {

constexpr double kRestShare = 1.0e-7;  // of the water still to move: at rest
constexpr double kRestLevel = 1.0e-4;  // m of table: at rest where wall friction makes the last of it creep
constexpr double kRestHead = 1.0e-5;   // m of water: the pressure is the one at rest

}  // namespace

Runner::Runner(const Equations& equations, const RunOptions& options)
    : e_(equations),
      o_(options),
      books_(equations.start_books()),
      idles_(equations.supply == Equations::Supply::receiver),
      tolerance_(options.tolerance) {
  rest_water_ = e_.water_at_rest();
  rest_pressure_ = e_.atmosphere + e_.pressure_at_rest(rest_water_);
  // At rest on the way is the end only where rest comes before the goal.
  const double to_goal = o_.task == Task::fill ? e_.line_volume - e_.start_line + o_.goal_table - e_.start_table
                                               : e_.drained_table - e_.start_table;
  watch_rest_ = o_.over_the_rim || (o_.task == Task::fill ? rest_water_ < to_goal : rest_water_ > to_goal);
  const double creep = e_.wall_friction ? kRestLevel * e_.table_area : 0.0;
  rest_margin_ = std::max({kRestShare * std::abs(rest_water_), creep, 1.0e-12 * std::min(e_.capacity, e_.rim_volume)});
  // The state is measured by what will move, so that one relative tolerance suits a thimble and a pool.
  const double water =
      std::max(o_.over_the_rim ? std::abs(rest_water_) : std::min(std::abs(rest_water_), std::abs(to_goal)),
               1.0e-4 * std::min(e_.capacity, e_.rim_volume));
  const double air = e_.atmosphere * water / e_.gas;
  scale_ = {water, air, air, air};
}

Gauges Runner::gauges(const State& s) const {
  Gauges g;
  g.fill(kOff);
  const Books now = e_.now(books_, s.water);
  const double reservoir = e_.start_water - s.water;
  const double pressure = e_.ullage_pressure(s);
  const double head =
      (pressure - e_.atmosphere) / e_.rho_g + reservoir / e_.reservoir_area - e_.outlet_level(books_, s.water);

  if (!o_.over_the_rim) g[kGoal] = o_.task == Task::fill ? now.table - o_.goal_table : e_.drained_table - now.table;
  g[kReservoirFull] = reservoir - e_.full_water();
  if (head > 0.0) {
    const double uncovers = e_.dip_uncovers ? e_.uncovering_level(e_.water_flow(head)) : e_.riser_end;
    g[kRiser] = uncovers * e_.reservoir_area - reservoir;
  }
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
      // Water leaves the table for the line when the head pulls back and the inlet is no longer covered: both, so the
      // greater of the two has to fall below zero.
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
      course_.arrival_flow = e_.water_flow(e_.head(s, books_));
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
  // Each round acts on one change, which may let another be seen. Bounded: at a tie two could call each other.
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

}  // namespace riserun::transfer
