#include "transfer/transfer.h"

#include "transfer/input_check.h"
#include "transfer/integrate.h"

#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace riserun::transfer {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr double kLadderTolerance = 1.0e-7;  // of runs that only compare times
constexpr double kSupplyScatter = 0.1;       // of compressor, regulator, feed and vent, from plates and tables
constexpr double kWorthwhile = 0.01;         // of the time: less than that limits nothing
constexpr double kLineLeft = 1.0e-3;         // of a line's loss when it is taken out: with none there is no end of flow
constexpr std::size_t kMostInstants = 400;   // of a history: a plot is some hundred pixels wide
constexpr double kSelfLimitFreeboard = 0.5 * quantity::kMetresPerInch;  // below the rim; DESIGN: 1/2 in

using hydraulics::Coefficients;
using hydraulics::Direction;

/// One transfer as asked for: what every run of it shares.
struct Question {
  const System& system;
  const Start& start;
  Task task;
  double goal_table;  // m3; fills only
  Detail detail = Detail::all;
};

RunOptions options_for(const Question& q, double tolerance) {
  RunOptions options;
  options.task = q.task;
  options.goal_table = q.goal_table;
  options.tolerance = tolerance;
  options.keep_path = false;
  return options;
}

/// Time to the goal under a tuning [s]; infinite if the goal is not reached.
double time_under(const Question& q, const Tuning& tuning) {
  const Course r = run(Equations(q.system, q.start, q.task, tuning), options_for(q, kLadderTolerance));
  return r.stop == Stop::goal_reached ? r.time : kInfinity;
}

/// Share of the line's loss that the riser, the line's first element, takes with its end: they are the first two places
/// that the water meets in a fill, and the last two in a drain.
double riser_share(const std::vector<hydraulics::ElementLoss>& losses, Task task) {
  double all = 0.0;
  for (const hydraulics::ElementLoss& loss : losses) all += in_metres(loss.head);
  if (losses.size() < 2 || !(all > 0.0)) return 0.5;
  const std::size_t first = task == Task::fill ? 0 : losses.size() - 2;
  return (in_metres(losses[first].head) + in_metres(losses[first + 1].head)) / all;
}

/// How long the transfer takes with each resistance taken out: the compressor as a main at the receiver's pressure, the
/// regulator ten times as large, the bores before it, behind it and of the vents ten times as wide, the rim of the
/// table's opening ten times as long, riser or the rest of the line without its share of the head lost at the mean
/// flow.
std::vector<Limit> ladder(const Question& q, double share_of_riser) {
  std::vector<Limit> limits;
  const auto add = [&](const char* name, const Tuning& tuning) {
    limits.push_back({name, seconds(time_under(q, tuning))});
  };
  if (q.task == Task::fill) {
    Tuning compressor, regulator, feed, air_line;
    compressor.without_compressor_limit = true;
    regulator.without_regulator_limit = true;
    feed.without_feed_limit = true;
    air_line.without_air_line_limit = true;
    if (q.system.air.free_air_delivery) add("compressor", compressor);
    add("regulator", regulator);
    add("feed line", feed);
    if (!q.system.air.after_regulator.empty()) add("air line", air_line);
  } else {
    Tuning vent;
    vent.without_vent_limit = true;
    add("vent", vent);
    Tuning mouth;
    mouth.without_mouth_limit = true;
    if (q.system.mouth.bore > metres(0.0)) add("table's opening", mouth);
  }
  // Riser and line share one loss curve, so each is taken out as its share of the head at the mean flow: exact there,
  // and good enough to say which of the two is worth widening.
  Tuning riser, line;
  riser.line_share = std::max(kLineLeft, 1.0 - share_of_riser);
  line.line_share = std::max(kLineLeft, share_of_riser);
  add("riser", riser);
  if (q.system.line.elements().size() > 1) add("line", line);
  std::stable_sort(limits.begin(), limits.end(),
                   [](const Limit& a, const Limit& b) { return a.time_without < b.time_without; });
  return limits;
}

