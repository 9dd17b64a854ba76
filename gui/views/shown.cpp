// What is worked out of a plan once, not in every frame.
#include "gui/model/canvas/draft.h"
#include "gui/model/canvas/lay_out.h"
#include "gui/views/canvas/node_words.h"
#include "gui/views/desk.h"
#include "report/drawing/section_drawing.h"

#include <algorithm>
#include <set>
#include <string>
#include <utility>

namespace riserun::views {

namespace {

using report::Quantity;

/// A chosen part that is not in the new plan gives its place to the nearest one of the same run, so that what is shown
/// of the run stays: its other choices above all.
void keep_chosen(std::set<std::string>& selected, const gui::Sketch& before, const plan::Plan* plan_before,
                 const gui::Sketch& now, const plan::Plan& plan_now) {
  if (plan_before == nullptr) return;
  const auto has = [](const gui::Sketch& sketch, const std::string& key) {
    return std::find_if(sketch.nodes.begin(), sketch.nodes.end(),
                        [&](const gui::Node& node) { return node.key == key; });
  };
  std::set<std::string> kept;
  for (const std::string& key : selected) {
    const auto old = has(before, key);
    if (old == before.nodes.end() || has(now, key) != now.nodes.end()) {
      kept.insert(key);
      continue;
    }
    const std::string connection = gui::name_of_connection(*plan_before, old->connection);
    const gui::Node* nearest = nullptr;
    for (const gui::Node& node : now.nodes)
      if (!connection.empty() && gui::name_of_connection(plan_now, node.connection) == connection &&
          (nearest == nullptr || node.place <= old->place))
        nearest = &node;
    if (nearest != nullptr) kept.insert(nearest->key);
  }
  selected = std::move(kept);
}

/// As large as the canvas allows; a thing that is moved by hand moves nothing else.
void lay_out_again(Frame& frame) {
  Shown& shown = frame.desk.shown;
  CanvasState& canvas = frame.desk.connections.canvas;
  std::map<std::string, gui::Point> moved = frame.model.view().moved;
  for (const auto& [thing, by] : canvas.moving) moved[thing] = by;
  const bool same_room = canvas.room == shown.laid_out_in;
  if (!shown.layout.nodes.empty() && moved == shown.laid_out_for && same_room) return;
  std::optional<double> scale;
  if (!shown.layout.nodes.empty() && same_room) scale = shown.layout.scale;
  if (!same_room && !shown.layout.nodes.empty()) canvas.fit_wanted = true;
  constexpr float kMargins = 48.0F;  // points, that fitting keeps free
  const gui::Size room = canvas.room.width > 0.0F ? canvas.room : gui::Size{1256.0F, 600.0F};
  shown.layout = gui::lay_out({*shown.plan,
                               shown.sketch,
                               shown.pictures,
                               shown.texts.sizes,
                               {room.width - kMargins, room.height - kMargins},
                               moved,
                               scale,
                               shown.layout.brief});
  shown.laid_out_for = std::move(moved);
  shown.laid_out_in = canvas.room;
}

/// Another job, once its own plan is there: fitted to the canvas, unless its side file says where the person left off.
void fit_what_was_opened(Frame& frame) {
  const gui::JobState& job = frame.model.job();
  if (frame.model.plan().revision != job.revision || frame.desk.shown_file == job.file.path) return;
  frame.desk.shown_file = job.file.path;
  const gui::ViewState& view = frame.model.view();
  const gui::ViewState untouched;
  if (view.pan == untouched.pan && view.zoom == untouched.zoom) frame.desk.connections.canvas.fit_wanted = true;
}

}  // namespace

void bring_up(Frame& frame) {
  Shown& shown = frame.desk.shown;
  const std::shared_ptr<const plan::Plan>& plan = frame.model.plan().plan;
  if (plan == nullptr) {
    shown = {};
    return;
  }
  const UnitSystem units = frame.model.units();
  const bool another = shown.plan != plan;
  if (another) {
    gui::Sketch sketch = gui::sketch_of(*plan);
    keep_chosen(frame.desk.connections.canvas.selected, shown.sketch, shown.plan.get(), sketch, *plan);
    const bool same_job = frame.desk.shown_file == frame.model.job().file.path;
    shown.before = same_job ? shown.plan : nullptr;
    shown.plan = plan;
    shown.sketch = std::move(sketch);
    shown.pictures = gui::run_pictures(*plan);
    shown.devices = report::section_devices(*plan);
    shown.timeline = report::timeline_of(*plan);
    frame.desk.playback.now = std::min(frame.desk.playback.now, shown.timeline.whole());
    shown.layout = {};
  }
  if (another || shown.units != units) {
    shown.units = units;
    shown.headline = headline(*plan, units);
    shown.changes = shown.before == nullptr ? std::vector<Change>() : changes_between(*shown.before, *plan, units);
    shown.figures = figures_of(*plan, units);
    shown.plots.clear();
    for (const Quantity quantity : {Quantity::flow, Quantity::levels, Quantity::air_pressure})
      shown.plots.push_back(report::plot_of(*plan, shown.timeline, quantity, units));
    shown.texts = {};
  }
  if (shown.texts.parts.empty() || shown.layout.nodes.empty()) {
    shown.texts = canvas_texts(*plan, shown.sketch, frame.fonts, frame.scale, units);
    shown.layout = {};
  }
  lay_out_again(frame);
  fit_what_was_opened(frame);
}

}  // namespace riserun::views
