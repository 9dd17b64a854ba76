#include "gui/views/sheets/elevation_pane.h"

#include "gui/views/scene/words.h"
#include "quantity/read.h"
#include "report/drawing/stays.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace riserun::views {

namespace {

using gui::at;
using gui::FieldKind;
using gui::JobPath;

constexpr float kEntry = 128.0F;    // points: "not set (scfm)", "3 mm stainless"
constexpr float kAcross = 88.0F;    // points, of a field over or under a box
constexpr float kEntryTop = 17.0F;  // points of a field's label over it
constexpr float kLeft = 182.0F;     // points for the fields of that side and their dimension lines
constexpr float kRight = 208.0F;
constexpr float kMargin = 70.0F;  // points over and under the drawing

JobPath tank(const char* key) { return at("reservoir") / "inside" / key; }

/// The text that stands in either of the two fields of a value while one is typed into, else the job's.
std::string text_of(const Scene& scene, const MeasurementsState& state, const JobPath& path) {
  for (const auto* fields : {&state.drawn_fields, &state.fields})
    if (const auto found = fields->find(path); found != fields->end() && found->second.held) return found->second.text;
  return written_value(scene.model.job(), path);
}

std::optional<double> metres_of(const Scene& scene, const MeasurementsState& state, const JobPath& path) {
  const auto own = own_units(scene.model.job());
  const std::string text = gui::as_typed_in(FieldKind::length, text_of(scene, state, path), scene.model.units(), own);
  const auto read = quantity::read_length({text, own, {}});
  const auto* length = std::get_if<Length>(&read);
  return length != nullptr && *length > Length{} ? std::optional(in_metres(*length)) : std::nullopt;
}

/// A field at a side of the drawing, with a line to what it measures.
struct SideField {
  JobPath path;
  FieldKind kind;
  const char* label;
  ImVec2 target;
};

class Pane {
 public:
  Pane(const Scene& scene, MeasurementsState& state, const PixelBox& box)
      : scene_(scene),
        state_(state),
        box_(box),
        known_(elevation_of(scene, state)),
        f_(frame_of(known_)),
        list_(*ImGui::GetWindowDrawList()) {}

  Requests draw() {
    list_.AddRectFilled({box_.left, box_.top}, {box_.right, box_.bottom}, packed(scene_.theme[Ink::ground]));
    const Drawing drawing = report::elevation_drawing(known_);
    place_ = fitted(drawing,
                    {box_.left + scene_.px(kLeft), box_.top + scene_.px(kMargin), box_.right - scene_.px(kRight),
                     box_.bottom - scene_.px(kMargin)},
                    scene_.scale);
    paint(drawing, place_, box_, scene_.theme, list_);
    note_place(scene_, "elevation tank", box_of(f_.tank_left, 0.0, f_.tank_right, f_.tank_top));
    note_place(scene_, "elevation table", box_of(f_.table_left, f_.table_floor, f_.table_right, f_.rim));
    across(at("table") / "inside", f_.table_left, f_.table_right, f_.top, true);
    across(at("reservoir") / "inside", f_.tank_left, f_.tank_right, 0.0, false);
    left_side();
    right_side();
    ImGui::SetCursorScreenPos({box_.left, box_.top});
    ImGui::Dummy({box_.width(), box_.height()});
    note_item(scene_, "elevation");
    return std::move(asked_);
  }

 private:
  ImVec2 spot(double x, double y) const {
    return {place_.left + static_cast<float>(x) * place_.scale, place_.bottom - static_cast<float>(y) * place_.scale};
  }
  PixelBox box_of(double left, double bottom, double right, double top) const {
    const ImVec2 low = spot(left, bottom);
    const ImVec2 high = spot(right, top);
    return {low.x, high.y, high.x, low.y};
  }
  ImU32 ink(Ink what) const { return packed(scene_.theme[what]); }

  void words(ImVec2 where, const char* text) const {
    list_.AddText(scene_.fonts.small, scene_.fonts.small->FontSize, {std::floor(where.x), std::floor(where.y)},
                  ink(Ink::text), text);
    note_text(scene_, text, {where.x, where.y, where.x + width_of(text), where.y + scene_.fonts.small->FontSize}, box_);
  }
  float width_of(const char* text) const {
    return scene_.fonts.small->CalcTextSizeA(scene_.fonts.small->FontSize, FLT_MAX, 0.0F, text).x;
  }

