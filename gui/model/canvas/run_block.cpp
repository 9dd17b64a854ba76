#include "gui/model/canvas/run_block.h"

#include "gui/model/canvas/run_words.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace riserun::gui {

namespace {

using report::Spot;

constexpr float kBetweenOpen = 13.0F;  // points between what stands for a run that there is none of and its end
constexpr float kGapWide = 132.0F;     // of what stands for a run that there is none of
constexpr float kGapHigh = 64.0F;

double turn_of(Heading heading) { return heading == Heading::up ? 90.0 : heading == Heading::down ? -90.0 : 0.0; }

Point direction_at(double degrees) {
  const double angle = degrees * std::numbers::pi / 180.0;
  return {static_cast<float>(std::cos(angle)), static_cast<float>(-std::sin(angle))};
}

class Blocking {
 public:
  Blocking(const plan::Plan& plan, const Sketch& sketch, const report::RunPicture& picture, double scale)
      : plan_(plan), sketch_(sketch), picture_(picture), scale_(scale) {}

  RunBlock run(std::size_t connection, const Stance& stance) {
    block_.connection = connection;
    block_.heading = stance.heading;
    block_.stands_on_end = stance.on_end;
    block_.base.direction = direction_at(turn_of(stance.heading) + 180.0);
    mirrored_ = stance.mirrored;
    plan_.connections[connection].run() != nullptr ? put_together() : leave_open();
    return std::move(block_);
  }

 private:
  /// From the picture, metres with y upwards, to the canvas.
  Point placed(const Spot& spot) const {
    const double x = spot.x * scale_;
    const double y = (mirrored_ ? -spot.y : spot.y) * scale_;
    switch (block_.heading) {
      case Heading::up:
        return {static_cast<float>(-y), static_cast<float>(-x)};
      case Heading::down:
        return {static_cast<float>(y), static_cast<float>(x)};
      default:
        return {static_cast<float>(x), static_cast<float>(-y)};
    }
  }
  PlacedPin placed(const report::PortSpot& port) const {
    return {placed(port.at), direction_at((mirrored_ ? -port.heading : port.heading) + turn_of(block_.heading))};
  }
  Box placed(const Spot& low, const Spot& high) const {
    const Point a = placed(low);
    const Point b = placed(high);
    return between(std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y));
  }

  /// What the run begins and ends at is drawn by itself.
  void turn_art() {
    const auto turned = [&](Spot& spot) {
      const Point at = placed(spot);
      spot = {at.x, -at.y};
    };
    for (const report::Shape& shape : picture_.drawing.shapes) {
      const auto* stroke = std::get_if<report::Stroke>(&shape);
      if (stroke == nullptr || (stroke->name != "base" && stroke->name != "end")) block_.art.shapes.push_back(shape);
    }
    each_spot(block_.art, turned);
    if (mirrored_)  // an outline turns left
      for (report::Shape& shape : block_.art.shapes)
        if (auto* area = std::get_if<report::Area>(&shape)) std::reverse(area->outline.begin(), area->outline.end());
    report::take_in_shapes(block_.art);
  }

  /// The item that a node is drawn as; nullptr: none.
  const report::RunItem* item_of(const Node& node) const {
    if (node.kind == NodeKind::part) return &picture_.items[node.place];
    const bool branched = plan_.connections[block_.connection].branched.has_value();
    for (const report::RunItem& item : picture_.items)
      if (item.end && (!branched || *item.end == node.place)) return &item;
    return nullptr;
  }

  void put_together() {
    turn_art();
    for (std::size_t row = 0; row < sketch_.nodes.size(); ++row) {
      const Node& node = sketch_.nodes[row];
      const report::RunItem* item = node.connection == block_.connection && node.part ? item_of(node) : nullptr;
      if (item == nullptr) continue;
      PlacedNode one{row, placed(item->low, item->high), {}, false, item->broken, {}};
      for (const Pin& pin : node.pins) one.pins.push_back(placed(item->ports[pin.part_port]));
      block_.nodes.push_back(std::move(one));
    }
    for (const report::PortSpot& face : picture_.faces) block_.faces.push_back(placed(face));
    const chain::Run& run = *plan_.connections[block_.connection].run();
    for (std::size_t end = 0; end < run.ends.size(); ++end)
      if (run.ends[end].device) block_.faces[end].direction = {};
  }

