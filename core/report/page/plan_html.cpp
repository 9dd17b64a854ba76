#include "report/page/plan_html.h"

#include "report/card/make_card.h"
#include "report/page/escape.h"
#include "report/page/page_look.h"
#include "report/paper/plan_svg.h"
#include "report/paper/svg_brush.h"
#include "report/words/list_words.h"
#include "report/words/say.h"
#include "report/words/step_lists.h"

#include <fmt/format.h>

#include <cstdint>
#include <map>

namespace riserun::report {

namespace {

using plan::Plan;

std::string verdict_class(plan::Verdict verdict) {
  switch (verdict) {
    case plan::Verdict::ready:
      return "ready";
    case plan::Verdict::not_yet:
      return "not-yet";
    case plan::Verdict::refused:
      break;
  }
  return "refused";
}

/// Of the page's own words (FNV-1a, 64 bits): the ticks of another tank that happens to be called the same are none of
/// this one's, and those of a plan that has changed are gone.
std::string fingerprint(const std::string& text) {
  std::uint64_t mark = 0xcbf29ce484222325U;
  for (const char c : text) mark = (mark ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
  return fmt::format("{:016x}", mark);
}

/// The boxes of a page. A tick is kept under what its row says; of the same row again under that and a number.
class Boxes {
 public:
  std::string box(const std::string& part, const std::string& words) {
    const std::string says = part + ": " + words;
    const int before = seen_[says]++;
    return fmt::format(R"(<input type="checkbox" data-key="{}">)",
                       html(before == 0 ? says : fmt::format("{} {}", says, before + 1)));
  }

 private:
  std::map<std::string, int> seen_;
};

std::string rows(const std::vector<CardRow>& list) {
  std::string text = "<dl>\n";
  for (const CardRow& row : list)
    text += fmt::format("<dt>{}</dt><dd>{}</dd>\n", html_words(row.name), html_words(row.value));
  return text + "</dl>\n";
}

std::string tick_row(Boxes& boxes, const std::string& part, const std::string& count, const std::string& what,
                     const std::string& beside, const std::string& under) {
  return fmt::format("<li><label>{}<span>{}</span><span>{}{}</span><span>{}</span></label></li>\n",
                     boxes.box(part, count + " " + what + " " + under), html_words(count), html_words(what),
                     under.empty() ? "" : fmt::format(R"(<br><span class="soft">{}</span>)", html_words(under)),
                     html_words(beside));
}

std::string card_cuts(const Card& card, Boxes& boxes) {
  if (card.cuts.empty()) return "";
  std::string text = "<h2>Cut</h2>\n<ul class=\"ticks\">\n";
  for (const CardCut& cut : card.cuts)
    text += tick_row(boxes, "cut", cut.count, cut.size + cut.of_what(), cut.used_for, cut.remark);
  return text + "</ul>\n";
}

std::string watch(const Card& card) {
  std::string text = "<h2>Before air goes on</h2>\n<ul>\n";
  for (const std::string& caution : card.watch) text += fmt::format("<li>{}</li>\n", html_words(caution));
  return text + "</ul>\n";
}

std::string card_section(const Card& card, Boxes& boxes) {
  std::string text = fmt::format("<section>\n<h1><span>{}</span> <span class=\"{}\">{}</span></h1>\n",
                                 html_words(card.title), verdict_class(card.verdict), html_words(card.verdict_words));
  if (!card.findings.empty()) text += "<ol>\n";
  for (const CardFinding& finding : card.findings)
    text += fmt::format(
        "<li>{}{}</li>\n", html_words(finding.reason),
        finding.mend.empty() ? "" : fmt::format(R"(<br><span class="mend">Mend: {}</span>)", html_words(finding.mend)));
  if (!card.findings.empty()) text += "</ol>\n";
  if (card.verdict != plan::Verdict::refused)
    text += fmt::format(
        "<p>{}</p>\n<div class=\"pair\"><div><h2>Set and mark</h2>\n{}</div><div><h2>Run it</h2>\n{}</div></div>\n{}"
        "<h2>Order of work</h2>\n{}",
        html_words(card.pressures), rows(card.settings), rows(card.running), card_cuts(card, boxes), rows(card.work));
  return text + watch(card) + "</section>\n";
}

std::string list_section(const Plan& plan, UnitSystem units, Boxes& boxes) {
  std::string text = "<section>\n<h2>Shopping list</h2>\n";
  std::string shelf;
  bool open = false;
  for (const plan::ListItem& item : plan.list.buy) {
    if (!open || item.shelf != shelf)
      text += fmt::format("{}<h3>{}</h3>\n<ul class=\"ticks\">\n", open ? "</ul>\n" : "", html_words(item.shelf));
    open = true;
    shelf = item.shelf;
    std::string under = "for " + joined(item.used_for, ", ");
    if (!item.instead.empty()) under += ", or " + joined(item.instead, "; or ");
    text += tick_row(boxes, "buy", quantity_of(item), item_name(item, units), price_of(item), under);
  }
  if (open) text += fmt::format("</ul>\n<p>{}</p>\n", html_words(sum_words(plan.list)));
  if (!plan.list.consumables.empty()) text += "<h3>Consumables and test gear</h3>\n<ul class=\"ticks\">\n";
  for (const plan::Consumable& item : plan.list.consumables)
    text += tick_row(boxes, "consumable", "", consumable_name(item, units), item.quantity, item.why);
  if (!plan.list.consumables.empty()) text += "</ul>\n";
  if (!plan.list.from_bin.empty()) text += "<h3>From the bin</h3>\n<ul class=\"ticks\">\n";
  for (const plan::ListItem& item : plan.list.from_bin)
    text += tick_row(boxes, "bin", quantity_of(item), item_name(item, units), "", "for " + joined(item.used_for, ", "));
  if (!plan.list.from_bin.empty()) text += "</ul>\n";
  return text + "</section>\n";
}

std::string step_section(const std::string& title, const std::vector<StepList>& lists, Boxes& boxes) {
  if (lists.empty()) return "";
  std::string text = fmt::format("<section>\n<h2>{}</h2>\n", html_words(title));
  for (const StepList& list : lists) {
    text += fmt::format("<h3>{}</h3>\n<ul class=\"ticks\">\n", html_words(list.title));
    for (const SaidStep& step : list.steps) {
      const std::string of = step.of.empty()    ? ""
                             : step.number == 0 ? step.of + ": "
                                                : fmt::format("{}, step {}: ", step.of, step.number);
      text += fmt::format("<li><label class=\"step\">{}<span>{}</span></label></li>\n",
                          boxes.box(list.title, of + step.text), html_words(of + step.text));
    }
    text += "</ul>\n";
  }
  return text + "</section>\n";
}

std::string drawing_section(const Plan& plan, UnitSystem units) {
  std::string text = "<section>\n<h2>Drawings</h2>\n";
  for (const std::string& picture : svg_pictures(plan, units)) text += "<figure>\n" + picture + "</figure>\n";
  return text + "</section>\n";
}

std::string standing_section(const Plan& plan, UnitSystem units) {
  std::string text = "<section>\n<h2>All cautions</h2>\n<ul>\n";
  for (const plan::Caution& caution : plan.cautions)
    text += fmt::format("<li>{}{} <span class=\"soft\">[{}]</span></li>\n",
                        caution.standing ? "" : "In this job: ", html_words(say(caution.fact, units)),
                        html_words(caution.source));
  return text + "</ul>\n</section>\n";
}

}  // namespace

std::string plan_html(const Plan& plan, UnitSystem units) {
  const Card card = card_of(plan, units);
  Boxes boxes;
  std::string body = card_section(card, boxes);
  if (plan.verdict != plan::Verdict::refused)
    body += list_section(plan, units, boxes) + step_section("Order of work", work_steps(plan, units), boxes) +
            step_section("Leak test", leak_test_steps(plan, units), boxes);
  const std::string mark = fingerprint(body);  // a drawing that is drawn otherwise takes no tick away
  if (plan.verdict != plan::Verdict::refused) body += drawing_section(plan, units);
  body += standing_section(plan, units);
  return fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; "
      "script-src 'unsafe-inline'\">\n<title>{}</title>\n<style>{}</style>\n</head>\n<body data-job=\"{}\">\n<main>\n{}"
      "</main>\n<script>{}</script>\n</body>\n</html>\n",
      html(card.title), std::string(kPageStyle) + dark_svg_style(), mark, body, kPageScript);
}

}  // namespace riserun::report
