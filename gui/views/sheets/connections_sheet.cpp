#include "gui/views/sheets/connections_sheet.h"

#include "gui/views/canvas/draw_canvas.h"

#include <imgui.h>

#include <algorithm>

namespace riserun::views {

namespace {

constexpr float kNarrow = 900.0F;           // points; below it what is chosen stands under the canvas
constexpr float kParticularsWide = 500.0F;  // points

/// What is chosen, over the canvas' right side, or under it.
Requests particulars(const Scene& scene, ConnectionsState& state, ImVec2 corner, ImVec2 size) {
  ImGui::SetCursorScreenPos(corner);
  begin_pane(scene, "particulars", size.x, size.y);
  Requests asked = draw_particulars(scene, state);
  end_pane(scene, "particulars");
  ImGui::GetWindowDrawList()->AddRect(corner, {corner.x + size.x, corner.y + size.y}, packed(scene.theme[Ink::line]),
                                      0.0F, 0, scene.scale);
  return asked;
}

/// Escape lets go of what is chosen, where nothing else stands open that it is for.
void let_go(ConnectionsState& state) {
  const bool open = ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel);
  const bool free = !open && !state.something_open && !ImGui::GetIO().WantTextInput && !state.canvas.pulled_from;
  if (free && ImGui::IsKeyPressed(static_cast<int>(Key::escape), false)) state.canvas.selected.clear();
  state.something_open = open;
}

}  // namespace

Requests draw_connections(const Scene& scene, ConnectionsState& state) {
  let_go(state);
  const PixelBox all = room_left();
  const bool roomy = all.width() > scene.px(kNarrow);
  const bool chosen = chosen_node(scene.shown.sketch, state.canvas) != nullptr;
  const float wide = std::min(scene.px(kParticularsWide), all.width());
  const float high = all.height();
  // Where there is little room the particulars stand below, and the sheet is rolled to them.
  const float canvas_high = roomy ? high : std::max(scene.px(110.0F), high - (chosen ? scene.px(30.0F) : 0.0F));
  // The canvas keeps its size when something is chosen: the picture stays where it is, under the pane.
  const PixelBox canvas{all.left, all.top, all.right, all.top + canvas_high};
  const PixelBox free{all.left, all.top, roomy && chosen ? all.right - wide : all.right, canvas.bottom};
  ImGui::GetWindowDrawList()->AddRectFilled({canvas.left, canvas.top}, {canvas.right, canvas.bottom},
                                            packed(scene.theme[Ink::panel]));
  state.canvas.middle = {canvas.width() / 2.0F, canvas.height() / 2.0F};
  state.canvas.room = {canvas.width() / scene.scale, (roomy ? high : std::max(high, scene.px(110.0F))) / scene.scale};
  note_place(scene, "pane canvas", free);
  Requests asked = draw_canvas(scene, state.canvas, canvas, free);
  if (!chosen) return asked;
  if (roomy)
    append(asked, particulars(scene, state, {free.right, all.top}, {wide, high}));
  else
    append(asked,
           particulars(scene, state, {all.left, canvas.bottom + scene.px(8.0F)}, {all.width(), scene.px(320.0F)}));
  return asked;
}

}  // namespace riserun::views
