// A line made ready for an inner loop: one direction, one water, one end of the coefficients' range, everything that
// doesn't depend on the flow added up beforehand. Raw SI doubles, no allocation after construction.
#pragma once

#include "hydraulics/friction.h"
#include "hydraulics/line.h"

#include <vector>

namespace riserun::hydraulics {

/// Gives the same as Line up to the order of summation (1e-13 relative). It remembers its last solution as the start
/// of the next one, so one object serves one thread; results depend on that memory in the last bits only.
class CompiledLine {
 public:
  CompiledLine(const Line& line, Direction direction, const Water& water,
               Coefficients coefficients = Coefficients::nominal);

  struct HeadAndSlope {
    double head;   // m
    double slope;  // d head / d flow, m / (m^3/s)
  };
  /// Head [m] that a flow [m^3/s] takes; 0 for a flow of 0 or less.
  double head(double flow) { return flow > 0.0 ? evaluate(flow).head : 0.0; }
  HeadAndSlope head_and_slope(double flow);
  /// Flow [m^3/s] that takes a head [m]; 0 for a head of 0 or less; infinite if the line takes no head at any flow.
  double flow(double head);

 private:
  /// Elements of one bore and roughness share one friction factor.
  struct Wall {
    double bore;
    double relative_roughness;
    double scale;              // head = scale f flow^2, m / (m^3/s)^2
    double reynolds_per_flow;  // 1 / (m^3/s)
    FrictionFactor friction;
  };
  /// A fitting whose 3-K exceeds Crane's K below a flow: there the head has `linear` flow + `quadratic` flow^2 more.
  struct SlowFitting {
    double below_flow;  // m^3/s
    double linear;
    double quadratic;
  };

  HeadAndSlope evaluate(double flow);
  double first_guess(double head) const;
  bool same_regime(double flow_a, double flow_b) const;

  double quadratic_ = 0.0;  // m / (m^3/s)^2, all that is constant
  std::vector<Wall> walls_;
  std::vector<SlowFitting> slow_fittings_;  // the greatest `below_flow` first
  bool takes_head_ = false;
  double last_flow_ = 0.0;
};

}  // namespace riserun::hydraulics
