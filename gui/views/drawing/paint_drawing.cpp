#include "gui/views/drawing/paint_drawing.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

namespace riserun::views {

namespace {

using report::Align;
using report::Area;
using report::Breadth;
using report::Dimension;
using report::Label;
using report::Line;
using report::Shape;
using report::spread;
using report::Stroke;
using report::too_tall;

constexpr float kColumn = 12.0F;  // px between the columns of dimensions
constexpr float kWords = 12.0F;   // px between the last column and the words

class Painter {
 public:
  Painter(const Placement& placement, const Theme& theme, ImDrawList& list)
      : placement_(placement), theme_(theme), list_(list) {}

  ImVec2 at(const Spot& spot) const {
    return {placement_.left + static_cast<float>(spot.x) * placement_.scale,
            placement_.bottom - static_cast<float>(spot.y) * placement_.scale};
  }

  void operator()(const Area& area) const {
    points_.clear();
    for (const Spot& spot : area.outline) points_.push_back(at(spot));
    const int count = static_cast<int>(points_.size());
    list_.AddConvexPolyFilled(points_.data(), count, color(area.fill, area.opacity));
    if (area.edge) list_.AddPolyline(points_.data(), count, color(*area.edge), ImDrawFlags_Closed, placement_.pixel);
  }

  void operator()(const Stroke& stroke) const {
    const float width = stroke.width * placement_.pixel;
    if (stroke.line != Line::full) {
      if (is_short(stroke)) return;
      for (std::size_t i = 1; i < stroke.points.size(); ++i)
        dashes(stroke.points[i - 1], stroke.points[i], stroke, width);
      return;
    }
    points_.clear();
    for (const Spot& spot : stroke.points) points_.push_back(at(spot));
    list_.AddPolyline(points_.data(), static_cast<int>(points_.size()), color(stroke.ink, opacity_of(stroke)),
                      ImDrawFlags_None, width);
  }

  void operator()(const Label& label) const {
    if (goes_aside(label)) return;  // into the margin, see dimensions()
    ImVec2 size = ImGui::CalcTextSize(label.text.c_str());
    const float plates = 14.0F * placement_.pixel;
    const bool tight = label.room > 0.0 && size.x + plates > static_cast<float>(label.room) * placement_.scale;
    const std::string& text = tight ? label.shorter : label.text;
    if (tight) size = ImGui::CalcTextSize(text.c_str());
    const ImVec2 spot = at(label.at);
    const ImVec2 corner{spot.x - size.x * share(label.across), spot.y - size.y * (1.0F - share(label.up))};
    words(corner, size, text, label.ink, label.ground);
  }

  void operator()(const Dimension&) const {}  // all of a side together, see dimensions()

  void operator()(const Breadth& breadth) const {
    const float p = placement_.pixel;
    const float out = breadth.over ? -1.0F : 1.0F;
    const ImVec2 left = at({breadth.left, breadth.at});
    const ImVec2 right = at({breadth.right, breadth.at});
    const float y = left.y + out * kColumn * static_cast<float>(breadth.row + 1) * 1.5F * p;
    for (const ImVec2& end : {left, right}) {
      list_.AddLine(end, {end.x, y + out * 3.0F * p}, color(Ink::faint_text, 0.6F), p);
      list_.AddLine({end.x - 4.0F * p, y + 4.0F * p}, {end.x + 4.0F * p, y - 4.0F * p}, color(breadth.ink), 1.5F * p);
    }
    list_.AddLine({left.x, y}, {right.x, y}, color(breadth.ink), 1.5F * p);
    const ImVec2 size = ImGui::CalcTextSize(breadth.text.c_str());
    words({(left.x + right.x - size.x) / 2.0F, y - size.y / 2.0F}, size, breadth.text, breadth.ink, Ink::panel);
  }

  void dimensions(const Drawing& drawing, Side side, const PixelBox& box) const;

 private:
  float length_of(const Stroke& stroke) const {
    float length = 0.0F;
    for (std::size_t i = 1; i < stroke.points.size(); ++i) {
      const ImVec2 a = at(stroke.points[i - 1]);
      const ImVec2 b = at(stroke.points[i]);
      length += std::hypot(b.x - a.x, b.y - a.y);
    }
    return length / placement_.pixel;
  }

  /// Less than two dashes tell nothing of what is hidden.
  bool is_short(const Stroke& stroke) const {
    constexpr float kTwoDashes = 14.0F;
    return length_of(stroke) < kTwoDashes;
  }

  /// The crests of a small thread lie nearer to each other than lines can be told apart: they shade it.
  float opacity_of(const Stroke& stroke) const {
    constexpr float kToldApart = 36.0F;  // px across the thread
    constexpr float kLeast = 0.2F;
    return stroke.name == "thread" ? std::clamp(length_of(stroke) / kToldApart, kLeast, 1.0F) : 1.0F;
  }

  bool goes_aside(const Label& label) const {
    return too_tall(label, placement_, ImGui::GetTextLineHeight() + 6.0F * placement_.pixel);
  }
  static float share(Align align) { return align == Align::low ? 0.0F : align == Align::middle ? 0.5F : 1.0F; }
  ImU32 color(Ink ink, float opacity = 1.0F) const { return packed(faded(theme_[ink], opacity)); }

  void words(ImVec2 corner, ImVec2 size, const std::string& text, Ink ink, std::optional<Ink> ground) const {
    if (ground) {
      const float pad = 3.0F * placement_.pixel;
      list_.AddRectFilled({corner.x - 2.0F * pad, corner.y - pad},
                          {corner.x + size.x + 2.0F * pad, corner.y + size.y + pad}, color(*ground),
                          2.0F * placement_.pixel);
    }
    list_.AddText({std::floor(corner.x), std::floor(corner.y)}, color(ink), text.c_str());
  }

