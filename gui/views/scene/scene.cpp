#include "gui/views/scene/scene.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>

namespace riserun::views {

void note_place(const Scene& scene, const std::string& name, const PixelBox& box) {
  if (scene.places.wanted) scene.places.boxes[name] = box;
}

void note_item(const Scene& scene, const std::string& name) {
  if (!scene.places.wanted || !ImGui::IsItemVisible()) return;
  const ImVec2 low = ImGui::GetItemRectMin();
  const ImVec2 high = ImGui::GetItemRectMax();
  scene.places.boxes[name] = {low.x, low.y, high.x, high.y};
}

void note_text(const Scene& scene, const std::string& text, const PixelBox& box, const PixelBox& room) {
  if (!scene.places.wanted) return;
  const int number = ++scene.places.texts;
  std::string line = text;
  std::replace(line.begin(), line.end(), '\n', ' ');
  scene.places.boxes[fmt::format("text {} {}", number, line)] = box;
  scene.places.boxes[fmt::format("room {}", number)] = room;
}

std::string fitting(const ImFont& font, const std::string& text, float wide, float high, bool wraps) {
  constexpr float kLast = 0.5F;  // px that a sum may be off by
  const auto fits = [&](const std::string& candidate) {
    const ImVec2 size = font.CalcTextSizeA(font.FontSize, FLT_MAX, wraps ? wide : 0.0F, candidate.c_str());
    return size.x <= wide + kLast && size.y <= high + kLast;
  };
  if (wide <= 0.0F || high <= 0.0F) return "";
  if (fits(text)) return text;
  constexpr const char* kDots = "...";
  std::size_t good = 0;  // bytes that fit
  std::size_t bad = text.size();
  while (bad - good > 1) {
    const std::size_t middle = (good + bad) / 2;
    (fits(text.substr(0, middle) + kDots) ? good : bad) = middle;
  }
  while (good > 0 && (static_cast<unsigned char>(text[good]) & 0xC0U) == 0x80U) --good;  // within a letter of UTF-8
  return good == 0 ? "" : text.substr(0, good) + kDots;
}

std::string at_blanks(const ImFont& font, const std::string& text, float wide) {
  const auto width = [&](std::string_view piece) {
    return font.CalcTextSizeA(font.FontSize, FLT_MAX, 0.0F, piece.data(), piece.data() + piece.size()).x;
  };
  const float blank = width(" ");
  std::string lines;
  float line = 0.0F;
  bool begun = false;  // the line has a word
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find_first_of(" \n", at), text.size());
    const std::string_view word = std::string_view(text).substr(at, end - at);
    const float more = width(word);
    if (begun && line + blank + more > wide) {
      lines += '\n';
      line = more;
    } else {
      if (begun) lines += ' ';
      line += (begun ? blank : 0.0F) + more;
    }
    lines += word;
    begun = true;
    if (end < text.size() && text[end] == '\n') {
      lines += '\n';
      line = 0.0F;
      begun = false;
    }
    at = end + 1;
  }
  return lines;
}

PixelBox room_left() {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const ImVec2 size = ImGui::GetContentRegionAvail();
  return {at.x, at.y, at.x + size.x, at.y + size.y};
}

void begin_pane(const Scene& scene, const char* name, float width, float height) {
  ImGui::PushStyleColor(ImGuiCol_ChildBg, packed(scene.theme[Ink::panel]));
  ImGui::BeginChild(name, {width, height}, false, ImGuiWindowFlags_AlwaysUseWindowPadding);
  ImGui::PopStyleColor();
}

void end_pane(const Scene& scene, const char* name) {
  ImGui::EndChild();
  note_item(scene, std::string("pane ") + name);
}

void wrapped(const std::string& text) {
  // Still wrapped by the library: a word that is wider than the pane.
  const std::string lines = at_blanks(*ImGui::GetFont(), text, ImGui::GetContentRegionAvail().x);
  ImGui::PushTextWrapPos(0.0F);
  ImGui::TextUnformatted(lines.c_str());
  ImGui::PopTextWrapPos();
}

void wrapped(const Scene& scene, Ink ink, const std::string& text) {
  ImGui::PushStyleColor(ImGuiCol_Text, packed(scene.theme[ink]));
  wrapped(text);
  ImGui::PopStyleColor();
}

void strong(const Scene& scene, const std::string& text) {
  ImGui::PushFont(scene.fonts.strong);
  wrapped(text);
  ImGui::PopFont();
}

transfer::Instant instant_shown(const Scene& scene) {
  return instant_at(*scene.shown.plan, scene.shown.timeline, scene.playback.now);
}

void hint(const Scene& scene, const std::string& text) {
  ImGui::PushStyleVar(ImGuiStyleVar_Alpha, 1.0F);  // over what is stale, too
  ImGui::BeginTooltip();
  ImGui::TextUnformatted(at_blanks(*ImGui::GetFont(), text, scene.px(420.0F)).c_str());
  ImGui::EndTooltip();
  ImGui::PopStyleVar();
}

bool button(const std::string& name, bool low) {
  const bool pressed = low ? ImGui::SmallButton(name.c_str()) : ImGui::Button(name.c_str());
  return pressed || (ImGui::IsItemFocused() && ImGui::IsKeyPressed(static_cast<int>(Key::enter), false));
}

bool one_of(const Scene& scene, const char* name, bool chosen, Ink text) {
  ImGui::PushStyleColor(ImGuiCol_Button, packed(scene.theme[chosen ? Ink::accent_ground : Ink::panel]));
  ImGui::PushStyleColor(ImGuiCol_ButtonHovered, packed(scene.theme[chosen ? Ink::accent_ground : Ink::field_over]));
  ImGui::PushStyleColor(ImGuiCol_Text, packed(scene.theme[chosen ? Ink::accent_text : text]));
  const bool pressed = ImGui::Button(name);
  ImGui::PopStyleColor(3);
  return pressed;
}

bool begin_stale(const Scene& scene) {
  if (scene.model.plan().current) return false;
  ImGui::PushStyleVar(ImGuiStyleVar_Alpha, 0.55F);
  return true;
}

void end_stale(bool begun) {
  if (begun) ImGui::PopStyleVar();
}

}  // namespace riserun::views
