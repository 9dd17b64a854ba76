// A falling gauge: what temperature explains, what leak it is, what a dial may be off.
#include "reservoir/pressure_decay.h"

#include <gtest/gtest.h>

#include <vector>

namespace riserun::reservoir {
namespace {

const AbsolutePressure kAtmosphere = absolute_pascals(quantity::kStandardAtmosphere);
const Temperature kRoom = degrees_celsius(20.0);

// Ideal gas at fixed volume, p_abs / T, worked by hand at 20 degC and one standard atmosphere.
struct Drift {
  double psi, psi_per_kelvin, psi_per_fahrenheit;
};
const std::vector<Drift> kDrifts = {
    {1.0, 0.0535, 0.0297}, {1.5, 0.0552, 0.0307}, {2.0, 0.0570, 0.0316}, {3.0, 0.0604, 0.0335}, {5.0, 0.0672, 0.0373}};

TEST(PressureDecay, FollowsTheGasLaw) {
  for (const Drift& row : kDrifts) {
    const double drift = in_psi(drift_per_kelvin(psig(row.psi), kAtmosphere, kRoom));
    EXPECT_NEAR(drift, row.psi_per_kelvin, 6e-5) << row.psi;
    EXPECT_NEAR(drift / 1.8, row.psi_per_fahrenheit, 6e-5) << row.psi;
  }
}

// Two readings that temperature alone tells apart are one once corrected.
TEST(PressureDecay, CorrectsAReadingToTheFirstTemperature) {
  const double warm = (14.6959 + 2.0) * (273.15 + 22.0) / (273.15 + 20.0) - 14.6959;  // Gay-Lussac, by hand
  const GaugePressure corrected = at_first_temperature(psig(warm), degrees_celsius(22.0), kRoom, kAtmosphere);
  EXPECT_NEAR(in_psi(corrected), 2.0, 1e-4);
}

// Q = V dp / (p_atm t), std cm3/s (the formula of leak testing handbooks), worked by hand.
struct Seen {
  double litres, drop_psi, minutes, cm3_s;
};
const std::vector<Seen> kSeen = {{20, 0.05, 15, 0.0756}, {100, 0.05, 15, 0.378}, {200, 0.05, 15, 0.756},
                                 {200, 0.05, 60, 0.189}, {200, 0.1, 15, 1.512},  {200, 0.25, 15, 3.78},
                                 {400, 0.1, 15, 3.024}};

TEST(PressureDecay, TellsTheLeakOfADrop) {
  for (const Seen& row : kSeen) {
    const VolumeFlow leak = leak_rate(litres(row.litres), psi(row.drop_psi), minutes(row.minutes), kAtmosphere);
    EXPECT_NEAR(in_cubic_metres_per_second(leak) * 1e6, row.cm3_s, 1e-3 * row.cm3_s) << row.litres << " L";
  }
}

// A round hole in thin sheet at 3 psi, Cd 0.6, by the formula for gas through an orifice.
TEST(PressureDecay, NamesTheHole) {
  const std::vector<std::pair<double, double>> holes = {{0.05, 0.22}, {0.1, 0.87}, {0.2, 3.5}, {0.5, 21.7}};
  for (const auto& [mm, cm3_s] : holes) {
    const Length hole = hole_that_leaks(cubic_metres_per_second(cm3_s * 1e-6), psig(3.0), kAtmosphere, kRoom);
    EXPECT_NEAR(in_metres(hole) * 1e3, mm, 0.01 * mm);
  }
}

// ASME B40.100, percent of span: A 2/1/2, 1A 1 (published), B 3/2/3, C 4/3/4, D 5 (from memory).
TEST(GaugeGrades, AreThoseOfTheStandard) {
  const auto error = [](std::string_view name, double psi) {
    for (const GaugeGrade& grade : gauge_grades())
      if (grade.name == name) return in_psi(gauge_error(grade, psig(100.0), psig(psi)));
    return -1.0;
  };
  EXPECT_NEAR(error("A", 10.0), 2.0, 1e-9);
  EXPECT_NEAR(error("A", 50.0), 1.0, 1e-9);
  EXPECT_NEAR(error("A", 90.0), 2.0, 1e-9);
  EXPECT_NEAR(error("1A", 10.0), 1.0, 1e-9);
  EXPECT_NEAR(error("B", 10.0), 3.0, 1e-9);
  EXPECT_NEAR(error("B", 25.0), 2.0, 1e-9);
  EXPECT_NEAR(error("C", 75.0), 3.0, 1e-9);
  EXPECT_NEAR(error("D", 50.0), 5.0, 1e-9);
}

// A grade B dial in its middle half, 2 percent of the span.
TEST(GaugeGrades, OfAShopDial) {
  const std::vector<std::pair<double, double>> dials = {{5, 0.1}, {15, 0.3}, {30, 0.6}, {160, 3.2}};
  for (const auto& [span, off] : dials)
    EXPECT_NEAR(in_psi(gauge_error(shop_gauge_grade(), psig(span), psig(span / 2.0))), off, 1e-9);
}

}  // namespace
}  // namespace riserun::reservoir
