#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <numeric>
#include <string_view>

namespace riserun::quantity {

namespace {

constexpr double kLargestWithWaterColumn = 15.0;  // psi: above it nobody reads a column of water

std::string with_unit(double value, std::string_view unit, int digits) {
  return fmt::format("{} {}", write_number(value, digits), unit);
}

/// `13-11/16` from 219 sixteenths.
std::string mixed_number(std::int64_t marks, std::int64_t marks_per_inch) {
  const std::int64_t whole = marks / marks_per_inch;
  const std::int64_t rest = marks % marks_per_inch;
  if (rest == 0) return fmt::format("{}", whole);
  const std::int64_t common = std::gcd(rest, marks_per_inch);
  const auto fraction = fmt::format("{}/{}", rest / common, marks_per_inch / common);
  return whole == 0 ? fraction : fmt::format("{}-{}", whole, fraction);
}

std::int64_t nearest_marks(Length value, TapeMark mark) {
  return std::llround(std::abs(in_inches(value)) * static_cast<double>(mark));
}

/// No tape is so long that its marks overflow; such a length prints as decimals.
bool tape_can_show(Length value) { return std::abs(in_inches(value)) < 1.0e12; }

std::string signed_text(bool negative, const std::string& text) { return negative ? "-" + text : text; }

std::string pressure_alone(double pascals_value, UnitSystem system, int digits) {
  return system == UnitSystem::inch ? with_unit(pascals_value / kPascalsPerPsi, "psi", digits)
                                    : with_unit(pascals_value / 1.0e5, "bar", digits);
}

std::string pressure_with_column(double pascals_value, UnitSystem system, int digits) {
  const std::string alone = pressure_alone(pascals_value, system, digits);
  if (std::abs(pascals_value) > kLargestWithWaterColumn * kPascalsPerPsi) return alone;
  const int column_digits = std::max(1, digits - 1);
  const double inches_of_water = pascals_value / kPascalsPerInchOfWater;
  const double millimetres_of_water = pascals_value / kStandardGravity;  // of water at 1000 kg/m3
  const std::string column = system == UnitSystem::inch ? with_unit(inches_of_water, "in water", column_digits)
                                                        : with_unit(millimetres_of_water, "mm water", column_digits);
  return fmt::format("{} ({})", alone, column);
}

/// Where the unit of `5-1/2 in` begins; npos for `6 ft 2 in`, `$2.10` and whatever else is not one number and a unit.
std::size_t begin_of_unit(std::string_view text) {
  const std::size_t space = text.find(' ');
  if (space == std::string_view::npos || space + 1 == text.size()) return std::string_view::npos;
  for (std::size_t at = space; at != std::string_view::npos; at = text.find(' ', at + 1)) {
    if (at + 1 < text.size() && (text[at + 1] == '(' || (text[at + 1] >= '0' && text[at + 1] <= '9'))) {
      return std::string_view::npos;
    }
  }
  return space;
}

}  // namespace

std::string write_number(double value, int digits) {
  assert(std::isfinite(value));
  constexpr int kMostDecimals = 12;
  const int magnitude = value == 0.0 ? 0 : static_cast<int>(std::floor(std::log10(std::abs(value))));
  const int decimals = std::clamp(digits - 1 - magnitude, 0, kMostDecimals);
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (text.find('.') != std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  return text == "-0" ? "0" : text;
}

std::string write_length(Length value, UnitSystem system, TapeMark mark) {
  if (!tape_can_show(value)) return write_thickness(value, system);
  if (system == UnitSystem::metric) return with_unit(std::round(in_millimetres(value)), "mm", kUsualDigits);
  const std::int64_t marks = nearest_marks(value, mark);
  const bool negative = value < metres(0.0) && marks != 0;
  return signed_text(negative, mixed_number(marks, static_cast<std::int64_t>(mark)) + " in");
}

std::string write_long_length(Length value, UnitSystem system, TapeMark mark) {
  constexpr std::int64_t kInchesPerFoot = 12;
  if (!tape_can_show(value)) return write_thickness(value, system);
  if (system == UnitSystem::metric) {
    const double rounded = std::round(in_millimetres(value));
    if (std::abs(rounded) < 1000.0) return write_length(value, system, mark);
    std::string text = fmt::format("{:.3f}", rounded / 1000.0);
    return text + " m";
  }
  const auto per_inch = static_cast<std::int64_t>(mark);
  const std::int64_t marks = nearest_marks(value, mark);
  if (marks < 2 * kInchesPerFoot * per_inch) return write_length(value, system, mark);
  const std::int64_t rest = marks % (kInchesPerFoot * per_inch);
  std::string text = fmt::format("{} ft", marks / (kInchesPerFoot * per_inch));
  if (rest != 0) text += fmt::format(" {} in", mixed_number(rest, per_inch));
  return signed_text(value < metres(0.0), text);
}

std::string write_thickness(Length value, UnitSystem system, int digits) {
  if (system == UnitSystem::inch) return with_unit(in_inches(value), "in", digits);
  return with_unit(in_millimetres(value), "mm", std::max(1, digits - 1));
}

std::string write_area(Area value, UnitSystem system, int digits) {
  const double square_metres_value = in_square_metres(value);
  const double magnitude = std::abs(square_metres_value);
  if (system == UnitSystem::inch) {
    const double square_inches = in_square_inches(value);
    return std::abs(square_inches) < 144.0 ? with_unit(square_inches, "in2", digits)
                                           : with_unit(square_inches / 144.0, "ft2", digits);
  }
  if (magnitude < 1.0e-3) return with_unit(square_metres_value * 1.0e6, "mm2", digits);
  if (magnitude < 1.0) return with_unit(square_metres_value * 1.0e4, "cm2", digits);
  return with_unit(square_metres_value, "m2", digits);
}

std::string write_volume(Volume value, UnitSystem system, int digits) {
  return system == UnitSystem::inch ? with_unit(in_us_gallons(value), "gal", digits)
                                    : with_unit(in_litres(value), "L", digits);
}

std::string write_pressure(GaugePressure value, UnitSystem system, int digits) {
  return pressure_with_column(in_pascals(value), system, digits);
}

std::string write_pressure(PressureDifference value, UnitSystem system, int digits) {
  return pressure_with_column(in_pascals(value), system, digits);
}

std::string write_pressure_alone(GaugePressure value, UnitSystem system, int digits) {
  return pressure_alone(in_pascals(value), system, digits);
}

std::string write_pressure_alone(PressureDifference value, UnitSystem system, int digits) {
  return pressure_alone(in_pascals(value), system, digits);
}

std::string write_absolute_pressure(AbsolutePressure value, UnitSystem system, int digits) {
  return system == UnitSystem::inch ? with_unit(in_psi(value), "psia", digits)
                                    : with_unit(in_pascals(value) / 1.0e5, "bar abs", digits);
}

std::string write_head(Head value, UnitSystem system, int digits) {
  if (system == UnitSystem::inch) {
    return std::abs(in_inches(value)) < 24.0 ? with_unit(in_inches(value), "in", digits)
                                             : with_unit(in_feet(value), "ft", digits);
  }
  return std::abs(in_metres(value)) < 1.0 ? with_unit(in_metres(value) * 1000.0, "mm", digits)
                                          : with_unit(in_metres(value), "m", digits);
}

std::string write_volume_flow(VolumeFlow value, UnitSystem system, int digits) {
  return system == UnitSystem::inch ? with_unit(in_us_gallons_per_minute(value), "gpm", digits)
                                    : with_unit(in_litres_per_minute(value), "L/min", digits);
}

std::string write_air_flow(VolumeFlow value, UnitSystem system, int digits) {
  return system == UnitSystem::inch ? with_unit(in_cubic_feet_per_minute(value), "scfm", digits)
                                    : with_unit(in_litres_per_minute(value), "L/min", digits);
}

std::string write_free_air(Volume value, UnitSystem system, int digits) {
  return system == UnitSystem::inch ? with_unit(in_cubic_feet(value), "ft3", digits)
                                    : with_unit(in_litres(value), "L", digits);
}

std::string write_time(Time value, UnitSystem, int digits) {
  const double magnitude = std::abs(in_seconds(value));
  if (magnitude < 90.0) return with_unit(in_seconds(value), "s", digits);
  if (magnitude < 90.0 * 60.0) return with_unit(in_minutes(value), "min", digits);
  if (magnitude < 48.0 * 3600.0) return with_unit(in_hours(value), "h", digits);
  return with_unit(in_hours(value) / 24.0, "days", digits);
}

std::string write_velocity(Velocity value, UnitSystem system, int digits) {
  return system == UnitSystem::inch ? with_unit(in_feet_per_second(value), "ft/s", digits)
                                    : with_unit(in_metres_per_second(value), "m/s", digits);
}

std::string write_mass(Mass value, UnitSystem system, int digits) {
  return system == UnitSystem::inch ? with_unit(in_pounds(value), "lb", digits)
                                    : with_unit(in_kilograms(value), "kg", digits);
}

std::string write_force(Force value, UnitSystem system, int digits) {
  return system == UnitSystem::inch ? with_unit(in_pounds_force(value), "lbf", digits)
                                    : with_unit(in_newtons(value), "N", digits);
}

std::string write_density(Density value, UnitSystem system, int digits) {
  constexpr double kCubicFoot = kMetresPerFoot * kMetresPerFoot * kMetresPerFoot;
  const double si_value = in_kilograms_per_cubic_metre(value);
  return system == UnitSystem::inch ? with_unit(si_value * kCubicFoot / kKilogramsPerPound, "lb/ft3", digits)
                                    : with_unit(si_value, "kg/m3", digits);
}

std::string write_temperature(Temperature value, UnitSystem system, int digits) {
  return system == UnitSystem::inch ? with_unit(in_degrees_fahrenheit(value), "degF", digits)
                                    : with_unit(in_degrees_celsius(value), "degC", digits);
}

std::string write_temperature_difference(TemperatureDifference value, UnitSystem system, int digits) {
  return system == UnitSystem::inch ? with_unit(value.si_value() * 1.8, "degF", digits)
                                    : with_unit(value.si_value(), "degC", digits);
}

std::string write_power(Power value, UnitSystem, int digits) {
  return std::abs(in_watts(value)) < 1000.0 ? with_unit(in_watts(value), "W", digits)
                                            : with_unit(in_watts(value) / 1000.0, "kW", digits);
}

std::string write_energy(Energy value, UnitSystem system, int digits) {
  constexpr double kLargestInJoules = 10000.0;
  if (system == UnitSystem::inch) return with_unit(in_foot_pounds(value), "ft-lb", digits);
  return std::abs(in_joules(value)) < kLargestInJoules ? with_unit(in_joules(value), "J", digits)
                                                       : with_unit(in_joules(value) / 1000.0, "kJ", digits);
}

std::string write_stress(Stress value, UnitSystem system, int digits) {
  constexpr double kLargestInPsi = 10000.0;
  if (system == UnitSystem::metric) return with_unit(in_pascals(value) / 1.0e6, "MPa", digits);
  return std::abs(in_psi(value)) < kLargestInPsi ? with_unit(in_psi(value), "psi", digits)
                                                 : with_unit(in_psi(value) / 1000.0, "ksi", digits);
}

std::string write_price(Price value) {
  const std::int64_t total = value.cents();
  const std::int64_t part = std::abs(total % 100);
  return fmt::format("{}${}.{:02}", total < 0 ? "-" : "", std::abs(total / 100), part);
}

std::string write_range(const std::string& low, const std::string& high) {
  if (low == high) return low;
  const std::size_t at = begin_of_unit(low);
  const bool same_unit = at != std::string::npos && begin_of_unit(high) != std::string::npos &&
                         low.substr(at) == high.substr(begin_of_unit(high));
  return fmt::format("{} to {}", same_unit ? low.substr(0, at) : low, high);
}

std::string write_with_range(const std::string& value, const std::string& low, const std::string& high) {
  if (value == low && value == high) return value;
  return fmt::format("{} ({})", value, write_range(low, high));
}

}  // namespace riserun::quantity
