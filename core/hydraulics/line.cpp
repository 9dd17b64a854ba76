#include "hydraulics/line.h"

#include "hydraulics/compiled_line.h"
#include "hydraulics/friction.h"
#include "hydraulics/pieces.h"

#include <algorithm>
#include <cassert>
#include <numbers>
#include <utility>

namespace riserun::hydraulics {
namespace {

/// K V [m/s] of a piece: finite and exact down to no flow, where the laminar K alone is not.
double coefficient_times_velocity(const Piece& piece, double velocity, double kinematic_viscosity) {
  const double viscous = kinematic_viscosity / piece.bore;  // m/s, V / Re
  const double fitting =
      std::max(piece.crane_k * velocity, piece.darby_k1 * viscous + piece.darby_k_infinity * velocity);
  const double reynolds = velocity / viscous;
  const double friction =
      reynolds <= kLaminarReynolds
          ? 64.0 * viscous
          : velocity * FrictionFactor(piece.relative_roughness, piece.friction_scale).at(reynolds).factor;
  return piece.fixed_k * velocity + fitting + piece.length_over_bore * friction;
}

double kinematic_viscosity_of(const Water& water) {
  return in_pascal_seconds(water.viscosity) / in_kilograms_per_cubic_metre(water.density);
}

ElementLoss loss_of(const Piece& piece, double flow, double kinematic_viscosity) {
  if (!(flow > 0.0)) return {piece.name, 0.0, Velocity(), Head(), piece.source};
  const double velocity = flow / piece.area();
  const double product = coefficient_times_velocity(piece, velocity, kinematic_viscosity);
  return {piece.name, product / velocity, metres_per_second(velocity),
          metres_of_head(product * velocity / (2.0 * quantity::kStandardGravity)), piece.source};
}

}  // namespace

Line::Line(std::vector<LineElement> elements, LineEnd first_end, LineEnd last_end)
    : elements_(std::move(elements)), first_end_(std::move(first_end)), last_end_(std::move(last_end)) {
  assert(!elements_.empty());
  assert(std::all_of(elements_.begin(), elements_.end(), [](const LineElement& e) {
    return e.bore > Length() && e.length >= Length() && e.roughness >= Length();
  }));
}

Head Line::head_loss(VolumeFlow flow, Direction direction, const Water& water, Coefficients coefficients) const {
  Head total;
  for (const ElementLoss& loss : losses(flow, direction, water, coefficients)) total = total + loss.head;
  return total;
}

VolumeFlow Line::flow_at(Head head, Direction direction, const Water& water, Coefficients coefficients) const {
  return cubic_metres_per_second(CompiledLine(*this, direction, water, coefficients).flow(in_metres(head)));
}

std::vector<ElementLoss> Line::losses(VolumeFlow flow, Direction direction, const Water& water,
                                      Coefficients coefficients) const {
  const double viscosity = kinematic_viscosity_of(water);
  std::vector<ElementLoss> losses;
  for (const Piece& piece : pieces_of(*this, direction, coefficients)) {
    losses.push_back(loss_of(piece, in_cubic_metres_per_second(flow), viscosity));
  }
  return losses;
}

Length Line::smallest_bore() const {
  if (elements_.empty()) return Length();
  return std::min_element(elements_.begin(), elements_.end(),
                          [](const LineElement& a, const LineElement& b) { return a.bore < b.bore; })
      ->bore;
}

Volume Line::volume() const {
  Volume total{};
  for (const LineElement& element : elements_) {
    total += std::numbers::pi / 4.0 * element.bore * element.bore * element.length;
  }
  return total;
}

std::vector<std::string> Line::beyond_moody_chart() const {
  std::vector<std::string> names;
  for (const LineElement& element : elements_) {
    if (element.length > Length() && element.roughness > kMoodyRelativeRoughness * element.bore) {
      names.push_back(element.name);
    }
  }
  return names;
}

}  // namespace riserun::hydraulics
