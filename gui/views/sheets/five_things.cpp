#include "gui/views/sheets/five_things.h"

#include "gui/model/session/first_measures.h"
#include "gui/views/scene/words.h"
#include "gui/views/sheets/elevation_pane.h"
#include "report/drawing/stays.h"

#include <fmt/format.h>
#include <imgui.h>

#include <algorithm>
#include <limits>

namespace riserun::views {

namespace {

constexpr float kLabelWide = 118.0F;  // points
constexpr float kEntryWide = 130.0F;  // "not set (scfm)", "3 mm stainless"
constexpr float kList = 462.0F;
constexpr float kLeastBoth = 1022.0F;  // points across for list and elevation side by side
constexpr float kElevation = 400.0F;   // points high

/// The field stands beside it: its key need not be named again.
std::string without_key(const std::string& reason, const gui::JobPath& at) {
  const std::string key = at.text() + ": ";
  return reason.starts_with(key) ? reason.substr(key.size()) : reason;
}

/// The sentences beside the fields: help, each within its row, and what is wrong, folded to its end. That takes the
/// room of the help below it where it must, so that no row moves.
class Notes {
 public:
  explicit Notes(const Scene& scene) : scene_(scene) {}

  void beside(const gui::Measure& measure, float row_top) {
    const auto wrong = gui::wrong_at(scene_.model.job(), measure.at);
    const std::string text = wrong ? without_key(wrong->reason, measure.at) : std::string(measure.help);
    const ImVec2 at{ImGui::GetCursorScreenPos().x, row_top};
    const float wide = ImGui::GetContentRegionAvail().x;
    const float high = ImGui::GetFrameHeight() + scene_.px(2.0F);
    ImGui::SetCursorScreenPos(at);
    ImGui::Dummy({wide, ImGui::GetFrameHeight()});
    if (!wrong && row_top < end_) return;
    const ImFont& font = *scene_.fonts.small;
    const ImVec2 size = font.CalcTextSizeA(font.FontSize, FLT_MAX, wide, text.c_str());
    const float top = std::max(end_, at.y + std::max(0.0F, (high - size.y) / 2.0F));
    ImGui::GetWindowDrawList()->AddText(scene_.fonts.small, font.FontSize, {at.x, top},
                                        packed(scene_.theme[wrong ? Ink::refused : Ink::faint_text]), text.c_str(),
                                        nullptr, wide);
    note_item(scene_, (wrong ? "wrong " : "help ") + measure.at.text());
    if (!wrong) return;
    end_ = top + size.y + scene_.px(2.0F);
    note_text(scene_, text, {at.x, top, at.x + size.x, top + size.y}, {at.x, at.y, at.x + wide, end_});
  }

  float end() const { return end_; }

 private:
  const Scene& scene_;
  float end_ = std::numeric_limits<float>::lowest();  // of what is wrong so far, px; what is rolled away lies above 0
};

/// Posts and bars, whose bays are measurements further down.
void other_stays(const Scene& scene) {
  if (scene.shown.plan == nullptr) return;
  const std::string stays = report::posts_and_bars(*scene.shown.plan);
  if (stays.empty()) return;
  wrapped(scene, Ink::text, fmt::format("{}; bays: {}", stays, report::bays_of_stays(*scene.shown.plan)));
  note_item(scene, "other stays");
}

Requests thing(const Scene& scene, MeasurementsState& state, Notes& notes, const gui::Thing& thing,
               std::size_t number) {
  Requests asked;
  strong(scene, fmt::format("{}  {}", number, thing.title));
  for (const gui::Measure& measure : thing.measures) {
    ImGui::PushID(measure.at.text().c_str());
    const float top = ImGui::GetCursorScreenPos().y;
    const float left = ImGui::GetCursorPosX();
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(measure.label.data());
    ImGui::SameLine(left + scene.px(kLabelWide));
    ImGui::SetNextItemWidth(scene.px(kEntryWide));
    place_cursor(scene, state, measure.at);
    append(asked, type_entry(scene, state.fields[measure.at], measure.at, measure.kind, words::kNotSet));
    lead_on(state, measure.at, false);
    note_item(scene, "field " + measure.at.text());
    ImGui::SameLine(0.0F, scene.px(8.0F));
    notes.beside(measure, top);
    ImGui::PopID();
  }
  const auto of_stays = [](const gui::Measure& measure) {
    return measure.at.text() == "reservoir.supports.baffles along";
  };
  if (std::any_of(thing.measures.begin(), thing.measures.end(), of_stays)) other_stays(scene);
  return asked;
}

void what_is_missing(const Scene& scene) {
  const std::vector<std::string> missing = gui::still_to_give(scene.model.job());
  const bool ready = scene.shown.plan != nullptr && scene.shown.plan->verdict == plan::Verdict::ready;
  if (missing.empty() || ready) return;  // a plan that is ready lacks nothing
  ImGui::Spacing();
  wrapped(scene, Ink::accent, fmt::format("Still to give: {}", fmt::join(missing, ", ")));
  note_item(scene, "still to give");
}

}  // namespace

Requests draw_five_things(const Scene& scene, MeasurementsState& state) {
  Requests asked;
  const float all = ImGui::GetContentRegionAvail().x;
  const bool beside = all > scene.px(kLeastBoth);
  ImGui::BeginGroup();
  ImGui::PushID("five things");
  if (ImGui::BeginTable("asked", 1, 0, {beside ? scene.px(kList) : all, 0.0F})) {
    ImGui::TableNextColumn();
    std::size_t number = 0;
    Notes notes(scene);
    for (const gui::Thing& each : gui::five_things()) append(asked, thing(scene, state, notes, each, ++number));
    if (const float below = notes.end() - ImGui::GetCursorScreenPos().y; below > 0.0F) ImGui::Dummy({1.0F, below});
    what_is_missing(scene);
    ImGui::EndTable();
  }
  ImGui::PopID();
  ImGui::EndGroup();
  if (beside) ImGui::SameLine(0.0F, scene.px(14.0F));
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float wide = ImGui::GetContentRegionAvail().x;
  const float high = beside ? std::max(ImGui::GetItemRectSize().y, scene.px(kElevation)) : scene.px(kElevation);
  append(asked, draw_elevation(scene, state, {at.x, at.y, at.x + wide, at.y + high}));
  return asked;
}

}  // namespace riserun::views
