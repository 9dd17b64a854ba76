// What a line loses at a flow: by its pieces, as CompiledLine adds them up for many flows.
#include "hydraulics/compiled_line.h"
#include "hydraulics/friction.h"
#include "hydraulics/line.h"
#include "hydraulics/pieces.h"

#include <algorithm>

namespace riserun::hydraulics {
namespace {

/// f V [m/s] of a wall: finite and exact down to no flow, where f alone is not.
double friction_times_velocity(const Piece& piece, double velocity, double viscous) {
  const double reynolds = velocity / viscous;
  if (reynolds <= kLaminarReynolds) return 64.0 * viscous;
  if (reynolds >= kTurbulentReynolds) {
    return velocity * piece.friction_scale * colebrook_friction_factor(reynolds, piece.relative_roughness);
  }
  return velocity * FrictionFactor(piece.relative_roughness, piece.friction_scale).at(reynolds).factor;
}

/// K V [m/s] of a piece, likewise.
double coefficient_times_velocity(const Piece& piece, double velocity, double kinematic_viscosity) {
  const double viscous = kinematic_viscosity / piece.bore;  // m/s, V / Re
  const double fitting =
      std::max(piece.crane_k * velocity, piece.darby_k1 * viscous + piece.darby_k_infinity * velocity);
  double product = piece.fixed_k * velocity + fitting;
  if (piece.length_over_bore > 0.0) {
    product += piece.length_over_bore * friction_times_velocity(piece, velocity, viscous);
  }
  return product;
}

double kinematic_viscosity_of(const Water& water) {  // m^2/s
  return in_pascal_seconds(water.viscosity) / in_kilograms_per_cubic_metre(water.density);
}

struct PieceLoss {
  double k = 0.0;
  double velocity = 0.0;  // m/s
  double head = 0.0;      // m
};

PieceLoss loss_of(const Piece& piece, double flow, double kinematic_viscosity) {
  if (!(flow > 0.0)) return {};
  const double velocity = flow / piece.area();
  const double product = coefficient_times_velocity(piece, velocity, kinematic_viscosity);
  return {product / velocity, velocity, product * velocity / (2.0 * quantity::kStandardGravity)};
}

}  // namespace

Head Line::head_loss(VolumeFlow flow, Direction direction, const Water& water, Coefficients coefficients) const {
  const double viscosity = kinematic_viscosity_of(water);
  double total = 0.0;
  for (const Piece& piece : pieces_of(*this, direction, coefficients)) {
    total += loss_of(piece, in_cubic_metres_per_second(flow), viscosity).head;
  }
  return metres_of_head(total);
}

VolumeFlow Line::flow_at(Head head, Direction direction, const Water& water, Coefficients coefficients) const {
  return cubic_metres_per_second(CompiledLine(*this, direction, water, coefficients).flow(in_metres(head)));
}

std::vector<ElementLoss> Line::losses(VolumeFlow flow, Direction direction, const Water& water,
                                      Coefficients coefficients) const {
  const double viscosity = kinematic_viscosity_of(water);
  std::vector<ElementLoss> losses;
  for (const Piece& piece : pieces_of(*this, direction, coefficients)) {
    const PieceLoss loss = loss_of(piece, in_cubic_metres_per_second(flow), viscosity);
    losses.push_back({name_of(piece, *this), loss.k, metres_per_second(loss.velocity), metres_of_head(loss.head),
                      source_of(piece, *this, direction)});
  }
  return losses;
}

}  // namespace riserun::hydraulics
