#include "report/page/plan_markdown.h"

#include "report/card/make_card.h"
#include "report/page/escape.h"
#include "report/words/list_words.h"

#include <fmt/format.h>

namespace riserun::report {

namespace {

std::string rows(const std::string& title, const std::vector<CardRow>& list) {
  if (list.empty()) return "";
  std::string text = fmt::format("\n## {}\n\n", title);
  for (const CardRow& row : list)
    text += row.name.empty() ? fmt::format("- {}\n", markdown(row.value))
                             : fmt::format("- **{}**: {}\n", markdown(row.name), markdown(row.value));
  return text;
}

std::string lists(const plan::ShoppingList& list, const Card& card, UnitSystem units) {
  std::string text;
  if (!card.cuts.empty()) text += "\n## Cut\n\n";
  for (const CardCut& cut : card.cuts)
    text += fmt::format("- [ ] {} × {}{}{} ({})\n", cut.count, markdown(cut.size), markdown(cut.of_what()),
                        cut.remark.empty() ? "" : ", " + markdown(cut.remark), markdown(cut.used_for));
  text += fmt::format("\n## Buy, {}\n\n", markdown(card.cost));
  for (const plan::ListItem& item : list.buy)
    text += fmt::format("- [ ] {} × {}, {}, for {}\n", quantity_of(item), markdown(item_name(item, units)),
                        markdown(price_of(item)), markdown(joined(item.used_for, ", ")));
  if (!list.consumables.empty()) text += "\n## Consumables and test gear\n\n";
  for (const plan::Consumable& item : list.consumables)
    text += fmt::format("- [ ] {}, {}: {}\n", markdown(consumable_name(item, units)), markdown(item.quantity),
                        markdown(item.why));
  if (!list.from_bin.empty()) text += "\n## From the bin\n\n";
  for (const plan::ListItem& item : list.from_bin)
    text += fmt::format("- [ ] {} × {}, for {}\n", quantity_of(item), markdown(item_name(item, units)),
                        markdown(joined(item.used_for, ", ")));
  return text;
}

}  // namespace

std::string plan_markdown(const plan::Plan& plan, UnitSystem units) {
  const Card card = card_of(plan, units);
  std::string text = fmt::format("# {}: {}\n", markdown(card.title), markdown(card.verdict_words));
  if (!card.findings.empty()) text += "\n";
  for (std::size_t row = 0; row < card.findings.size(); ++row) {
    const CardFinding& finding = card.findings[row];
    text += fmt::format("{}. {}{}\n", row + 1, markdown(finding.reason),
                        finding.mend.empty() ? "" : ". **Mend**: " + markdown(finding.mend));
  }
  if (card.verdict != plan::Verdict::refused)
    text += fmt::format("\n{}\n", markdown(card.pressures)) + rows("Set and mark", card.settings) +
            rows("Run it", card.running) + lists(plan.list, card, units) + rows("Order of work", card.work);
  text += "\n## Before air goes on\n\n";
  for (const std::string& caution : card.watch) text += fmt::format("- {}\n", markdown(caution));
  return text;
}

}  // namespace riserun::report
