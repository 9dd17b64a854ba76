#include "report/paper/pictures.h"

#include "report/drawing/lid_drawing.h"
#include "report/drawing/plot_drawing.h"
#include "report/drawing/run_drawing.h"
#include "report/drawing/section_drawing.h"
#include "report/drawing/walls_drawing.h"
#include "report/text/run_text.h"
#include "report/words/lid_rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace riserun::report {

namespace {

using plan::Plan;

constexpr double kPointsAMetre = 72.0 / 0.0254;
constexpr Lettering kTitle{10.5, true};
constexpr Lettering kNote{7.5, false};
constexpr Lettering kRow{8.0, false};
constexpr double kTitleHigh = 20.0;
constexpr double kRowHigh = 11.0;
constexpr double kAfter = 10.0;      // under a picture
constexpr double kPlotHigh = 110.0;  // three of them, which share their time, and the walls stand on one page

/// Scales of the trade: of ISO 5455 in metric, quarters and twelfths (inches to the foot) in inch units.
int denominator_for(double most, UnitSystem units) {
  static constexpr int kMetric[] = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};
  static constexpr int kInch[] = {1, 2, 4, 8, 12, 16, 24, 32, 48, 96, 192, 384, 960};
  for (const int scale : units == UnitSystem::inch ? std::vector<int>(std::begin(kInch), std::end(kInch))
                                                   : std::vector<int>(std::begin(kMetric), std::end(kMetric)))
    if (kPointsAMetre / scale <= most) return scale;
  return 1000;
}

/// As large as a scale of the trade lets it be in the room that its margins leave.
void fit_scale(Picture& picture, UnitSystem units, const Room& room, const Letters& letters) {
  picture.margins = margins_of(picture.drawing, letters);
  const Margins& m = picture.margins;
  const double rows = kRowHigh * static_cast<double>(picture.rows.size());
  const double wide = (room.width - m.left - m.right) / std::max(picture.drawing.width(), 1e-6);
  const double high =
      (room.height - m.over - m.under - kTitleHigh - kAfter - rows) / std::max(picture.drawing.height(), 1e-6);
  const int scale = denominator_for(std::min(wide, high), units);
  picture.scale = kPointsAMetre / scale;
  picture.note = fmt::format("scale 1:{}", scale);
}

std::string length_of(const catalog::Part& part, const RunItem& item, UnitSystem units) {
  if (item.cut_length) return "cut to " + write_long_length(*item.cut_length, units);
  if (part.ports.size() != 2 || part.cut_to_length) return "";
  const bool bent = std::abs(std::abs(part.ports[0].heading_degrees - part.ports[1].heading_degrees) - 180.0) > 1.0;
  if (bent) return "";
  return write_long_length(part.ports[0].reach + part.ports[1].reach, units);
}

std::vector<PictureRow> rows_of(const Plan& plan, const plan::ConnectionPlan& connection, const RunPicture& run,
                                UnitSystem units) {
  std::vector<PictureRow> rows;
  for (std::size_t i = 0; i < run.items.size(); ++i) {
    const RunItem& item = run.items[i];
    const catalog::Part& part = plan.catalog->part(item.part);
    std::string beside = length_of(part, item, units);
    if (beside.empty() && part.flexible && connection.hose_length)
      beside = write_long_length(*connection.hose_length, units);
    if (item.broken && !beside.empty()) beside += ", broken";
    rows.push_back({fmt::format("{}", i + 1), part_label(*plan.catalog, part), std::move(beside)});
  }
  return rows;
}

