#include "report/text/plan_text.h"
#include "report/words/lid_rows.h"
#include "report/words/list_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::report {

namespace {

using plan::ListItem;
using plan::Plan;

std::string buy_rows(const std::vector<ListItem>& items, const Style& style) {
  std::string text;
  std::string shelf;
  std::vector<std::vector<std::string>> rows;
  const auto flush = [&] {
    text += columns(rows, "    ", {1, 3}, style.width);
    rows.clear();
  };
  for (const ListItem& item : items) {
    if (item.shelf != shelf) {
      flush();
      shelf = item.shelf;
      text += "  " + shelf + "\n";
    }
    rows.push_back(
        {"[ ]", quantity_of(item), item_name(item, style.units), price_of(item), "for " + joined(item.used_for, ", ")});
    if (!item.instead.empty()) rows.back().push_back("or: " + joined(item.instead, "; or "));
  }
  flush();
  return text;
}

std::string bin_rows(const std::vector<ListItem>& items, const Style& style) {
  std::vector<std::vector<std::string>> rows;
  rows.reserve(items.size());
  for (const ListItem& item : items)
    rows.push_back({"[ ]", quantity_of(item), item_name(item, style.units), "for " + joined(item.used_for, ", ")});
  return columns(rows, "    ", {1}, style.width);
}

std::string cut_rows(const Plan& plan, const Style& style) {
  std::vector<std::vector<std::string>> rows;
  for (const plan::CutItem& item : plan.list.cut)
    rows.push_back({"[ ]", fmt::format("{}", item.quantity), cut_size(item, style.units),
                    "from " + stock_words(item.stock, style.units), "for " + item.used_for,
                    cut_remark(item, style.units)});
  for (const HoleRow& hole : holes_to_cut(plan, style.units))
    rows.push_back({"[ ]", fmt::format("{}", hole.count), hole.size, hole.what, "for " + hole.used_for, hole.where});
  return columns(rows, "    ", {1, 2}, style.width);
}

std::string consumable_rows(const std::vector<plan::Consumable>& items, const Style& style) {
  std::vector<std::vector<std::string>> rows;
  rows.reserve(items.size());
  for (const plan::Consumable& item : items)
    rows.push_back({"[ ]", consumable_name(item, style.units), item.quantity, item.why});
  return columns(rows, "    ", {}, style.width);
}

}  // namespace

std::string list_text(const Plan& plan, const Style& style) {
  const plan::ShoppingList& list = plan.list;
  std::string text = heading("Shopping list", style);
  if (plan.verdict == plan::Verdict::refused)
    text += wrapped("  ", "Buy and cut nothing of it yet: what mends the job changes this list.", style.width);
  text += list.buy.empty() ? "  Nothing to buy but consumables.\n" : buy_rows(list.buy, style);
  if (!list.buy.empty()) text += "  " + sum_words(list) + "\n";
  for (const std::string& row : own_prices(list, style.units)) text += wrapped("    ", row, style.width);
  if (!list.consumables.empty()) text += "  Consumables and test gear\n" + consumable_rows(list.consumables, style);
  if (!list.from_bin.empty()) text += "  From the bin\n" + bin_rows(list.from_bin, style);
  text += "\n" + heading("Cut list", style);
  const std::string cuts = cut_rows(plan, style);
  text += cuts.empty() ? "  Nothing to cut.\n" : cuts;
  return text + remarks_text(plan, plan::Topic::list, style);
}

}  // namespace riserun::report
