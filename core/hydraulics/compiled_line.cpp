#include "hydraulics/compiled_line.h"

#include "hydraulics/pieces.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace riserun::hydraulics {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// base^exponent for an exponent of 0.3 to 1; near 1 by the binomial series, whose rest is below 1e-4 of base - 1.
double power(double base, double exponent) {
  const double x = base - 1.0;
  if (std::abs(x) > 0.1) return std::pow(base, exponent);
  return 1.0 + exponent * x * (1.0 + (exponent - 1.0) * x * (1.0 / 2.0 + (exponent - 2.0) * x * (1.0 / 6.0)));
}

}  // namespace

CompiledLine::CompiledLine(const Line& line, Direction direction, const Water& water, Coefficients coefficients) {
  const double viscosity = in_pascal_seconds(water.viscosity) / in_kilograms_per_cubic_metre(water.density);  // m^2/s
  for (const Piece& piece : pieces_of(line, direction, coefficients)) {
    const double area = piece.area();
    const double per_k = 1.0 / (2.0 * quantity::kStandardGravity * area * area);  // head = per_k K flow^2
    const double reynolds_per_flow = piece.bore / (area * viscosity);
    quadratic_ += per_k * (piece.fixed_k + piece.crane_k);

    const double excess = piece.crane_k - piece.darby_k_infinity;  // K that only a low Reynolds number makes up
    if (piece.darby_k1 > 0.0 || excess < 0.0) {
      const double below = excess > 0.0 ? piece.darby_k1 / (excess * reynolds_per_flow) : kInfinity;
      slow_fittings_.push_back({below, per_k * piece.darby_k1 / reynolds_per_flow, -per_k * excess});
    }
    if (piece.length_over_bore > 0.0) {
      const auto same_wall = [&](const Wall& wall) {
        return wall.bore == piece.bore && wall.relative_roughness == piece.relative_roughness;
      };
      auto wall = std::find_if(walls_.begin(), walls_.end(), same_wall);
      if (wall == walls_.end()) {
        walls_.push_back({piece.bore, piece.relative_roughness, 0.0, reynolds_per_flow,
                          FrictionFactor(piece.relative_roughness, piece.friction_scale)});
        wall = walls_.end() - 1;
      }
      wall->scale += per_k * piece.length_over_bore;
    }
  }
  std::sort(slow_fittings_.begin(), slow_fittings_.end(),
            [](const SlowFitting& a, const SlowFitting& b) { return a.below_flow > b.below_flow; });
  takes_head_ = quadratic_ > 0.0 || !walls_.empty() || !slow_fittings_.empty();
}

CompiledLine::HeadAndSlope CompiledLine::evaluate(double flow) {
  double quadratic = quadratic_;
  double linear = 0.0;
  double steepening = 0.0;  // sum of quadratic parts times d ln f / d ln Re
  for (const SlowFitting& fitting : slow_fittings_) {
    if (flow >= fitting.below_flow) break;
    linear += fitting.linear;
    quadratic += fitting.quadratic;
  }
  for (Wall& wall : walls_) {
    const double reynolds = wall.reynolds_per_flow * flow;
    if (reynolds <= kLaminarReynolds) {
      linear += wall.scale * 64.0 / wall.reynolds_per_flow;
    } else {
      const FrictionFactor::Value friction = wall.friction.at(reynolds);
      quadratic += wall.scale * friction.factor;
      steepening += wall.scale * friction.factor * friction.slope;
    }
  }
  return {flow * (linear + flow * quadratic), linear + flow * (2.0 * quadratic + steepening)};
}

CompiledLine::HeadAndSlope CompiledLine::head_and_slope(double flow) { return evaluate(std::max(flow, 0.0)); }

double CompiledLine::first_guess(double head) const {
  if (last_flow_ > 0.0) return last_flow_;
  double quadratic = quadratic_;
  for (const Wall& wall : walls_) quadratic += 0.03 * wall.scale;  // a middling friction factor
  for (const SlowFitting& fitting : slow_fittings_) quadratic += std::max(fitting.quadratic, 0.0);
  return quadratic > 0.0 ? std::sqrt(head / quadratic) : 1.0e-4;
}

/// No fitting changes between Crane's K and 3-K from one flow to the other: the slope has no kink between them.
bool CompiledLine::same_regime(double flow_a, double flow_b) const {
  return std::none_of(slow_fittings_.begin(), slow_fittings_.end(), [&](const SlowFitting& fitting) {
    return (flow_a < fitting.below_flow) != (flow_b < fitting.below_flow);
  });
}

/// Newton's method on ln head against ln flow, where the curve is nearly straight (slope 1 laminar, 2 rough), inside a
/// bracket that every evaluation narrows; a step that leaves the bracket is replaced by bisection of it.
double CompiledLine::flow(double head) {
  if (!(head > 0.0)) return 0.0;
  if (!takes_head_) return kInfinity;
  constexpr int kMostSteps = 400;
  double low = 0.0;
  double high = kInfinity;
  double flow = first_guess(head);
  for (int step = 0; step < kMostSteps; ++step) {
    const HeadAndSlope at = evaluate(flow);
    (at.head < head ? low : high) = flow;
    const double exponent = flow * at.slope / at.head;  // d ln head / d ln flow
    const double ratio = head / at.head;
    double next = flow * power(ratio, 1.0 / exponent);
    // From the tenth step on Newton has met a kink: bisect every second time.
    const bool bisect = !(next > low && next < high) || (step >= 10 && step % 2 == 0);
    const double change = std::abs(next - flow);
    // Quadratic convergence, with a factor of 1.5 where the curve bends most, between laminar and turbulent: a step of
    // 5e-7 leaves an error below 4e-13 there and far less elsewhere, unless a kink lies on the way.
    if (change <= 1.0e-15 * flow || (change <= 5.0e-7 * flow && same_regime(flow, next))) return last_flow_ = next;
    if (bisect) next = low == 0.0 ? high / 4.0 : high == kInfinity ? low * 4.0 : std::sqrt(low * high);
    if (next == flow) break;  // the bracket has no number left inside
    flow = next;
  }
  return last_flow_ = flow;
}

}  // namespace riserun::hydraulics
