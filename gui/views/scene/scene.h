// What a view is drawn from. Nothing of it is changed by drawing: a sheet changes its own state and returns requests.
#pragma once

#include "gui/model/canvas/layout.h"
#include "gui/model/canvas/sketch.h"
#include "gui/model/session/model.h"
#include "gui/views/drawing/fonts.h"
#include "gui/views/drawing/paint_drawing.h"
#include "gui/views/drawing/playback.h"
#include "gui/views/drawing/theme.h"
#include "gui/views/scene/figures.h"
#include "gui/views/scene/request.h"
#include "report/drawing/plot_series.h"

#include <map>
#include <memory>
#include <string>
#include <vector>

struct ImFont;

namespace riserun::views {

using report::Plot;

/// What is written beside a part on the canvas: its name with the length that is cut, material and price, and what is
/// to be seen to.
struct PartWords {
  std::string name;
  std::string source;
  std::string mark;    // empty: nothing
  bool apart = false;  // the mark is of metals that must be kept apart
};

struct CanvasTexts {
  std::vector<PartWords> parts;     // of each node
  std::vector<std::string> runs;    // of each connection: its name, how many parts, what they cost
  std::vector<std::string> folded;  // ... in two lines
  std::vector<std::string> brief;   // ... without from where to where it leads, in one
  gui::WordSizes sizes;
};

/// What is worked out of a plan once, not in every frame.
struct Shown {
  std::shared_ptr<const plan::Plan> plan;    // nullptr: none yet, and all else is empty
  std::shared_ptr<const plan::Plan> before;  // the change that was made last; nullptr: none yet
  std::vector<Change> changes;               // what it has changed
  UnitSystem units = UnitSystem::inch;
  gui::Sketch sketch;
  std::vector<report::RunPicture> pictures;  // of each connection
  std::vector<report::Shape> devices;        // on the reservoir, in its section
  CanvasTexts texts;
  gui::Layout layout;
  std::map<std::string, gui::Point> laid_out_for;  // what was moved by hand
  gui::Size laid_out_in;                           // the canvas
  Timeline timeline;
  std::vector<Plot> plots;
  std::vector<Figure> headline;
  std::vector<FigureGroup> figures;
};

/// Where things stood in the last frame, for tests that move a real pointer; kept only when asked for.
struct Places {
  bool wanted = false;
  std::map<std::string, PixelBox> boxes;
  int texts = 0;  // among them
};

struct Scene {
  const gui::Model& model;
  const Shown& shown;
  const Playback& playback;
  const Theme& theme;
  const Fonts& fonts;
  float scale;  // pixels a point
  Places& places;

  float px(float points) const { return points * scale; }
};

/// Notes where a thing stands, or ImGui's last item.
void note_place(const Scene& scene, const std::string& name, const PixelBox& box);
void note_item(const Scene& scene, const std::string& name);

/// Notes words that were drawn, and the room that they had.
void note_text(const Scene& scene, const std::string& text, const PixelBox& box, const PixelBox& room);

/// The text, or as much of its beginning as fits into the room, with dots; empty: not even a letter does. Pixels.
std::string fitting(const ImFont& font, const std::string& text, float wide, float high, bool wraps);

/// The text in lines no wider than that [pixels], broken at its blanks alone: the library would break a price after its
/// point. A word that is wider has its own line.
std::string at_blanks(const ImFont& font, const std::string& text, float wide);

/// Words that end their line at the pane's edge and go on below.
void wrapped(const std::string& text);
void wrapped(const Scene& scene, Ink ink, const std::string& text);
/// The same in strong letters.
void strong(const Scene& scene, const std::string& text);
/// Words beside the pointer: where a number comes from, what a key does.
void hint(const Scene& scene, const std::string& text);
/// A button that Return presses, too, when the keyboard is on it; whether it was pressed.
bool button(const std::string& name, bool low = false);
/// A button of a row of which one is chosen; whether it was pressed.
bool one_of(const Scene& scene, const char* name, bool chosen, Ink text = Ink::text);
/// The plan is not of what stands in the job now: what is drawn next is grey until the end.
bool begin_stale(const Scene& scene);
void end_stale(bool begun);

/// What the plan's curves say at the time that the clock shows.
transfer::Instant instant_shown(const Scene& scene);

/// The room that is left in ImGui's window.
PixelBox room_left();
/// A pane of its own that can be rolled; 0: all the room that is left.
void begin_pane(const Scene& scene, const char* name, float width = 0.0F, float height = 0.0F);
void end_pane(const Scene& scene, const char* name);

}  // namespace riserun::views
