#include "gui/views/sheets/remarks.h"

#include "report/words/remark_words.h"

namespace riserun::views {

namespace {

void remark(const Scene& scene, Ink ink, const std::string& word, const std::string& text, const std::string& source) {
  wrapped(scene, ink, word + ": " + text);
  if (!source.empty() && ImGui::IsItemHovered()) hint(scene, source);
}

}  // namespace

void draw_remarks(const Scene& scene, plan::Topic topic) {
  const plan::Plan& plan = *scene.shown.plan;
  const UnitSystem units = scene.shown.units;
  for (const plan::Finding& finding : plan.findings) {
    if (finding.where != topic) continue;
    const bool refused = finding.severity == plan::Severity::refused;
    remark(scene, refused ? Ink::refused : Ink::caution, refused ? "Refused" : "Not yet",
           report::sentences_of(finding, units), "");
  }
  for (const plan::Caution& caution : plan.cautions)
    if (caution.where == topic && !caution.standing)
      remark(scene, Ink::caution, "Caution", report::say(caution.fact, units), caution.source);
  for (const plan::Note& note : plan.notes)
    if (note.where == topic) remark(scene, Ink::faint_text, "Note", report::say(note.fact, units), "");
}

void draw_standing(const Scene& scene) {
  ImGui::PushFont(scene.fonts.strong);
  ImGui::TextUnformatted("With every plan");
  ImGui::PopFont();
  for (const plan::Caution& caution : scene.shown.plan->cautions)
    if (caution.standing)
      remark(scene, Ink::caution, "Caution", report::say(caution.fact, scene.shown.units), caution.source);
}

}  // namespace riserun::views
