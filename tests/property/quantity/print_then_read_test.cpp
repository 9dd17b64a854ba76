// What is printed reads back as the same value to the printed precision: every quantity, both unit systems, values over
// the range that a shop meets and well beyond it. The seeds are fixed.
#include "quantity/read.h"
#include "quantity/write.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>

namespace riserun::quantity {
namespace {

constexpr int kValues = 2000;
constexpr UnitSystem kSystems[] = {UnitSystem::inch, UnitSystem::metric};

template <class T>
double in_si_units(const T& value) {
  if constexpr (requires { value.in_si(); }) {
    return value.in_si();
  } else {
    return value.value();
  }
}

/// Evenly spread over the powers of ten between `low` and `high`.
class Spread {
 public:
  Spread(double low, double high) : exponents_(std::log(low), std::log(high)) {}
  double next() { return std::exp(exponents_(random_)); }

 private:
  std::mt19937_64 random_{7};
  std::uniform_real_distribution<double> exponents_;
};

/// Three significant digits: half a unit of the third, at worst 1/200 of the value.
constexpr double kThreeDigits = 0.005 + 1e-9;
constexpr double kTwoDigits = 0.05 + 1e-9;

/// The column of water beside a pressure comes from the unrounded value, so it may differ when printed a second time.
std::string without_column(const std::string& text) { return text.substr(0, text.find(" (")); }

template <class T, class Make, class Write>
void expect_same(double low, double high, Make make, Reading<T> (*read)(const Written&), Write write,
                 double relative = kThreeDigits) {
  Spread spread(low, high);
  for (int i = 0; i < kValues; ++i) {
    const T value = make(spread.next());
    for (const UnitSystem system : kSystems) {
      const std::string text = write(value, system);
      const Reading<T> again = read(text);
      ASSERT_TRUE(std::holds_alternative<T>(again)) << std::get<ReadError>(again).message;
      const double tolerance = relative * std::abs(in_si_units(value));
      ASSERT_NEAR(in_si_units(std::get<T>(again)), in_si_units(value), tolerance) << text;
      ASSERT_EQ(without_column(write(std::get<T>(again), system)), without_column(text)) << "printed twice";
    }
  }
}

TEST(PrintThenRead, GivesEveryQuantityBack) {
  const auto usual = [](auto function) {
    return [function](auto value, UnitSystem system) { return function(value, system, kUsualDigits); };
  };
  using P = GaugePressure;
  using D = PressureDifference;
  expect_same<Area>(1e-6, 1e4, square_metres, read_area, usual(write_area));
  expect_same<Volume>(1e-5, 1e3, cubic_metres, read_volume, usual(write_volume));
  expect_same<Volume>(1e-5, 1e3, cubic_metres, read_volume, usual(write_free_air));
  expect_same<P>(1, 9e7, gauge_pascals, read_pressure,
                 usual(static_cast<std::string (*)(P, UnitSystem, int)>(write_pressure)));
  expect_same<P>(1, 9e7, gauge_pascals, read_pressure,
                 usual(static_cast<std::string (*)(P, UnitSystem, int)>(write_pressure_alone)));
  expect_same<P>(
      1, 1e5, [](double v) { return gauge_pascals(-v); }, read_pressure,
      usual(static_cast<std::string (*)(P, UnitSystem, int)>(write_pressure)));
  expect_same<D>(1, 9e7, pascals, read_pressure_difference,
                 usual(static_cast<std::string (*)(D, UnitSystem, int)>(write_pressure)));
  expect_same<AbsolutePressure>(1, 9e7, absolute_pascals, read_absolute_pressure, usual(write_absolute_pressure));
  expect_same<Head>(1e-4, 1e3, metres_of_head, read_head, usual(write_head));
  expect_same<VolumeFlow>(1e-7, 10, cubic_metres_per_second, read_volume_flow, usual(write_volume_flow));
  expect_same<VolumeFlow>(1e-7, 10, cubic_metres_per_second, read_air_flow, usual(write_air_flow));
  expect_same<Velocity>(1e-4, 1e3, metres_per_second, read_velocity, usual(write_velocity));
  expect_same<Mass>(1e-3, 1e6, kilograms, read_mass, usual(write_mass));
  expect_same<Force>(1e-3, 1e8, newtons, read_force, usual(write_force));
  expect_same<Density>(1e-2, 1e4, kilograms_per_cubic_metre, read_density, usual(write_density));
  expect_same<Power>(1e-2, 1e8, watts, read_power, usual(write_power));
  expect_same<Energy>(1e-2, 1e10, joules, read_energy, usual(write_energy));
  expect_same<Stress>(1e2, 1e12, stress_pascals, read_stress, usual(write_stress));
  const auto difference = [](double v) { return TemperatureDifference::from_si(v); };
  expect_same<TemperatureDifference>(1e-2, 1e3, difference, read_temperature_difference,
                                     usual(write_temperature_difference));
}

TEST(PrintThenRead, GivesATimeBack) {
  expect_same<Time>(
      1e-2, 1e7, seconds, read_time, [](Time value, UnitSystem system) { return write_time(value, system); },
      kTwoDigits);
}

TEST(PrintThenRead, GivesATemperatureBackToAThousandthOfItsDegrees) {
  std::mt19937_64 random(11);
  std::uniform_real_distribution<double> celsius(-250.0, 900.0);
  for (int i = 0; i < kValues; ++i) {
    const Temperature value = degrees_celsius(celsius(random));
    for (const UnitSystem system : kSystems) {
      const std::string text = write_temperature(value, system);
      const auto again = read_temperature(text);
      ASSERT_TRUE(std::holds_alternative<Temperature>(again)) << text;
      ASSERT_NEAR(in_kelvins(std::get<Temperature>(again)), in_kelvins(value), 0.5 + 1e-9) << text;
    }
  }
}

TEST(PrintThenRead, GivesATapeLengthBackToHalfAMark) {
  std::mt19937_64 random(13);
  std::uniform_real_distribution<double> lengths(-20.0, 20.0);  // metres
  for (int i = 0; i < kValues; ++i) {
    const Length value = metres(lengths(random));
    for (const TapeMark mark : {TapeMark::sixteenth, TapeMark::thirty_second}) {
      for (const UnitSystem system : kSystems) {
        const double half = system == UnitSystem::metric ? 0.0005 : 0.0254 / (2.0 * static_cast<double>(mark));
        for (const std::string& text : {write_length(value, system, mark), write_long_length(value, system, mark)}) {
          const auto again = read_signed_length(text);
          ASSERT_TRUE(std::holds_alternative<Length>(again)) << std::get<ReadError>(again).message;
          ASSERT_NEAR(in_metres(std::get<Length>(again)), in_metres(value), half + 1e-12) << text;
        }
      }
    }
  }
}

TEST(PrintThenRead, GivesEveryMarkOfATapeBackExactly) {
  for (int marks = 0; marks <= 32 * 100; ++marks) {
    const Length value = inches(marks / 32.0);
    const auto again = read_length(write_length(value, UnitSystem::inch, TapeMark::thirty_second));
    ASSERT_TRUE(std::holds_alternative<Length>(again));
    ASSERT_DOUBLE_EQ(in_inches(std::get<Length>(again)), marks / 32.0);
  }
}

TEST(PrintThenRead, GivesAThicknessBack) {
  expect_same<Length>(1e-5, 1.0, metres, read_length,
                      [](Length value, UnitSystem system) { return write_thickness(value, system); });
}

TEST(PrintThenRead, GivesAPriceBackToTheCent) {
  std::mt19937_64 random(17);
  for (int i = 0; i < 10 * kValues; ++i) {
    const Price value = cents(static_cast<std::int64_t>(random() % 1'000'000'000));
    const auto again = read_price(write_price(value));
    ASSERT_TRUE(std::holds_alternative<Price>(again)) << write_price(value);
    ASSERT_EQ(std::get<Price>(again), value);
  }
}

TEST(PrintThenRead, GivesASizeNameBack) {
  for (int parts = 1; parts <= 48 * 32; ++parts) {
    const auto first = read_size_name(std::to_string(parts) + "/32");
    ASSERT_TRUE(std::holds_alternative<std::string>(first)) << parts;
    const auto again = read_size_name(std::get<std::string>(first));
    ASSERT_TRUE(std::holds_alternative<std::string>(again)) << parts;
    ASSERT_EQ(std::get<std::string>(again), std::get<std::string>(first));
  }
}

}  // namespace
}  // namespace riserun::quantity
