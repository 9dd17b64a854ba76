#include "gui/views/pressure_bars.h"

#include "report/figures/pressure_bars.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>
#include <cmath>

namespace riserun::views {

namespace {

constexpr float kNames = 58.0F;  // points left of the bars
constexpr float kGap = 8.0F;     // points between them and their values
constexpr float kHead = 18.0F;   // points over them, for what the two lines are
constexpr float kRow = 15.5F;
constexpr double kBeyond = 1.5;  // times the limit: what is more ends there

class Bars {
 public:
  Bars(const Scene& scene, float wide)
      : scene_(scene),
        plan_(*scene.shown.plan),
        at_(ImGui::GetCursorScreenPos()),
        left_(at_.x + scene.px(kNames)),
        edge_(at_.x + wide),
        list_(*ImGui::GetWindowDrawList()) {
    most_ = in_psi(plan_.walls.limit);
    float values = 0.0F;
    for (const report::PressureBar& bar : report::pressure_bars(plan_))
      values = std::max(values, width_of(value_of(bar)));
    right_ = edge_ - values - scene.px(kGap);
    for (const report::PressureBar& bar : report::pressure_bars(plan_))
      for (const auto& pressure : {bar.at, bar.on})
        if (pressure) most_ = std::max(most_, std::min(in_psi(*pressure), in_psi(plan_.walls.limit) * kBeyond));
    most_ = std::max(most_ * 1.04, 1e-6);
  }

  void draw() {
    float top = at_.y + scene_.px(kHead);
    for (const report::PressureBar& bar : report::pressure_bars(plan_)) {
      row(bar, top);
      top += scene_.px(kRow);
    }
    lines(top);
  }

 private:
  float x_of(GaugePressure pressure) const {
    const double share = std::clamp(in_psi(pressure) / most_, 0.0, 1.0);
    return left_ + static_cast<float>(share) * (right_ - left_);
  }
  void words(float x, float y, Ink ink, const std::string& text) const {
    list_.AddText(scene_.fonts.small, scene_.fonts.small->FontSize, {std::floor(x), std::floor(y)},
                  packed(scene_.theme[ink]), text.c_str());
    note_text(scene_, text, {x, y, x + width_of(text), y + scene_.fonts.small->FontSize},
              {at_.x, at_.y, edge_, at_.y + scene_.px(kBarsHeight)});
  }
  float width_of(const std::string& text) const {
    return scene_.fonts.small->CalcTextSizeA(scene_.fonts.small->FontSize, FLT_MAX, 0.0F, text.c_str()).x;
  }
  Ink ink_of(GaugePressure pressure) const {
    if (pressure > plan_.walls.limit) return Ink::refused;
    return pressure > plan_.walls.four_to_one ? Ink::caution : Ink::air;
  }
  std::string written(GaugePressure pressure) const { return write_pressure_alone(pressure, scene_.shown.units); }

  std::string value_of(const report::PressureBar& bar) const {
    if (!bar.at) return "none";
    return bar.on ? fmt::format("{} to {}", write_number(*bar.at), written(*bar.on)) : written(*bar.at);
  }

  void row(const report::PressureBar& bar, float top) const {
    words(at_.x, top, Ink::faint_text, std::string(bar.label));
    const float high = scene_.px(kRow - 5.0F);
    const float bar_top = top + scene_.px(2.5F);
    list_.AddRectFilled({left_, bar_top}, {right_, bar_top + high}, packed(scene_.theme[Ink::field_over]));
    const std::string value = value_of(bar);
    if (bar.at)
      list_.AddRectFilled({left_, bar_top}, {x_of(*bar.at), bar_top + high}, packed(scene_.theme[ink_of(*bar.at)]));
    if (bar.at && bar.on)
      list_.AddRectFilled({x_of(*bar.at), bar_top}, {x_of(*bar.on), bar_top + high},
                          packed(faded(scene_.theme[ink_of(*bar.on)], 0.45F)));
    if (bar.at && in_psi(*bar.at) > most_) broken_off(bar_top, high);
    words(right_ + scene_.px(kGap), top, Ink::text, value);
    note_place(scene_, "bar " + std::string(bar.label) + " " + value,
               {left_, bar_top, bar.at ? x_of(*bar.at) : left_, bar_top + high});
  }
  /// Two slanting gaps before the end of a bar that is longer than there is room for.
  void broken_off(float top, float high) const {
    const ImU32 ground = packed(scene_.theme[Ink::ground]);
    for (const float back : {10.0F, 16.0F}) {
      const float x = right_ - scene_.px(back);
      list_.AddLine({x - high / 3.0F, top + high + 1.0F}, {x + high / 3.0F, top - 1.0F}, ground, scene_.px(2.5F));
    }
    note_place(scene_, "bar broken off", {right_ - scene_.px(20.0F), top, right_, top + high});
  }
  /// Without the unit that the second of the two has.
  std::string write_number(GaugePressure pressure) const {
    const std::string whole = written(pressure);
    return whole.substr(0, whole.find(' '));
  }

  /// What the walls stand, and up to where four times within the yield.
  void lines(float bottom) const {
    struct Line {
      GaugePressure at;
      Ink ink;
      std::string text;
    };
    const Line both[] = {{plan_.walls.four_to_one, Ink::caution, "4 to 1: " + written(plan_.walls.four_to_one)},
                         {plan_.walls.limit, Ink::refused, "wall limit: " + written(plan_.walls.limit)}};
    std::vector<double> middles;
    std::vector<double> widths;
    for (const Line& line : both) {
      middles.push_back(x_of(line.at));
      widths.push_back(width_of(line.text));
    }
    const std::vector<double> begins = report::in_a_row(middles, widths, scene_.px(12.0F), at_.x, edge_);
    for (std::size_t i = 0; i < std::size(both); ++i) {
      const float x = static_cast<float>(middles[i]);
      const float top = at_.y + scene_.px(kHead - 2.0F);
      list_.AddLine({x, top}, {x, bottom}, packed(scene_.theme[both[i].ink]), scene_.px(2.0F));
      words(static_cast<float>(begins[i]), at_.y, both[i].ink, both[i].text);
      note_place(scene_, both[i].text, {x - 1.0F, top, x + 1.0F, bottom});
    }
  }

  const Scene& scene_;
  const plan::Plan& plan_;
  ImVec2 at_;
  float left_;
  float right_ = 0.0F;
  float edge_;  // right of the values
  ImDrawList& list_;
  double most_ = 0.0;  // psi at the right end
};

}  // namespace

void draw_pressure_bars(const Scene& scene, float wide) {
  Bars(scene, wide).draw();
  ImGui::Dummy({wide, scene.px(kBarsHeight)});
  note_item(scene, "pressures");
}

}  // namespace riserun::views
