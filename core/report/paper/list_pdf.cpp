#include "report/paper/list_pdf.h"

#include "report/paper/pages.h"
#include "report/words/lid_rows.h"
#include "report/words/list_words.h"
#include "report/words/plan_keys.h"
#include "report/words/remark_words.h"

#include <fmt/format.h>

namespace riserun::report {

namespace {

using plan::Plan;

std::string what_for(const std::vector<std::string>& uses) { return uses.empty() ? "" : "for " + joined(uses, ", "); }

/// What is open stands over everything else.
void verdict(Pages& pages, const Plan& plan, UnitSystem units) {
  pages.heading(fmt::format("Verdict: {}", key_of(plan.verdict)));
  for (const plan::Finding& finding : plan.findings)
    pages.sentence(fmt::format("{}: {}", title_of(finding.severity), sentences_of(finding, units)));
}

/// What goes with every plan, whatever is in it, at the end.
void standing(Pages& pages, const Plan& plan, UnitSystem units) {
  pages.heading("With every plan");
  for (const plan::Caution& caution : plan.cautions)
    if (caution.standing && (caution.where == plan::Topic::whole_job || caution.where == plan::Topic::list))
      pages.sentence(fmt::format("Caution: {} [{}]", say(caution.fact, units), caution.source));
}

void buy(Pages& pages, const plan::ShoppingList& list, UnitSystem units) {
  std::string shelf;
  for (const plan::ListItem& item : list.buy) {
    if (item.shelf != shelf || &item == list.buy.data()) pages.heading("Buy: " + item.shelf);
    shelf = item.shelf;
    std::string under = what_for(item.used_for);
    if (!item.instead.empty()) under += "\nor: " + joined(item.instead, "; or ");
    pages.row(quantity_of(item), item_name(item, units), price_of(item), under);
  }
  if (!list.buy.empty()) pages.sentence(sum_words(list));
}

void cut(Pages& pages, const Plan& plan, UnitSystem units) {
  const std::vector<HoleRow> holes = holes_to_cut(plan, units);
  if (plan.list.cut.empty() && holes.empty()) return;
  pages.heading("Cut");
  for (const HoleRow& hole : holes)
    pages.row(fmt::format("{}", hole.count), hole.what, hole.size, "for " + hole.used_for + ", " + hole.where);
  for (const plan::CutItem& item : plan.list.cut) {
    std::string under = "for " + item.used_for;
    if (const std::string remark = cut_remark(item, units); !remark.empty()) under += ", " + remark;
    pages.row(fmt::format("{}", item.quantity), "from " + stock_words(item.stock, units), cut_size(item, units), under);
  }
}

void rows(Pages& pages, const Plan& plan, UnitSystem units) {
  const plan::ShoppingList& list = plan.list;
  buy(pages, list, units);
  if (!list.consumables.empty()) pages.heading("Consumables and test gear");
  for (const plan::Consumable& item : list.consumables)
    pages.row("", consumable_name(item, units), item.quantity, item.why);
  if (!list.from_bin.empty()) pages.heading("Take from the bin");
  for (const plan::ListItem& item : list.from_bin)
    pages.row(quantity_of(item), item_name(item, units), "", what_for(item.used_for));
  cut(pages, plan, units);
}

}  // namespace

std::string list_pdf(const Plan& plan, const Style& style) {
  Pages pages(paper_of(style.units), plan.job.name.empty() ? "Shopping list" : plan.job.name + ": shopping list",
              name_and_verdict(plan), true);
  verdict(pages, plan, style.units);
  if (plan.verdict != plan::Verdict::refused) rows(pages, plan, style.units);
  for (const plan::Caution& caution : plan.cautions)
    if (!caution.standing && (caution.where == plan::Topic::whole_job || caution.where == plan::Topic::list))
      pages.sentence(fmt::format("Caution: {} [{}]", say(caution.fact, style.units), caution.source));
  standing(pages, plan, style.units);
  return pages.finish();
}

}  // namespace riserun::report
