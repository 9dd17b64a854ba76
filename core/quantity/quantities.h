// The physical quantities of the program, each a type of its own, so that an inch cannot be added to a psi, a head to
// a pressure, or a gauge pressure to an absolute one. Boost.Units does the dimension algebra (SI inside); the wrappers
// below separate what shares a dimension. A quantity is made by a named maker (`inches(2.0)`) and read by a named
// reader (`in_inches(x)`), so that every entry and exit names its unit. Conversion factors stand in conversions.h.
#pragma once

#include "quantity/conversions.h"

#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/acceleration.hpp>
#include <boost/units/systems/si/area.hpp>
#include <boost/units/systems/si/dynamic_viscosity.hpp>
#include <boost/units/systems/si/energy.hpp>
#include <boost/units/systems/si/force.hpp>
#include <boost/units/systems/si/kinematic_viscosity.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/mass.hpp>
#include <boost/units/systems/si/mass_density.hpp>
#include <boost/units/systems/si/power.hpp>
#include <boost/units/systems/si/pressure.hpp>
#include <boost/units/systems/si/time.hpp>
#include <boost/units/systems/si/velocity.hpp>
#include <boost/units/systems/si/volume.hpp>

#include <compare>
#include <cstdint>

namespace riserun::quantity {

namespace si = boost::units::si;

using Length = boost::units::quantity<si::length>;
using Area = boost::units::quantity<si::area>;
using Volume = boost::units::quantity<si::volume>;
using Time = boost::units::quantity<si::time>;
using Velocity = boost::units::quantity<si::velocity>;
using Acceleration = boost::units::quantity<si::acceleration>;
using Mass = boost::units::quantity<si::mass>;
using Density = boost::units::quantity<si::mass_density>;
using Force = boost::units::quantity<si::force>;
using Energy = boost::units::quantity<si::energy>;
using Power = boost::units::quantity<si::power>;
using DynamicViscosity = boost::units::quantity<si::dynamic_viscosity>;
using KinematicViscosity = boost::units::quantity<si::kinematic_viscosity>;
using VolumeFlow = boost::units::quantity<boost::units::divide_typeof_helper<si::volume, si::time>::type>;
using MassFlow = boost::units::quantity<boost::units::divide_typeof_helper<si::mass, si::time>::type>;

/// A difference-like quantity that shares its SI unit with another one but must not mix with it: it adds, subtracts,
/// scales and compares with its own kind only.
template <class Tag>
class Amount {
 public:
  constexpr Amount() = default;
  static constexpr Amount from_si(double value) { return Amount(value); }
  /// Not `si_value`, which <signal.h> takes for a macro.
  constexpr double in_si() const { return value_; }

  constexpr auto operator<=>(const Amount&) const = default;
  constexpr Amount operator-() const { return Amount(-value_); }
  friend constexpr Amount operator+(Amount a, Amount b) { return Amount(a.value_ + b.value_); }
  friend constexpr Amount operator-(Amount a, Amount b) { return Amount(a.value_ - b.value_); }
  friend constexpr Amount operator*(Amount a, double f) { return Amount(a.value_ * f); }
  friend constexpr Amount operator*(double f, Amount a) { return Amount(a.value_ * f); }
  friend constexpr Amount operator/(Amount a, double f) { return Amount(a.value_ / f); }
  friend constexpr double operator/(Amount a, Amount b) { return a.value_ / b.value_; }

 private:
  explicit constexpr Amount(double value) : value_(value) {}
  double value_ = 0.0;
};

/// A point-like quantity (a pressure above some datum, a temperature): two points differ by an Amount, and only an
/// Amount can be added to one.
template <class Tag, class Difference>
class Point {
 public:
  constexpr Point() = default;
  static constexpr Point from_si(double value) { return Point(value); }
  constexpr double in_si() const { return value_; }

  constexpr auto operator<=>(const Point&) const = default;
  friend constexpr Difference operator-(Point a, Point b) { return Difference::from_si(a.value_ - b.value_); }
  friend constexpr Point operator+(Point a, Difference d) { return Point(a.value_ + d.in_si()); }
  friend constexpr Point operator-(Point a, Difference d) { return Point(a.value_ - d.in_si()); }

