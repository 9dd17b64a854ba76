#include "gui/views/sheets/remarks.h"

#include <imgui.h>

namespace riserun::views {

namespace {

void remark(const Scene& scene, Ink ink, const std::string& word, const std::string& text, const std::string& source) {
  ImGui::PushStyleColor(ImGuiCol_Text, packed(scene.theme[ink]));
  ImGui::TextWrapped("%s: %s%s", word.c_str(), text.c_str(), source.empty() ? "" : (" [" + source + "]").c_str());
  ImGui::PopStyleColor();
}

}  // namespace

void draw_remarks(const Scene& scene, plan::Topic topic, bool standing) {
  const plan::Plan& plan = *scene.shown.plan;
  for (const plan::Refusal& refusal : plan.refusals) {
    if (refusal.where != topic) continue;
    std::string text = refusal.reason;
    if (!refusal.asked.empty()) text += ". Asked " + refusal.asked + ", allowed " + refusal.allowed;
    if (!refusal.mend.empty()) text += ". Mend: " + refusal.mend;
    remark(scene, Ink::refused, "Refused", text, "");
  }
  for (const plan::Caution& caution : plan.cautions)
    if (caution.where == topic && (standing || !caution.standing))
      remark(scene, Ink::caution, "Caution", caution.text, caution.source);
  for (const plan::Note& note : plan.notes)
    if (note.where == topic) remark(scene, Ink::faint_text, "Note", note.text, "");
}

}  // namespace riserun::views
