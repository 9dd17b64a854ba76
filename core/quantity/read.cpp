#include "quantity/read.h"

#include "quantity/nearly.h"
#include "quantity/number_text.h"
#include "quantity/unit_text.h"
#include "quantity/units.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <cmath>
#include <optional>
#include <type_traits>

namespace riserun::quantity {

namespace {

using Limits = std::optional<Range<double>>;

template <class T, class Make>
Reading<T> read_as(const Written& text, Kind kind, Make make, Limits limits = std::nullopt) {
  const auto reading = read_limited(text, unit_table(kind), limits);
  if (const auto* error = std::get_if<ReadError>(&reading)) return *error;
  return make(std::get<Measured>(reading).in_si);
}

/// `1.29 psi (36 in water)`, as pressures are written: both must say the same, within their rounding.
template <class T, class Make>
Reading<T> read_twice_written(const Written& text, Make make) {
  constexpr double kRounding = 0.06;
  const std::size_t open = text.text.find('(');
  if (open == std::string_view::npos || open == 0 || text.text.back() != ')') {
    return read_as<T>(text, Kind::pressure, make);
  }
  const Written first = text.with(text.text.substr(0, open));
  const auto reading = read_limited(first, unit_table(Kind::pressure));
  if (const auto* error = std::get_if<ReadError>(&reading)) return *error;
  const std::string_view again = text.text.substr(open + 1, text.text.size() - open - 2);
  const auto second = read_limited(again, unit_table(Kind::pressure));
  if (const auto* error = std::get_if<ReadError>(&second))
    return ReadError{error->message, error->offset + open + 1, error->code};
  const double value = std::get<Measured>(reading).in_si;
  const double difference = std::abs(value - std::get<Measured>(second).in_si);
  if (difference <= kRounding * std::abs(value) + 1.0) return make(value);
  return ReadError{fmt::format("{}: the two pressures differ; write one", quoted(text)), open};
}

/// The table of a type, for within(). Where two share a type, the first; see range_text.
template <class T>
struct KindOf;
template <>
struct KindOf<Length> : std::integral_constant<Kind, Kind::length> {};
template <>
struct KindOf<Area> : std::integral_constant<Kind, Kind::area> {};
template <>
struct KindOf<Volume> : std::integral_constant<Kind, Kind::volume> {};
template <>
struct KindOf<GaugePressure> : std::integral_constant<Kind, Kind::pressure> {};
template <>
struct KindOf<PressureDifference> : std::integral_constant<Kind, Kind::pressure> {};
template <>
struct KindOf<AbsolutePressure> : std::integral_constant<Kind, Kind::absolute_pressure> {};
template <>
struct KindOf<Head> : std::integral_constant<Kind, Kind::head> {};
template <>
struct KindOf<VolumeFlow> : std::integral_constant<Kind, Kind::volume_flow> {};
template <>
struct KindOf<Time> : std::integral_constant<Kind, Kind::time> {};
template <>
struct KindOf<Velocity> : std::integral_constant<Kind, Kind::velocity> {};
template <>
struct KindOf<Mass> : std::integral_constant<Kind, Kind::mass> {};
template <>
struct KindOf<Density> : std::integral_constant<Kind, Kind::density> {};
template <>
struct KindOf<Force> : std::integral_constant<Kind, Kind::force> {};
template <>
struct KindOf<Temperature> : std::integral_constant<Kind, Kind::temperature> {};
template <>
struct KindOf<TemperatureDifference> : std::integral_constant<Kind, Kind::temperature_difference> {};
template <>
struct KindOf<Power> : std::integral_constant<Kind, Kind::power> {};
template <>
struct KindOf<Energy> : std::integral_constant<Kind, Kind::energy> {};
template <>
struct KindOf<Stress> : std::integral_constant<Kind, Kind::stress> {};

template <class T>
double in_si_units(const T& value) {
  if constexpr (requires { value.in_si(); }) {
    return value.in_si();
  } else {
    return value.value();
  }
}

/// The unit that a text is written in, or the table's first.
const Unit& unit_of(const Written& written, const UnitTable& table) {
  const std::size_t open = written.text.find('(');
  const Written first = written.with(written.text.substr(0, open));
  const auto reading = read_measured(plain_text(first), table);
  const auto* measured = std::get_if<Measured>(&reading);
  return measured == nullptr ? table.units.front() : *measured->finest;
}

std::string range_text(Range<double> allowed, const Written&) {
  constexpr int kDigits = 6;
  return fmt::format("{} to {}", write_number(allowed.low, kDigits), write_number(allowed.high, kDigits));
}

std::string range_text(Range<int> allowed, const Written&) {
  return fmt::format("{} to {}", allowed.low, allowed.high);
}

std::string range_text(Range<Price> allowed, const Written&) {
  return fmt::format("{} to {}", write_price(allowed.low), write_price(allowed.high));
}

template <class T>
std::string range_text(Range<T> allowed, const Written& text) {
  const UnitTable* table = &unit_table(KindOf<T>::value);
  if constexpr (std::is_same_v<T, VolumeFlow>) {
    // Water and air share the type; an air unit is in the other table only.
    if (std::holds_alternative<ReadError>(read_limited(text, *table))) table = &unit_table(Kind::air_flow);
  }
  const Unit& unit = unit_of(text, *table);
  return fmt::format("{} to {}", limit_text(in_si_units(allowed.low), unit),
                     limit_text(in_si_units(allowed.high), unit));
}

template <class T>
bool is_in(const T& value, const Range<T>& range) {
  if constexpr (std::is_same_v<T, Price> || std::is_same_v<T, int>)
    return range.low <= value && value <= range.high;
  else
    return at_most(range.low, value) && at_most(value, range.high);
}

}  // namespace

Reading<Length> read_length(const Written& text) { return read_as<Length>(text, Kind::length, metres); }

Reading<Length> read_signed_length(const Written& text) {
  const double most = unit_table(Kind::length).high;
  return read_as<Length>(text, Kind::length, metres, Range<double>{-most, most});
}

Reading<Length> read_altitude(const Written& text) { return read_as<Length>(text, Kind::altitude, metres); }
Reading<Area> read_area(const Written& text) { return read_as<Area>(text, Kind::area, square_metres); }
Reading<Volume> read_volume(const Written& text) { return read_as<Volume>(text, Kind::volume, cubic_metres); }
Reading<GaugePressure> read_pressure(const Written& text) {
  return read_twice_written<GaugePressure>(text, gauge_pascals);
}
Reading<AbsolutePressure> read_absolute_pressure(const Written& text) {
  return read_as<AbsolutePressure>(text, Kind::absolute_pressure, absolute_pascals);
}
Reading<PressureDifference> read_pressure_difference(const Written& text) {
  return read_twice_written<PressureDifference>(text, pascals);
}
Reading<Head> read_head(const Written& text) { return read_as<Head>(text, Kind::head, metres_of_head); }
Reading<VolumeFlow> read_volume_flow(const Written& text) {
  return read_as<VolumeFlow>(text, Kind::volume_flow, cubic_metres_per_second);
}
Reading<VolumeFlow> read_air_flow(const Written& text) {
  return read_as<VolumeFlow>(text, Kind::air_flow, cubic_metres_per_second);
}
Reading<Time> read_time(const Written& text) { return read_as<Time>(text, Kind::time, seconds); }
Reading<Velocity> read_velocity(const Written& text) {
  return read_as<Velocity>(text, Kind::velocity, metres_per_second);
}
Reading<Mass> read_mass(const Written& text) { return read_as<Mass>(text, Kind::mass, kilograms); }
Reading<Density> read_density(const Written& text) {
  return read_as<Density>(text, Kind::density, kilograms_per_cubic_metre);
}
Reading<Force> read_force(const Written& text) { return read_as<Force>(text, Kind::force, newtons); }
Reading<Temperature> read_temperature(const Written& text) {
  return read_as<Temperature>(text, Kind::temperature, kelvins);
}
Reading<TemperatureDifference> read_temperature_difference(const Written& text) {
  return read_as<TemperatureDifference>(text, Kind::temperature_difference, TemperatureDifference::from_si);
}
Reading<Power> read_power(const Written& text) { return read_as<Power>(text, Kind::power, watts); }
Reading<Energy> read_energy(const Written& text) { return read_as<Energy>(text, Kind::energy, joules); }
Reading<Stress> read_stress(const Written& text) { return read_as<Stress>(text, Kind::stress, stress_pascals); }

Reading<double> read_number(std::string_view written) {
  constexpr std::string_view kGrammar = "a number is written like 0.6, 3/4 or 60 %";
  const PlainText text = plain_text(written);
  if (text.plain.empty()) return ReadError{fmt::format("nothing written; {}", kGrammar), 0, mistake::kNothingWritten};
  const auto scanned = scan_number(text, 0, kGrammar);
  if (const auto* error = std::get_if<ReadError>(&scanned)) return *error;
  const Number& number = std::get<Number>(scanned);
  std::size_t at = number.end;
  while (at < text.plain.size() && text.plain[at] == ' ') ++at;
  if (at == text.plain.size()) return number.value;
  if (text.plain.substr(at) == "%") return number.value / 100.0;
  const std::string shown = quoted(text.written_for(at, text.plain.size()));
  return read_error(text, at, fmt::format("{} after the number; {}, without a unit", shown, kGrammar),
                    mistake::kNotANumber);
}

Reading<int> read_count(std::string_view written) {
  constexpr int kMost = 1'000'000;
  const std::string grammar = fmt::format("a whole number from 0 to {} is wanted", kMost);
  const PlainText text = plain_text(written);
  if (text.plain.empty()) return ReadError{"nothing written; " + grammar, 0, mistake::kNothingWritten};
  const auto scanned = scan_number(text, 0, grammar);
  if (const auto* error = std::get_if<ReadError>(&scanned)) return *error;
  const Number& number = std::get<Number>(scanned);
  const bool good = number.whole && number.end == text.plain.size() && number.value >= 0.0 && number.value <= kMost;
  if (!good) return read_error(text, 0, grammar, mistake::kOutOfRange);
  return static_cast<int>(number.value);
}

template <class T>
Reading<T> within(Reading<T> reading, Range<T> allowed, const Written& text) {
  const T* value = std::get_if<T>(&reading);
  if (value == nullptr || is_in(*value, allowed)) return reading;
  return ReadError{fmt::format("{}: out of range; allowed is {}", quoted(text.text), range_text(allowed, text)), 0,
                   mistake::kOutOfRange};
}

template Reading<Length> within(Reading<Length>, Range<Length>, const Written&);
template Reading<Area> within(Reading<Area>, Range<Area>, const Written&);
template Reading<Volume> within(Reading<Volume>, Range<Volume>, const Written&);
template Reading<GaugePressure> within(Reading<GaugePressure>, Range<GaugePressure>, const Written&);
template Reading<AbsolutePressure> within(Reading<AbsolutePressure>, Range<AbsolutePressure>, const Written&);
template Reading<PressureDifference> within(Reading<PressureDifference>, Range<PressureDifference>, const Written&);
template Reading<Head> within(Reading<Head>, Range<Head>, const Written&);
template Reading<VolumeFlow> within(Reading<VolumeFlow>, Range<VolumeFlow>, const Written&);
template Reading<Time> within(Reading<Time>, Range<Time>, const Written&);
template Reading<Velocity> within(Reading<Velocity>, Range<Velocity>, const Written&);
template Reading<Mass> within(Reading<Mass>, Range<Mass>, const Written&);
template Reading<Density> within(Reading<Density>, Range<Density>, const Written&);
template Reading<Force> within(Reading<Force>, Range<Force>, const Written&);
template Reading<Temperature> within(Reading<Temperature>, Range<Temperature>, const Written&);
template Reading<TemperatureDifference> within(Reading<TemperatureDifference>, Range<TemperatureDifference>,
                                               const Written&);
template Reading<Power> within(Reading<Power>, Range<Power>, const Written&);
template Reading<Energy> within(Reading<Energy>, Range<Energy>, const Written&);
template Reading<Stress> within(Reading<Stress>, Range<Stress>, const Written&);
template Reading<Price> within(Reading<Price>, Range<Price>, const Written&);
template Reading<double> within(Reading<double>, Range<double>, const Written&);
template Reading<int> within(Reading<int>, Range<int>, const Written&);

}  // namespace riserun::quantity