std::string name_limit(const Question& q, const Course& r, const std::vector<Limit>& limits) {
  if (r.stop == Stop::riser_uncovered) return "charge";
  if (r.stop == Stop::table_overflows) return "rim";
  const bool reached = r.stop == Stop::goal_reached;
  if (!limits.empty() &&
      in_seconds(limits.front().time_without) < (reached ? (1.0 - kWorthwhile) * r.time : kInfinity)) {
    return limits.front().name;
  }
  return q.task == Task::fill ? "set pressure" : "levels";
}

Instant instant_of(const Equations& e, const PathPoint& point) {
  const double free_air_density = e.atmosphere / e.gas;
  return {seconds(point.time),
          metres(e.reservoir_level(point.state.water)),
          metres(point.books.table / e.table_area),
          gauge_pascals(point.pressure - e.atmosphere),
          cubic_metres_per_second(point.water_flow),
          cubic_metres_per_second(point.air_flow / free_air_density)};
}

std::vector<Instant> history_of(const Equations& e, const std::vector<PathPoint>& path) {
  std::vector<Instant> history;
  const std::size_t stride = 1 + path.size() / kMostInstants;
  for (std::size_t i = 0; i < path.size(); i += stride) history.push_back(instant_of(e, path[i]));
  if (!path.empty() && (path.size() - 1) % stride != 0) history.push_back(instant_of(e, path.back()));
  return history;
}

/// The course under a tuning; its time is infinite if the goal is not reached.
struct Limiting {
  double time;  // s
  std::vector<Instant> history;
};
Limiting limiting_course(const Question& q, const Tuning& tuning) {
  const Equations e(q.system, q.start, q.task, tuning);
  RunOptions options = options_for(q, kLadderTolerance);
  options.keep_path = true;
  const Course r = run(e, options);
  return {r.stop == Stop::goal_reached ? r.time : kInfinity, history_of(e, r.path)};
}

/// What fill and drain report alike. `time_low` and `time_high` come from all coefficients at one end of their ranges
/// and the supply (compressor, regulator, feed, vent) a tenth up or down.
void describe(const Question& q, const Equations& e, const Course& r, Transfer& out) {
  const Direction direction = q.task == Task::fill ? Direction::forward : Direction::backward;
  out.stop = r.stop;
  out.time = seconds(r.time);
  const double moved = std::abs(r.state.water);
  const double mean = r.time > 0.0 ? moved / r.time : 0.0;
  out.volume = cubic_metres(moved);
  out.mean_flow = cubic_metres_per_second(mean);
  out.peak_flow = cubic_metres_per_second(r.peak_flow);
  const double air = q.task == Task::fill ? r.state.regulated : r.state.vented;
  out.free_air = cubic_metres(std::max(0.0, air) * e.gas / e.atmosphere);
  out.reservoir_depth = metres(e.reservoir_level(r.state.water));
  out.table_depth = metres(r.books.table / e.table_area);
  out.highest_ullage_pressure = gauge_pascals(r.peak_pressure - e.atmosphere);
  out.losses_at_mean = q.system.line.losses(out.mean_flow, direction, q.system.water);
  out.losses_at_peak = q.system.line.losses(out.peak_flow, direction, q.system.water);
  out.history = history_of(e, r.path);
  if (q.detail == Detail::course) return;
  if (r.time <= 0.0) {
    out.time_high = seconds(r.stop == Stop::goal_reached ? 0.0 : kInfinity);
    out.limited_by = name_limit(q, r, {});
    return;
  }
  // All at one end together, not as independent errors: the range that a person plans with may be too wide, but not too
  // narrow.
  Tuning low, high;
  low.coefficients = Coefficients::low;
  low.supply = 1.0 + kSupplyScatter;
  low.setting = in_pascals(q.system.air.repeatability);
  high.coefficients = Coefficients::high;
  high.supply = 1.0 - kSupplyScatter;
  high.setting = -low.setting;
  Limiting fast = limiting_course(q, low);
  Limiting slow = limiting_course(q, high);
  // Neither need be beyond the estimate itself: a course under worse conditions may end sooner, where air or water
  // gives out, and those two are worked out less finely.
  out.time_low = std::min(seconds(fast.time), out.time);
  out.time_high = std::max(seconds(slow.time), out.time);
  out.history_fast = std::move(fast.history);
  out.history_slow = std::move(slow.history);
  out.limits = ladder(q, riser_share(out.losses_at_mean, q.task));
  out.limited_by = name_limit(q, r, out.limits);
}

