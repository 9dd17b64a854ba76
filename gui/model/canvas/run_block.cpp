#include "gui/model/canvas/run_block.h"

#include "gui/model/canvas/braid.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace riserun::gui {

namespace {

using report::Spot;

constexpr float kLeader = 13.0F;    // points between a part and its words
constexpr float kLineGap = 5.0F;    // between the words of two parts
constexpr float kTitleGap = 6.0F;   // under the title
constexpr float kGapWide = 132.0F;  // of what stands for a run that there is none of
constexpr float kGapHigh = 64.0F;

double turn_of(Heading heading) { return heading == Heading::up ? 90.0 : heading == Heading::down ? -90.0 : 0.0; }

Point direction_at(double degrees) {
  const double angle = degrees * std::numbers::pi / 180.0;
  return {static_cast<float>(std::cos(angle)), static_cast<float>(-std::sin(angle))};
}

void each_spot(report::Drawing& drawing, const auto& change) {
  for (report::Shape& shape : drawing.shapes) {
    if (auto* area = std::get_if<report::Area>(&shape))
      std::for_each(area->outline.begin(), area->outline.end(), change);
    if (auto* stroke = std::get_if<report::Stroke>(&shape))
      std::for_each(stroke->points.begin(), stroke->points.end(), change);
  }
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
      along += 2.0F * half + kLeader;
      block_.nodes.push_back(std::move(one));
    }
    const Point end{out.x * std::max(0.0F, along - kLeader), out.y * std::max(0.0F, along - kLeader)};
    block_.faces.assign(plan_.connections[block_.connection].ends.size(), {end, out});
  }

  const plan::Plan& plan_;
  const Sketch& sketch_;
  const report::RunPicture& picture_;
  double scale_;
  bool mirrored_ = false;
  RunBlock block_;
};

/// What is drawn of it, without words.
Box bounds_of(const RunBlock& block) {
  Box bounds{block.base.where, {}};
  for (const PlacedNode& node : block.nodes) bounds = around(bounds, node.box);
  for (const PlacedPin& face : block.faces) bounds = around(bounds, {face.where, {}});
  return bounds;
}

std::vector<PlacedNode*> in_order(std::vector<PlacedNode>& nodes, const auto& key) {
  std::vector<PlacedNode*> order;
  order.reserve(nodes.size());
  for (PlacedNode& node : nodes) order.push_back(&node);
  std::stable_sort(order.begin(), order.end(),
                   [&](const PlacedNode* a, const PlacedNode* b) { return key(*a) < key(*b); });
  return order;
}

/// Many parts have their words on both sides, each on its own.
void choose_sides(std::vector<PlacedNode>& nodes) {
  constexpr std::size_t kMostOnOneSide = 9;
  for (PlacedNode& node : nodes) node.words_left = false;
  if (nodes.size() <= kMostOnOneSide) return;
  const auto order = in_order(nodes, [](const PlacedNode& node) { return node.box.middle().x; });
  for (std::size_t i = 0; i < order.size() / 2; ++i) order[i]->words_left = true;
}

/// Between which heights words may stand.
struct Band {
  float top = -1e6F;
  float bottom = 1e6F;
};

/// One column of words, each as near to its part as the others let it, none over a pipe that leaves on that side.
class WordColumn {
 public:
  WordColumn(const RunBlock& block, const WordSizes& words, std::vector<PlacedNode*> column, bool left, Band room)
      : words_(words), column_(std::move(column)), room_(room) {
    for (const PlacedPin& face : block.faces)
      if (face.direction.x * (left ? -1.0F : 1.0F) > 0.5F)
        pipes_.push_back({face.where.y - kPipeHalf, face.where.y + kPipeHalf});
  }

