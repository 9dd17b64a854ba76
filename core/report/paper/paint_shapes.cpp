#include "report/paper/paint_shapes.h"

#include <algorithm>
#include <cmath>

namespace riserun::report {

namespace {

constexpr Lettering kWords{7.0, false};
constexpr double kLineHigh = 9.0;   // of words, with the gap to the next
constexpr double kBase = 2.5;       // of the base line under the middle of small letters
constexpr double kColumn = 11.0;    // between columns of heights, rows of breadths
constexpr double kWordsGap = 4.0;   // between the last column and its words
constexpr double kThin = 0.45;      // dimension and witness lines (ISO 128-2: thin is half of wide)
constexpr double kOffEdge = 1.5;    // a witness line starts so far from the edge (ISO 129-1, ASME Y14.5: visible gap)
constexpr double kOver = 2.5;       // ... and ends so far past the dimension line
constexpr double kArrow = 5.0;      // long, a third as wide (ASME Y14.2)
constexpr double kStrokePt = 0.75;  // points to a pixel of a line's width

/// Words in a margin, and where their line begins.
struct MarginWords {
  const Dimension* dimension = nullptr;  // nullptr: a label that has no room where it belongs
  PagePoint from;
  const std::string* text = nullptr;
};

class PagePainter {
 public:
  PagePainter(const Drawing& drawing, const Placement& placement, const PixelBox& box, Brush& brush)
      : drawing_(drawing), placement_(placement), box_(box), brush_(brush) {}

  void operator()(const Area& area) const {
    std::vector<PagePoint> outline = points(area.outline);
    brush_.fill(outline, area.fill, area.opacity);
    if (area.edge) brush_.stroke(outline, true, *area.edge, kStrokePt, Line::full);
  }

  void operator()(const Stroke& stroke) const {
    const double share = stroke.line == Line::full ? kStrokePt : 0.6 * kStrokePt;
    brush_.stroke(points(stroke.points), false, stroke.ink, share * static_cast<double>(stroke.width), stroke.line);
  }

  void operator()(const Label& label) const {
    if (goes_aside(label)) return;  // into the margin, see heights()
    const bool tight = label.room > 0.0 && wide(label.text) + 8.0 > label.room * scale();
    const std::string& text = tight ? label.shorter : label.text;
    const PagePoint spot = at(label.at);
    const double wide_now = wide(text);
    const double left = spot.x - wide_now * share(label.across);
    const double base = spot.y + (label.up == Align::middle ? kBase
                                  : label.up == Align::low  ? -3.0
                                                            : 3.0 + 2.0 * kBase);
    if (label.ground) {
      const double top = base - 7.2;
      const double right = left + wide_now + 3.0;
      brush_.fill({{left - 3.0, top}, {right, top}, {right, base + 2.8}, {left - 3.0, base + 2.8}}, *label.ground, 1.0);
    }
    brush_.words({left, base}, Anchor::start, text, label.ink, kWords);
  }

  void operator()(const Dimension&) const {}  // all of a side together, see heights()

  void operator()(const Breadth& breadth) const {
    const double out = breadth.over ? -1.0 : 1.0;
    const double edge = at({0.0, breadth.over ? drawing_.high.y : drawing_.low.y}).y;
    const double y = edge + out * kColumn * (breadth.row + 1);
    const PagePoint left = at({breadth.left, breadth.at});
    const PagePoint right = at({breadth.right, breadth.at});
    for (const PagePoint& end : {left, right}) thin({{end.x, end.y + out * kOffEdge}, {end.x, y + out * kOver}});
    line_with_arrows({left.x, y}, {right.x, y});
    // Over the line, in its middle; where the line is too short, to its right.
    const double room = right.x - left.x;
    const double words = wide(breadth.text);
    const double x = words + 2.0 <= room ? (left.x + right.x) / 2.0 - words / 2.0 : right.x + kArrow + 5.0;
    brush_.words({x, words + 2.0 <= room ? y - 1.8 : y + kBase}, Anchor::start, breadth.text, breadth.ink, kWords);
  }

  void heights(Side side) const;

 private:
  double scale() const { return static_cast<double>(placement_.scale); }
  PagePoint at(const Spot& spot) const {
    return {static_cast<double>(placement_.left) + spot.x * scale(),
            static_cast<double>(placement_.bottom) - spot.y * scale()};
  }
  std::vector<PagePoint> points(const std::vector<Spot>& spots) const {
    std::vector<PagePoint> found;
    found.reserve(spots.size());
    for (const Spot& spot : spots) found.push_back(at(spot));
    return found;
  }
  static double share(Align align) { return align == Align::low ? 0.0 : align == Align::middle ? 0.5 : 1.0; }
  double wide(const std::string& text) const { return brush_.letters().width_of(text, kWords); }
  bool goes_aside(const Label& label) const { return too_tall(label, placement_, static_cast<float>(kLineHigh)); }
  void thin(const std::vector<PagePoint>& way) const { brush_.stroke(way, false, Ink::text, kThin, Line::full); }

  void arrow(PagePoint tip, double dx, double dy) const {
    const double half = kArrow / 6.0;
    brush_.fill({tip,
                 {tip.x - dx * kArrow - dy * half, tip.y - dy * kArrow + dx * half},
                 {tip.x - dx * kArrow + dy * half, tip.y - dy * kArrow - dx * half}},
                Ink::text, 1.0);
  }

