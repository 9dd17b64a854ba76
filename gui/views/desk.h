// What the window remembers between frames and is no part of the job, and what a view is given to draw with.
#pragma once

#include "gui/model/canvas/layout.h"
#include "gui/model/canvas/sketch.h"
#include "gui/model/edit/fields.h"
#include "gui/model/session/model.h"
#include "gui/views/command.h"
#include "gui/views/drawing/drawing.h"
#include "gui/views/drawing/plot_series.h"
#include "gui/views/fonts.h"
#include "gui/views/sheets/figures.h"
#include "gui/views/theme.h"

#include <filesystem>
#include <future>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace riserun::views {

enum class Sheet { connections, water, measurements, list, numbers, file };

/// What is worked out of a plan once, not in every frame.
struct Shown {
  const plan::Plan* of = nullptr;
  UnitSystem units = UnitSystem::inch;
  gui::Sketch sketch;
  std::vector<Drawing> drawings;  // of each node of the sketch; empty: none
  std::vector<gui::Size> sizes;   // of each node
  gui::Layout layout;
  std::map<std::string, gui::Point> laid_out_for;  // moved nodes that the layout holds
  Timeline timeline;
  std::vector<Plot> plots;
  std::vector<Figure> headline;
  std::vector<FigureGroup> figures;
};

struct FieldText {
  std::string text;
  bool held = false;  // being typed into
};

/// A question that stands in front of all else.
enum class Ask { nothing, open, save_as, export_to, leave, connect, add_port, count_in_bin, other_choices };

struct Desk {
  Sheet sheet = Sheet::connections;
  std::set<std::string> selected;  // keys of nodes
  Shown shown;
  Playback playback;
  float text_size = 1.0F;  // times the screen's scale

  std::shared_ptr<const plan::Plan> held;           // keeps shown.of alive
  std::optional<std::filesystem::path> shown_file;  // of the job that the canvas was last fitted to

  // Canvas
  gui::Point canvas_middle;  // px, from its corner
  bool fit_wanted = true;
  bool opening_view = true;            // a job that was just opened: its water connection, else all of it
  std::optional<gui::Point> box_from;  // box select, on the canvas
  bool panning = false;
  std::optional<std::string> pulled_from;    // name of the port from which a new connection is being pulled
  std::map<std::string, gui::Point> moving;  // nodes under the hand, not yet handed to the model

  // Entries
  std::map<gui::JobPath, FieldText> fields;
  std::string wish;    // of the chosen connection
  std::string sought;  // words of the measurements that are shown; empty: all
  std::vector<gui::FieldGroup> field_groups;
  std::map<gui::JobPath, float> group_heights;  // px, as last drawn
  gui::JobPath focused_group;                   // whose field was typed into last
  std::uint64_t field_groups_of = 0;            // revision
  std::string job_text;
  std::uint64_t job_text_of = 0;  // revision
  int show_line = 0;              // of the job file; 0: none
  bool scroll_to_line = false;
  std::uint64_t problems_of = 0;  // revision whose mistakes have been shown
  std::set<std::string> ticked;   // rows of the list

  // Questions
  Ask ask = Ask::nothing;
  bool ask_opens = false;
  std::string answer;  // what is typed into it
  std::string answer_2;
  int answer_choice = 0;
  std::string about_part;        // catalog id
  std::string about_connection;  // name
  std::size_t about_place = 0;

  // Where things stood in the last frame, for tests that move a real pointer; kept only when asked for.
  bool notes_places = false;
  std::map<std::string, PixelBox> places;

  std::vector<gui::Notice> notices;
  std::future<gui::Notice> printing;  // valid: the list is on its way to the printer
  bool leaving = false;               // the program ends after this frame
};

/// What every view gets.
struct Frame {
  gui::Model& model;
  Desk& desk;
  const Theme& theme;
  const Fonts& fonts;
  float scale;  // pixels a point

  float px(float points) const { return points * scale; }
};

/// Draws everything and acts on what the hand does; once a frame, between ImGui's NewFrame and Render.
void draw_desk(Frame& frame);

/// Opens files that were dropped onto the window; of several the last stays open.
void take_dropped(Frame& frame, const std::vector<std::string>& files);
/// Tells how printing has ended; true: it has.
bool take_printed(Desk& desk);

/// Does what a menu or a key asks for.
void carry_out(Frame& frame, Do what);

/// Takes that row of the alternatives of the chosen part's connection, counted from 0 as they stand there.
void take_alternative(Frame& frame, std::size_t row);

/// Notes where a thing stands, or ImGui's last item.
void note_place(Frame& frame, const std::string& name, const PixelBox& box);
void note_item(Frame& frame, const std::string& name);

// The sheets, each in a file of its own; they fill the window that ImGui is in.
void draw_connections(Frame& frame);
void draw_water(Frame& frame);
void draw_measurements(Frame& frame);
void draw_list(Frame& frame);
void draw_numbers(Frame& frame);
void draw_job_file(Frame& frame);

// Pieces of sheets.
void draw_section(Frame& frame, const PixelBox& box);
void draw_clock(Frame& frame);
void draw_canvas(Frame& frame, const PixelBox& box);
void draw_particulars(Frame& frame);
void draw_questions(Frame& frame);
void draw_menus(Frame& frame);

/// Brings desk.shown up to the plan that the model shows.
void bring_up(Frame& frame);
/// Size of each node's place on the canvas, pins' margins included.
std::vector<gui::Size> node_sizes(const plan::Plan& plan, const gui::Sketch& sketch, const Fonts& fonts, float scale);

/// Cautions, notes and refusals of one topic, each with its source.
void draw_remarks(Frame& frame, const plan::Plan& plan, plan::Topic topic, bool standing);
/// Words beside the pointer: where a number comes from, what a key does.
void hint(const Frame& frame, const std::string& text);
/// The plan is not of what stands in the job now: what is drawn next is grey until the end.
bool begin_stale(const Frame& frame);
void end_stale(bool begun);

}  // namespace riserun::views
