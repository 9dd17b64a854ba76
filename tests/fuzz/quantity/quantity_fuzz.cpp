// Any text at all, to every reader of quantities: none crashes or hangs, an error has a message and a place inside the
// text, and what reads is finite, is written, and reads back.
#include "quantity/read.h"
#include "quantity/units.h"
#include "quantity/write.h"

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

namespace {

using namespace riserun;

void fail(const char* what, const std::string& shown) {
  std::fprintf(stderr, "%s: %s\n", what, shown.c_str());
  std::abort();
}

template <class T>
double in_si_units(const T& value) {
  if constexpr (requires { value.in_si(); }) {
    return value.in_si();
  } else {
    return value.value();
  }
}

/// A printable line: nothing that a terminal would act on.
void check_error(const ReadError& error, std::string_view text) {
  if (error.message.empty() || error.offset > text.size()) fail("bad error", error.message);
  for (const char c : error.message) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < ' ' || byte == 0x7f) fail("control character in", error.message);
  }
}

/// Whether the value may be rounded to one that is beyond what is read at all.
bool is_near_limit(double in_si, const UnitTable& table) {
  constexpr double kRounding = 0.05;
  const bool near_zero_kelvin = table.kind == Kind::temperature && in_si < 5.0;
  return near_zero_kelvin || std::abs(in_si) > (1.0 - kRounding) * table.high || in_si < (1.0 - kRounding) * table.low;
}

template <class T, class Write>
void check(std::string_view text, Kind kind, Reading<T> (*read)(const Written&), Write write) {
  const Reading<T> reading = read(text);
  if (const auto* error = std::get_if<ReadError>(&reading)) return check_error(*error, text);
  const T value = std::get<T>(reading);
  if (!std::isfinite(in_si_units(value))) fail("not finite", std::string(text));
  for (const UnitSystem system : {UnitSystem::inch, UnitSystem::metric}) {
    const std::string written = write(value, system);
    const Reading<T> again = read(written);
    if (std::holds_alternative<ReadError>(again) && !is_near_limit(in_si_units(value), unit_table(kind)))
      fail("does not read back", written);
  }
}

/// A writer with its usual digits, to be called with a value and a unit system.
#define WRITTEN_BY(function) [](auto value, UnitSystem system) { return function(value, system); }

void check_all_quantities(std::string_view text) {
  check(text, Kind::length, read_length, WRITTEN_BY(write_length));
  check(text, Kind::length, read_length, WRITTEN_BY(write_thickness));
  check(text, Kind::length, read_signed_length, WRITTEN_BY(write_long_length));
  check(text, Kind::length, read_sheet, WRITTEN_BY(write_thickness));
  check(text, Kind::area, read_area, WRITTEN_BY(write_area));
  check(text, Kind::volume, read_volume, WRITTEN_BY(write_volume));
  check(text, Kind::pressure, read_pressure, WRITTEN_BY(write_pressure));
  check(text, Kind::absolute_pressure, read_absolute_pressure, WRITTEN_BY(write_absolute_pressure));
  check(text, Kind::pressure, read_pressure_difference, WRITTEN_BY(write_pressure));
  check(text, Kind::head, read_head, WRITTEN_BY(write_head));
  check(text, Kind::volume_flow, read_volume_flow, WRITTEN_BY(write_volume_flow));
  check(text, Kind::air_flow, read_air_flow, WRITTEN_BY(write_air_flow));
  check(text, Kind::time, read_time, WRITTEN_BY(write_time));
  check(text, Kind::velocity, read_velocity, WRITTEN_BY(write_velocity));
  check(text, Kind::mass, read_mass, WRITTEN_BY(write_mass));
  check(text, Kind::force, read_force, WRITTEN_BY(write_force));
  check(text, Kind::density, read_density, WRITTEN_BY(write_density));
  check(text, Kind::temperature, read_temperature, WRITTEN_BY(write_temperature));
  check(text, Kind::temperature_difference, read_temperature_difference, WRITTEN_BY(write_temperature_difference));
  check(text, Kind::power, read_power, WRITTEN_BY(write_power));
  check(text, Kind::energy, read_energy, WRITTEN_BY(write_energy));
  check(text, Kind::stress, read_stress, WRITTEN_BY(write_stress));
}

void check_price(std::string_view text) {
  const auto reading = read_price(text);
  if (const auto* error = std::get_if<ReadError>(&reading)) return check_error(*error, text);
  const Price price = std::get<Price>(reading);
  const auto again = read_price(write_price(price));
  if (!std::holds_alternative<Price>(again) || std::get<Price>(again) != price) {
    fail("price does not read back", write_price(price));
  }
}

void check_size_name(std::string_view text) {
  const auto reading = read_size_name(text);
  if (const auto* error = std::get_if<ReadError>(&reading)) return check_error(*error, text);
  const auto& name = std::get<std::string>(reading);
  const auto again = read_size_name(name);
  if (!std::holds_alternative<std::string>(again) || std::get<std::string>(again) != name) {
    fail("size does not read back", name);
  }
}

void check_numbers(std::string_view text) {
  const auto number = read_number(text);
  if (const auto* error = std::get_if<ReadError>(&number)) check_error(*error, text);
  if (const auto* value = std::get_if<double>(&number); value != nullptr && !std::isfinite(*value)) {
    fail("not finite", std::string(text));
  }
  const auto count = read_count(text);
  if (const auto* error = std::get_if<ReadError>(&count)) check_error(*error, text);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  check_all_quantities(text);
  check_price(text);
  check_size_name(text);
  check_numbers(text);
  return 0;
}