  void dashes(const Spot& from, const Spot& to, const Stroke& stroke, float width) const {
    const ImVec2 a = at(from);
    const ImVec2 b = at(to);
    const float length = std::hypot(b.x - a.x, b.y - a.y);
    const float gap = 5.0F * placement_.pixel;
    const bool axis = stroke.line == Line::centre;
    bool is_long = axis;
    for (float along = 0.0F; along < length;) {
      const float end = std::min(along + (is_long ? 3.0F : 1.0F) * gap, length);
      list_.AddLine({a.x + (b.x - a.x) * along / length, a.y + (b.y - a.y) * along / length},
                    {a.x + (b.x - a.x) * end / length, a.y + (b.y - a.y) * end / length}, color(stroke.ink), width);
      along = end + (axis ? 0.7F : 1.0F) * gap;
      is_long = axis && !is_long;
    }
  }

  /// The line between its two ticks, and the witness lines to the drawing.
  void dimension_line(const Dimension& dimension, float x) const {
    const float p = placement_.pixel;
    const ImVec2 low = at({dimension.at, dimension.low});
    const ImVec2 high = at({dimension.at, dimension.high});
    const ImU32 faint = color(Ink::faint_text, 0.6F);
    list_.AddLine(low, {x, low.y}, faint, p);
    list_.AddLine(high, {x, high.y}, faint, p);
    list_.AddLine({x, low.y}, {x, high.y}, color(dimension.ink), 1.5F * p);
    for (const float y : {low.y, high.y})
      list_.AddLine({x - 4.0F * p, y + 4.0F * p}, {x + 4.0F * p, y - 4.0F * p}, color(dimension.ink), 1.5F * p);
  }

  const Placement& placement_;
  const Theme& theme_;
  ImDrawList& list_;
  mutable std::vector<ImVec2> points_;
};

/// Words in a margin, and where their line begins.
struct MarginWords {
  const Dimension* dimension = nullptr;  // nullptr: a label that has no room where it belongs
  ImVec2 from;
  const std::string* text = nullptr;
};

void Painter::dimensions(const Drawing& drawing, Side side, const PixelBox& box) const {
  const float p = placement_.pixel;
  const float sign = side == Side::left ? -1.0F : 1.0F;
  const float edge = at({side == Side::left ? drawing.low.x : drawing.high.x, 0.0}).x;
  std::vector<MarginWords> found;
  int columns = 0;
  for (const Shape& shape : drawing.shapes) {
    if (const auto* dimension = std::get_if<Dimension>(&shape); dimension != nullptr && dimension->side == side) {
      const float middle = (at({0.0, dimension->low}).y + at({0.0, dimension->high}).y) / 2.0F;
      found.push_back({dimension,
                       {edge + sign * kColumn * static_cast<float>(dimension->column + 1) * p, middle},
                       &dimension->text});
      columns = std::max(columns, dimension->column + 1);
    }
    if (const auto* label = std::get_if<Label>(&shape); label != nullptr && side == Side::right && goes_aside(*label))
      found.push_back({nullptr, at(label->at), &label->text});
  }
  std::vector<double> wanted;
  for (const MarginWords& words : found) wanted.push_back(words.from.y);
  const float line_height = ImGui::GetTextLineHeight();
  const auto places =
      spread(wanted, line_height + 4.0F * p, box.top + line_height / 2.0F, box.bottom - line_height / 2.0F);
  const float words_edge = edge + sign * (kColumn * static_cast<float>(columns) + kWords) * p;
  for (std::size_t i = 0; i < found.size(); ++i) {
    const Dimension* dimension = found[i].dimension;
    if (dimension != nullptr) dimension_line(*dimension, found[i].from.x);
    if (dimension == nullptr) list_.AddCircleFilled(found[i].from, 3.0F * p, color(Ink::text));
    const ImVec2 size = ImGui::CalcTextSize(found[i].text->c_str());
    const float y = static_cast<float>(places[i]);
    const ImVec2 end{words_edge - sign * 3.0F * p, y};
    // A label's line crosses water and walls: light beside dark is seen on any of them.
    if (dimension == nullptr) list_.AddLine(found[i].from, end, color(Ink::panel), 3.0F * p);
    list_.AddLine(found[i].from, end, dimension != nullptr ? color(Ink::faint_text, 0.6F) : color(Ink::text), p);
    words({side == Side::left ? words_edge - size.x : words_edge, y - size.y / 2.0F}, size, *found[i].text,
          dimension != nullptr ? dimension->ink : Ink::text, {});
  }
}

}  // namespace

float margin_for(const Drawing& drawing, Side side, float pixel) {
  float words = 0.0F;
  int columns = 0;
  for (const Shape& shape : drawing.shapes)
    if (const auto* dimension = std::get_if<Dimension>(&shape); dimension != nullptr && dimension->side == side) {
      words = std::max(words, ImGui::CalcTextSize(dimension->text.c_str()).x);
      columns = std::max(columns, dimension->column + 1);
    } else if (const auto* label = std::get_if<Label>(&shape);
               label != nullptr && side == Side::right && label->room_up > 0.0) {
      words = std::max(words, ImGui::CalcTextSize(label->text.c_str()).x);
    }
  return columns == 0 ? 0.0F : words + (kColumn * static_cast<float>(columns) + kWords + 4.0F) * pixel;
}

void paint(const Drawing& drawing, const Placement& placement, const PixelBox& box, const Theme& theme,
           ImDrawList& list) {
  const Painter painter(placement, theme, list);
  for (const Shape& shape : drawing.shapes) std::visit(painter, shape);
  for (const Side side : {Side::left, Side::right}) painter.dimensions(drawing, side, box);
}

}  // namespace riserun::views
