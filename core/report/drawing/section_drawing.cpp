#include "report/drawing/section_drawing.h"

#include "report/drawing/inlet.h"
#include "report/drawing/section_devices.h"
#include "report/drawing/stays.h"
#include "report/words/riser_label.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace riserun::report {

namespace {

using plan::Plan;
using transfer::Instant;

/// Where things stand; all in metres, x from the reservoir's left inside, y from its inside floor.
struct Geometry {
  double length, height, sheet;
  double riser_x, riser_bore, riser_wall, riser_end, bung_top;
  double table_left, table_right, table_floor, table_rim, inlet_x, inlet_y;
  Inlet inlet;
  int baffles;
};

/// The middle of the bay that is nearest to the middle: a riser hangs between baffles.
double middle_of_a_bay(double length, int baffles) {
  const double bay = length / (baffles + 1);
  const int whole_bays = baffles / 2;
  return (static_cast<double>(whole_bays) + 0.5) * bay;
}

Length offset_of(const Plan& plan) {
  if (!plan.water_connection) return {};
  const std::string& name = plan.connections[*plan.water_connection].name;
  for (const plan::JobConnection& connection : plan.job.connections)
    if (connection.name == name) return connection.offset.value_or(Length{});
  return {};
}

double bung_top_of(const Plan& plan, double lid) {
  if (const plan::JobPort* port = plan::find_port(plan.job, plan.riser.bung); port != nullptr && port->face_height)
    return in_metres(*port->face_height);
  return lid + in_metres(plan.riser.bung_face);
}

Geometry geometry_of(const Plan& plan) {
  const plan::JobReservoir& box = plan.job.reservoir;
  const reservoir::Table& table = plan.transfer.system.table;
  Geometry p{};
  p.length = in_metres(box.length);
  p.height = in_metres(box.height);
  p.sheet = in_metres(box.sheet.thickness);
  p.baffles = box.supports.layout ? box.supports.layout->baffles_across : 0;
  p.riser_x = along_lid(plan, plan.riser.bung).value_or(middle_of_a_bay(p.length, p.baffles));
  p.riser_bore = in_metres(plan.riser.request.pipe.bore);
  p.riser_wall = (in_metres(plan.riser.request.pipe.outside_diameter) - p.riser_bore) / 2.0;
  p.riser_end = in_metres(plan.riser.riser.end_height);
  p.bung_top = std::max(bung_top_of(plan, p.height), p.height + p.sheet);
  const double table_length = in_metres(table.length);
  p.table_left = (p.length - table_length) / 2.0;
  p.table_right = p.table_left + table_length;
  p.table_floor = in_metres(table.floor_height);
  p.table_rim = p.table_floor + in_metres(table.rim);
  p.inlet = water_inlet(plan);
  p.inlet_x = p.inlet.outside() ? p.riser_x
                                : std::clamp(p.riser_x + in_metres(offset_of(plan)), p.table_left + p.riser_bore,
                                             std::max(p.table_left + p.riser_bore, p.table_right - p.riser_bore));
  p.inlet_y = p.table_floor + in_metres(plan.transfer.system.inlet_height);
  return p;
}

constexpr int kPieces = 12;  // of a line that may be bent

TableFrame table_of(const Geometry& p) { return {p.table_left, p.table_right, p.table_floor, p.table_rim, p.sheet}; }
double half_of_line(const Geometry& p) { return p.riser_bore / 2.0 + p.riser_wall; }

/// Axis from the bung to the table's inlet: straight up at both ends where that is in the floor, else outside, past the
/// table's end.
std::vector<Spot> way_of_line(const Geometry& p) {
  const double half = half_of_line(p);
  if (p.inlet.outside()) return rounded(way_outside(p.inlet, table_of(p), {p.riser_x, p.bung_top}, half), 4.0 * half);
  std::vector<Spot> way;
  for (int i = 0; i <= kPieces; ++i) {
    const double share = i / static_cast<double>(kPieces);
    const double ease = share * share * (3.0 - 2.0 * share);
    way.push_back({p.riser_x + (p.inlet_x - p.riser_x) * ease, p.bung_top + (p.inlet_y - p.bung_top) * share});
  }
  return way;
}

class Section {
 public:
  Section(const Plan& plan, const Instant& now, UnitSystem units, const std::vector<Shape>* devices = nullptr)
      : plan_(plan), now_(now), units_(units), devices_(devices), p_(geometry_of(plan)), way_(way_of_line(p_)) {}

