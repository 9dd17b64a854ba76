#include "gui/views/canvas/free_room.h"

#include <algorithm>

namespace riserun::views {

bool stands_free(const gui::Layout& layout, const Lens& lens, const PixelBox& room) {
  const auto apart = [&](const gui::Box& box) {
    if (box.size.width <= 0.0F) return true;
    const gui::Point low = lens.on_screen(box.corner);
    const gui::Point high = lens.on_screen({box.right(), box.bottom()});
    return high.x <= room.left || room.right <= low.x || high.y <= room.top || room.bottom <= low.y;
  };
  if (!apart(layout.nodes[gui::kTable])) return false;
  return std::all_of(layout.runs.begin(), layout.runs.end(), [&](const gui::RunBlock& block) {
    return apart(block.title) && std::all_of(block.nodes.begin(), block.nodes.end(), [&](const gui::PlacedNode& node) {
             return apart(node.box) && apart(node.words);
           });
  });
}

}  // namespace riserun::views