  /// Arrows inside; where there is no room for two of them, from outside.
  void line_with_arrows(PagePoint a, PagePoint b) const {
    const double length = std::hypot(b.x - a.x, b.y - a.y);
    if (length <= 0.0) return;
    const double dx = (b.x - a.x) / length;
    const double dy = (b.y - a.y) / length;
    if (length > 2.4 * kArrow) {
      thin({a, b});
      arrow(a, -dx, -dy);
      arrow(b, dx, dy);
      return;
    }
    const double out = kArrow + 3.0;
    thin({{a.x - dx * out, a.y - dy * out}, {b.x + dx * out, b.y + dy * out}});
    arrow(a, dx, dy);
    arrow(b, -dx, -dy);
  }

  std::vector<MarginWords> margin_words(Side side, int& columns) const;

  const Drawing& drawing_;
  const Placement& placement_;
  const PixelBox& box_;
  Brush& brush_;
};

std::vector<MarginWords> PagePainter::margin_words(Side side, int& columns) const {
  const double sign = side == Side::left ? -1.0 : 1.0;
  const double edge = at({side == Side::left ? drawing_.low.x : drawing_.high.x, 0.0}).x;
  std::vector<MarginWords> found;
  for (const Shape& shape : drawing_.shapes) {
    if (const auto* dimension = std::get_if<Dimension>(&shape); dimension != nullptr && dimension->side == side) {
      const double middle = (at({0.0, dimension->low}).y + at({0.0, dimension->high}).y) / 2.0;
      found.push_back({dimension, {edge + sign * kColumn * (dimension->column + 1), middle}, &dimension->text});
      columns = std::max(columns, dimension->column + 1);
    }
    if (const auto* label = std::get_if<Label>(&shape); label != nullptr && side == Side::right && goes_aside(*label))
      found.push_back({nullptr, at(label->at), &label->text});
  }
  return found;
}

void PagePainter::heights(Side side) const {
  const double sign = side == Side::left ? -1.0 : 1.0;
  const double edge = at({side == Side::left ? drawing_.low.x : drawing_.high.x, 0.0}).x;
  int columns = 0;
  const std::vector<MarginWords> found = margin_words(side, columns);
  std::vector<double> wanted;
  wanted.reserve(found.size());
  for (const MarginWords& words : found) wanted.push_back(words.from.y);
  const std::vector<double> places = spread(wanted, kLineHigh, static_cast<double>(box_.top) + kLineHigh / 2.0,
                                            static_cast<double>(box_.bottom) - kLineHigh / 2.0);
  const double words_edge = edge + sign * (kColumn * columns + kWordsGap + kArrow);
  for (std::size_t i = 0; i < found.size(); ++i) {
    const PagePoint from = found[i].from;
    if (const Dimension* dimension = found[i].dimension) {
      const PagePoint low = at({dimension->at, dimension->low});
      const PagePoint high = at({dimension->at, dimension->high});
      for (const PagePoint& end : {low, high}) thin({{end.x + sign * kOffEdge, end.y}, {from.x + sign * kOver, end.y}});
      line_with_arrows({from.x, high.y}, {from.x, low.y});
    } else {
      brush_.stroke({from, {words_edge - sign * 1.5, places[i]}}, false, Ink::panel, 2.0, Line::full);
      const double r = 1.3;
      brush_.fill({{from.x - r, from.y}, {from.x, from.y + r}, {from.x + r, from.y}, {from.x, from.y - r}}, Ink::text,
                  1.0);
    }
    thin({from, {words_edge - sign * 1.5, places[i]}});
    brush_.words({words_edge, places[i] + kBase}, side == Side::left ? Anchor::end : Anchor::start, *found[i].text,
                 Ink::text, kWords);
  }
}

}  // namespace

Margins margins_of(const Drawing& drawing, const Letters& letters) {
  Margins margins;
  int columns[2] = {0, 0};
  double words[2] = {0.0, 0.0};
  for (const Shape& shape : drawing.shapes) {
    if (const auto* dimension = std::get_if<Dimension>(&shape)) {
      const std::size_t side = dimension->side == Side::left ? 0 : 1;
      words[side] = std::max(words[side], letters.width_of(dimension->text, kWords));
      columns[side] = std::max(columns[side], dimension->column + 1);
    } else if (const auto* label = std::get_if<Label>(&shape); label != nullptr && label->room_up > 0.0) {
      words[1] = std::max(words[1], letters.width_of(label->text, kWords));
    } else if (const auto* breadth = std::get_if<Breadth>(&shape)) {
      double& high = breadth->over ? margins.over : margins.under;
      high = std::max(high, kColumn * (breadth->row + 1) + kOver + 2.0);
    }
  }
  const auto side = [&](std::size_t row) {
    return words[row] > 0.0 ? words[row] + kColumn * columns[row] + kWordsGap + kArrow + 4.0 : 0.0;
  };
  margins.left = side(0);
  margins.right = side(1);
  return margins;
}

void paint_shapes(const Drawing& drawing, const Placement& placement, const PixelBox& box, Brush& brush) {
  const PagePainter painter(drawing, placement, box, brush);
  for (const Shape& shape : drawing.shapes) std::visit(painter, shape);
  for (const Side side : {Side::left, Side::right}) painter.heights(side);
}

}  // namespace riserun::report
