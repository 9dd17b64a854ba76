// Draws along an axis: what a part's outline is put together from.
#pragma once

#include "report/drawing/drawing.h"

#include <string>
#include <utility>
#include <vector>

namespace riserun::report {

/// An axis through a spot; along it and, to its left, across.
struct Axis {
  Spot from;
  double heading = 0.0;  // degrees
  Spot at(double along, double across) const;
};

class PartPen {
 public:
  explicit PartPen(Drawing& drawing) : drawing_(drawing) {}

  /// A convex outline given by (along, across), anticlockwise.
  void area(const Axis& axis, std::string name, const std::vector<std::pair<double, double>>& outline,
            Ink fill = Ink::part_body, bool edge = true);
  /// From one place along the axis to a further one, its half widths there.
  void tube(const Axis& axis, std::string name, double from, double to, double half_from, double half_to,
            Ink fill = Ink::part_body, bool edge = true);
  /// A hexagon seen on three of its faces, its corners broken.
  void hexagon(const Axis& axis, const std::string& name, double from, double to, double half);
  /// A square head seen on two of its faces.
  void square(const Axis& axis, std::string name, double from, double to, double half);
  /// The same seen on one face, which thin diagonals say is flat (ISO 128-3, from memory).
  void flat(const Axis& axis, const std::string& name, double from, double to, double half);
  void round(Spot middle, std::string name, double radius, Ink fill = Ink::part_body, bool edge = true);
  void line(const Axis& axis, std::string name, const std::vector<std::pair<double, double>>& points,
            Line line = Line::full, float width = 1.0F);
  /// Which way it is to be passed.
  void arrow(const Axis& axis, double from, double to, double across);
  /// A coil seen from the side.
  void spring(const Axis& axis, double from, double to, double half, Line line);

 private:
  Drawing& drawing_;
};

}  // namespace riserun::report
