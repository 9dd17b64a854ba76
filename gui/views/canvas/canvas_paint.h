// The vessels, the parts and the pipes between them, as the canvas draws them.
#pragma once

#include "gui/views/canvas/canvas.h"
#include "gui/views/scene/scene.h"

namespace riserun::views {

inline constexpr float kCardWidth = 156.0F;     // points
inline constexpr float kJointMargin = 22.0F;    // points at each side of a card: there the joint's words have room
inline constexpr float kDrawingHeight = 62.0F;  // points

/// Size of each node's place on the canvas, pins' margins included.
std::vector<gui::Size> node_sizes(const plan::Plan& plan, const gui::Sketch& sketch, const Fonts& fonts, float scale);

void paint_pipe(const Scene& scene, const Lens& lens, std::size_t link);
void paint_node(const Scene& scene, const Lens& lens, std::size_t node, bool selected, bool hovered);

/// The card or vessel itself, without the margins for joints.
gui::Box card_of(const gui::Sketch& sketch, const gui::Layout& layout, std::size_t node);
/// What the bin or the store has to do with it: `from the bin`, `buy $2.95`.
std::string source_words(const plan::Plan& plan, const gui::Node& node);
/// `1 x 3/4 hex bushing`, `reservoir`.
std::string title_of(const plan::Plan& plan, const gui::Node& node);

}  // namespace riserun::views
