// What is worked out of a plan once, not in every frame.
#include "gui/model/canvas/draft.h"
#include "gui/views/canvas/canvas_paint.h"
#include "gui/views/desk.h"
#include "report/drawing/part_drawing.h"

#include <algorithm>
#include <set>
#include <string>
#include <utility>

namespace riserun::views {

namespace {

using report::Quantity;

/// A drawing of the part that a node stands for.
Drawing drawing_of(const plan::Plan& plan, const gui::Node& node) {
  if (!node.part) return {};
  const catalog::Part& part = plan.catalog->part(*node.part);
  const std::size_t enter = node.pins.empty() ? 0 : node.pins[0].part_port;
  const std::size_t leave = node.pins.size() > 1 ? node.pins[1].part_port : enter;
  return report::part_drawing(*plan.catalog, part, enter, leave);
}

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

void lay_out_again(Frame& frame) {
  Shown& shown = frame.desk.shown;
  std::map<std::string, gui::Point> moved = frame.model.view().moved;
  for (const auto& [key, place] : frame.desk.connections.canvas.moving) moved[key] = place;
  if (!shown.layout.nodes.empty() && moved == shown.laid_out_for) return;
  shown.layout = gui::lay_out(shown.sketch, shown.sizes, moved);
  shown.laid_out_for = std::move(moved);
}

/// Another job, once its own plan is there: fitted to the canvas, unless its side file says where the person left off.
void fit_what_was_opened(Frame& frame) {
  const gui::JobState& job = frame.model.job();
  if (frame.model.plan().revision != job.revision || frame.desk.shown_file == job.file.path) return;
  frame.desk.shown_file = job.file.path;
  const gui::ViewState& view = frame.model.view();
  const gui::ViewState untouched;
  if (view.pan == untouched.pan && view.zoom == untouched.zoom)
    frame.desk.connections.canvas.fit_wanted = frame.desk.connections.canvas.opening_view = true;
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
    shown.plan = plan;
    shown.sketch = std::move(sketch);
    shown.drawings.clear();
    for (const gui::Node& node : shown.sketch.nodes) shown.drawings.push_back(drawing_of(*plan, node));
    shown.timeline = report::timeline_of(*plan);
    frame.desk.playback.now = std::min(frame.desk.playback.now, shown.timeline.whole());
    shown.layout = {};
  }
  if (another || shown.units != units) {
    shown.units = units;
    shown.headline = headline(*plan, units);
    shown.figures = figures_of(*plan, units);
    shown.plots.clear();
    for (const Quantity quantity : {Quantity::flow, Quantity::levels, Quantity::air_pressure})
      shown.plots.push_back(report::plot_of(*plan, shown.timeline, quantity, units));
    shown.sizes.clear();
  }
  if (shown.sizes.empty() || shown.layout.nodes.empty()) {
    shown.sizes = node_sizes(*plan, shown.sketch, frame.fonts, frame.scale);
    shown.layout = {};
  }
  lay_out_again(frame);
  fit_what_was_opened(frame);
}

}  // namespace riserun::views