  void entry(const JobPath& path, FieldKind kind, ImVec2 where, float wide) {
    ImGui::PushID(path.text().c_str());
    ImGui::SetCursorScreenPos(where);
    ImGui::SetNextItemWidth(wide);
    append(asked_, type_entry(scene_, state_.drawn_fields[path], path, kind, words::kNotSet));
    lead_on(state_, path, true);
    note_item(scene_, "drawn " + path.text());
    ImGui::PopID();
  }

  void tick(ImVec2 where) const {
    const float s = scene_.px(4.0F);
    list_.AddLine({where.x - s, where.y + s}, {where.x + s, where.y - s}, ink(Ink::text), scene_.px(1.5F));
  }
  void dimension_line(ImVec2 from, ImVec2 to) const {
    list_.AddLine(from, to, ink(Ink::text), scene_.px(1.0F));
    tick(from);
    tick(to);
  }

  /// Length and width of a box over or under it.
  void across(const JobPath& inside, double left, double right, double edge, bool above) {
    const float off = scene_.px(above ? -16.0F : 20.0F);
    const ImVec2 a = spot(left, edge);
    const ImVec2 b = spot(right, edge);
    dimension_line({a.x, a.y + off}, {b.x, b.y + off});
    const char* const names[] = {"long x", "wide"};
    const float gap = scene_.px(6.0F);
    const float wide = 2.0F * scene_.px(kAcross) + width_of(names[0]) + width_of(names[1]) + 3.0F * gap;
    float x =
        std::clamp((a.x + b.x - wide) / 2.0F, box_.left + gap, std::max(box_.left + gap, box_.right - wide - gap));
    const float high = ImGui::GetFrameHeight();
    const float y = a.y + off + (above ? -high - scene_.px(6.0F) : scene_.px(6.0F));
    const char* const keys[] = {"length", "width"};
    for (int i = 0; i < 2; ++i) {
      entry(inside / keys[i], FieldKind::length, {x, y}, scene_.px(kAcross));
      x += scene_.px(kAcross) + gap;
      words({x, y + (high - scene_.fonts.small->FontSize) / 2.0F}, names[i]);
      x += width_of(names[i]) + gap;
    }
  }

  /// Each with its label over it, in a column at the edge, as near to its target as the others let it.
  void side(const std::vector<SideField>& fields, bool left) {
    const float label = scene_.px(kEntryTop);
    const float high = label + ImGui::GetFrameHeight();
    std::vector<double> wanted;
    wanted.reserve(fields.size());
    for (const SideField& field : fields) wanted.push_back(field.target.y);
    const std::vector<double> places =
        report::spread(wanted, high + scene_.px(7.0F), box_.top + high / 2.0F, box_.bottom - high / 2.0F);
    const float wide = scene_.px(kEntry);
    const float x = left ? box_.left + scene_.px(8.0F) : box_.right - wide - scene_.px(8.0F);
    for (std::size_t i = 0; i < fields.size(); ++i) {
      const float top = static_cast<float>(places[i]) - high / 2.0F;
      const float middle = top + label + ImGui::GetFrameHeight() / 2.0F;
      list_.AddLine({left ? x + wide : x, middle}, fields[i].target, ink(Ink::faint_text), scene_.px(1.0F));
      list_.AddCircleFilled(fields[i].target, scene_.px(2.5F), ink(Ink::faint_text));
      words({x, top}, fields[i].label);
      entry(fields[i].path, fields[i].kind, {x, top + label}, wide);
    }
  }

