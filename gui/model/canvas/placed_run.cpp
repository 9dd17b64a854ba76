#include "gui/model/canvas/placed_run.h"

namespace riserun::gui {

void RunBlock::move(const Point& offset) {
  const auto shift = [&](report::Spot& spot) { spot = {spot.x + offset.x, spot.y - offset.y}; };
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

}  // namespace riserun::gui
