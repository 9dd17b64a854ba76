#include "gui/views/sheets/connections_sheet.h"

#include "gui/views/canvas/draw_canvas.h"
#include "gui/views/sheets/water_sheet.h"

#include <imgui.h>

#include <algorithm>

namespace riserun::views {

namespace {

constexpr float kNarrow = 900.0F;  // points; below it a sheet stands alone

}  // namespace

Requests draw_connections(const Scene& scene, ConnectionsState& state) {
  const PixelBox all = room_left();
  const float gap = scene.px(8.0F);
  const auto particulars = [&](ImVec2 size) {
    begin_pane(scene, "particulars", size.x, size.y);
    Requests of_them = draw_particulars(scene, state);
    end_pane(scene, "particulars");
    return of_them;
  };
  const bool roomy = all.width() > scene.px(kNarrow) && all.height() > scene.px(420.0F);
  // Where there is little room the particulars stand below, and the sheet is rolled to them.
  const float canvas_high = roomy ? all.height() * 0.55F : std::max(scene.px(110.0F), all.height() - scene.px(30.0F));
  const PixelBox canvas{all.left, all.top, all.right, all.top + canvas_high};
  ImGui::GetWindowDrawList()->AddRectFilled({canvas.left, canvas.top}, {canvas.right, canvas.bottom},
                                            packed(scene.theme[Ink::panel]));
  state.canvas.middle = {canvas.width() / 2.0F, canvas.height() / 2.0F};
  note_place(scene, "pane canvas", canvas);
  Requests asked = draw_canvas(scene, state.canvas, canvas);
  if (!roomy) {
    ImGui::SetCursorScreenPos({all.left, canvas.bottom + gap});
    append(asked, particulars({0.0F, scene.px(320.0F)}));
    return asked;
  }
  const float top = canvas.bottom + gap;
  const float split = all.left + all.width() * 0.5F;
  const float clock = ImGui::GetFrameHeight() + scene.px(30.0F);
  draw_section(scene, {all.left, top, split - gap, all.bottom - clock});
  ImGui::SetCursorScreenPos({all.left, all.bottom - clock + scene.px(5.0F)});
  ImGui::BeginChild("clock", {split - gap - all.left, clock - scene.px(5.0F)}, false, ImGuiWindowFlags_NoScrollbar);
  append(asked, draw_clock(scene));
  ImGui::EndChild();
  ImGui::SetCursorScreenPos({split, top});
  append(asked, particulars({all.right - split, all.bottom - top}));
  return asked;
}

}  // namespace riserun::views