std::optional<Time> time_per_tenth_psi(const Question& q, const Course& r) {
  Tuning higher;
  higher.setting = 0.1 * quantity::kPascalsPerPsi;
  const double time = time_under(q, higher);
  if (r.stop != Stop::goal_reached || !(time < kInfinity)) return std::nullopt;
  return seconds(time - r.time);
}

/// Heights and volumes of a fill that don't depend on its course.
struct Marks {
  double water_at_goal;  // m3 gone from the reservoir
  double water_at_rim;
  double water_at_riser;                               // when the riser uncovers
  double pressure_to_start, hold, pressure_to_finish;  // Pa gauge, in the reservoir

  Marks(const Equations& e, double goal_table) {
    const double to_line = e.line_volume - e.start_line;
    water_at_goal = to_line + goal_table - e.start_table;
    water_at_rim = to_line + e.rim_volume - e.start_table;
    water_at_riser = e.start_water - e.riser_end * e.reservoir_area;
    const double goal_level = e.table_floor + goal_table / e.table_area;
    const double start_level =
        e.start_table > e.inlet_volume ? e.table_floor + e.start_table / e.table_area : e.inlet_level;
    const auto holding = [&](double level, double water) {
      return std::max(0.0, e.rho_g * (level - e.reservoir_level(water)));
    };
    const auto lifting = [&](double level, double water) {
      return holding(level, water) + (e.one_way ? e.rho_g * e.check_head : 0.0);
    };
    pressure_to_start = lifting(start_level, to_line);
    // Under an inlet that stands above the water, and behind a check valve, nothing runs back: no pressure is needed to
    // hold.
    hold = goal_table > e.inlet_volume && !e.one_way ? holding(goal_level, water_at_goal) : 0.0;
    pressure_to_finish = std::max(pressure_to_start, lifting(std::max(goal_level, e.inlet_level), water_at_goal));
  }
};

/// Rise of the table once the air is shut at the goal: the ullage expands until it only holds the water.
double coast_up(const Equations& e, const Course& r, const Marks& marks) {
  const double rest = e.water_at_rest_sealed(e.air(r.state));
  const double last = std::min({rest, marks.water_at_rim, marks.water_at_riser});
  return std::max(0.0, last - marks.water_at_goal) / e.table_area;
}

/// @param e with the regulator locked up
void walk_away(const Equations& e, const Marks& marks, Fill& out) {
  const double rest = e.water_at_rest();
  out.pressure_left_alone = gauge_pascals(e.pressure_at_rest(rest));
  const double last = std::min(rest, marks.water_at_riser);
  if (last > marks.water_at_rim) {
    out.walk_away = WalkAway::table_overflows;
    out.walk_away_spill = cubic_metres(last - marks.water_at_rim);
  } else {
    out.walk_away = rest > marks.water_at_riser ? WalkAway::air_blows_through : WalkAway::water_stops_below_rim;
  }
}

/// @param over what the setting must be over the reservoir's pressure
void self_limit(const Equations& e, const Marks& marks, PressureDifference over, Fill& out) {
  out.rise_per_tenth_psi = metres(0.1 * quantity::kPascalsPerPsi / (e.rho_g * (1.0 + e.table_area / e.reservoir_area)));
  const double level = e.table_floor + e.rim_volume / e.table_area - kSelfLimitFreeboard;
  const double table = e.rim_volume - kSelfLimitFreeboard * e.table_area;
  const double gone = e.line_volume - e.start_line + table - e.start_table;
  if (level < e.inlet_level || gone <= 0.0 || gone > marks.water_at_riser) return;
  const double pressure = e.rho_g * (level - e.reservoir_level(gone)) + in_pascals(over);
  if (pressure > 0.0) out.self_limiting_pressure = gauge_pascals(pressure);
}

Question fill_question(const System& system, const Start& start, Length wanted_depth, Detail detail) {
  check_wanted(wanted_depth);
  return {system, start, Task::fill, in_square_metres(system.table.free_area()) * in_metres(wanted_depth), detail};
}

