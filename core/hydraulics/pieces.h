// A line taken apart, for one direction and one end of the coefficients' range: what Line prints and what CompiledLine
// adds up are the same pieces. Inner-loop code: raw SI doubles.
#pragma once

#include "hydraulics/line.h"

#include <cstddef>
#include <string>
#include <vector>

namespace riserun::hydraulics {

/// One place where head is lost.
struct Piece {
  enum class Kind { entry, widening, narrowing, element, exit };
  Kind kind = Kind::element;
  std::size_t element = 0;  // index in the line; of the one entered, for a change of bore
  double bore = 0.0;        // m
  double fixed_k = 0.0;
  double crane_k = 0.0;   // n fT
  double darby_k1 = 0.0;  // 3-K in the form k1/Re + k_infinity, counted where it exceeds crane_k
  double darby_k_infinity = 0.0;
  double length_over_bore = 0.0;  // of the wall that rubs
  double relative_roughness = 0.0;
  double friction_scale = 1.0;  // on the turbulent wall friction

  double area() const;  // m^2
};

/// Ends, changes of bore and elements in the order that the water meets them.
std::vector<Piece> pieces_of(const Line& line, Direction direction, Coefficients coefficients);

/// As printed: "narrowing into 1/2 barb".
std::string name_of(const Piece& piece, const Line& line);
/// Where its coefficient comes from.
std::string source_of(const Piece& piece, const Line& line, Direction direction);

}  // namespace riserun::hydraulics