Picture run_of(const Plan& plan, const plan::ConnectionPlan& connection, UnitSystem units, const Room& room,
               const Letters& letters) {
  RunPicture run = run_picture(*plan.catalog, *connection.run());
  Picture picture;
  picture.title = fmt::format("{}: {} to {}", connection.name, connection.from, connection.to);
  picture.rows = rows_of(plan, connection, run, units);
  const bool to_port = connection.ends.size() == 1 && !connection.ends_in && run.faces.size() == 1;
  if (to_port && run.faces[0].at.x > 0.0)
    run.drawing.shapes.push_back(Breadth{"length", 0.0, run.faces[0].at.x, run.drawing.low.y, false, 0,
                                         write_long_length(connection.run_length, units) + " from port to port"});
  picture.drawing = run.drawing;
  // Numbers stand round the run by the page's measure: the scale is found without them first, with room kept.
  constexpr double kNumbers = 26.0;  // points above and below
  const double high = connection.ends.size() > 1 ? 380.0 : 210.0;
  const double rows = kRowHigh * static_cast<double>(picture.rows.size());
  fit_scale(picture, units, {room.width - 2.0 * kNumbers, std::min(high + rows, room.height) - 2.0 * kNumbers},
            letters);
  number_items(run, 1.0 / picture.scale);
  picture.drawing = std::move(run.drawing);
  return picture;
}

Picture plot_of_page(const Plot& plot, const Timeline& timeline, const Room& room) {
  Picture picture;
  picture.title = fmt::format("{}, {}", plot.title, plot.unit);
  picture.margins = {40.0, 24.0, 14.0, 16.0};
  picture.drawing = plot_drawing(plot, timeline, room.width - 64.0, kPlotHigh);
  return picture;
}

Picture pressures_of(const Plan& plan, UnitSystem units, const Room& room) {
  Picture picture;
  picture.title = "Pressures against the walls' limit";
  picture.margins = {52.0, 60.0, 14.0, 4.0};
  picture.drawing = pressure_drawing(plan, units, room.width - 112.0, 18.0);
  return picture;
}

Picture panels_of(const Plan& plan, UnitSystem units, const Room& room, const Letters& letters) {
  Picture picture;
  picture.title = "Bare panels of the walls, the weakest with a red edge";
  picture.drawing = panels_drawing(plan);
  for (std::size_t row = 0; row < plan.walls.at_set.panels.size(); ++row) {
    const reservoir::PanelResult& result = plan.walls.at_set.panels[row];
    picture.rows.push_back({fmt::format("{}", row + 1),
                            fmt::format("{}, {} x {}", result.panel.name, write_length(result.panel.length, units),
                                        write_length(result.panel.width, units)),
                            "holds " + write_pressure_alone(result.limit, units)});
  }
  fit_scale(picture, units, room, letters);
  return picture;
}

Picture lid_of(const Plan& plan, UnitSystem units, const Room& room, const Letters& letters) {
  Picture picture;
  picture.title = "The lid from above: bungs, and the room that a wrench needs round them";
  picture.drawing = lid_drawing(plan, units);
  for (const LidRow& row : lid_rows(plan, units)) {
    std::string what = row.port;
    for (const std::string& more : {place_words(row), row.remark})
      if (!more.empty()) what += ", " + more;
    picture.rows.push_back({row.number, std::move(what), row.hole.empty() ? "" : "hole " + row.hole});
  }
  fit_scale(picture, units, room, letters);
  return picture;
}

Picture drawn(std::string title, Drawing drawing, UnitSystem units, const Room& room, const Letters& letters) {
  Picture picture;
  picture.title = std::move(title);
  picture.drawing = std::move(drawing);
  fit_scale(picture, units, room, letters);
  return picture;
}

/// The words, or as many of their first letters as have room, and dots.
std::string cut_short(const std::string& text, double room, const Lettering& lettering, const Letters& letters) {
  if (letters.width_of(text, lettering) <= room) return text;
  std::string cut = text;
  while (!cut.empty() && letters.width_of(cut + "...", lettering) > room) {
    do cut.pop_back();
    while (!cut.empty() && (static_cast<unsigned char>(cut.back()) & 0xC0U) == 0x80U);
    if (!cut.empty() && static_cast<unsigned char>(cut.back()) >= 0xC0U) cut.pop_back();  // the head of a letter
  }
  return cut + "...";
}

}  // namespace

Paper paper_of(UnitSystem units) {
  constexpr Paper kLetter{612.0, 792.0};
  constexpr Paper kA4{595.276, 841.89};
  return units == UnitSystem::inch ? kLetter : kA4;
}