GaugePressure pressure_to_finish_of(const System& system, const Marks& marks) {
  return gauge_pascals(marks.pressure_to_finish) + system.air.after_regulator.opens_at();
}

}  // namespace

Fill fill(const System& system, const Start& start, Length wanted_depth, Detail detail) {
  const Equations e(system, start, Task::fill);
  const Question q = fill_question(system, start, wanted_depth, detail);
  const Marks marks(e, q.goal_table);
  RunOptions options = options_for(q, RunOptions{}.tolerance);
  options.keep_path = true;
  const double hold_air = (marks.pressure_to_finish + e.atmosphere) * e.ullage(marks.water_at_goal) / e.gas;
  options.shut_off_air = hold_air;
  const Course r = run(e, options);

  Fill out;
  describe(q, e, r, out);
  out.pressure_to_start = gauge_pascals(marks.pressure_to_start);
  out.hold_pressure = gauge_pascals(marks.hold);
  out.pressure_to_finish = pressure_to_finish_of(system, marks);
  out.arrival_flow = cubic_metres_per_second(r.arrival_flow);
  if (!r.path.empty()) out.last_flow = cubic_metres_per_second(r.path.back().water_flow);
  if (detail == Detail::all) out.time_per_tenth_psi = time_per_tenth_psi(q, r);
  out.margin_over_riser_end = metres(e.reservoir_level(marks.water_at_goal) - e.riser_end);
  if (r.stop == Stop::goal_reached && r.time > 0.0) out.coast_up = metres(coast_up(e, r, marks));
  out.shut_off_depth = r.shut_off_table ? metres(*r.shut_off_table / e.table_area) : wanted_depth;
  System locked_up = system;
  if (locked_up.air.set_pressure > GaugePressure())
    locked_up.air.set_pressure = locked_up.air.set_pressure + system.air.lock_up;
  walk_away(Equations(locked_up, start, Task::fill), marks, out);
  self_limit(e, marks, system.air.after_regulator.opens_at() - system.air.lock_up, out);
  return out;
}

GaugePressure pressure_to_finish(const System& system, const Start& start, Length wanted_depth) {
  const Equations e(system, start, Task::fill);
  const Question q = fill_question(system, start, wanted_depth, Detail::course);
  return pressure_to_finish_of(system, Marks(e, q.goal_table));
}

Drain drain(const System& system, const Start& start, Detail detail) {
  const Equations e(system, start, Task::drain);
  const Question q{system, start, Task::drain, 0.0, detail};
  RunOptions options = options_for(q, RunOptions{}.tolerance);
  options.keep_path = true;
  const Course r = run(e, options);
  Drain out;
  describe(q, e, r, out);
  out.left_in_table = cubic_metres(std::max(r.books.table, 0.0));  // a last bit may be below nothing
  return out;
}

std::optional<GaugePressure> setting_for_time(System system, const Start& start, Length wanted_depth, Time wanted,
                                              GaugePressure highest) {
  const Question q = fill_question(system, start, wanted_depth, Detail::course);
  const double lowest = Marks(Equations(system, start, Task::fill), q.goal_table).pressure_to_finish +
                        in_pascals(system.air.after_regulator.opens_at());
  // Speed instead of time: it is zero where the goal is not reached, and grows steadily with the setting.
  const auto speed_left = [&](double setting) {
    system.air.set_pressure = gauge_pascals(setting);
    return 1.0 / time_under(q, {}) - 1.0 / in_seconds(wanted);
  };
  const double high = in_pascals(highest);
  if (!(lowest < high) || !(in_seconds(wanted) > 0.0)) return std::nullopt;
  const double at_high = speed_left(high);
  if (at_high < 0.0) return std::nullopt;
  const double at_low = speed_left(lowest);
  if (at_low >= 0.0) return gauge_pascals(lowest);
  std::uintmax_t most = 60;  // bisection alone needs 24 to come within 1e-7
  const auto found = boost::math::tools::toms748_solve(
      speed_left, lowest, high, at_low, at_high, [](double a, double b) { return std::abs(b - a) <= 1.0e-7 * b; },
      most);
  return gauge_pascals(found.second);
}

}  // namespace riserun::transfer
