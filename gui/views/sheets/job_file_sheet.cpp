// The job file itself, and what is wrong with it: a click on a mistake shows its line.
#include "gui/views/desk.h"

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace riserun::views {

namespace {

void problem_rows(Frame& frame, const std::vector<quantity::Problem>& problems) {
  for (std::size_t i = 0; i < problems.size(); ++i) {
    const quantity::Problem& problem = problems[i];
    ImGui::PushID(static_cast<int>(i));
    ImGui::PushStyleColor(ImGuiCol_Text, packed(frame.theme[Ink::refused]));
    const std::string text = fmt::format("line {}, column {}: {}", problem.line, problem.column, problem.message);
    const float wrap = ImGui::GetContentRegionAvail().x;
    const ImVec2 size = ImGui::CalcTextSize(text.c_str(), nullptr, false, wrap);
    const ImVec2 at = ImGui::GetCursorPos();
    if (ImGui::Selectable("##show", frame.desk.show_line == problem.line, 0, {0.0F, size.y})) {
      frame.desk.show_line = problem.line;
      frame.desk.scroll_to_line = true;
    }
    ImGui::SetCursorPos(at);
    ImGui::TextWrapped("%s", text.c_str());
    ImGui::PopStyleColor();
    ImGui::PopID();
  }
}

/// Line numbers beside the text, the shown line on a bar.
void numbered(const Frame& frame, const std::string& text, float left, float top) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float line = ImGui::GetTextLineHeight();
  const auto lines = static_cast<int>(std::count(text.begin(), text.end(), '\n')) + 1;
  for (int i = 1; i <= lines; ++i) {
    const std::string number = fmt::format("{:>4}", i);
    const float y = top + static_cast<float>(i - 1) * line;
    if (i == frame.desk.show_line)
      list.AddRectFilled({left, y}, {left + ImGui::GetWindowWidth(), y + line},
                         packed(faded(frame.theme[Ink::refused], 0.22F)));
    list.AddText({left, y}, packed(frame.theme[i == frame.desk.show_line ? Ink::refused : Ink::faint_text]),
                 number.c_str());
  }
}

}  // namespace

void draw_job_file(Frame& frame) {
  Desk& desk = frame.desk;
  const gui::JobState& job = frame.model.job();
  if (desk.job_text_of != job.revision || (desk.job_text.empty() && !job.text.empty())) {
    desk.job_text = job.text;
    desk.job_text_of = job.revision;
  }
  if (!job.problems.empty()) problem_rows(frame, job.problems);
  const bool changed = desk.job_text != job.text;
  if (changed) {
    if (ImGui::Button("Use this text")) frame.model.perform(gui::SetText{desk.job_text});
    ImGui::SameLine();
    if (ImGui::Button("As it was")) desk.job_text = job.text;
  }
  ImGui::PushFont(frame.fonts.fixed);
  const float line = ImGui::GetTextLineHeight();
  const auto lines = static_cast<float>(std::count(desk.job_text.begin(), desk.job_text.end(), '\n') + 2);
  ImGui::BeginChild("text", {0.0F, 0.0F}, true, ImGuiWindowFlags_HorizontalScrollbar);
  if (desk.show_line > 0 && desk.scroll_to_line) {
    ImGui::SetScrollY(std::max(0.0F, static_cast<float>(desk.show_line - 4) * line));
    desk.scroll_to_line = false;
  }
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float gutter = ImGui::CalcTextSize("00000").x;
  numbered(frame, desk.job_text, corner.x, corner.y + ImGui::GetStyle().FramePadding.y);
  ImGui::SetCursorScreenPos({corner.x + gutter, corner.y});
  ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, 0.0F);
  ImGui::PushStyleColor(ImGuiCol_FrameBg, packed(faded(frame.theme[Ink::field], 0.0F)));
  const float longest = ImGui::CalcTextSize(desk.job_text.c_str()).x + frame.px(40.0F);
  ImGui::InputTextMultiline("##job", &desk.job_text,
                            {std::max(longest, ImGui::GetContentRegionAvail().x), lines * line});
  ImGui::PopStyleColor();
  ImGui::PopStyleVar();
  ImGui::EndChild();
  ImGui::PopFont();
}

}  // namespace riserun::views
