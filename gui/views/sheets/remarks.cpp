// What goes with a number: cautions, refusals, and where it comes from.
#include "gui/views/desk.h"

#include <imgui.h>

namespace riserun::views {

namespace {

void remark(const Frame& frame, Ink ink, const std::string& word, const std::string& text, const std::string& source) {
  ImGui::PushStyleColor(ImGuiCol_Text, packed(frame.theme[ink]));
  ImGui::TextWrapped("%s: %s%s", word.c_str(), text.c_str(), source.empty() ? "" : (" [" + source + "]").c_str());
  ImGui::PopStyleColor();
}

}  // namespace

void draw_remarks(Frame& frame, const plan::Plan& plan, plan::Topic topic, bool standing) {
  for (const plan::Refusal& refusal : plan.refusals) {
    if (refusal.where != topic) continue;
    std::string text = refusal.reason;
    if (!refusal.asked.empty()) text += ". Asked " + refusal.asked + ", allowed " + refusal.allowed;
    if (!refusal.mend.empty()) text += ". Mend: " + refusal.mend;
    remark(frame, Ink::refused, "Refused", text, "");
  }
  for (const plan::Caution& caution : plan.cautions)
    if (caution.where == topic && (standing || !caution.standing))
      remark(frame, Ink::caution, "Caution", caution.text, caution.source);
  for (const plan::Note& note : plan.notes)
    if (note.where == topic) remark(frame, Ink::faint_text, "Note", note.text, "");
}

void hint(const Frame& frame, const std::string& text) {
  ImGui::PushStyleVar(ImGuiStyleVar_Alpha, 1.0F);  // over what is stale, too
  ImGui::BeginTooltip();
  ImGui::PushTextWrapPos(frame.px(420.0F));
  ImGui::TextUnformatted(text.c_str());
  ImGui::PopTextWrapPos();
  ImGui::EndTooltip();
  ImGui::PopStyleVar();
}

bool begin_stale(const Frame& frame) {
  if (frame.model.plan().current) return false;
  ImGui::PushStyleVar(ImGuiStyleVar_Alpha, 0.55F);
  return true;
}

void end_stale(bool begun) {
  if (begun) ImGui::PopStyleVar();
}

}  // namespace riserun::views
