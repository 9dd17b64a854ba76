#include "gui/views/canvas/canvas_picture.h"

#include "gui/model/canvas/leader.h"
#include "gui/model/canvas/lid_places.h"
#include "gui/views/canvas/node_words.h"
#include "gui/views/scene/figures.h"
#include "report/drawing/stays.h"
#include "report/words/riser_label.h"

#include <algorithm>
#include <cmath>

namespace riserun::views {

namespace {

using report::Align;
using report::Area;
using report::Label;
using report::Stroke;

constexpr double kScale = 7.5 / 11.0;  // points of paper: its letters a little smaller than the canvas has them
constexpr double kLine = 13.0;         // of the canvas, from line to line
constexpr double kBungShows = 9.0;     // of a bung's length, on both sides of the sheet

/// Canvas points, y upwards as drawings have it.
Spot spot(const gui::Point& at) { return {at.x, -at.y}; }

class CanvasPicture {
 public:
  explicit CanvasPicture(const Shown& shown) : shown_(shown) {}

  report::Picture make() {
    for (std::size_t vessel = 0; vessel < gui::kVessels; ++vessel)
      if (shown_.layout.nodes[vessel].size.width > 0.0F) add_vessel(vessel);
    for (std::size_t link = 0; link < shown_.layout.ways.size(); ++link) add_pipe(link);
    for (const gui::RunBlock& run : shown_.layout.runs) add_run(run);
    const gui::Box& all = shown_.layout.all;
    report::Picture picture;
    const std::string& job = shown_.plan->job.name;
    picture.title = job.empty() ? "Plumbing" : job + ": plumbing";
    picture.note = verdict_of(shown_.plan->verdict) + "; parts to one scale, tank and table " +
                   (in_proportion() ? "in proportion" : "not to scale");
    picture.drawing = std::move(drawing_);
    picture.drawing.low = {all.corner.x, -all.bottom() - kLine};
    picture.drawing.high = {all.right(), -all.corner.y};
    picture.scale = kScale;
    return picture;
  }

 private:
  /// A low room takes height from the vessels, many runs take breadth.
  bool in_proportion() const {
    const gui::Box& tank = shown_.layout.nodes[gui::kReservoir];
    const gui::Box& table = shown_.layout.nodes[gui::kTable];
    const double across = tank.size.width / in_metres(shown_.plan->job.reservoir.length);
    const auto as_wide = [&](double points, Length real) {
      return std::abs(points - across * in_metres(real)) <= 0.02 * points;
    };
    const reservoir::Table& real = shown_.plan->transfer.system.table;
    return as_wide(tank.size.height, shown_.plan->job.reservoir.height) && as_wide(table.size.height, real.rim) &&
           as_wide(tank.bottom() - table.bottom(), real.floor_height);
  }

  void lines(const std::string& name, const gui::Point& corner, const std::string& text, Ink ink) {
    double down = corner.y;
    for (std::size_t from = 0; from <= text.size(); down += kLine) {
      const std::size_t to = std::min(text.find('\n', from), text.size());
      drawing_.shapes.push_back(
          Label{name, {corner.x, -down}, text.substr(from, to - from), ink, Align::low, Align::high});
      from = to + 1;
    }
  }

