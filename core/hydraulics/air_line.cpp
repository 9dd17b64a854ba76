#include "hydraulics/air_line.h"

#include "hydraulics/air.h"
#include "hydraulics/friction.h"
#include "hydraulics/pieces.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <utility>

namespace riserun::hydraulics {
namespace {

constexpr double kShare = kAirHeatRatio - 1.0;
constexpr double kPower = kAirHeatRatio / kShare;
constexpr double kReynoldsInFittings = 3.0e4;
constexpr double kEntry = 0.5;  // flush, and the jet lost at the exit: Crane TP-410 A-29
constexpr double kExit = 1.0;
constexpr double kLeastLoss = 1.0e-6;  // of a piece without length between others as wide

/// (M in the throat)^2 below which the square root of the pressure difference gives way to a straight line: there the
/// difference is kSmoothPressureShare of the pressure.
constexpr double kSmoothMachSquared = kSmoothPressureShare * 2.0 / kAirHeatRatio;

/// kg/s per m2 and Pa of a choked opening, times sqrt(R T).
double choked_share() {
  static const double share =
      std::sqrt(kAirHeatRatio) * std::pow(2.0 / (kAirHeatRatio + 1.0), (kAirHeatRatio + 1.0) / (2.0 * kShare));
  return share;
}

/// Pressure before one opening.
Upstream before_opening(double flow, double area, double to, double gas) {
  if (flow <= 0.0) {
    return {to, 0.25 * std::sqrt(kAirHeatRatio * kSmoothMachSquared * gas) / area, 1.0};  // the straight line's slope
  }
  const double share = flow / (area * to);
  double x = share * share * gas * (1.0 / kAirHeatRatio);
  double slope = 2.0 * x;  // d x / d ln flow
  if (x < kSmoothMachSquared) {
    const double edge = std::sqrt(kSmoothMachSquared);
    const double u = std::sqrt(x);
    x = 0.5 * u * (edge + u * u / edge);
    slope = 0.5 * u * (edge + 3.0 * u * u / edge);
  }
  if (!(x < 0.5 * (kAirHeatRatio + 1.0))) {  // M = 1 in the throat
    const double per_flow = std::sqrt(gas) / (area * choked_share());
    return {flow * per_flow, per_flow, 0.0};
  }
  const double root = std::sqrt(1.0 + 2.0 * kShare * x);
  const double heat = 0.5 * (1.0 + root);  // 1 + (gamma - 1) / 2 M^2, of M^2 = (root - 1) / (gamma - 1)
  static_assert(kPower > 3.49 && kPower < 3.51, "the power 7/2 is written out below");
  const double ratio = heat * heat * heat * std::sqrt(heat);
  const double pressure = to * ratio;
  const double by_flow = kPower * 0.5 * kShare * slope / (heat * root * flow);  // d ln ratio / d flow
  return {pressure, pressure * by_flow, ratio * (1.0 - by_flow * flow)};
}

/// The loss of a piece with its wall friction, on its own bore.
double loss_of(const Piece& piece) {
  double k = piece.fixed_k + piece.crane_k;
  if (piece.length_over_bore > 0.0)
    k += piece.length_over_bore * darcy_friction_factor(kReynoldsInFittings, piece.relative_roughness);
  return k;
}

/// A change of bore belongs to the narrower of its two sides; where both are as wide there is none.
std::size_t owner_of(const Piece& piece) {
  if (piece.kind != Piece::Kind::widening) return piece.element;
  assert(piece.element > 0);
  return piece.element - 1;
}

}  // namespace

AirElement air_opening(std::string name, Length bore, double discharge_coefficient) {
  return {std::move(name), bore, effective_area(bore, discharge_coefficient), {}, false, {}};
}

AirElement drilled_hole(std::string name, Length bore) {
  AirElement element = air_opening(std::move(name), bore, 1.0 / std::sqrt(kEntry + kExit));
  element.source = "entry and exit, Crane TP-410 A-29";
  return element;
}

std::vector<AirElement> air_elements(const std::vector<LineElement>& elements) {
  std::vector<AirElement> row;
  if (elements.empty()) return row;
  std::vector<double> loss(elements.size(), 0.0);
  const Line line(elements, {kEntry, kExit, 0.0, {}}, {kEntry, kExit, 0.0, {}});
  for (const Piece& piece : pieces_of(line, Direction::forward, Coefficients::nominal))
    loss[owner_of(piece)] += loss_of(piece);
  for (std::size_t i = 0; i < elements.size(); ++i) {
    row.push_back(air_opening(elements[i].name, elements[i].bore, 1.0 / std::sqrt(std::max(loss[i], kLeastLoss))));
    row.back().source = elements[i].source.empty() ? "Darcy-Weisbach, Colebrook 1939" : elements[i].source;
  }
  return row;
}

AirLine::AirLine(std::vector<AirElement> elements) : elements_(std::move(elements)) {
  for (auto element = elements_.rbegin(); element != elements_.rend(); ++element) {
    steps_.push_back({in_square_metres(element->effective_area), in_pascals(element->opens_at)});
    assert(steps_.back().area >= 0.0 && steps_.back().opens_at >= 0.0);
    shut_ = shut_ || steps_.back().area <= 0.0;
    opens_at_ += steps_.back().opens_at;
  }
  if (shut_ || steps_.empty()) return;
  double sum = 0.0;
  for (const Step& step : steps_) sum += 1.0 / (step.area * step.area);
  first_area_ = 1.0 / std::sqrt(sum);
}

PressureDifference AirLine::opens_at() const { return pascals(opens_at_); }

Upstream AirLine::upstream(double flow, double to, double gas) const {
  Upstream result{to, 0.0, 1.0};
  for (const Step& step : steps_) {
    const Upstream before = before_opening(flow, step.area, result.pressure, gas);
    result = {before.pressure + step.opens_at, before.by_flow + before.by_to * result.by_flow,
              before.by_to * result.by_to};
  }
  return result;
}

/// Newton's method: the pressure before the row is convex in the flow, so from the second step on it comes down to the
/// root from above and never passes it.
AirFlow AirLine::flow_between(double from, double to, double gas, double near) const {
  const double difference = from - opens_at_ - to;
  if (shut_ || difference < 0.0) return {};
  if (empty()) return {difference > 0.0 ? std::numeric_limits<double>::infinity() : 0.0, 0.0, 0.0};
  const double about = first_area_ * std::sqrt(2.0 * difference * from / gas);
  constexpr double kNear = 3.0;  // further off its tangent leads further away than the estimate is
  AirFlow result{near < kNear * about && about < kNear * near ? near : about, 0.0, 0.0};
  constexpr int kMostSteps = 100;
  for (int step = 0; step < kMostSteps; ++step) {
    const Upstream at = upstream(result.flow, to, gas);
    const double left = from - at.pressure;
    result = {std::max(0.0, result.flow + left / at.by_flow), 1.0 / at.by_flow, -at.by_to / at.by_flow};
    // Newton's next step is the square of this one; nearer than that the pressures themselves are rounded.
    if (std::abs(left) <= 1.0e-9 * at.by_flow * result.flow || std::abs(left) <= 4.0e-16 * from) break;
  }
  return result;
}

MassFlow AirLine::flow(AbsolutePressure from, AbsolutePressure to, Temperature temperature) const {
  return kilograms_per_second(flow(in_pascals(from), in_pascals(to), kAirGasConstant * in_kelvins(temperature)));
}

std::vector<AbsolutePressure> AirLine::pressures(MassFlow flow, AbsolutePressure to, Temperature temperature) const {
  const double gas = kAirGasConstant * in_kelvins(temperature);
  std::vector<AbsolutePressure> result{to};
  double pressure = in_pascals(to);
  for (const Step& step : steps_) {
    pressure = before_opening(in_kilograms_per_second(flow), step.area, pressure, gas).pressure + step.opens_at;
    result.push_back(absolute_pascals(pressure));
  }
  std::reverse(result.begin(), result.end());
  return result;
}

AirLine AirLine::widened(double factor) const {
  std::vector<AirElement> elements = elements_;
  for (AirElement& element : elements) element.effective_area = element.effective_area * factor;
  return AirLine(std::move(elements));
}

AirLine AirLine::turned_round() const {
  std::vector<AirElement> elements(elements_.rbegin(), elements_.rend());
  for (AirElement& element : elements)
    if (element.one_way) element.effective_area = Area();
  return AirLine(std::move(elements));
}

AirLine AirLine::followed_by(const AirLine& next) const {
  std::vector<AirElement> elements = elements_;
  elements.insert(elements.end(), next.elements_.begin(), next.elements_.end());
  return AirLine(std::move(elements));
}

}  // namespace riserun::hydraulics
