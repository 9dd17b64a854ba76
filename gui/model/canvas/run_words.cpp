#include "gui/model/canvas/run_words.h"

#include "gui/model/canvas/leader.h"

#include <algorithm>
#include <cmath>

namespace riserun::gui {

namespace {

constexpr float kLeader = 13.0F;   // points between a part and its words
constexpr float kLineGap = 5.0F;   // between the words of two parts
constexpr float kTitleGap = 6.0F;  // under the title

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

/// Two names of a column whose lines cross change places, until none do; which shortens the lines on the whole.
void stack_uncrossed(const RunBlock& block, const WordSizes& words, std::vector<PlacedNode*> column, bool left,
                     float edge, Band room) {
  constexpr float kHalfLine = 6.5F;
  std::vector<std::pair<PlacedNode*, Point>> feet;
  feet.reserve(column.size());
  for (PlacedNode* node : column) feet.emplace_back(node, leader_foot(block, *node));
  const auto end_of = [&](const PlacedNode* node) { return Point{edge, node->words.corner.y + kHalfLine}; };
  for (std::size_t tries = 0; tries <= feet.size() * feet.size(); ++tries) {
    for (std::size_t i = 0; i < feet.size(); ++i) column[i] = feet[i].first;
    WordColumn(block, words, column, left, room).stack(edge, left);
    bool crossed = false;
    for (std::size_t i = 0; i < feet.size() && !crossed; ++i)
      for (std::size_t k = i + 1; k < feet.size() && !crossed; ++k)
        if (cross(feet[i].second, end_of(feet[i].first), feet[k].second, end_of(feet[k].first))) {
          std::swap(feet[i], feet[k]);
          crossed = true;
        }
    if (!crossed) return;
  }
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
    stack_uncrossed(block, words, column, left, edge, room);
    if (left) continue;
    float first = bounds.middle().y + title.height / 2.0F;
    for (std::size_t i = 0; i < column.size(); ++i)
      first = i == 0 ? column[i]->words.corner.y : std::min(first, column[i]->words.corner.y);
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

/// Under the run, or over it, the words of the first part furthest off: so each part's line to its own crosses no
/// others.
void words_along(RunBlock& block, const WordSizes& words, bool over) {
  const Box bounds = bounds_of(block);
  float edge = over ? bounds.corner.y - kLeader / 2.0F : bounds.bottom() + kLeader / 2.0F;
  const auto last_first = [&](const PlacedNode& one) { return -leader_foot(block, one).x; };
  for (PlacedNode* node : in_order(block.nodes, last_first)) {
    const Size& size = words.beside[node->node];
    if (over) edge -= size.height;
    node->words = {{leader_foot(block, *node).x + 8.0F, edge}, size};
    edge += over ? -kLineGap : size.height + kLineGap;
  }
  const Size& title = words.titles[block.connection];
  block.title = {{block.base.where.x + 6.0F, (over ? edge : bounds.corner.y) - kTitleGap - title.height}, title};
}

/// Under each other, as the parts follow from the port on.
void words_listed(RunBlock& block, const WordSizes& words) {
  const Box bounds = bounds_of(block);
  float top = bounds.bottom() + kTitleGap;
  for (PlacedNode* node : in_order(block.nodes, [](const PlacedNode& one) { return one.box.middle().x; })) {
    const Size& size = words.listed[node->node];
    node->words = {{bounds.corner.x, top}, size};
    top += size.height;
  }
  const Size& title = words.titles[block.connection];
  block.title = {{bounds.corner.x, bounds.corner.y - kTitleGap - title.height}, title};
}

}  // namespace

Box bounds_of(const RunBlock& block) {
  Box bounds{block.base.where, {}};
  for (const PlacedNode& node : block.nodes) bounds = around(bounds, node.box);
  for (const PlacedPin& face : block.faces) bounds = around(bounds, {face.where, {}});
  return bounds;
}

void place_words(RunBlock& block, const WordSizes& words, const Stance& stance) {
  if (stance.in_rows)
    words_listed(block, words);
  else if (stance.heading == Heading::right)
    words_along(block, words, stance.words_over);
  else
    words_beside(block, words, beyond_base(block));
}

void place_words_between_ends(RunBlock& block, const WordSizes& words) {
  words_beside(block, words, between_ends(block));
}

}  // namespace riserun::gui
