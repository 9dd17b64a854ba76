#include "transfer/failed_regulator.h"

#include "hydraulics/air_line.h"
#include "hydraulics/compiled_line.h"

#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::transfer {
namespace {

constexpr double kReynoldsForAir = 1.0e5;  // where the line's loss coefficient is read: air at tens of metres a second

/// What leaves through the line at a pressure, in raw SI.
class WaysOut {
 public:
  explicit WaysOut(const System& s)
      : line_(s.line, hydraulics::Direction::forward, s.water),
        atmosphere_(in_pascals(s.atmosphere)),
        gas_(hydraulics::kAirGasConstant * in_kelvins(s.temperature)),
        rho_g_(in_kilograms_per_cubic_metre(s.water.density) * quantity::kStandardGravity),
        lift_(in_metres(s.table.floor_height + std::max(s.table.rim, s.inlet_height) - s.riser_end_height)) {
    const double bore = in_metres(s.line.smallest_bore());
    area_ = 0.25 * std::numbers::pi * bore * bore;
    const double viscosity = in_pascal_seconds(s.water.viscosity) / in_kilograms_per_cubic_metre(s.water.density);
    const double velocity = kReynoldsForAir * viscosity / bore;
    loss_ = line_.head(velocity * area_) * 2.0 * quantity::kStandardGravity / (velocity * velocity);
    // Isothermal: adiabatic flow passes up to a fifth more through a short line (from memory), and the lesser flow
    // leaves the higher pressure, which is the side to err on. The outlet chokes at the ratio of greatest flow; it
    // depends on the loss alone.
    choked_ratio_ =
        boost::math::tools::brent_find_minima([this](double ratio) { return -flow_function(ratio); }, 1.0e-3, 0.999, 40)
            .first;
  }

  /// kg/s of air that make room for the water that leaves, or make up for it at that pressure.
  double lifting(double pressure) {
    const double head = (pressure - atmosphere_) / rho_g_ - lift_;
    return head > 0.0 ? line_.flow(head) * pressure / gas_ : 0.0;
  }
  /// kg/s of air through the dry line.
  double blowing(double pressure) const {
    if (pressure <= atmosphere_) return 0.0;
    const double ratio = std::max(atmosphere_ / pressure, choked_ratio_);
    return area_ * pressure / std::sqrt(gas_) * std::sqrt(flow_function(ratio));
  }

 private:
  double flow_function(double ratio) const { return (1.0 - ratio * ratio) / (loss_ - 2.0 * std::log(ratio)); }

  hydraulics::CompiledLine line_;
  double atmosphere_, gas_, rho_g_, lift_;
  double area_ = 0.0;
  double loss_ = 0.0;
  double choked_ratio_ = 0.5;
};

MassFlow valves_flow(const System& system, const std::vector<ReliefValve>& relief, GaugePressure pressure) {
  MassFlow sum{};
  for (const ReliefValve& valve : relief) sum += valve.flow(pressure, system.atmosphere, system.temperature);
  return sum;
}

/// Where what comes in falls to what goes out: both change steadily with the pressure.
template <class Surplus>
double balance(Surplus surplus, double low, double high) {
  const double at_low = surplus(low);
  const double at_high = surplus(high);
  if (at_low <= 0.0) return low;
  if (at_high >= 0.0) return high;
  std::uintmax_t most = 200;
  const auto found = boost::math::tools::toms748_solve(
      surplus, low, high, at_low, at_high, [](double a, double b) { return std::abs(b - a) <= 1.0e-12 * b; }, most);
  return 0.5 * (found.first + found.second);
}

}  // namespace

MassFlow ReliefValve::flow(GaugePressure pressure, AbsolutePressure atmosphere, Temperature temperature) const {
  // One without any rise is wide open where it opens.
  if (pressure < opens || pressure <= GaugePressure()) return MassFlow();
  const double lift = wide_open > opens ? std::min(1.0, (pressure - opens) / (wide_open - opens)) : 1.0;
  if (!(lift > 0.0)) return MassFlow();
  const hydraulics::AirLine seat({hydraulics::air_opening("relief valve", bore, discharge_coefficient * lift)});
  return way.followed_by(seat).flow(absolute(pressure, atmosphere), atmosphere, temperature);
}

hydraulics::AirLine line_with_failed_regulator(const AirSupply& air) {
  return hydraulics::AirLine({hydraulics::air_opening("feed", air.feed_bore, air.feed_discharge_coefficient)})
      .followed_by(air.before_regulator)
      .followed_by(air.after_regulator);
}

FailedRegulator failed_regulator_pressure(const System& system, GaugePressure supply,
                                          const std::vector<ReliefValve>& relief) {
  WaysOut out(system);
  const double gas = hydraulics::kAirGasConstant * in_kelvins(system.temperature);
  const double atmosphere = in_pascals(system.atmosphere);
  const double from = in_pascals(absolute(supply, system.atmosphere));
  const hydraulics::AirLine line = line_with_failed_regulator(system.air);
  const auto in = [&](double pressure) { return line.flow(from, pressure, gas); };
  const auto valves = [&](double pressure) {
    return in_kilograms_per_second(valves_flow(system, relief, gauge_pascals(pressure - atmosphere)));
  };
  if (from <= atmosphere) return {};
  // Which of the two states is the worse is not known beforehand: water in the line weighs, air in it rushes.
  const double lifting = balance([&](double pressure) { return in(pressure)-out.lifting(pressure); }, atmosphere, from);
  const double blowing = balance([&](double pressure) { return in(pressure)-out.blowing(pressure); }, atmosphere, from);
  const double stopped = balance([&](double pressure) { return in(pressure)-valves(pressure); }, atmosphere,
                                 line.shut() ? atmosphere : from);
  return {gauge_pascals(lifting - atmosphere), gauge_pascals(blowing - atmosphere),
          gauge_pascals(std::max(lifting, blowing) - atmosphere), gauge_pascals(stopped - atmosphere)};
}

std::optional<Length> restrictor_bore(const System& system, GaugePressure supply, GaugePressure limit,
                                      const std::vector<ReliefValve>& relief) {
  const FailedRegulator now = failed_regulator_pressure(system, supply, relief);
  if ((relief.empty() ? now.highest : now.riser_stopped) <= limit) return system.air.feed_bore;
  WaysOut out(system);
  const AbsolutePressure held = absolute(limit, system.atmosphere);
  const double most = relief.empty() ? std::min(out.lifting(in_pascals(held)), out.blowing(in_pascals(held)))
                                     : in_kilograms_per_second(valves_flow(system, relief, limit));
  if (most <= 0.0) return std::nullopt;
  const auto surplus = [&](double bore) {
    const hydraulics::AirLine line = line_with_failed_regulator(with_restrictor(system, metres(bore)).air);
    return most - in_kilograms_per_second(line.flow(absolute(supply, system.atmosphere), held, system.temperature));
  };
  // A hole ten times as wide as the feed takes nothing of its own.
  return metres(balance(surplus, 0.0, 10.0 * in_metres(system.air.feed_bore)));
}

System with_restrictor(System system, Length bore) {
  system.air.before_regulator =
      system.air.before_regulator.followed_by(hydraulics::AirLine({hydraulics::drilled_hole("restrictor", bore)}));
  return system;
}

}  // namespace riserun::transfer