double Picture::height() const {
  return kTitleHigh + margins.over + drawing.height() * scale + margins.under +
         kRowHigh * static_cast<double>(rows.size()) + kAfter;
}

Picture section_picture(const Plan& plan, UnitSystem units, const Room& room, const Letters& letters) {
  return drawn("Reservoir and table in section, the water down", section_sheet_drawing(plan, units), units,
               {room.width, std::min(room.height, 400.0)}, letters);
}

std::vector<Picture> plot_pictures(const Plan& plan, UnitSystem units, const Room& room) {
  std::vector<Picture> pictures;
  const Timeline timeline = timeline_of(plan);
  if (timeline.whole() <= Time{}) return pictures;
  for (const Quantity quantity : {Quantity::flow, Quantity::levels, Quantity::air_pressure})
    pictures.push_back(plot_of_page(plot_of(plan, timeline, quantity, units), timeline, room));
  return pictures;
}

std::vector<Picture> pictures_of(const Plan& plan, UnitSystem units, const Room& room, const Letters& letters) {
  std::vector<Picture> pictures;
  pictures.push_back(section_picture(plan, units, room, letters));
  transfer::Instant at_rest;
  at_rest.reservoir_depth = plan.levels.charge_depth;
  pictures.push_back(drawn("The riser's lower end", riser_end_drawing(plan, at_rest, units), units,
                           {room.width, std::min(room.height, 210.0)}, letters));
  if (has_lid_drawing(plan))
    pictures.push_back(lid_of(plan, units, {room.width, std::min(room.height, 420.0)}, letters));
  for (const plan::ConnectionPlan& connection : plan.connections)
    if (connection.run() != nullptr && !connection.run()->joints.empty())
      pictures.push_back(run_of(plan, connection, units, room, letters));
  if (!plan.walls.at_set.panels.empty()) {
    pictures.push_back(pressures_of(plan, units, room));
    pictures.push_back(panels_of(plan, units, {room.width, std::min(room.height, 260.0)}, letters));
  }
  for (Picture& plot : plot_pictures(plan, units, room)) pictures.push_back(std::move(plot));
  return pictures;
}

void paint_picture(const Picture& picture, PagePoint corner, double width, Brush& brush) {
  const double note = brush.letters().width_of(picture.note, kNote);
  brush.words({corner.x, corner.y + 11.0}, Anchor::start,
              cut_short(picture.title, width - note - 12.0, kTitle, brush.letters()), Ink::text, kTitle);
  brush.words({corner.x + width, corner.y + 11.0}, Anchor::end, picture.note, Ink::text, kNote);
  const Margins& m = picture.margins;
  const double wide = picture.drawing.width() * picture.scale;
  const double high = picture.drawing.height() * picture.scale;
  const double spare = std::max(0.0, width - m.left - wide - m.right);
  const double left = corner.x + m.left + spare / 2.0;
  const double top = corner.y + kTitleHigh + m.over;
  Placement placement;
  placement.scale = static_cast<float>(picture.scale);
  placement.left = static_cast<float>(left - picture.drawing.low.x * picture.scale);
  placement.bottom = static_cast<float>(top + high + picture.drawing.low.y * picture.scale);
  const PixelBox box{static_cast<float>(corner.x), static_cast<float>(top - m.over),
                     static_cast<float>(corner.x + width), static_cast<float>(top + high + m.under)};
  paint_shapes(picture.drawing, placement, box, brush);
  double base = top + high + m.under + kRowHigh - 2.0;
  for (const PictureRow& row : picture.rows) {
    const double beside = brush.letters().width_of(row.beside, kRow);
    brush.words({corner.x + 14.0, base}, Anchor::end, row.number, Ink::text, kRow);
    brush.words({corner.x + 22.0, base}, Anchor::start,
                cut_short(row.what, width - 34.0 - beside, kRow, brush.letters()), Ink::text, kRow);
    brush.words({corner.x + width, base}, Anchor::end, row.beside, Ink::text, kRow);
    base += kRowHigh;
  }
}

}  // namespace riserun::report