  Drawing whole() {
    const double depth = in_metres(now_.reservoir_depth);
    drawing_.low = {std::min(0.0, p_.table_left) - p_.sheet, -p_.sheet};
    drawing_.high = {std::max(p_.length, p_.table_right) + p_.sheet, std::max(p_.table_rim, p_.bung_top)};
    fluids(depth);
    walls();
    devices();
    line();
    words(depth);
    name_stays();
    left_dimensions(depth);
    right_dimensions(depth);
    return std::move(drawing_);
  }

  Drawing sheet() {
    drawing_ = whole();
    dimension("riser", p_.riser_end, p_.riser_end + in_metres(plan_.riser.riser.cut_length), p_.riser_x, Side::right, 3,
              riser_label(plan_, units_));
    const plan::JobReservoir& box = plan_.job.reservoir;
    breadth("inside length", 0.0, p_.length, -p_.sheet, false, "inside " + length(box.length));
    breadth("table length", p_.table_left, p_.table_right, p_.table_rim, true,
            "table, inside " + length(plan_.transfer.system.table.length));
    level("water up", 0.0, p_.length, plan_.levels.reservoir_depth_up, 0.0,
          "water up " + length(plan_.levels.reservoir_depth_up));
    level("top-up mark", 0.0, p_.length, plan_.levels.top_up_mark, 0.0,
          "top up at " + length(plan_.levels.top_up_mark));
    level("table depth", p_.table_left, p_.table_right, plan_.levels.table_depth, p_.table_floor,
          "water up " + length(plan_.levels.table_depth));
    return std::move(drawing_);
  }

  Drawing riser_end() {
    const double depth = in_metres(now_.reservoir_depth);
    const double outer = p_.riser_bore / 2.0 + p_.riser_wall;
    const double half = 5.0 * outer;
    const double top = std::max(p_.riser_end + 3.0 * p_.riser_bore, 4.0 * p_.riser_bore);
    drawing_.low = {p_.riser_x - half, -3.0 * p_.sheet};
    drawing_.high = {p_.riser_x + half, top};
    const double water = std::min(depth, top);
    area("water at the riser", p_.riser_x - half, 0.0, p_.riser_x + half, water, Ink::water);
    area("floor", p_.riser_x - half, -p_.sheet, p_.riser_x + half, 0.0, Ink::sheet_metal);
    riser_pipe(top);
    dimension("clearance", floor_height(), p_.riser_end, p_.riser_x - outer, Side::left, 0,
              "clearance " + length(plan_.riser.riser.clearance));
    dimension("heel", 0.0, p_.riser_end, p_.riser_x + outer, Side::right, 0,
              "heel " + write_volume(plan_.levels.heel, units_));
    return std::move(drawing_);
  }

 private:
  /// Less than a hundredth of a psi, which no gauge shows, is none.
  std::string pressure(GaugePressure value) const {
    const bool none = std::abs(in_psi(value)) < 0.01;
    return write_pressure_alone(none ? GaugePressure{} : value, units_);
  }
  std::string length(Length value) const { return write_length(value, units_); }
  double floor_height() const { return in_metres(plan_.riser.request.obstacle_height); }

  void area(std::string name, double left, double bottom, double right, double top, Ink fill, float opacity = 1.0F) {
    if (right > left && top > bottom)
      drawing_.shapes.push_back(Area{std::move(name), box_outline(left, bottom, right, top), fill, opacity});
  }
  void dimension(std::string name, double low, double high, double at, Side side, int column, std::string text) {
    drawing_.shapes.push_back(Dimension{std::move(name), low, high, at, side, column, std::move(text)});
  }

  void breadth(std::string name, double left, double right, double at, bool over, std::string text) {
    drawing_.shapes.push_back(Breadth{std::move(name), left, right, at, over, 0, std::move(text)});
  }