  void stack(float edge, bool left) {
    if (column_.empty()) return;
    std::vector<float> tops;
    float free = room_.top;
    for (const PlacedNode* node : column_) {
      float top = std::max(free, node->box.middle().y - high(*node) / 2.0F);
      for (const Band& pipe : pipes_)
        if (top < pipe.bottom && top + high(*node) > pipe.top) top = pipe.bottom;
      tops.push_back(top);
      free = top + high(*node) + kLineGap;
    }
    // What was pushed down on the whole goes half of it back, and all stays over the lower end.
    const PlacedNode& last = *column_.back();
    const float too_low = (tops.back() + high(last) / 2.0F - last.box.middle().y) / 2.0F;
    float next = std::min(room_.bottom, tops.back() + high(last) - std::max(0.0F, too_low)) + kLineGap;
    for (std::size_t i = column_.size(); i-- > 0;) {
      float top = std::min(tops[i], next - kLineGap - high(*column_[i]));
      for (const Band& pipe : pipes_)
        if (top < pipe.bottom && top + high(*column_[i]) > pipe.top) top = pipe.top - high(*column_[i]);
      const Size& size = words_.beside[column_[i]->node];
      column_[i]->words = {{left ? edge - size.width : edge, top}, size};
      next = top;
    }
  }

 private:
  static constexpr float kPipeHalf = 9.0F;
  float high(const PlacedNode& node) const { return words_.beside[node.node].height; }

  const WordSizes& words_;
  std::vector<PlacedNode*> column_;
  Band room_;
  std::vector<Band> pipes_;
};

/// Of parts that lie level with each other, the furthest have the outermost words: so their lines do not cross.
std::vector<PlacedNode*> top_down(std::vector<PlacedNode*> nodes, float edge) {
  constexpr float kLevel = 6.0F;
  const auto y = [](const PlacedNode* node) { return node->box.middle().y; };
  const auto far = [&](const PlacedNode* node) { return std::abs(node->box.middle().x - edge); };
  std::stable_sort(nodes.begin(), nodes.end(), [&](const auto* a, const auto* b) { return y(a) < y(b); });
  for (std::size_t from = 0; from < nodes.size();) {
    std::size_t to = from + 1;
    while (to < nodes.size() && y(nodes[to]) - y(nodes[from]) < kLevel) ++to;
    std::vector<PlacedNode*> group(nodes.begin() + static_cast<std::ptrdiff_t>(from),
                                   nodes.begin() + static_cast<std::ptrdiff_t>(to));
    std::stable_sort(group.begin(), group.end(), [&](const auto* a, const auto* b) { return far(a) > far(b); });
    for (std::size_t i = 0; i < group.size(); ++i) nodes[i % 2 == 0 ? from + i / 2 : to - 1 - i / 2] = group[i];
    from = to;
  }
  return nodes;
}

/// In columns beside it, the title over the right one.
void words_beside(RunBlock& block, const WordSizes& words, Band room) {
  const Box bounds = bounds_of(block);
  choose_sides(block.nodes);
  const Size& title = words.titles[block.connection];
  room.top += title.height + kTitleGap;
  for (const bool left : {false, true}) {
    const float edge = left ? bounds.corner.x - kLeader : bounds.right() + kLeader;
    std::vector<PlacedNode*> column;
    for (PlacedNode& node : block.nodes)
      if (node.words_left == left) column.push_back(&node);
    column = top_down(std::move(column), edge);
    WordColumn(block, words, column, left, room).stack(edge, left);
    if (left) continue;
    const float first = column.empty() ? bounds.middle().y + title.height / 2.0F : column.front()->words.corner.y;
    block.title = {{edge, first - kTitleGap - title.height}, title};
  }
}

/// Clear of what the run stands on, or hangs from.
Band beyond_base(const RunBlock& block) {
  constexpr float kClear = 4.0F;
  Band room;
  if (block.stands_on_end) {
    room.bottom = block.faces[0].where.y - kClear;
    return room;
  }
  if (block.heading == Heading::up) room.bottom = block.base.where.y - kClear;
  if (block.heading == Heading::down) room.top = block.base.where.y + kClear;
  return room;
}

