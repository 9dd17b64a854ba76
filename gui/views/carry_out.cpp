// What was asked for while a frame was drawn, carried out after it.
#include "gui/model/session/first_measures.h"
#include "gui/views/canvas/canvas_picture.h"
#include "gui/views/desk.h"
#include "gui/views/export.h"

#include <chrono>

namespace riserun::views {

namespace {

/// Whether a command is for another job, and work that is not saved must not go with this one.
template <class Command>
bool keeps_work(const Command& command) {
  if constexpr (requires { command.discard; })
    return !command.discard;
  else
    return false;
}

struct CarryOut {
  Frame& frame;

  void post(const gui::Command& command) const {
    // Of another job the parts that are chosen in this one mean nothing.
    CanvasState& canvas = frame.desk.connections.canvas;
    if (std::holds_alternative<gui::Open>(command)) canvas.selected.clear();
    if (const auto* fresh = std::get_if<gui::StartNew>(&command)) {
      canvas.selected.clear();
      canvas.fit_wanted = true;
      const bool blank = fresh->text == gui::blank_job();
      frame.desk.sheet = blank ? Sheet::measurements : Sheet::connections;
      if (blank)
        frame.desk.measurements.cursor = {gui::five_things().front().measures.front().at,
                                          frame.model.job().first_revision};
    }
    frame.model.post(command);
  }

  void operator()(const gui::Command& command) const {
    if (frame.model.job().file.unsaved && std::visit([](const auto& one) { return keeps_work(one); }, command)) {
      frame.desk.question.put(Ask::unsaved);
      frame.desk.question.onward = command;
      return;
    }
    post(command);
  }
  void operator()(const GoOn& asked) const { post(asked.to); }
  void operator()(Do what) const { row_of(what).carry_out(frame); }
  void operator()(const Seek& seek) const { frame.desk.playback = {seek.to, false}; }
  void operator()(const WorkOutAlternatives& asked) const { frame.model.work_out_alternatives(asked.connection); }
  void operator()(const ExportTo& asked) const {
    const Shown& shown = frame.desk.shown;
    if (shown.plan != nullptr && !shown.layout.nodes.empty())
      frame.desk.notices.push_back(export_plan(*shown.plan, shown.units, canvas_picture(shown), asked.folder));
  }
  void operator()(const BackToStart&) const {
    frame.desk.start.shown = true;
    frame.desk.start.over = 0;
  }
  void operator()(const BackToJob&) const { frame.desk.start.shown = false; }
  void operator()(const ShowPart& asked) const {
    frame.desk.sheet = Sheet::connections;
    frame.desk.connections.canvas.selected = {asked.key};
  }
  void operator()(const ShowField& asked) const {
    frame.desk.sheet = Sheet::measurements;
    MeasurementsState& measurements = frame.desk.measurements;
    // The five things stand over what is sought, and are never sought out.
    measurements.sought = gui::is_first_measure(asked.at) ? std::string() : asked.label;
    measurements.heights.clear();
    measurements.cursor = {asked.at, 0};
  }
  void operator()(const Leave& asked) const {
    if (asked.only_if_saved) frame.model.settle();
    frame.desk.leaving = !asked.only_if_saved || !frame.model.job().file.unsaved;
  }
};

}  // namespace

void carry_out(Frame& frame, const Request& request) { std::visit(CarryOut{frame}, request); }

void take_dropped(Frame& frame, const std::vector<std::string>& files) {
  for (const std::string& file : files) carry_out(frame, gui::Open{file});
}

bool take_printed(Desk& desk) {
  if (!desk.printing.valid() || desk.printing.wait_for(std::chrono::seconds(0)) != std::future_status::ready)
    return false;
  desk.notices.push_back(desk.printing.get());
  return true;
}

}  // namespace riserun::views
