#include "transfer/equations.h"

#include "hydraulics/mouth.h"
#include "transfer/input_check.h"

#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

namespace riserun::transfer {
namespace {

using hydraulics::Direction;

constexpr double kLeastUllageShare = 1.0e-6;  // of the capacity: so much air is left under the lid, however full
constexpr double kLeastDroop = 1.0e-3;        // an ideal regulator would open without limit for no fall at all
constexpr double kLongerRim = 10.0;
constexpr double kWider = 100.0;        // in area: ten times the bore
constexpr double kSmoothHead = 1.0e-8;  // m; below it the flow of a line without wall friction is made linear

}  // namespace

Equations::Equations(const System& system, const Start& start, Task task, const Tuning& tuning)
    : line_share_(tuning.line_share),
      forward_((check_input(system, start),
                hydraulics::CompiledLine(system.line, Direction::forward, system.water, tuning.coefficients))),
      backward_(hydraulics::CompiledLine(system.line, Direction::backward, system.water, tuning.coefficients)) {
  temperature = in_kelvins(system.temperature);
  gas = hydraulics::kAirGasConstant * temperature;
  atmosphere = in_pascals(system.atmosphere);
  rho_g = in_kilograms_per_cubic_metre(system.water.density) * quantity::kStandardGravity;
  set_water(system, start);
  set_mouth(system, tuning);
  start_air = (atmosphere + in_pascals(start.ullage_pressure)) * ullage(0.0) / gas;
  if (task == Task::fill) set_supply(system.air, tuning);
  if (task == Task::drain) set_vents(system.vent, tuning);
}

void Equations::set_water(const System& system, const Start& start) {
  reservoir_area = in_square_metres(system.reservoir.free_area());
  capacity = in_cubic_metres(system.reservoir.capacity());
  start_water = std::min(capacity, reservoir_area * in_metres(start.reservoir_depth));
  table_area = in_square_metres(system.table.free_area());
  table_floor = in_metres(system.table.floor_height);
  rim_volume = table_area * in_metres(system.table.rim);
  inlet_volume = table_area * in_metres(system.inlet_height);
  start_table = std::min(rim_volume, table_area * in_metres(start.table_depth));
  // All heights are above the reservoir's inside floor.
  riser_end = in_metres(system.riser_end_height);
  inlet_level = table_floor + in_metres(system.inlet_height);
  line_volume = inlet_level > riser_end ? in_cubic_metres(system.line.volume()) : 0.0;
  // The line begins as full as the start's own levels and pressure hold it: a second fill finds water in the riser.
  start_line = line_volume;
  if (start_table <= inlet_volume && line_volume > 0.0) {
    const double front = start_water / reservoir_area + in_pascals(start.ullage_pressure) / rho_g;
    start_line = line_volume * std::clamp((front - riser_end) / (inlet_level - riser_end), 0.0, 1.0);
  }
  for (const hydraulics::LineElement& element : system.line.elements()) {
    if (in_metres(element.length) > 0.0) wall_friction = true;
  }
}

void Equations::set_mouth(const System& system, const Tuning& tuning) {
  using hydraulics::Coefficients;
  // The quickest rim is the one that takes least head.
  const double coefficient = tuning.coefficients == Coefficients::low    ? hydraulics::kSharpCrest
                             : tuning.coefficients == Coefficients::high ? hydraulics::kBroadCrestInUse
                                                                         : hydraulics::kBroadCrest;
  rim_coefficient_ = (tuning.without_mouth_limit ? kLongerRim : 1.0) *
                     in_cubic_metres_per_second(hydraulics::flow_over_rim(system.mouth.bore, metres(1.0), coefficient));
  drained_table = inlet_volume + table_area * in_metres(system.mouth.film);
  one_way = system.check.one_way;
  check_head = in_pascals(system.check.opens_at) / rho_g;
  dip_uncovers = system.dip_uncovers_riser;
}

void Equations::set_supply(const AirSupply& air, const Tuning& tuning) {
  set_gauge = in_pascals(air.set_pressure);
  if (set_gauge > 0.0) set_gauge = std::max(0.0, set_gauge + tuning.setting);
  set_absolute = atmosphere + set_gauge;
  supply_pressure = atmosphere + in_pascals(air.receiver_pressure);
  before_ = hydraulics::AirLine({hydraulics::air_opening("feed", air.feed_bore, air.feed_discharge_coefficient)})
                .followed_by(air.before_regulator)
                .widened((tuning.without_feed_limit ? kWider : 1.0) * tuning.supply);
  after_ = air.after_regulator.widened((tuning.without_air_line_limit ? kWider : 1.0) * tuning.supply);
  first_absolute_ = std::numeric_limits<double>::infinity();
  if (air.first_stage) {
    first_absolute_ = atmosphere + in_pascals(air.first_stage->setting);
    behind_first_ = air.first_stage->behind.widened((tuning.without_feed_limit ? kWider : 1.0) * tuning.supply);
  }
  before_opens_ = in_pascals(before_.opens_at());
  after_opens_ = in_pascals(after_.opens_at());
  droop_band = std::max(air.droop, kLeastDroop) * set_gauge;
  const double free_air_density = atmosphere / gas;
  const double rated_flow = in_cubic_metres_per_second(air.regulator_rated_flow);
  // A regulator whose rated flow is not known passes what the row before it does.
  rated =
      rated_flow > 0.0 ? tuning.supply * free_air_density * rated_flow : before_.flow(supply_pressure, atmosphere, gas);
  if (tuning.without_regulator_limit) rated *= 10.0;
  if (set_gauge <= 0.0 || rated <= 0.0 || before_.shut() || after_.shut() || supply_pressure <= atmosphere)
    return;  // nothing comes
  if (!air.free_air_delivery || tuning.without_compressor_limit) {
    supply = Supply::main;
    return;
  }
  compressor = tuning.supply * free_air_density * in_cubic_metres_per_second(*air.free_air_delivery);
  receiver_volume = in_cubic_metres(air.receiver);
  supply = receiver_volume > 0.0 ? Supply::receiver : compressor > 0.0 ? Supply::compressor_only : Supply::shut;
  // The compressor has just stopped: a transfer begins with what the plate promises.
  receiver_start = receiver_stop = supply_pressure * receiver_volume / gas;
}

void Equations::set_vents(const Vent& vent, const Tuning& tuning) {
  vents_ = vent.ways;
  if (vents_.empty())
    vents_.assign(static_cast<std::size_t>(std::max(0, vent.count)),
                  hydraulics::AirLine({hydraulics::air_opening("vent", vent.bore, vent.discharge_coefficient)}));
  for (hydraulics::AirLine& way : vents_) {
    way = way.widened((tuning.without_vent_limit ? kWider : 1.0) * tuning.supply);
    vents_in_.push_back(way.turned_round());
    vented = vented || !way.shut();
  }
}

double Equations::ullage(double water) const {
  return std::max(capacity - start_water + water, kLeastUllageShare * capacity);
}

double Equations::receiver_pressure(const State& s) const {
  if (supply != Supply::receiver) return supply_pressure;
  return std::max(0.0, receiver_start + s.compressed - s.regulated) * gas / receiver_volume;
}

Books Equations::start_books() const {
  const bool in_line = line_volume > 0.0 ? start_line < line_volume : start_table <= inlet_volume;
  return {in_line ? Reach::line : Reach::table, 0.0, start_line, start_table, 0.0};
}

Books Equations::now(const Books& books, double water) const {
  Books result = books;
  const double moved = water - books.water;
  result.water = water;
  (books.reach == Reach::line ? result.line : books.reach == Reach::table ? result.table : result.spilled) += moved;
  return result;
}

Books Equations::books_after(double water) const {
  Books books{Reach::table, water, line_volume, start_table + start_line - line_volume + water, 0.0};
  const double least_table = std::min(start_table, inlet_volume);  // what doesn't run back by itself
  if (books.table < least_table) {
    books.reach = Reach::line;
    books.line = line_volume - (least_table - books.table);
    books.table = least_table;
  } else if (books.table > rim_volume) {
    books.reach = Reach::rim;
    books.spilled = books.table - rim_volume;
    books.table = rim_volume;
  }
  return books;
}

double Equations::outlet_level(const Books& books, double water) const {
  if (books.reach == Reach::line) {
    if (line_volume <= 0.0) return inlet_level;
    const double filled = (books.line + water - books.water) / line_volume;
    return riser_end + filled * (inlet_level - riser_end);
  }
  const double table = books.reach == Reach::table ? books.table + water - books.water : rim_volume;
  return table > inlet_volume ? table_floor + table / table_area : inlet_level;
}

double Equations::head(const State& s, const Books& books) const {
  return (ullage_pressure(s) - atmosphere) / rho_g + reservoir_level(s.water) - outlet_level(books, s.water);
}

double Equations::most_back(const Books& books, double water) const {
  if (rim_coefficient_ <= 0.0 || books.reach != Reach::table) return std::numeric_limits<double>::infinity();
  const double depth = std::max(0.0, (books.table + water - books.water - inlet_volume) / table_area);
  return rim_coefficient_ * depth * std::sqrt(depth);
}

double Equations::uncovering_level(double flow) const {
  if (!dip_uncovers || flow <= 0.0) return riser_end;
  return riser_end + in_metres(hydraulics::dip_depth(cubic_metres_per_second(flow)));
}

double Equations::water_flow(double head) const {
  if (one_way) {
    head -= check_head;
    if (head <= 0.0) return 0.0;
  }
  // Near no head a line without wall friction gives flow like a square root, of infinite slope, in which no step of an
  // integrator is small enough; the smoothed head keeps the slope finite and changes nothing that can be measured.
  const double smooth = std::sqrt(head * head + kSmoothHead * kSmoothHead);
  FlowCurve& curve = head < 0.0 ? backward_ : forward_;
  return curve.flow(smooth / line_share_) * (head / smooth);
}

/// The greatest flow, up to the rated one, that leaves the regulator's outlet at or below where it holds that flow open
/// and asks no more before it than the receiver has. What is left of either pressure falls with the flow and bends
/// downward, and so does the lesser of the two: Newton's method comes down to its root from above.
Equations::AirIn Equations::air_in(double pressure, double receiver) const {
  if (supply == Supply::shut || pressure + after_opens_ >= set_absolute ||
      pressure + after_opens_ + before_opens_ >= receiver ||
      pressure + after_opens_ + in_pascals(behind_first_.opens_at()) >= first_absolute_)
    return {};
  AirIn in{last_air_ > 0.0 && last_air_ < rated ? last_air_ : rated, 0.0, 0.0};
  constexpr int kMostSteps = 100;
  for (int step = 0; step < kMostSteps; ++step) {
    const hydraulics::Upstream outlet = after_.upstream(in.flow, pressure, gas);
    const hydraulics::Upstream inlet = before_.upstream(in.flow, outlet.pressure, gas);
    const hydraulics::Upstream staged = behind_first_.upstream(in.flow, outlet.pressure, gas);
    const double left_of_setting = set_absolute - droop_band * in.flow / rated - outlet.pressure;
    const double left_of_receiver = receiver - inlet.pressure;
    const double left_of_first = first_absolute_ - staged.pressure;
    const bool by_first = left_of_first < left_of_receiver;
    const double left_before = by_first ? left_of_first : left_of_receiver;
    const hydraulics::Upstream& before = by_first ? staged : inlet;
    const bool by_setting = left_of_setting < left_before;
    const double left = by_setting ? left_of_setting : left_before;
    if (left >= 0.0 && in.flow >= rated) {
      in = {rated, 0.0, 0.0};
      break;
    }
    const double slope =
        by_setting ? droop_band / rated + outlet.by_flow : before.by_flow + before.by_to * outlet.by_flow;
    in.by_pressure = -(by_setting ? 1.0 : before.by_to) * outlet.by_to / slope;
    in.by_receiver = by_setting || by_first ? 0.0 : 1.0 / slope;
    in.flow = std::clamp(in.flow + left / slope, 0.0, rated);
    // Newton's next step is the square of this one; nearer than that the pressures themselves are rounded.
    if (std::abs(left) <= 1.0e-9 * slope * in.flow || std::abs(left) <= 4.0e-16 * receiver) break;
  }
  last_air_ = in.flow;
  if (supply == Supply::compressor_only && in.flow >= compressor) return {compressor, 0.0, 0.0};
  return in;
}

Equations::AirOut Equations::air_out(double pressure) const {
  last_vented_.resize(vents_.size() + vents_in_.size());
  AirOut out;
  double* last = last_vented_.data();
  for (const hydraulics::AirLine& way : vents_) {
    const hydraulics::AirFlow leaves = way.flow_between(pressure, atmosphere, gas, *last);
    out.flow += leaves.flow;
    out.by_pressure += leaves.by_from;
    *last++ = leaves.flow;
  }
  for (const hydraulics::AirLine& way : vents_in_) {
    const hydraulics::AirFlow enters = way.flow_between(atmosphere, pressure, gas, *last);
    out.flow -= enters.flow;
    out.by_pressure -= enters.by_to;
    *last++ = enters.flow;
  }
  return out;
}

State Equations::rates(const State& s, const Books& books, bool compressor_idles) const {
  const double pressure = ullage_pressure(s);
  const double above = (pressure - atmosphere) / rho_g + reservoir_level(s.water) - outlet_level(books, s.water);
  State rate;
  const bool dry_end = books.reach == Reach::line && line_volume <= 0.0;  // no line to fill, nothing to run back
  const bool full = above < 0.0 && start_water - s.water >= full_water();
  rate.water = dry_end || full ? 0.0 : std::max(water_flow(above), -most_back(books, s.water));
  rate.regulated = regulator_flow(pressure, receiver_pressure(s));
  rate.vented = air_out(pressure).flow;
  if (supply == Supply::receiver) {
    rate.compressed = compressor_idles ? std::min(compressor, rate.regulated) : compressor;
  }
  return rate;
}

/// By hand where the derivative is known, and by a difference only of the water's one smooth flow: a difference of the
/// whole right side would step across its kinks, and costs five evaluations of the line's curve instead of two.
void Equations::jacobian(const State& s, const Books& books, bool compressor_idles, double (&out)[4][4]) const {
  const double volume = ullage(s.water);
  const double pressure = ullage_pressure(s);
  const double receiver = receiver_pressure(s);
  // Pressure in the ullage and in the receiver by state.
  const double p_by[4] = {-pressure / volume, gas / volume, -gas / volume, 0.0};
  const double receiver_by = supply == Supply::receiver ? gas / receiver_volume : 0.0;
  const double r_by[4] = {0.0, -receiver_by, 0.0, receiver_by};

  double outlet_slope = 0.0;
  if (books.reach == Reach::line && line_volume > 0.0) outlet_slope = (inlet_level - riser_end) / line_volume;
  if (books.reach == Reach::table && outlet_level(books, s.water) > inlet_level) outlet_slope = 1.0 / table_area;
  const bool dry_end = books.reach == Reach::line && line_volume <= 0.0;
  const double head_now = head(s, books);
  const double step = std::max(1.0e-6 * std::abs(head_now), 0.1 * kSmoothHead);
  const double flow_by_head =
      dry_end ? 0.0 : (water_flow(head_now + step) - water_flow(head_now - step)) / (2.0 * step);
  const double most = most_back(books, s.water);
  const bool over_rim = !dry_end && water_flow(head_now) < -most;
  const AirIn in = air_in(pressure, receiver);
  const double out_by_p = air_out(pressure).by_pressure;
  const bool follows = supply == Supply::receiver && compressor_idles && in.flow < compressor;
  for (int i = 0; i < 4; ++i) {
    const double head_by = p_by[i] / rho_g - (i == 0 ? 1.0 / reservoir_area + outlet_slope : 0.0);
    out[0][i] = over_rim ? 0.0 : flow_by_head * head_by;
    out[1][i] = in.by_pressure * p_by[i] + in.by_receiver * r_by[i];
    out[2][i] = out_by_p * p_by[i];
    out[3][i] = follows ? out[1][i] : 0.0;
  }
  // The flow over the rim goes with the depth to the power 3/2.
  if (over_rim) out[0][0] = -1.5 * std::pow(rim_coefficient_, 2.0 / 3.0) * std::cbrt(most) / table_area;
}

double Equations::pressure_at_rest(double water) const {
  const double sealed = start_air * gas / ullage(water) - atmosphere;
  if (vented) return 0.0;
  const double opens = before_opens_ + after_opens_;
  double supplied = sealed;
  switch (supply) {
    case Supply::shut:
      break;
    case Supply::main:
    case Supply::compressor_only:
      supplied = std::min(set_gauge - after_opens_, supply_pressure - atmosphere - opens);
      break;
    case Supply::receiver: {
      // Without a compressor receiver and ullage come to one pressure, but for what opens the way between them.
      const double shared =
          ((receiver_start + start_air) * gas - opens * receiver_volume) / (receiver_volume + ullage(water)) -
          atmosphere;
      supplied = std::min(set_gauge - after_opens_, compressor > 0.0 ? supply_pressure - atmosphere - opens : shared);
      break;
    }
  }
  const double staged = first_absolute_ - atmosphere - in_pascals(behind_first_.opens_at()) - after_opens_;
  return std::max(sealed, std::min(supplied, staged));
}

/// Head at rest falls steadily as water goes: the root is bracketed by all that can come back and all that can go.
template <class Pressure>
double Equations::rest(Pressure pressure_gauge) const {
  const auto head_left = [&](double water) {
    return pressure_gauge(water) / rho_g + reservoir_level(water) - outlet_level(books_after(water), water) -
           (one_way ? check_head : 0.0);
  };
  const double comes_back = one_way ? 0.0 : start_table - std::min(start_table, inlet_volume) + start_line;
  const double low = std::max(start_water - capacity, -comes_back);
  const double high = start_water;
  const double at_low = head_left(low);
  const double at_high = head_left(high);
  if (at_low <= 0.0) return low;
  if (at_high >= 0.0) return high;
  // A hundred times the last digit of the volumes that are added up: closer the sum itself is noise.
  const double close = 1.0e-14 * std::min(capacity, rim_volume);
  std::uintmax_t most = 200;
  const auto found = boost::math::tools::toms748_solve(
      head_left, low, high, at_low, at_high, [&](double a, double b) { return std::abs(b - a) <= close; }, most);
  return 0.5 * (found.first + found.second);
}

double Equations::water_at_rest() const {
  return rest([this](double water) { return pressure_at_rest(water); });
}

double Equations::water_at_rest_sealed(double sealed_air) const {
  return rest([this, sealed_air](double water) { return sealed_air * gas / ullage(water) - atmosphere; });
}

}  // namespace riserun::transfer
