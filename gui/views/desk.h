// The window's content: the sheets, what each remembers, and what is asked of them carried out after the frame.
#pragma once

#include "gui/views/finder.h"
#include "gui/views/help.h"
#include "gui/views/questions.h"
#include "gui/views/reasons.h"
#include "gui/views/sheets/connections_sheet.h"
#include "gui/views/sheets/job_file_sheet.h"
#include "gui/views/sheets/list_sheet.h"
#include "gui/views/sheets/measurements_sheet.h"
#include "gui/views/start_page.h"

#include <filesystem>
#include <future>
#include <optional>
#include <string>
#include <vector>

namespace riserun::views {

enum class Sheet { connections, water, measurements, list, numbers, file };

/// What the window remembers between frames and is no part of the job.
struct Desk {
  Sheet sheet = Sheet::connections;
  Shown shown;
  Playback playback;
  float text_size = 1.0F;  // times the screen's scale

  ConnectionsState connections;
  MeasurementsState measurements;
  ListState list;
  JobFileState file;
  QuestionState question;
  ReasonsState reasons;
  FinderState finder;
  HelpState help;
  StartState start;
  Places places;

  std::optional<std::filesystem::path> shown_file;  // of the job that the canvas was last fitted to
  std::uint64_t problems_of = 0;                    // revision whose mistakes have been shown
  std::optional<Menu> menu_opens;                   // by a key
  bool had_in_front = false;                        // in the frame before: what closes by Esc is closed by now
  bool only_alt = false;                            // Alt is held, and nothing else was pressed since
  std::vector<gui::Notice> notices;
  std::future<gui::Notice> printing;  // valid: the list is on its way to the printer
  bool leaving = false;               // the program ends after this frame
};

/// A frame of the window, and all that may be changed before and after it is drawn.
struct Frame {
  gui::Model& model;
  Desk& desk;
  const Theme& theme;
  const Fonts& fonts;
  float scale;  // pixels a point

  /// The same for those who only draw.
  Scene scene() const { return {model, desk.shown, desk.playback, theme, fonts, scale, desk.places}; }
};

/// Draws everything, then does what the hand has asked for; once a frame, between ImGui's NewFrame and Render.
void draw_desk(Frame& frame);

/// Opens files that were dropped onto the window; of several the last stays open.
void take_dropped(Frame& frame, const std::vector<std::string>& files);
/// Tells how printing has ended; true: it has.
bool take_printed(Desk& desk);

/// Does what was asked for. Not while something is being drawn.
void carry_out(Frame& frame, const Request& request);

/// Brings desk.shown up to the plan that the model shows.
void bring_up(Frame& frame);

// Pieces of the desk.
Requests draw_menus(const Scene& scene, Desk& desk);
Requests draw_strip(const Scene& scene, ReasonsState& reasons);

}  // namespace riserun::views
