#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <numeric>
#include <string_view>

namespace riserun::quantity {

namespace {

// From 15 psi (1 bar) on nobody reads a pressure as a column of water.
constexpr double kLeastWithoutColumn = 15.0;       // psi
constexpr double kLeastWithoutColumnMetric = 1.0;  // bar

std::string with_unit(double value, std::string_view unit, int digits) {
  return fmt::format("{} {}", write_number(value, digits), unit);
}

/// Whether the value prints as less than `limit`: what decides the unit must be what is printed, or 999.7 W would print
/// as 1000 W beside 1 kW.
bool prints_below(double value, double limit, int digits) {
  const std::string text = write_number(std::abs(value), digits);
  double printed = 0.0;
  std::from_chars(text.data(), text.data() + text.size(), printed);
  return printed < limit;
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
  std::string alone = pressure_alone(pascals_value, system, digits);
  const bool is_low = system == UnitSystem::inch
                          ? prints_below(pascals_value / kPascalsPerPsi, kLeastWithoutColumn, digits)
                          : prints_below(pascals_value / 1.0e5, kLeastWithoutColumnMetric, digits);
  if (!is_low) return alone;
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

std::string write_bore(Length value, UnitSystem system, int digits) {
  constexpr std::int64_t kPerInch = 64;
  constexpr double kRounded = 0.01;  // of a 64th: what three decimals of an inch are off by, and less
  const double marks = in_inches(value) * static_cast<double>(kPerInch);
  const bool is_fraction = marks > kRounded && std::abs(marks - std::round(marks)) <= kRounded;
  if (system != UnitSystem::inch || !is_fraction) return write_thickness(value, system, digits);
  return mixed_number(static_cast<std::int64_t>(std::llround(marks)), kPerInch) + " in";
}

std::string write_area(Area value, UnitSystem system, int digits) {
  if (system == UnitSystem::inch) {
    constexpr double kSquareInchesPerSquareFoot = 144.0;
    const double square_inches = in_square_inches(value);
    return prints_below(square_inches, kSquareInchesPerSquareFoot, digits)
               ? with_unit(square_inches, "in2", digits)
               : with_unit(square_inches / kSquareInchesPerSquareFoot, "ft2", digits);
  }
  const double in_m2 = in_square_metres(value);
  if (prints_below(in_m2 * 1.0e6, 1000.0, digits)) return with_unit(in_m2 * 1.0e6, "mm2", digits);
  if (prints_below(in_m2 * 1.0e4, 10000.0, digits)) return with_unit(in_m2 * 1.0e4, "cm2", digits);
  return with_unit(in_m2, "m2", digits);
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
    return prints_below(in_inches(value), 24.0, digits) ? with_unit(in_inches(value), "in", digits)
                                                        : with_unit(in_feet(value), "ft", digits);
  }
  const double millimetres_of_head = in_metres(value) * 1000.0;
  return prints_below(millimetres_of_head, 1000.0, digits) ? with_unit(millimetres_of_head, "mm", digits)
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
  if (prints_below(in_seconds(value), 90.0, digits)) return with_unit(in_seconds(value), "s", digits);
  if (prints_below(in_minutes(value), 90.0, digits)) return with_unit(in_minutes(value), "min", digits);
  if (prints_below(in_hours(value), 48.0, digits)) return with_unit(in_hours(value), "h", digits);
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
  const double in_si = in_kilograms_per_cubic_metre(value);
  return system == UnitSystem::inch ? with_unit(in_si * kCubicFoot / kKilogramsPerPound, "lb/ft3", digits)
                                    : with_unit(in_si, "kg/m3", digits);
}

std::string write_temperature(Temperature value, UnitSystem system, int digits) {
  return system == UnitSystem::inch ? with_unit(in_degrees_fahrenheit(value), "degF", digits)
                                    : with_unit(in_degrees_celsius(value), "degC", digits);
}

std::string write_temperature_difference(TemperatureDifference value, UnitSystem system, int digits) {
  return system == UnitSystem::inch ? with_unit(value.in_si() * 1.8, "degF", digits)
                                    : with_unit(value.in_si(), "degC", digits);
}

std::string write_power(Power value, UnitSystem, int digits) {
  return prints_below(in_watts(value), 1000.0, digits) ? with_unit(in_watts(value), "W", digits)
                                                       : with_unit(in_watts(value) / 1000.0, "kW", digits);
}

std::string write_energy(Energy value, UnitSystem system, int digits) {
  constexpr double kLeastInKilojoules = 10000.0;
  if (system == UnitSystem::inch) return with_unit(in_foot_pounds(value), "ft-lb", digits);
  return prints_below(in_joules(value), kLeastInKilojoules, digits)
             ? with_unit(in_joules(value), "J", digits)
             : with_unit(in_joules(value) / 1000.0, "kJ", digits);
}

std::string write_stress(Stress value, UnitSystem system, int digits) {
  constexpr double kLeastInKsi = 10000.0;
  if (system == UnitSystem::metric) return with_unit(in_pascals(value) / 1.0e6, "MPa", digits);
  return prints_below(in_psi(value), kLeastInKsi, digits) ? with_unit(in_psi(value), "psi", digits)
                                                          : with_unit(in_psi(value) / 1000.0, "ksi", digits);
}

std::string write_price(Price value) {
  const std::int64_t total = value.cents();
  const std::int64_t part = std::abs(total % 100);
  const std::string money = fmt::format("{}${}.{:02}", total < 0 ? "-" : "", std::abs(total / 100), part);
  if (value.known()) return money;
  if (total != 0) return fmt::format("{} and {} without price", money, value.without_price());
  return value.without_price() == 1 ? "no price" : fmt::format("{} without price", value.without_price());
}

std::string write_about(Price value) {
  return value.known() || value.cents() != 0 ? "about " + write_price(value) : write_price(value);
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