 private:
  explicit constexpr Point(double value) : value_(value) {}
  double value_ = 0.0;
};

using PressureDifference = Amount<struct PressureDifferenceTag>;                 // Pa
using Stress = Amount<struct StressTag>;                                         // Pa, strength and stress in a wall
using Head = Amount<struct HeadTag>;                                             // m of the flowing liquid
using TemperatureDifference = Amount<struct TemperatureDifferenceTag>;           // K
using GaugePressure = Point<struct GaugePressureTag, PressureDifference>;        // Pa above the atmosphere
using AbsolutePressure = Point<struct AbsolutePressureTag, PressureDifference>;  // Pa above vacuum
using Temperature = Point<struct TemperatureTag, TemperatureDifference>;         // K

/// Money in whole cents, so that sums are exact and ties are ties; and how many of the things that it is for have no
/// price. What has none is dearer than all that has one: it wins nothing by that.
class Price {
 public:
  constexpr Price() = default;
  static constexpr Price from_cents(std::int64_t cents) { return Price(cents, 0); }
  /// Of one thing that has no price.
  static constexpr Price unknown() { return Price(0, 1); }
  constexpr std::int64_t cents() const { return cents_; }  // of what has a price
  constexpr std::int64_t without_price() const { return without_; }
  constexpr bool known() const { return without_ == 0; }
  constexpr auto operator<=>(const Price&) const = default;
  friend constexpr Price operator+(Price a, Price b) { return Price(a.cents_ + b.cents_, a.without_ + b.without_); }
  friend constexpr Price operator-(Price a, Price b) { return Price(a.cents_ - b.cents_, a.without_ - b.without_); }
  friend constexpr Price operator*(Price a, std::int64_t n) { return Price(a.cents_ * n, a.without_ * n); }
  constexpr Price& operator+=(Price b) { return *this = *this + b; }

  /// One number in the order of prices, that adds up; up to ten million dollars of what has a price.
  constexpr std::int64_t weight() const { return cents_ + without_ * kUnknown; }
  static constexpr Price of_weight(std::int64_t weight) { return Price(weight % kUnknown, weight / kUnknown); }

