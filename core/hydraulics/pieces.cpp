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

double factor_for(double scatter, Coefficients coefficients, double dirty = 1.0) {
  switch (coefficients) {
    case Coefficients::low:
      return std::max(1.0 - scatter, 0.0);
    case Coefficients::high:
      return std::max(1.0 + scatter, dirty);
    case Coefficients::nominal:
      break;
  }
  return 1.0;
}

Piece element_piece(const Line& line, std::size_t index, Coefficients coefficients) {
  const LineElement& element = line.elements()[index];
  const double factor = factor_for(element.scatter, coefficients, element.dirty);
  Piece piece;
  piece.element = index;
  piece.bore = in_metres(element.bore);
  piece.fixed_k = factor * element.fixed_k;
  if (element.crane_n > 0.0) piece.crane_k = factor * element.crane_n * crane_turbulent_friction_factor(element.bore);
  piece.darby_k1 = factor * element.darby_k1;
  if (element.darby_ki > 0.0) {
    const double nominal = element.nominal_inches > 0.0 ? element.nominal_inches : in_inches(element.bore);
    piece.darby_k_infinity = factor * element.darby_ki * (1.0 + element.darby_kd / std::pow(nominal, 0.3));
  }
  piece.length_over_bore = element.length / element.bore;
  const Length wall =
      coefficients == Coefficients::high ? std::max(element.roughness, element.used_roughness) : element.roughness;
  piece.relative_roughness = std::min<double>(wall / element.bore, kGreatestRelativeRoughness);
  piece.friction_scale = factor_for(kFrictionScatter, coefficients);
  return piece;
}

Piece end_piece(Piece::Kind kind, const Line& line, std::size_t index, const LineEnd& end, Coefficients coefficients) {
  Piece piece;
  piece.kind = kind;
  piece.element = index;
  piece.bore = in_metres(line.elements()[index].bore);
  piece.fixed_k = kind == Piece::Kind::entry ? factor_for(end.scatter, coefficients) * end.entry_k
                                             : factor_for(end.exit_scatter, coefficients) * end.exit_k;
  return piece;
}

Piece change_piece(const Line& line, std::size_t from_index, std::size_t to_index, Coefficients coefficients) {
  const Length from = line.elements()[from_index].bore;
  const Length to = line.elements()[to_index].bore;
  Piece piece;
  piece.element = to_index;
  piece.bore = in_metres(std::min(from, to));
  if (to > from) {
    piece.kind = Piece::Kind::widening;
    piece.fixed_k = factor_for(kWideningScatter, coefficients) * widening_coefficient(from, to);
  } else {
    piece.kind = Piece::Kind::narrowing;
    piece.fixed_k = factor_for(kNarrowingScatter, coefficients) * narrowing_coefficient(to, from);
  }
  return piece;
}

}  // namespace

double Piece::area() const { return std::numbers::pi / 4.0 * bore * bore; }

std::vector<Piece> pieces_of(const Line& line, Direction direction, Coefficients coefficients) {
  std::vector<Piece> pieces;
  if (line.empty()) return pieces;
  const std::size_t count = line.elements().size();
  const bool forward = direction == Direction::forward;
  const auto met = [&](std::size_t i) { return forward ? i : count - 1 - i; };
  const LineEnd& entered = forward ? line.first_end() : line.last_end();
  const LineEnd& left = forward ? line.last_end() : line.first_end();

  pieces.reserve(2 * count + 1);
  pieces.push_back(end_piece(Piece::Kind::entry, line, met(0), entered, coefficients));
  for (std::size_t i = 0; i < count; ++i) {
    if (i > 0 && line.elements()[met(i)].bore != line.elements()[met(i - 1)].bore) {
      pieces.push_back(change_piece(line, met(i - 1), met(i), coefficients));
    }
    pieces.push_back(element_piece(line, met(i), coefficients));
  }
  pieces.push_back(end_piece(Piece::Kind::exit, line, met(count - 1), left, coefficients));
  return pieces;
}

std::string name_of(const Piece& piece, const Line& line) {
  const std::string& element = line.elements()[piece.element].name;
  switch (piece.kind) {
    case Piece::Kind::entry:
      return "entry into " + element;
    case Piece::Kind::widening:
      return "widening into " + element;
    case Piece::Kind::narrowing:
      return "narrowing into " + element;
    case Piece::Kind::exit:
      return "exit from " + element;
    case Piece::Kind::element:
      break;
  }
  return element;
}

std::string source_of(const Piece& piece, const Line& line, Direction direction) {
  const bool forward = direction == Direction::forward;
  const std::string& element = line.elements()[piece.element].source;
  switch (piece.kind) {
    case Piece::Kind::entry:
      return forward ? line.first_end().source : line.last_end().source;
    case Piece::Kind::exit:
      return forward ? line.last_end().source : line.first_end().source;
    case Piece::Kind::widening:
      return "Borda-Carnot, Crane TP-410 p. 2-9";
    case Piece::Kind::narrowing:
      return "Crane TP-410 p. 2-9";
    case Piece::Kind::element:
      break;
  }
  return element.empty() ? "Darcy-Weisbach, Colebrook 1939" : element;
}

}  // namespace riserun::hydraulics