  void add_vessel(std::size_t row) {
    const gui::Node& node = shown_.sketch.nodes[row];
    const gui::Box& box = shown_.layout.nodes[row];
    const double left = box.corner.x;
    const double right = box.right();
    const double top = -box.corner.y;
    const double bottom = -box.bottom();
    if (node.kind == gui::NodeKind::reservoir) {
      const double share = static_cast<double>(shown_.plan->levels.charge_depth / shown_.plan->job.reservoir.height);
      drawing_.shapes.push_back(
          Area{"water",
               report::box_outline(left, bottom, right, bottom + std::min(1.0, share) * (top - bottom)),
               Ink::water_pale,
               1.0F,
               {}});
    }
    if (node.kind == gui::NodeKind::reservoir) add_stays(left, bottom, right - left, top - bottom);
    std::vector<Spot> walls = {{left, top}, {left, bottom}, {right, bottom}, {right, top}};
    if (node.kind != gui::NodeKind::table) walls.push_back({left, top});
    drawing_.shapes.push_back(Stroke{"wall " + node.key, std::move(walls), Ink::sheet_metal, 2.0F});
    const bool low = node.kind == gui::NodeKind::reservoir;
    const std::string words = vessel_words(*shown_.plan, node, shown_.units);
    const auto more = static_cast<double>(std::count(words.begin(), words.end(), '\n'));
    lines("vessel " + node.key,
          {box.corner.x + 10.0F,
           low ? box.bottom() - 18.0F - static_cast<float>(more * kLine)
               : box.corner.y + 34.0F * static_cast<float>(node.kind == gui::NodeKind::air_supply) + 4.0F},
          words, Ink::text);
    if (low) add_riser(node, box);
    for (std::size_t pin = 0; pin < node.pins.size(); ++pin) add_port(node, pin, shown_.layout.pins[row][pin]);
  }

  /// As in the section, in the proportions of the tank as it is drawn.
  void add_stays(double left, double bottom, double wide, double high) {
    const double across = wide / std::max(in_metres(shown_.plan->job.reservoir.length), 1e-6);
    const double up = high / std::max(in_metres(shown_.plan->job.reservoir.height), 1e-6);
    for (report::Shape& shape : report::stay_shapes(*shown_.plan)) {
      if (auto* stroke = std::get_if<Stroke>(&shape))
        for (Spot& spot : stroke->points) spot = {left + spot.x * across, bottom + spot.y * up};
      drawing_.shapes.push_back(std::move(shape));
    }
  }

  void add_riser(const gui::Node& tank, const gui::Box& box) {
    const plan::RiserPlan& riser = shown_.plan->riser;
    const double share = static_cast<double>(riser.riser.end_height / shown_.plan->job.reservoir.height);
    for (std::size_t pin = 0; pin < tank.pins.size(); ++pin) {
      if (tank.pins[pin].port != riser.bung) continue;
      const double x = shown_.layout.pins[gui::kReservoir][pin].where.x;
      const double half = gui::half_of_riser(*shown_.plan, shown_.layout);
      drawing_.shapes.push_back(
          Area{"riser", report::box_outline(x - half, -box.bottom() + share * box.size.height, x + half, -box.corner.y),
               Ink::part_body, 1.0F, Ink::part_edge});
      lines("riser", {static_cast<float>(x + half) + 7.0F, box.middle().y},
            riser.size + " " + report::riser_label(*shown_.plan, shown_.units), Ink::text);
    }
  }

  void add_port(const gui::Node& node, std::size_t row, const gui::PlacedPin& pin) {
    const double x = pin.where.x;
    const double y = -pin.where.y;
    const bool side = std::abs(pin.direction.x) > 0.5F;
    const double half = gui::half_of_bung(*shown_.plan, shown_.layout, node.pins[row].port);
    const double wide = side ? kBungShows : half;
    const double high = side ? half : kBungShows;
    drawing_.shapes.push_back(Area{"port " + node.pins[row].port,
                                   report::box_outline(x - wide, y - high, x + wide, y + high), Ink::part_body, 1.0F,
                                   Ink::part_edge});
    const bool under = node.kind == gui::NodeKind::table;
    const auto over = shown_.layout.over_rim.find(row);
    const bool over_rim = under && over != shown_.layout.over_rim.end();
    if (over_rim) {
      Stroke pipe{"over the rim", {}, Ink::part_edge, 3.0F};
      for (const gui::Point& point : over->second) pipe.points.push_back(spot(point));
      drawing_.shapes.push_back(std::move(pipe));
    }
    if (shown_.layout.in_rows) return;
    const gui::Box& table = shown_.layout.nodes[gui::kTable];
    drawing_.shapes.push_back(Label{"name of " + node.pins[row].port,
                                    {over_rim ? over->second.back().x - 10.0
                                     : side   ? x - 18.0
                                              : x + half + 4.0,
                                     over_rim ? -table.middle().y
                                     : side   ? y
                                     : under  ? y + 12.0
                                              : y - 4.0},
                                    node.pins[row].port + " " + shown_.plan->catalog->written(node.pins[row].type),
                                    Ink::text,
                                    side ? Align::high : Align::low,
                                    side    ? Align::middle
                                    : under ? Align::low
                                            : Align::high});
  }