  /// A level that the water comes to, its words in the margin.
  void level(std::string name, double left, double right, Length height, double floor, std::string text) {
    if (height <= Length{}) return;
    const double y = floor + in_metres(height);
    drawing_.shapes.push_back(Stroke{name, {{left, y}, {right, y}}, Ink::text, 1.0F, Line::hidden});
    in_margin(std::move(name), {right - 0.04 * (right - left), y}, std::move(text));
  }

  /// Words in the margin, with a line to the spot.
  void in_margin(std::string name, Spot at, std::string text) {
    constexpr double kAlways = 1e-9;  // m: no words are as low as that
    drawing_.shapes.push_back(Label{std::move(name), at, std::move(text), Ink::text, Align::middle, Align::middle,
                                    std::nullopt, 0.0, "", kAlways});
  }

  void fluids(double depth) {
    area("water in the reservoir", 0.0, 0.0, p_.length, depth, Ink::water);
    if (now_.ullage_pressure > GaugePressure{})
      area("air in the reservoir", 0.0, depth, p_.length, p_.height, Ink::air, 0.22F);
    area("water in the table", p_.table_left, p_.table_floor, p_.table_right,
         p_.table_floor + in_metres(now_.table_depth), Ink::water);
  }

  void walls() {
    const double t = p_.sheet;
    area("floor", -t, -t, p_.length + t, 0.0, Ink::sheet_metal);
    area("left wall", -t, 0.0, 0.0, p_.height, Ink::sheet_metal);
    area("right wall", p_.length, 0.0, p_.length + t, p_.height, Ink::sheet_metal);
    area("lid", -t, p_.height, p_.length + t, p_.height + t, Ink::sheet_metal);
    for (Shape& shape : stay_shapes(plan_)) drawing_.shapes.push_back(std::move(shape));
    const double obstacle = floor_height();
    area("under the riser", p_.riser_x - 2.0 * p_.riser_bore, 0.0, p_.riser_x + 2.0 * p_.riser_bore, obstacle,
         Ink::sheet_metal);
    area("table floor", p_.table_left - t, p_.table_floor - t, p_.table_right + t, p_.table_floor, Ink::sheet_metal);
    area("table left", p_.table_left - t, p_.table_floor, p_.table_left, p_.table_rim, Ink::sheet_metal);
    area("table right", p_.table_right, p_.table_floor, p_.table_right + t, p_.table_rim, Ink::sheet_metal);
  }

  /// What stands beside the reservoir is taken into sight; what stands on it is below the table.
  void devices() {
    const std::vector<Shape> made = devices_ == nullptr ? section_devices(plan_) : std::vector<Shape>();
    for (const Shape& shape : devices_ == nullptr ? made : *devices_) {
      const auto* area = std::get_if<Area>(&shape);
      for (const Spot& spot : area != nullptr ? area->outline : std::vector<Spot>())
        drawing_.high.x = std::max(drawing_.high.x, spot.x);
      drawing_.shapes.push_back(shape);
    }
  }

  void riser_pipe(double top) {
    const double inner = p_.riser_bore / 2.0;
    const double outer = inner + p_.riser_wall;
    area("riser left", p_.riser_x - outer, p_.riser_end, p_.riser_x - inner, top, Ink::part_edge);
    area("riser right", p_.riser_x + inner, p_.riser_end, p_.riser_x + outer, top, Ink::part_edge);
    if (line_wet()) area("water in the riser", p_.riser_x - inner, p_.riser_end, p_.riser_x + inner, top, Ink::water);
  }

  /// While water runs or stands in the table, riser and hose are full. A solver's rest of a flow is none: below
  /// a teaspoon a minute nothing stands in the riser because of it.
  bool line_wet() const {
    if (!is_joined()) return false;
    constexpr double kFlows = 1e-7;  // cubic metres a second
    return now_.table_depth > Length{} || std::abs(in_cubic_metres_per_second(now_.flow)) > kFlows;
  }

  /// The same on both sides of the riser's axis.
  void both_sides(const std::string& name, double inner, double outer, double bottom, double top) {
    area(name + " left", p_.riser_x - outer, bottom, p_.riser_x - inner, top, Ink::part_edge);
    area(name + " right", p_.riser_x + inner, bottom, p_.riser_x + outer, top, Ink::part_edge);
  }

