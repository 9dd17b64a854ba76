#include "transfer/flow_curve.h"

#include <gtest/gtest.h>

#include <cmath>

namespace riserun::transfer {
namespace {

hydraulics::CompiledLine mixed_line() {
  hydraulics::LineElement pipe, fitting, hose;
  pipe.name = "pipe";
  pipe.bore = metres(0.0266);
  pipe.length = metres(0.5);
  pipe.roughness = millimetres(0.046);
  fitting.name = "elbow";
  fitting.bore = metres(0.0209);
  fitting.crane_n = 30.0;
  fitting.darby_k1 = 800.0;
  fitting.darby_ki = 0.14;
  fitting.darby_kd = 4.0;
  fitting.nominal_inches = 0.75;
  hose.name = "hose";
  hose.bore = metres(0.019);
  hose.length = metres(1.5);
  hose.roughness = millimetres(0.01);
  const hydraulics::Line line({pipe, fitting, hose}, {0.78, 1.0, 0.1, ""}, {0.5, 1.0, 0.1, ""});
  return {line,
          hydraulics::Direction::forward,
          {kilograms_per_cubic_metre(998.2), pascal_seconds(1.0e-3), absolute_pascals(2339.0)}};
}

TEST(FlowCurve, GivesTheLinesOwnFlowFromADropToATorrent) {
  FlowCurve curve(mixed_line());
  hydraulics::CompiledLine line = mixed_line();
  for (double head = 1.0e-9; head < 1.0e3; head *= 1.013) {
    const double exact = line.flow(head);
    ASSERT_NEAR(curve.flow(head), exact, 2.0e-8 * exact) << "head " << head;
  }
}

TEST(FlowCurve, JumpsBackAndForthAreAsExact) {
  FlowCurve curve(mixed_line());
  hydraulics::CompiledLine line = mixed_line();
  for (int i = 0; i < 2000; ++i) {
    const double head = std::exp(-18.0 + 24.0 * std::fmod(0.618034 * i, 1.0));
    const double exact = line.flow(head);
    ASSERT_NEAR(curve.flow(head), exact, 2.0e-8 * exact) << "head " << head;
  }
}

}  // namespace
}  // namespace riserun::transfer