  void add_pipe(std::size_t row) {
    const gui::Link& link = shown_.sketch.links[row];
    Stroke pipe{"pipe",
                {},
                link.joint == gui::kNoRow            ? Ink::refused
                : link.service == plan::Service::air ? Ink::air
                                                     : Ink::water,
                3.0F};
    for (const gui::Point& point : shown_.layout.ways[row]) pipe.points.push_back(spot(point));
    const bool from_shop = link.a.node == gui::kAirSupply || link.b.node == gui::kAirSupply;
    for (std::size_t i = 1; from_shop && i < pipe.points.size(); ++i) {
      const gui::Point& a = shown_.layout.ways[row][i - 1];
      const gui::Point& b = shown_.layout.ways[row][i];
      if (std::abs(a.y - b.y) > 0.5F || std::abs(a.x - b.x) < 60.0F) continue;
      lines("shop's air line", {std::min(a.x, b.x) + 8.0F, a.y - 6.0F - static_cast<float>(kLine)}, "shop's air line",
            Ink::faint_text);
      break;
    }
    if (pipe.points.size() > 1) drawing_.shapes.push_back(std::move(pipe));
  }

  void add_run(const gui::RunBlock& run) {
    const std::string& name = shown_.plan->connections[run.connection].name;
    for (const report::Shape& shape : run.art.shapes) drawing_.shapes.push_back(shape);
    lines("run " + name, run.title.corner, shown_.texts.runs[run.connection], Ink::faint_text);
    for (const gui::PlacedNode& node : run.nodes) {
      const std::string& key = shown_.sketch.nodes[node.node].key;
      const PartWords& words = shown_.texts.parts[node.node];
      if (words.name.empty()) {
        const gui::Box& box = node.box;
        drawing_.shapes.push_back(Stroke{"gap " + key,
                                         {spot(box.corner),
                                          {box.corner.x, -box.bottom()},
                                          {box.right(), -box.bottom()},
                                          {box.right(), -box.corner.y},
                                          spot(box.corner)},
                                         Ink::refused,
                                         2.0F});
        continue;
      }
      if (!shown_.layout.in_rows) add_leader(run, node);
      const std::string text = shown_.layout.in_rows ? words.name
                                                     : words.name + (shown_.layout.brief ? "" : "\n" + words.source) +
                                                           (words.mark.empty() ? "" : "\n" + words.mark);
      lines("part " + key, node.words.corner, text, Ink::text);
    }
  }

  void add_leader(const gui::RunBlock& run, const gui::PlacedNode& node) {
    const gui::Point foot = gui::leader_foot(run, node);
    const float to = run.heading == gui::Heading::right ? foot.x
                     : node.words_left                  ? node.words.right() + 3.0F
                                                        : node.words.corner.x - 3.0F;
    drawing_.shapes.push_back(Stroke{"leader",
                                     {spot(foot), spot({to, node.words.corner.y + static_cast<float>(kLine) / 2.0F})},
                                     Ink::faint_text,
                                     0.6F});
    constexpr double kDot = 1.8;
    drawing_.shapes.push_back(Area{"leader's dot",
                                   report::box_outline(foot.x - kDot, -foot.y - kDot, foot.x + kDot, -foot.y + kDot),
                                   Ink::text,
                                   1.0F,
                                   {}});
  }

  const Shown& shown_;
  Drawing drawing_;
};

}  // namespace

report::Picture canvas_picture(const Shown& shown) { return CanvasPicture(shown).make(); }

}  // namespace riserun::views