  /// The bushing stands in the coupling's upper end, the riser in the bushing.
  void bushing_and_coupling(double face, double wall) {
    const plan::RiserBushing& held = *plan_.riser.bushing;
    const double opening = in_metres(plan_.riser.request.bung_opening) / 2.0;
    const double outer = in_metres(plan_.catalog->part(*held.coupling).outside_diameter) / 2.0;
    both_sides("bushing", p_.riser_bore / 2.0, std::max(wall, opening), face, face + in_metres(held.length));
    both_sides("coupling", opening, outer, p_.height - in_metres(plan_.riser.bung_projection),
               face + in_metres(held.goes_in));
  }

  /// Riser, bung, and from there to the inlet the hose, bent where the two do not stand in one line.
  void line() {
    riser_pipe(p_.bung_top);
    const double wall = p_.riser_bore / 2.0 + 2.2 * p_.riser_wall;
    const double face = p_.height - in_metres(plan_.riser.request.bung_projection);  // that the riser screws into
    if (plan_.riser.bushing && plan_.riser.bushing->coupling)
      bushing_and_coupling(face, wall);
    else
      both_sides("bung", p_.riser_bore / 2.0, wall, p_.height - in_metres(plan_.riser.bung_projection), p_.bung_top);
    const double inner = p_.riser_bore / 2.0;
    const double outer = inner + p_.riser_wall;
    if (!is_joined()) return gap_of_line(outer);
    pipe(way_, inner, outer, "hose");
    if (p_.inlet.outside())
      pipe(rounded(way_inside(p_.inlet, table_of(p_), outer), 2.0 * outer), inner, outer, "inlet");
    if (plan_.connections[*plan_.water_connection].hose_joints > 0)
      for (const bool at_table : {false, true}) clamps(at_table, outer);
  }

  /// Whether parts lead from the riser to the table.
  bool is_joined() const {
    return plan_.water_connection && plan_.connections[*plan_.water_connection].run() != nullptr;
  }

  /// Where nothing joins the two: in broken lines what is missing, red where the job asks for it.
  void gap_of_line(double outer) {
    const Ink ink = plan_.water_connection ? Ink::refused : Ink::faint_text;
    for (const double side : {-outer, outer})
      drawing_.shapes.push_back(Stroke{"no run", beside(way_, side), ink, 1.5F, Line::hidden});
  }

  /// Two clamps round each end of the hose, and the hexagon of the barb that it is pushed onto.
  void clamps(bool at_table, double outer) {
    const Spot end = at_table ? way_.back() : way_.front();
    const bool level = at_table && p_.inlet.outside();  // into the table from the right
    const double on = at_table && !level ? -1.0 : 1.0;
    const auto band = [&](double from, double high, double half, Ink ink) {
      const double a = std::min(on * from, on * (from + high));
      const double b = std::max(on * from, on * (from + high));
      if (level)
        area("hose end", end.x + a, end.y - half, end.x + b, end.y + half, ink);
      else
        area("hose end", end.x - half, end.y + a, end.x + half, end.y + b, ink);
    };
    band(0.0, 0.8 * outer, 1.35 * outer, Ink::part_body);
    band(1.2 * outer, 0.35 * outer, 1.25 * outer, Ink::part_edge);
    band(1.9 * outer, 0.35 * outer, 1.25 * outer, Ink::part_edge);
  }

  /// Water or none between two walls along that axis; all of it in sight.
  void pipe(const std::vector<Spot>& way, double inner, double outer, const std::string& name) {
    const std::vector<Spot> left = beside(way, inner);
    const std::vector<Spot> right = beside(way, -inner);
    for (std::size_t i = 0; i + 1 < way.size(); ++i)
      drawing_.shapes.push_back(Area{"in the " + name,
                                     {right[i], right[i + 1], left[i + 1], left[i]},
                                     line_wet() ? Ink::water : Ink::ground,
                                     1.0F,
                                     {}});
    for (const double side : {outer, -outer}) {
      Stroke wall{name, beside(way, side), Ink::part_edge, 2.0F};
      for (const Spot& spot : wall.points)
        drawing_.high = {std::max(drawing_.high.x, spot.x), std::max(drawing_.high.y, spot.y)};
      drawing_.shapes.push_back(std::move(wall));
    }
  }

