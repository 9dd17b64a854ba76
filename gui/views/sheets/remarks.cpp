#include "gui/views/sheets/remarks.h"

#include "report/words/remark_words.h"

namespace riserun::views {

namespace {

void remark(const Scene& scene, Ink ink, const std::string& word, const std::string& text, const std::string& source) {
  wrapped(scene, ink, word + ": " + text + (source.empty() ? "" : " [" + source + "]"));
}

}  // namespace

void draw_remarks(const Scene& scene, plan::Topic topic, bool standing) {
  const plan::Plan& plan = *scene.shown.plan;
  const UnitSystem units = scene.shown.units;
  for (const plan::Refusal& refusal : plan.refusals) {
    if (refusal.where != topic) continue;
    const report::SaidRefusal said = report::say(refusal, units);
    std::string text = said.reason;
    if (!said.asked.empty()) text += ". Asked " + said.asked + ", allowed " + said.allowed;
    if (!said.mend.empty()) text += ". Mend: " + said.mend;
    remark(scene, Ink::refused, "Refused", text, "");
  }
  for (const plan::Caution& caution : plan.cautions)
    if (caution.where == topic && (standing || !caution.standing))
      remark(scene, Ink::caution, "Caution", report::say(caution.fact, units), caution.source);
  for (const plan::Note& note : plan.notes)
    if (note.where == topic) remark(scene, Ink::faint_text, "Note", report::say(note.fact, units), "");
}

}  // namespace riserun::views
