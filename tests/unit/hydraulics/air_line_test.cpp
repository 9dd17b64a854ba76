// Laws of a row of resistances that hold whatever their losses are: what a spring takes, and what the slopes say.
#include "hydraulics/air_line.h"

#include <gtest/gtest.h>

#include <vector>

namespace riserun::hydraulics {
namespace {

constexpr double kGas = 287.05 * 293.15;  // R T of air at 20 degC, J/kg
constexpr double kOutside = 101325.0;     // Pa

AirElement with_spring(AirElement element, PressureDifference opens_at) {
  element.opens_at = opens_at;
  return element;
}

TEST(AirLine, ASpringTakesItsPressureAndNoMore) {
  const AirElement opening = air_opening("hole", millimetres(3.0), 0.8);
  const AirLine plain({opening});
  const AirLine sprung({with_spring(opening, psi(0.5))});
  for (const double over : {5000.0, 20000.0, 90000.0, 500000.0}) {
    const double from = kOutside + over;
    const double flow = sprung.flow(from, kOutside, kGas);
    EXPECT_NEAR(flow, plain.flow(from - in_pascals(psi(0.5)), kOutside, kGas), 1e-9 * flow) << over;
  }
  EXPECT_EQ(sprung.flow(kOutside + in_pascals(psi(0.5)) - 1.0, kOutside, kGas), 0.0);
}

TEST(AirLine, SlopesAreThoseOfThePressureBeforeTheRow) {
  const AirLine row({air_opening("wide", millimetres(6.0), 0.8),
                     with_spring(air_opening("narrow", millimetres(2.0), 0.7), psi(0.3))});
  // From where the difference goes linearly to zero to a choked hole.
  for (const double flow : {1e-9, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 3e-3}) {
    const double step = 1e-4 * flow;
    const Upstream at = row.upstream(flow, kOutside, kGas);
    const double by_flow =
        (row.upstream(flow + step, kOutside, kGas).pressure - row.upstream(flow - step, kOutside, kGas).pressure) /
        (2.0 * step);
    // Pressures of 1e5 Pa carry 1e-11 Pa: at the least flow that is a few per cent of what the step changes.
    EXPECT_NEAR(at.by_flow / by_flow, 1.0, flow < 1e-7 ? 0.2 : 1e-3) << flow;
    const double by_to =
        (row.upstream(flow, kOutside + 10.0, kGas).pressure - row.upstream(flow, kOutside - 10.0, kGas).pressure) /
        20.0;
    EXPECT_NEAR(at.by_to, by_to, 1e-4) << flow;
  }
  EXPECT_NEAR(row.upstream(0.0, kOutside, kGas).by_flow / row.upstream(1e-9, kOutside, kGas).by_flow, 1.0, 1e-6);
}

}  // namespace
}  // namespace riserun::hydraulics