  void label(std::string name, Spot at, const std::string& word, std::string value, Ink ink, Ink ground, double room,
             double room_up) {
    drawing_.shapes.push_back(Label{std::move(name), at, word + " " + value, ink, Align::middle, Align::middle, ground,
                                    room, std::move(value), room_up});
  }

  /// Right of the riser, and in the middle of the table.
  void words(double depth) {
    const double x = (p_.riser_x + p_.length) / 2.0;
    const double room = p_.length - p_.riser_x - p_.riser_bore;
    label("reservoir depth", {x, depth / 2.0}, "water", length(now_.reservoir_depth), Ink::water_text, Ink::water, room,
          depth);
    label("air pressure", {x, (depth + p_.height) / 2.0}, "air", pressure(now_.ullage_pressure), Ink::air_text,
          Ink::air, room, p_.height - depth);
    if (now_.table_depth > Length{})
      label("table depth", {(p_.table_left + p_.table_right) / 2.0, p_.table_floor + in_metres(now_.table_depth) / 2.0},
            "water", length(now_.table_depth), Ink::water_text, Ink::water, p_.table_right - p_.table_left,
            in_metres(now_.table_depth));
  }

  /// What holds the walls beside baffles, at the last that is seen of it.
  void name_stays() {
    const std::string text = posts_and_bars(plan_);
    const std::vector<StayInSight> stays = stays_in_sight(plan_);
    std::optional<Spot> at;
    for (const StayKind kind : {StayKind::bar, StayKind::post})  // a post, where there is one
      for (const StayInSight& stay : stays)
        if (stay.kind == kind) at = Spot{stay.right, stay.bottom + 0.9 * (stay.top - stay.bottom)};
    if (at && !text.empty()) in_margin("stays", *at, text);
  }

  void left_dimensions(double depth) {
    dimension("heel", 0.0, p_.riser_end, 0.0, Side::left, 0, "heel " + write_volume(plan_.levels.heel, units_));
    dimension("clearance", floor_height(), p_.riser_end, 0.0, Side::left, 1,
              "clearance " + length(plan_.riser.riser.clearance));
    dimension("ullage", depth, p_.height, 0.0, Side::left, 0,
              "ullage " + length(plan_.job.reservoir.height - now_.reservoir_depth));
    dimension("inside height", 0.0, p_.height, 0.0, Side::left, 2, "inside " + length(plan_.job.reservoir.height));
  }

  void right_dimensions(double depth) {
    const double table_top = p_.table_floor + in_metres(now_.table_depth);
    dimension("lift", depth, table_top, p_.length, Side::right, 0, "lift " + length(metres(table_top - depth)));
    dimension("rim", p_.table_floor, p_.table_rim, p_.table_right, Side::right, 1,
              "rim " + length(plan_.transfer.system.table.rim));
    dimension("table floor", 0.0, p_.table_floor, p_.length, Side::right, 2,
              "table floor " + length(plan_.transfer.system.table.floor_height));
  }

  const Plan& plan_;
  const Instant& now_;
  UnitSystem units_;
  const std::vector<Shape>* devices_;
  Geometry p_;
  std::vector<Spot> way_;  // of the line to the table
  Drawing drawing_;
};

}  // namespace

Drawing section_drawing(const Plan& plan, const Instant& now, UnitSystem units, const std::vector<Shape>* devices) {
  return Section(plan, now, units, devices).whole();
}

std::vector<Shape> section_devices(const Plan& plan) {
  const Geometry p = geometry_of(plan);
  const double half = p.riser_bore / 2.0 + 4.0 * p.riser_wall;  // with the clamps of a hose
  return devices_on(plan, {std::min(p.riser_x, p.inlet_x) - half, std::max(p.riser_x, p.inlet_x) + half});
}

Drawing section_sheet_drawing(const Plan& plan, UnitSystem units) {
  Instant at_rest;
  at_rest.reservoir_depth = plan.levels.charge_depth;
  return Section(plan, at_rest, units).sheet();
}

Drawing riser_end_drawing(const Plan& plan, const Instant& now, UnitSystem units) {
  return Section(plan, now, units).riser_end();
}

}  // namespace riserun::report
