// A drawing as a list of shapes: what is drawn is worked out without a window, and can be checked shape by shape. Spots
// are metres on the drawn thing, x to the right and y up; widths of lines are pixels of a screen at scale 1.
#pragma once

#include "report/drawing/ink.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace riserun::report {

struct Spot {
  double x = 0.0;  // m
  double y = 0.0;  // m
  auto operator<=>(const Spot&) const = default;
};

/// A filled convex outline.
struct Area {
  std::string name;
  std::vector<Spot> outline;
  Ink fill = Ink::part_body;
  float opacity = 1.0F;
  std::optional<Ink> edge{};
};

/// Kinds of line, as drawings of the trade have them. Source: ISO 128-2, ASME Y14.2.
enum class Line : std::uint8_t {
  full,
  hidden,  // short dashes: an edge behind what is drawn, or what is not known yet
  centre,  // long and short dashes: an axis
};

struct Stroke {
  std::string name;
  std::vector<Spot> points;
  Ink ink = Ink::part_edge;
  float width = 1.0F;
  Line line = Line::full;
};

enum class Align : std::uint8_t { low, middle, high };

/// Words at a spot, on a plate of their own where `ground` is given.
struct Label {
  std::string name;
  Spot at;
  std::string text;
  Ink ink = Ink::text;
  Align across = Align::middle;  // low: the text stands to the right of the spot
  Align up = Align::middle;      // low: the text stands above the spot
  std::optional<Ink> ground{};
  double room = 0.0;      // m across that the words may take; 0: any
  std::string shorter{};  // where they would take more
  double room_up = 0.0;   // m of height; 0: any. Where the words are taller they go into the right margin, with a line
};

enum class Side : std::uint8_t { left, right };

/// A height that is dimensioned at the side of a drawing, with its line in a column of its own and its words in the
/// margin, where they are spread so that none covers another.
struct Dimension {
  std::string name;
  double low = 0.0;   // m, y
  double high = 0.0;  // m, y
  double at = 0.0;    // m, x from which the witness lines start
  Side side = Side::left;
  int column = 0;  // 0: nearest to the drawing
  std::string text;
  Ink ink = Ink::text;
};

/// A breadth that is dimensioned under a drawing or over it, each row of them further out.
struct Breadth {
  std::string name;
  double left = 0.0;   // m, x
  double right = 0.0;  // m, x
  double at = 0.0;     // m, y from which the witness lines start
  bool over = false;   // over the drawing; else under it
  int row = 0;         // 0: nearest to the drawing
  std::string text;
  Ink ink = Ink::text;
};

using Shape = std::variant<Area, Stroke, Label, Dimension, Breadth>;

struct Drawing {
  std::vector<Shape> shapes;
  Spot low;  // of all that must be seen
  Spot high;
  double width() const { return high.x - low.x; }
  double height() const { return high.y - low.y; }
};

/// Moves low and high out to all areas and strokes of the drawing.
void take_in_shapes(Drawing& drawing);

/// The shape of that kind and name; nullptr: there is none.
template <class Kind>
const Kind* find_shape(const Drawing& drawing, const std::string& name) {
  for (const Shape& shape : drawing.shapes)
    if (const Kind* found = std::get_if<Kind>(&shape); found != nullptr && found->name == name) return found;
  return nullptr;
}

/// A rectangle with upright sides.
std::vector<Spot> box_outline(double left, double bottom, double right, double top);

/// Moves the wanted places apart until each is at least `gap` from the next, keeping their order and, where there is
/// room, within low to high; as little as that takes.
std::vector<double> spread(const std::vector<double>& wanted, double gap, double low, double high);

/// Where words of these widths begin that stand in a row, in their order, when each is wanted in the middle of its
/// place: moved until each is at least `gap` from the next and, where there is room, all lie within low to high.
std::vector<double> in_a_row(const std::vector<double>& middles, const std::vector<double>& widths, double gap,
                             double low, double high);

/// Where a drawing lies on the screen.
struct Placement {
  float left = 0.0F;    // px, of x = 0
  float bottom = 0.0F;  // px, of y = 0
  float scale = 1.0F;   // px per metre
  float pixel = 1.0F;   // content scale: a hair line's width
};

struct PixelBox {
  float left = 0.0F, top = 0.0F, right = 0.0F, bottom = 0.0F;
  float width() const { return right - left; }
  float height() const { return bottom - top; }
};

/// The largest placement in which all of the drawing lies in the box, in its middle.
Placement fitted(const Drawing& drawing, const PixelBox& box, float pixel);

/// Whether the words, so many pixels high with their plate, are taller than the room that they have.
bool too_tall(const Label& label, const Placement& placement, float height);

}  // namespace riserun::report
