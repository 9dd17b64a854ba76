// Air through openings in a row, against tables worked out elsewhere and compressed-air handbooks.
#include "hydraulics/air_line.h"

#include "hydraulics/air.h"

#include <gtest/gtest.h>

#include <cmath>

namespace riserun::hydraulics {
namespace {

const Temperature kTwenty = degrees_celsius(20.0);
const AbsolutePressure kAtmosphere = absolute_pascals(101325.0);

AirLine holes(std::initializer_list<double> square_millimetres) {
  std::vector<AirElement> row;
  for (const double area : square_millimetres) row.push_back({"hole", {}, square_metres(area * 1.0e-6), {}, false, {}});
  return AirLine(row);
}

// Two ideal holes, 100 psig to the atmosphere, air at 20 C, the jet between lost, A1 upstream. Isentropic openings
// worked out beside this program; the rule of thumb 1/C^2 = sum 1/C^2 gives 0.71 for two equal ones.
TEST(HolesInARow, TwoPassWhatTheTableSays) {
  struct Row {
    double second_over_first, between_over_supply, over_first_alone, over_smaller_alone;
  };
  const Row table[] = {{0.1, 0.9977, 0.0998, 0.9977}, {0.25, 0.9855, 0.2464, 0.9855}, {0.5, 0.9444, 0.4722, 0.9444},
                       {0.8, 0.8683, 0.6946, 0.8683}, {1.0, 0.8075, 0.8075, 0.8075},  {1.25, 0.7266, 0.9083, 0.9083},
                       {1.5, 0.6459, 0.9689, 0.9689}, {2.0, 0.5, 1.0, 1.0},           {4.0, 0.25, 1.0, 1.0}};
  const AbsolutePressure supply = absolute_pascals(790800.0);
  const double one = in_kilograms_per_second(holes({1.0}).flow(supply, kAtmosphere, kTwenty));
  for (const Row& row : table) {
    const AirLine two = holes({1.0, row.second_over_first});
    const MassFlow flow = two.flow(supply, kAtmosphere, kTwenty);
    EXPECT_NEAR(in_kilograms_per_second(flow) / one, row.over_first_alone, 6e-5) << row.second_over_first;
    EXPECT_NEAR(in_kilograms_per_second(flow) / one / std::min(1.0, row.second_over_first), row.over_smaller_alone,
                6e-5);
    EXPECT_NEAR(in_pascals(two.pressures(flow, kAtmosphere, kTwenty)[1]) / 790800.0, row.between_over_supply, 6e-5);
  }
}

// Worked cases beside this program: coefficient 0.65 in both, 20 C, standard cubic feet at 1.2041 kg/m3.
TEST(HolesInARow, PassTheScfmOfTheWorkedCases) {
  struct Case {
    double first, second, in_psi, out_psi, between_psi, scfm;
  };
  const Case cases[] = {{1.0 / 16, 1.0 / 4, 100, 0, 0.823, 4.226}, {1.0 / 16, 1.0 / 8, 100, 2, 14.142, 4.226},
                        {3.0 / 32, 1.0 / 4, 100, 2, 5.711, 9.509}, {1.0 / 8, 1.0 / 8, 100, 2, 77.916, 13.649},
                        {1.0 / 4, 1.0 / 8, 100, 2, 98.342, 16.66}, {1.0 / 4, 1.0 / 32, 2, 0, 2.0, 0.103},
                        {1.0 / 4, 1.0 / 16, 2, 0, 1.993, 0.41}};
  for (const Case& c : cases) {
    const AirLine line({air_opening("first", inches(c.first), 0.65), air_opening("second", inches(c.second), 0.65)});
    const AbsolutePressure to = absolute(psig(c.out_psi), kAtmosphere);
    const MassFlow flow = line.flow(absolute(psig(c.in_psi), kAtmosphere), to, kTwenty);
    const double scfm = in_kilograms_per_second(flow) / 1.2041 / std::pow(0.3048, 3) * 60.0;
    EXPECT_NEAR(scfm, c.scfm, std::max(0.0006, 1.0e-3 * c.scfm)) << c.first << " then " << c.second;
    EXPECT_NEAR(in_psi(line.pressures(flow, to, kTwenty)[1] - kAtmosphere), c.between_psi, 0.002);
  }
}

// A handbook's table of free air through an orifice at coefficient 1, cubic feet a minute.
TEST(HolesInARow, OnePassesTheHandbooksFreeAir) {
  struct Row {
    double psi, bore, cfm;
  };
  for (const Row& row : {Row{1, 1.0 / 32, 0.112}, Row{2, 1.0 / 16, 0.633}, Row{5, 1.0 / 8, 3.97},
                         Row{15, 1.0 / 4, 26.9}, Row{100, 1.0 / 16, 6.49}, Row{100, 1.0 / 4, 104.0}}) {
    const AirLine line({air_opening("hole", inches(row.bore), 1.0)});
    const MassFlow flow = line.flow(absolute(psig(row.psi), kAtmosphere), kAtmosphere, kTwenty);
    EXPECT_NEAR(in_cubic_feet_per_minute(free_air_of_mass_flow(flow, kAtmosphere, kTwenty)), row.cfm, 0.025 * row.cfm);
  }
}

TEST(HolesInARow, OneIsTheSameAsTheOpeningAlone) {
  for (const double drop : {1.0e-7, 1.0e-6, 0.9e-5, 1.1e-5, 1.0e-3, 0.3, 0.47, 0.48, 0.9}) {
    const double to = 2.0e5 * (1.0 - drop);
    const double alone = orifice_air_flow(3.0e-6, 2.0e5, to, 293.15, 293.15);
    // Near nothing both are smoothed, each in its own variable.
    const double share = drop < kSmoothPressureShare ? 0.7 : 1.0e-9;
    EXPECT_NEAR(holes({3.0}).flow(2.0e5, to, kAirGasConstant * 293.15), alone, share * alone) << drop;
  }
}

// Weisbach: a short cylinder passes 0.81 to 0.84 of the ideal flow.
TEST(DrilledHole, PassesWhatAShortCylinderDoes) {
  const AirElement hole = drilled_hole("hole", inches(1.0 / 16.0));
  const double coefficient = hole.effective_area / effective_area(inches(1.0 / 16.0), 1.0);
  EXPECT_GT(coefficient, 0.81);
  EXPECT_LT(coefficient, 0.84);
}

// At a small difference a row of fittings is the line that water takes: the sum of its losses.
TEST(AirElements, AddUpLikeTheLineOfWater) {
  std::vector<LineElement> elements(3);
  const double bores[] = {0.0158, 0.0093, 0.0209};
  for (std::size_t i = 0; i < 3; ++i) {
    elements[i].name = "piece";
    elements[i].bore = metres(bores[i]);
    elements[i].crane_n = 30.0 * static_cast<double>(i);
  }
  const AirLine air(air_elements(elements));
  const double drop = 100.0;
  const double flow = air.flow(101325.0 + drop, 101325.0, kAirGasConstant * 293.15);
  const Line line(elements, {0.5, 1.0, 0.0, {}}, {0.5, 1.0, 0.0, {}});
  const double density = 101325.0 / (kAirGasConstant * 293.15);
  const Water as_air{kilograms_per_cubic_metre(density), pascal_seconds(1.0e-9), AbsolutePressure()};
  const Head head = line.head_loss(cubic_metres_per_second(flow / density), Direction::forward, as_air);
  EXPECT_NEAR(in_metres(head) * density * quantity::kStandardGravity, drop, 2.0e-3 * drop);
}

TEST(CheckValve, OpensJustAboveItsSpringAndNotJustBelow) {
  AirElement check = air_opening("check valve", inches(0.5), 0.8);
  check.opens_at = psi(0.5);
  check.one_way = true;
  const AirLine line({check, air_opening("bung", inches(0.5), 0.8)});
  const auto flow = [&](double psi_before) {
    return in_kilograms_per_second(line.flow(absolute(psig(psi_before), kAtmosphere), kAtmosphere, kTwenty));
  };
  EXPECT_EQ(flow(0.4999), 0.0);
  EXPECT_GT(flow(0.5001), 0.0);
  EXPECT_TRUE(line.turned_round().shut());
  EXPECT_EQ(line.turned_round().flow(absolute(psig(50.0), kAtmosphere), kAtmosphere, kTwenty), MassFlow());
}

// Two holes of which the second is a spring check that opens at 1 psi: what is left between stands 1 psi higher.
TEST(CheckValve, HoldsItsSpringBehindAHole) {
  AirElement check = air_opening("check valve", inches(1.0), 0.8);
  check.opens_at = psi(1.0);
  const AirLine line({air_opening("hole", inches(1.0 / 16.0), 0.65), check});
  const MassFlow flow = line.flow(absolute(psig(20.0), kAtmosphere), kAtmosphere, kTwenty);
  EXPECT_NEAR(in_psi(line.pressures(flow, kAtmosphere, kTwenty)[1] - kAtmosphere), 1.0, 0.001);
}

}  // namespace
}  // namespace riserun::hydraulics