 private:
  static constexpr std::int64_t kUnknown = 1'000'000'000;
  constexpr Price(std::int64_t cents, std::int64_t without) : without_(without), cents_(cents) {}
  std::int64_t without_ = 0;  // decides first
  std::int64_t cents_ = 0;
};

// Makers and readers. Each pair is an exact inverse up to rounding of the last bit.
inline Length metres(double v) { return v * si::metres; }
inline Length millimetres(double v) { return metres(v / 1000.0); }
inline Length inches(double v) { return metres(v * kMetresPerInch); }
inline Length feet(double v) { return metres(v * kMetresPerFoot); }
inline double in_metres(Length v) { return v.value(); }
inline double in_millimetres(Length v) { return v.value() * 1000.0; }
inline double in_inches(Length v) { return v.value() / kMetresPerInch; }
inline double in_feet(Length v) { return v.value() / kMetresPerFoot; }

inline Area square_metres(double v) { return v * si::square_metre; }
inline double in_square_metres(Area v) { return v.value(); }
inline double in_square_inches(Area v) { return v.value() / (kMetresPerInch * kMetresPerInch); }

inline Volume cubic_metres(double v) { return v * si::cubic_metre; }
inline Volume litres(double v) { return cubic_metres(v / 1000.0); }
inline Volume us_gallons(double v) { return cubic_metres(v * kCubicMetresPerUsGallon); }
inline Volume cubic_feet(double v) { return cubic_metres(v * kMetresPerFoot * kMetresPerFoot * kMetresPerFoot); }
inline double in_cubic_metres(Volume v) { return v.value(); }
inline double in_litres(Volume v) { return v.value() * 1000.0; }
inline double in_us_gallons(Volume v) { return v.value() / kCubicMetresPerUsGallon; }
inline double in_cubic_feet(Volume v) { return v.value() / (kMetresPerFoot * kMetresPerFoot * kMetresPerFoot); }

inline Time seconds(double v) { return v * si::seconds; }
inline Time minutes(double v) { return seconds(v * 60.0); }
inline Time hours(double v) { return seconds(v * 3600.0); }
inline double in_seconds(Time v) { return v.value(); }
inline double in_minutes(Time v) { return v.value() / 60.0; }
inline double in_hours(Time v) { return v.value() / 3600.0; }

inline Velocity metres_per_second(double v) { return v * si::metres_per_second; }
inline double in_metres_per_second(Velocity v) { return v.value(); }
inline double in_feet_per_second(Velocity v) { return v.value() / kMetresPerFoot; }

inline VolumeFlow cubic_metres_per_second(double v) { return VolumeFlow::from_value(v); }
inline VolumeFlow litres_per_minute(double v) { return cubic_metres_per_second(v / 60000.0); }
inline VolumeFlow us_gallons_per_minute(double v) {
  return cubic_metres_per_second(v * kCubicMetresPerUsGallon / 60.0);
}
inline VolumeFlow cubic_feet_per_minute(double v) { return cubic_feet(v) / seconds(60.0); }
inline double in_cubic_metres_per_second(VolumeFlow v) { return v.value(); }
inline double in_litres_per_minute(VolumeFlow v) { return v.value() * 60000.0; }
inline double in_us_gallons_per_minute(VolumeFlow v) { return v.value() * 60.0 / kCubicMetresPerUsGallon; }
inline double in_cubic_feet_per_minute(VolumeFlow v) { return in_cubic_feet(v * seconds(60.0)); }

inline Mass kilograms(double v) { return v * si::kilograms; }
inline Mass pounds(double v) { return kilograms(v * kKilogramsPerPound); }
inline double in_kilograms(Mass v) { return v.value(); }
inline double in_pounds(Mass v) { return v.value() / kKilogramsPerPound; }
inline MassFlow kilograms_per_second(double v) { return MassFlow::from_value(v); }
inline double in_kilograms_per_second(MassFlow v) { return v.value(); }
inline Density kilograms_per_cubic_metre(double v) { return v * si::kilogrammes_per_cubic_metre; }
inline double in_kilograms_per_cubic_metre(Density v) { return v.value(); }
inline DynamicViscosity pascal_seconds(double v) { return DynamicViscosity::from_value(v); }
inline double in_pascal_seconds(DynamicViscosity v) { return v.value(); }
inline Force newtons(double v) { return v * si::newtons; }
inline double in_newtons(Force v) { return v.value(); }
inline double in_pounds_force(Force v) { return v.value() / (kKilogramsPerPound * kStandardGravity); }
inline Energy joules(double v) { return v * si::joules; }
inline double in_joules(Energy v) { return v.value(); }
inline double in_foot_pounds(Energy v) { return v.value() / (kKilogramsPerPound * kStandardGravity * kMetresPerFoot); }
inline Power watts(double v) { return v * si::watts; }
inline double in_watts(Power v) { return v.value(); }

inline PressureDifference pascals(double v) { return PressureDifference::from_si(v); }
inline PressureDifference psi(double v) { return pascals(v * kPascalsPerPsi); }
inline GaugePressure gauge_pascals(double v) { return GaugePressure::from_si(v); }
inline GaugePressure psig(double v) { return gauge_pascals(v * kPascalsPerPsi); }
inline GaugePressure bar_gauge(double v) { return gauge_pascals(v * 1.0e5); }
inline AbsolutePressure absolute_pascals(double v) { return AbsolutePressure::from_si(v); }
inline double in_pascals(PressureDifference v) { return v.in_si(); }
inline double in_pascals(GaugePressure v) { return v.in_si(); }
inline double in_pascals(AbsolutePressure v) { return v.in_si(); }
inline double in_pascals(Stress v) { return v.in_si(); }
inline double in_psi(PressureDifference v) { return v.in_si() / kPascalsPerPsi; }
inline double in_psi(GaugePressure v) { return v.in_si() / kPascalsPerPsi; }
inline double in_psi(AbsolutePressure v) { return v.in_si() / kPascalsPerPsi; }
inline double in_psi(Stress v) { return v.in_si() / kPascalsPerPsi; }
/// Inches of water, conventional (39.2 degF water, standard gravity).
inline double in_inches_of_water(GaugePressure v) { return v.in_si() / kPascalsPerInchOfWater; }
inline double in_bar(GaugePressure v) { return v.in_si() / 1.0e5; }
inline Stress stress_pascals(double v) { return Stress::from_si(v); }
inline Stress megapascals(double v) { return Stress::from_si(v * 1.0e6); }

/// The pressure on a gauge where the atmosphere is as given, and back.
inline AbsolutePressure absolute(GaugePressure gauge, AbsolutePressure atmosphere) {
  return absolute_pascals(gauge.in_si() + atmosphere.in_si());
}
inline GaugePressure gauge(AbsolutePressure absolute_pressure, AbsolutePressure atmosphere) {
  return gauge_pascals(absolute_pressure.in_si() - atmosphere.in_si());
}

inline Head metres_of_head(double v) { return Head::from_si(v); }
inline double in_metres(Head v) { return v.in_si(); }
inline double in_inches(Head v) { return v.in_si() / kMetresPerInch; }
inline double in_feet(Head v) { return v.in_si() / kMetresPerFoot; }
/// The pressure at the foot of a liquid column under standard gravity, and the column that a pressure holds.
inline PressureDifference pressure_of(Head head, Density density) {
  return pascals(head.in_si() * density.value() * kStandardGravity);
}
inline Head head_of(PressureDifference pressure, Density density) {
  return metres_of_head(pressure.in_si() / (density.value() * kStandardGravity));
}

inline Temperature kelvins(double v) { return Temperature::from_si(v); }
inline Temperature degrees_celsius(double v) { return kelvins(v + kKelvinsAtZeroCelsius); }
inline Temperature degrees_fahrenheit(double v) { return degrees_celsius((v - 32.0) / 1.8); }
inline double in_kelvins(Temperature v) { return v.in_si(); }
inline double in_degrees_celsius(Temperature v) { return v.in_si() - kKelvinsAtZeroCelsius; }
inline double in_degrees_fahrenheit(Temperature v) { return in_degrees_celsius(v) * 1.8 + 32.0; }

inline constexpr Price cents(std::int64_t v) { return Price::from_cents(v); }
inline double in_dollars(Price v) { return static_cast<double>(v.cents()) / 100.0; }

}  // namespace riserun::quantity

// Every folder below quantity speaks of lengths and pressures on each line: the names are its own there.
namespace riserun {
using namespace quantity;  // NOLINT(google-build-using-namespace)
}