  /// One thing stands where the parts would, what would follow beyond it.
  void leave_open() {
    const Point out = direction_at(turn_of(block_.heading));
    float along = 0.0F;
    for (std::size_t row = 0; row < sketch_.nodes.size(); ++row) {
      const Node& node = sketch_.nodes[row];
      if (node.connection != block_.connection) continue;
      const bool level = block_.heading == Heading::right;
      const float wide = node.kind == NodeKind::open_end ? kGapWide : kGapHigh;
      const Point middle{out.x * (along + (level ? wide : kGapHigh) / 2.0F),
                         out.y * (along + (level ? wide : kGapHigh) / 2.0F)};
      PlacedNode one{
          row,
          between(middle.x - wide / 2.0F, middle.y - kGapHigh / 2.0F, middle.x + wide / 2.0F, middle.y + kGapHigh / 2.0F),
          {},
          false,
          false,
          {}};
      const float half = (level ? wide : kGapHigh) / 2.0F;
      for (std::size_t pin = 0; pin < node.pins.size(); ++pin) {
        const float way = pin == 0 ? -1.0F : 1.0F;
        one.pins.push_back(
            {{middle.x + way * out.x * half, middle.y + way * out.y * half}, {way * out.x, way * out.y}});
      }
      along += 2.0F * half + kBetweenOpen;
      block_.nodes.push_back(std::move(one));
    }
    const Point end{out.x * std::max(0.0F, along - kBetweenOpen), out.y * std::max(0.0F, along - kBetweenOpen)};
    block_.faces.assign(plan_.connections[block_.connection].ends.size(), {end, out});
  }

  const plan::Plan& plan_;
  const Sketch& sketch_;
  const report::RunPicture& picture_;
  double scale_;
  bool mirrored_ = false;
  RunBlock block_;
};

void take_all_in(RunBlock& block) {
  block.all = around(bounds_of(block), block.title);
  for (const PlacedNode& node : block.nodes)
    if (node.words.size.width > 0.0F) block.all = around(block.all, node.words);
}

}  // namespace

RunBlock run_block(const plan::Plan& plan, const Sketch& sketch, std::size_t connection,
                   const report::RunPicture& picture, const Stance& stance, double scale, const WordSizes& words) {
  RunBlock block = Blocking(plan, sketch, picture, scale).run(connection, stance);
  place_words(block, words, stance);
  take_all_in(block);
  return block;
}

void lengthen(RunBlock& block, float by, const WordSizes& words) {
  const auto broken =
      std::find_if(block.nodes.begin(), block.nodes.end(), [](const PlacedNode& n) { return n.broken; });
  if (broken == block.nodes.end() || block.heading == Heading::right || by <= 0.0F) return;
  const float sign = block.heading == Heading::up ? -1.0F : 1.0F;
  // Beyond the break, before its further end.
  const float from = broken->box.middle().y + sign * 0.3F * broken->box.size.height;
  const auto beyond = [&](float y) { return (y - from) * sign > 0.0F; };
  const auto shift = [&](Spot& spot) {
    if (beyond(static_cast<float>(-spot.y))) spot.y -= sign * by;
  };
  const auto shift_pin = [&](PlacedPin& pin) {
    if (beyond(pin.where.y)) pin.where.y += sign * by;
  };
  each_spot(block.art, shift);
  for (PlacedNode& node : block.nodes) {
    const float top = node.box.corner.y + (beyond(node.box.corner.y) ? sign * by : 0.0F);
    const float bottom = node.box.bottom() + (beyond(node.box.bottom()) ? sign * by : 0.0F);
    node.box = between(node.box.corner.x, top, node.box.right(), bottom);
    std::for_each(node.pins.begin(), node.pins.end(), shift_pin);
  }
  std::for_each(block.faces.begin(), block.faces.end(), shift_pin);
  place_words_between_ends(block, words);
  take_all_in(block);
}

}  // namespace riserun::gui
