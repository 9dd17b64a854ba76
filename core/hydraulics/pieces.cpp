#include "hydraulics/pieces.h"

#include "hydraulics/friction.h"
#include "hydraulics/minor_losses.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::hydraulics {
namespace {

// Half-ranges of the formulas themselves. Friction: Moody 1944 gives about 10 % for commercial pipe (from memory).
// Narrowing: the formulas of Hooper and Rennels give 22 and 32 % more than Crane's at beta = 0.5. Widening: common
// practice, Borda-Carnot being a momentum balance.
constexpr double kFrictionScatter = 0.10;
constexpr double kNarrowingScatter = 0.30;
constexpr double kWideningScatter = 0.10;

double factor_for(double scatter, Coefficients coefficients) {
  switch (coefficients) {
    case Coefficients::low:
      return std::max(1.0 - scatter, 0.0);
    case Coefficients::high:
      return 1.0 + scatter;
    case Coefficients::nominal:
      break;
  }
  return 1.0;
}

Piece element_piece(const LineElement& element, Coefficients coefficients) {
  const double factor = factor_for(element.scatter, coefficients);
  Piece piece;
  piece.name = element.name;
  piece.source = element.source.empty() ? "Darcy-Weisbach, Colebrook 1939" : element.source;
  piece.bore = in_metres(element.bore);
  piece.fixed_k = factor * element.fixed_k;
  piece.crane_k = factor * element.crane_n * crane_turbulent_friction_factor(element.bore);
  const double nominal = element.nominal_inches > 0.0 ? element.nominal_inches : in_inches(element.bore);
  piece.darby_k1 = factor * element.darby_k1;
  piece.darby_k_infinity = factor * element.darby_ki * (1.0 + element.darby_kd / std::pow(nominal, 0.3));
  piece.length_over_bore = element.length / element.bore;
  piece.relative_roughness = std::min<double>(element.roughness / element.bore, kGreatestRelativeRoughness);
  piece.friction_scale = factor_for(kFrictionScatter, coefficients);
  return piece;
}

Piece end_piece(const char* what, const LineElement& element, double k, const LineEnd& end, Coefficients coefficients) {
  Piece piece;
  piece.name = std::string(what) + element.name;
  piece.source = end.source;
  piece.bore = in_metres(element.bore);
  piece.fixed_k = factor_for(end.scatter, coefficients) * k;
  return piece;
}

Piece change_piece(const LineElement& from, const LineElement& to, Coefficients coefficients) {
  Piece piece;
  if (to.bore > from.bore) {
    piece.name = "widening into " + to.name;
    piece.source = "Borda-Carnot, Crane TP-410 p. 2-9";
    piece.bore = in_metres(from.bore);
    piece.fixed_k = factor_for(kWideningScatter, coefficients) * widening_coefficient(from.bore, to.bore);
  } else {
    piece.name = "narrowing into " + to.name;
    piece.source = "Crane TP-410 p. 2-9";
    piece.bore = in_metres(to.bore);
    piece.fixed_k = factor_for(kNarrowingScatter, coefficients) * narrowing_coefficient(to.bore, from.bore);
  }
  return piece;
}

}  // namespace

double Piece::area() const { return std::numbers::pi / 4.0 * bore * bore; }

std::vector<Piece> pieces_of(const Line& line, Direction direction, Coefficients coefficients) {
  std::vector<Piece> pieces;
  if (line.empty()) return pieces;
  const auto& elements = line.elements();
  const std::size_t count = elements.size();
  const bool forward = direction == Direction::forward;
  const auto met = [&](std::size_t i) -> const LineElement& { return elements[forward ? i : count - 1 - i]; };
  const LineEnd& entered = forward ? line.first_end() : line.last_end();
  const LineEnd& left = forward ? line.last_end() : line.first_end();

  pieces.reserve(2 * count + 1);
  pieces.push_back(end_piece("entry into ", met(0), entered.entry_k, entered, coefficients));
  for (std::size_t i = 0; i < count; ++i) {
    if (i > 0 && met(i).bore != met(i - 1).bore) pieces.push_back(change_piece(met(i - 1), met(i), coefficients));
    pieces.push_back(element_piece(met(i), coefficients));
  }
  pieces.push_back(end_piece("exit from ", met(count - 1), left.exit_k, left, coefficients));
  return pieces;
}

}  // namespace riserun::hydraulics