/// ... and of what it leads to.
Band between_ends(const RunBlock& block) {
  constexpr float kClear = 4.0F;
  Band room = beyond_base(block);
  if (block.heading == Heading::up) room.top = block.faces[0].where.y + kClear;
  if (block.heading == Heading::down) room.bottom = block.faces[0].where.y - kClear;
  return room;
}

/// Under the run, the words of the first part lowest: so each part's line to its own crosses no others.
void words_below(RunBlock& block, const WordSizes& words, bool in_line) {
  const Box bounds = bounds_of(block);
  const Size& title = words.titles[block.connection];
  block.title = {{block.base.where.x + 6.0F, bounds.corner.y - kTitleGap - title.height}, title};
  float top = bounds.bottom() + kLeader / 2.0F;
  for (PlacedNode* node : in_order(block.nodes, [](const PlacedNode& one) { return -one.box.middle().x; })) {
    const Size& size = (in_line ? words.in_line : words.beside)[node->node];
    node->words = {{node->box.middle().x + 8.0F, top}, size};
    top += size.height + (in_line ? 2.0F : kLineGap);
  }
}

void take_all_in(RunBlock& block) {
  block.all = around(bounds_of(block), block.title);
  for (const PlacedNode& node : block.nodes)
    if (node.words.size.width > 0.0F) block.all = around(block.all, node.words);
}

}  // namespace

void RunBlock::move(const Point& offset) {
  const auto shift = [&](Spot& spot) { spot = {spot.x + offset.x, spot.y - offset.y}; };
  each_spot(art, shift);
  const auto shift_pin = [&](PlacedPin& pin) { pin.where = {pin.where.x + offset.x, pin.where.y + offset.y}; };
  for (PlacedNode& node : nodes) {
    node.box = node.box.at(offset);
    node.words = node.words.at(offset);
    std::for_each(node.pins.begin(), node.pins.end(), shift_pin);
  }
  title = title.at(offset);
  all = all.at(offset);
  shift_pin(base);
  std::for_each(faces.begin(), faces.end(), shift_pin);
}

RunBlock run_block(const plan::Plan& plan, const Sketch& sketch, std::size_t connection,
                   const report::RunPicture& picture, const Stance& stance, double scale, const WordSizes& words) {
  RunBlock block = Blocking(plan, sketch, picture, scale).run(connection, stance);
  stance.heading == Heading::right ? words_below(block, words, stance.in_rows)
                                   : words_beside(block, words, beyond_base(block));
  take_all_in(block);
  return block;
}

Point leader_foot(const RunBlock& block, const PlacedNode& node) {
  const Box& box = node.box;
  const float edge = node.words_left ? box.corner.x : box.right();
  const float words = node.words_left ? node.words.right() : node.words.corner.x;
  const float y = box.middle().y;
  const auto stands_between = [&](const PlacedNode& other) {
    const float middle = other.box.middle().x;
    return other.node != node.node && other.box.corner.y < y && y < other.box.bottom() &&
           std::min(edge, words) < middle && middle < std::max(edge, words);
  };
  if (std::none_of(block.nodes.begin(), block.nodes.end(), stands_between)) return {edge, y};
  const bool over = node.words.middle().y < y;
  return {box.middle().x, over ? box.corner.y : box.bottom()};
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
  const std::vector<report::Shape> strands = with_longer_braid(block.art, -from, -sign, by);
  each_spot(block.art, shift);
  block.art.shapes.insert(block.art.shapes.end(), strands.begin(), strands.end());
  for (PlacedNode& node : block.nodes) {
    const float top = node.box.corner.y + (beyond(node.box.corner.y) ? sign * by : 0.0F);
    const float bottom = node.box.bottom() + (beyond(node.box.bottom()) ? sign * by : 0.0F);
    node.box = between(node.box.corner.x, top, node.box.right(), bottom);
    std::for_each(node.pins.begin(), node.pins.end(), shift_pin);
  }
  std::for_each(block.faces.begin(), block.faces.end(), shift_pin);
  words_beside(block, words, between_ends(block));
  take_all_in(block);
}

}  // namespace riserun::gui