  void left_side() {
    const float off = scene_.px(16.0F);
    const ImVec2 low = spot(f_.tank_left, 0.0);
    const ImVec2 top = spot(f_.tank_left, f_.tank_top);
    dimension_line({low.x - off, low.y}, {top.x - off, top.y});
    const ImVec2 lid = spot(f_.tank_left + (f_.tank_right - f_.tank_left) * 0.12, f_.tank_top);
    // The air comes in by the lid.
    const ImVec2 air{lid.x, lid.y - scene_.px(26.0F)};
    list_.AddLine(lid, air, ink(Ink::air), scene_.px(2.5F));
    const double first_baffle = f_.tank_left + (f_.tank_right - f_.tank_left) / (std::max(known_.baffles, 1) + 1.0);
    side({{at("air") / "delivery", FieldKind::air_flow, "compressor gives", air},
          {at("air") / "receiver", FieldKind::volume, "its receiver", air},
          {tank("height"), FieldKind::length, "tank high", {low.x - off, (low.y + top.y) / 2.0F}},
          {at("reservoir") / "sheet", FieldKind::sheet, "sheet", spot(f_.tank_left, f_.tank_top * 0.12)},
          {at("reservoir") / "supports" / "baffles across", FieldKind::count, "baffles across",
           spot(first_baffle, f_.tank_top * 0.06)}},
         true);
  }

  void right_side() {
    const float off = scene_.px(16.0F);
    const ImVec2 floor = spot(f_.table_right, f_.table_floor);
    const ImVec2 water = spot(f_.table_right, f_.water_top);
    // Past a line that comes to the table from outside.
    const bool outside = f_.right > f_.table_right && f_.right > f_.tank_right;
    const float near = outside ? spot(f_.right, 0.0).x : floor.x;
    for (const ImVec2& end : {floor, water})
      if (outside) list_.AddLine(end, {near + off, end.y}, ink(Ink::faint_text), scene_.px(1.0F));
    dimension_line({near + off, floor.y}, {near + off, water.y});
    const float x = std::max(near, spot(f_.tank_right, 0.0).x) + 2.0F * off;
    const float bottom = spot(0.0, 0.0).y;
    list_.AddLine(spot(f_.tank_right, 0.0), {x, bottom}, ink(Ink::faint_text), scene_.px(1.0F));
    list_.AddLine(floor, {x, floor.y}, ink(Ink::faint_text), scene_.px(1.0F));
    dimension_line({x, bottom}, {x, floor.y});
    side({{at("table") / "depth", FieldKind::length, "water deep", {near + off, (floor.y + water.y) / 2.0F}},
          {at("table") / "floor height", FieldKind::length, "floor height", {x, (floor.y + bottom) / 2.0F}}},
         false);
  }

  const Scene& scene_;
  MeasurementsState& state_;
  PixelBox box_;
  Elevation known_;
  report::ElevationFrame f_;
  ImDrawList& list_;
  Placement place_;
  Requests asked_;
};

/// Those of a plan for a tank of these measures; baffles are drawn as they are typed.
void add_stays(const plan::Plan& plan, Elevation& known) {
  constexpr double kSame = 1e-4;  // m
  if (std::abs(in_metres(plan.job.reservoir.length) - *known.tank_length) > kSame ||
      std::abs(in_metres(plan.job.reservoir.height) - *known.tank_height) > kSame)
    return;
  for (report::Shape& shape : report::stay_shapes(plan))
    if (const auto* stroke = std::get_if<report::Stroke>(&shape); stroke != nullptr && stroke->name != "baffle")
      known.stays.push_back(std::move(shape));
}

}  // namespace

Elevation elevation_of(const Scene& scene, const MeasurementsState& state) {
  Elevation known;
  known.tank_length = metres_of(scene, state, tank("length"));
  known.tank_height = metres_of(scene, state, tank("height"));
  known.table_length = metres_of(scene, state, at("table") / "inside" / "length");
  known.water_depth = metres_of(scene, state, at("table") / "depth");
  known.floor_height = metres_of(scene, state, at("table") / "floor height");
  if (scene.shown.plan) known.inlet = report::water_inlet(*scene.shown.plan);
  if (scene.shown.plan && known.tank_length && known.tank_height) add_stays(*scene.shown.plan, known);
  const std::string baffles = text_of(scene, state, at("reservoir") / "supports" / "baffles across");
  constexpr int kMostDrawn = 40;
  if (!baffles.empty() && baffles.size() < 4 && baffles.find_first_not_of("0123456789") == std::string::npos)
    known.baffles = std::min(std::stoi(baffles), kMostDrawn);
  return known;
}

Requests draw_elevation(const Scene& scene, MeasurementsState& state, const PixelBox& box) {
  return Pane(scene, state, box).draw();
}

}  // namespace riserun::views
