// The drawings of a plan, each with its title, its scale and the list that belongs to it, laid out for a page.
#pragma once

#include "plan/plan.h"
#include "report/drawing/drawing.h"
#include "report/paper/brush.h"
#include "report/paper/paint_shapes.h"

#include <string>
#include <vector>

namespace riserun::report {

/// A row under a picture: its number there, what it is, how long or how strong it is.
struct PictureRow {
  std::string number;
  std::string what;
  std::string beside;
};

struct Picture {
  std::string title;
  std::string note;  // its scale
  Drawing drawing;
  double scale = 1.0;  // points on the page to a metre, or to the drawing's own measure
  Margins margins;
  std::vector<PictureRow> rows;

  /// Of the whole on the page, title and rows included; points.
  double height() const;
};

/// In points, 1/72 in.
struct Paper {
  double width = 0.0;
  double height = 0.0;
};
/// Of a page, what a picture may take.
using Room = Paper;

/// US letter in inch units, A4 (ISO 216) in metric.
Paper paper_of(UnitSystem units);

/// Section, riser's end and lid, each run that goes together, panels and pressures, and the plots of fill and drain: in
/// this order. Each fits the room.
std::vector<Picture> pictures_of(const plan::Plan& plan, UnitSystem units, const Room& room, const Letters& letters);

/// Tank and table in section.
Picture section_picture(const plan::Plan& plan, UnitSystem units, const Room& room, const Letters& letters);
/// Flow, levels and air pressure over the time of fill and drain; none where nothing runs.
std::vector<Picture> plot_pictures(const plan::Plan& plan, UnitSystem units, const Room& room);

/// @param corner  the picture's upper left; it is as wide as `width`, and its drawing stands in the middle of that
void paint_picture(const Picture& picture, PagePoint corner, double width, Brush& brush);

}  // namespace riserun::report
