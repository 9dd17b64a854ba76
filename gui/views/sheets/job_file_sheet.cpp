#include "gui/views/sheets/job_file_sheet.h"

#include "gui/views/scene/words.h"

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace riserun::views {

namespace {

void problem_rows(const Scene& scene, JobFileState& state, const std::vector<quantity::Problem>& problems) {
  for (std::size_t i = 0; i < problems.size(); ++i) {
    const quantity::Problem& problem = problems[i];
    ImGui::PushID(static_cast<int>(i));
    ImGui::PushStyleColor(ImGuiCol_Text, packed(scene.theme[Ink::refused]));
    const std::string text = fmt::format("line {}, column {}: {}", problem.line, problem.column, problem.message);
    const float wrap = ImGui::GetContentRegionAvail().x;
    const ImVec2 size = ImGui::CalcTextSize(text.c_str(), nullptr, false, wrap);
    const ImVec2 at = ImGui::GetCursorPos();
    if (ImGui::Selectable("##show", state.shown_line == problem.line, 0, {0.0F, size.y})) state.show(problem.line);
    ImGui::SetCursorPos(at);
    wrapped(text);
    ImGui::PopStyleColor();
    ImGui::PopID();
  }
}

/// Line numbers beside the text, the shown line on a bar.
void numbered(const Scene& scene, const JobFileState& state, float left, float top) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float line = ImGui::GetTextLineHeight();
  const auto lines = static_cast<int>(std::count(state.text.begin(), state.text.end(), '\n')) + 1;
  for (int i = 1; i <= lines; ++i) {
    const std::string number = fmt::format("{:>4}", i);
    const float y = top + static_cast<float>(i - 1) * line;
    if (i == state.shown_line)
      list.AddRectFilled({left, y}, {left + ImGui::GetWindowWidth(), y + line},
                         packed(faded(scene.theme[Ink::refused], 0.22F)));
    list.AddText({left, y}, packed(scene.theme[i == state.shown_line ? Ink::refused : Ink::faint_text]),
                 number.c_str());
  }
}

}  // namespace

Requests draw_job_file(const Scene& scene, JobFileState& state) {
  Requests asked;
  const gui::JobState& job = scene.model.job();
  if (state.text_of != job.revision || (state.text.empty() && !job.text.empty())) {
    state.text = job.text;
    state.text_of = job.revision;
  }
  if (!job.problems.empty()) problem_rows(scene, state, job.problems);
  const bool changed = state.text != job.text;
  if (changed) {
    if (ImGui::Button(words::kApply)) asked.push_back(gui::Perform{gui::SetText{state.text}});
    ImGui::SameLine();
    if (ImGui::Button(words::kDiscard)) state.text = job.text;
  }
  ImGui::PushFont(scene.fonts.fixed);
  const float line = ImGui::GetTextLineHeight();
  const auto lines = static_cast<float>(std::count(state.text.begin(), state.text.end(), '\n') + 2);
  ImGui::BeginChild("text", {0.0F, 0.0F}, true, ImGuiWindowFlags_HorizontalScrollbar);
  if (state.shown_line > 0 && state.scroll_to_line) {
    ImGui::SetScrollY(std::max(0.0F, static_cast<float>(state.shown_line - 4) * line));
    state.scroll_to_line = false;
  }
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float gutter = ImGui::CalcTextSize("00000").x;
  numbered(scene, state, corner.x, corner.y + ImGui::GetStyle().FramePadding.y);
  ImGui::SetCursorScreenPos({corner.x + gutter, corner.y});
  ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, 0.0F);
  ImGui::PushStyleColor(ImGuiCol_FrameBg, packed(faded(scene.theme[Ink::field], 0.0F)));
  const float longest = ImGui::CalcTextSize(state.text.c_str()).x + scene.px(40.0F);
  ImGui::InputTextMultiline("##job", &state.text, {std::max(longest, ImGui::GetContentRegionAvail().x), lines * line});
  ImGui::PopStyleColor();
  ImGui::PopStyleVar();
  ImGui::EndChild();
  ImGui::PopFont();
  return asked;
}

}  // namespace riserun::views
