#include "gui/views/drawing/theme.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

namespace riserun::views {

namespace {

Theme make(gui::Looks looks) {
  Theme theme;
  theme.looks = looks;
  for (std::size_t row = 0; row < static_cast<std::size_t>(Ink::count); ++row)
    theme[static_cast<Ink>(row)] = report::color_of(static_cast<Ink>(row), looks == gui::Looks::dark);
  return theme;
}

constexpr TextPair kPairs[] = {
    {Ink::text, Ink::ground},
    {Ink::text, Ink::panel},
    {Ink::text, Ink::field},
    {Ink::text, Ink::field_over},
    {Ink::text, Ink::pressed},
    {Ink::text, Ink::card},
    {Ink::text, Ink::card_bin},
    {Ink::text, Ink::water_pale},
    {Ink::faint_text, Ink::ground},
    {Ink::faint_text, Ink::panel},
    {Ink::faint_text, Ink::field},
    {Ink::faint_text, Ink::field_over},
    {Ink::faint_text, Ink::card},
    {Ink::faint_text, Ink::card_bin},
    {Ink::stale_text, Ink::ground},
    {Ink::stale_text, Ink::panel},
    {Ink::stale_text, Ink::card},
    {Ink::stale_text, Ink::card_bin},
    {Ink::accent, Ink::ground},
    {Ink::accent, Ink::panel},
    {Ink::accent, Ink::card},
    {Ink::accent, Ink::card_bin},
    {Ink::accent_text, Ink::accent_ground},
    {Ink::good, Ink::ground},
    {Ink::good, Ink::panel},
    {Ink::caution, Ink::ground},
    {Ink::caution, Ink::panel},
    {Ink::caution, Ink::card},
    {Ink::caution, Ink::card_bin},
    {Ink::refused, Ink::ground},
    {Ink::refused, Ink::panel},
    {Ink::refused, Ink::field},
    {Ink::refused, Ink::card},
    {Ink::status_text, Ink::good_ground},
    {Ink::status_text, Ink::caution_ground},
    {Ink::status_text, Ink::refused_ground},
    {Ink::status_text, Ink::stale_ground},
    {Ink::water_text, Ink::water},
    {Ink::air_text, Ink::air},
};

/// WCAG 2.1, "relative luminance".
double luminance(const Color& color) {
  const auto linear = [](float channel) {
    const double c = channel;
    return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(color.red) + 0.7152 * linear(color.green) + 0.0722 * linear(color.blue);
}

ImVec4 vec(const Color& c) { return {c.red, c.green, c.blue, c.alpha}; }

void set_colors(const Theme& theme, ImVec4* colors) {
  struct Use {
    ImGuiCol what;
    Ink ink;
  };
  static constexpr Use kUses[] = {
      {ImGuiCol_Text, Ink::text},
      {ImGuiCol_TextDisabled, Ink::faint_text},
      {ImGuiCol_WindowBg, Ink::ground},
      {ImGuiCol_ChildBg, Ink::ground},
      {ImGuiCol_PopupBg, Ink::panel},
      {ImGuiCol_Border, Ink::line},
      {ImGuiCol_FrameBg, Ink::field},
      {ImGuiCol_FrameBgHovered, Ink::field_over},
      {ImGuiCol_FrameBgActive, Ink::field_over},
      {ImGuiCol_TitleBg, Ink::panel},
      {ImGuiCol_TitleBgActive, Ink::panel},
      {ImGuiCol_TitleBgCollapsed, Ink::panel},
      {ImGuiCol_MenuBarBg, Ink::panel},
      {ImGuiCol_ScrollbarBg, Ink::ground},
      {ImGuiCol_ScrollbarGrab, Ink::line},
      {ImGuiCol_ScrollbarGrabHovered, Ink::faint_text},
      {ImGuiCol_ScrollbarGrabActive, Ink::text},
      {ImGuiCol_CheckMark, Ink::accent},
      {ImGuiCol_SliderGrab, Ink::accent},
      {ImGuiCol_SliderGrabActive, Ink::accent},
      {ImGuiCol_Button, Ink::field_over},
      {ImGuiCol_ButtonHovered, Ink::pressed},
      {ImGuiCol_ButtonActive, Ink::pressed},
      {ImGuiCol_Header, Ink::pressed},
      {ImGuiCol_HeaderHovered, Ink::field_over},
      {ImGuiCol_HeaderActive, Ink::pressed},
      {ImGuiCol_Separator, Ink::line},
      {ImGuiCol_SeparatorHovered, Ink::accent},
      {ImGuiCol_SeparatorActive, Ink::accent},
      {ImGuiCol_ResizeGrip, Ink::line},
      {ImGuiCol_ResizeGripHovered, Ink::accent},
      {ImGuiCol_ResizeGripActive, Ink::accent},
      {ImGuiCol_Tab, Ink::panel},
      {ImGuiCol_TabHovered, Ink::field_over},
      {ImGuiCol_TabActive, Ink::pressed},
      {ImGuiCol_TableHeaderBg, Ink::panel},
      {ImGuiCol_TableBorderStrong, Ink::line},
      {ImGuiCol_TableBorderLight, Ink::line},
      {ImGuiCol_NavHighlight, Ink::accent},
  };
  for (const Use& use : kUses) colors[use.what] = vec(theme[use.ink]);
  colors[ImGuiCol_TableRowBg] = vec(faded(theme[Ink::panel], 0.0F));
  colors[ImGuiCol_TableRowBgAlt] = vec(faded(theme[Ink::line], 0.18F));
  colors[ImGuiCol_TextSelectedBg] = vec(faded(theme[Ink::accent], 0.30F));
  colors[ImGuiCol_ModalWindowDimBg] = {0.0F, 0.0F, 0.0F, 0.45F};
  colors[ImGuiCol_BorderShadow] = {0.0F, 0.0F, 0.0F, 0.0F};
}

}  // namespace

const Theme& theme_of(gui::Looks looks) {
  static const Theme kLight = make(gui::Looks::light);
  static const Theme kDark = make(gui::Looks::dark);
  return looks == gui::Looks::light ? kLight : kDark;
}

std::span<const TextPair> text_pairs() { return kPairs; }

double contrast(const Color& a, const Color& b) {
  const double first = luminance(a);
  const double second = luminance(b);
  return (std::max(first, second) + 0.05) / (std::min(first, second) + 0.05);
}

Color faded(Color color, float alpha) {
  color.alpha = alpha;
  return color;
}

std::uint32_t packed(const Color& color) { return ImGui::ColorConvertFloat4ToU32(vec(color)); }

void apply(const Theme& theme, float scale) {
  ImGuiStyle style;
  set_colors(theme, style.Colors);
  style.WindowPadding = {12.0F, 10.0F};
  style.FramePadding = {8.0F, 5.0F};
  style.ItemSpacing = {9.0F, 6.0F};
  style.ItemInnerSpacing = {6.0F, 4.0F};
  style.CellPadding = {6.0F, 4.0F};
  style.ScrollbarSize = 14.0F;
  style.WindowRounding = 0.0F;
  style.ChildRounding = 0.0F;
  style.FrameRounding = 2.0F;
  style.PopupRounding = 2.0F;
  style.ScrollbarRounding = 2.0F;
  style.GrabRounding = 2.0F;
  style.WindowBorderSize = 0.0F;
  style.ChildBorderSize = 0.0F;
  style.FrameBorderSize = 1.0F;
  style.PopupBorderSize = 1.0F;
  style.ScaleAllSizes(scale);
  ImGui::GetStyle() = style;
}

}  // namespace riserun::views
